package setup

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
)

// Group is one setting with the drawers that it serves, by their place in the
// list that was asked about.
type Group struct {
	Fence, Height     geom.Interval // all that would do
	AtFence, AtHeight float64       // the one that suits them best
	Drawers           []int
}

// Grouping says whether one setting serves all drawers of one cutter.
type Grouping struct {
	One bool
	// Compromise is one setting for all: where One, one that is right for each; else the
	// one that is the least wrong for the worst of them.
	Compromise Group
	// Minimal are the settings that do it right. Proven says that there are none fewer.
	Minimal []Group
	Optimal bool
	// Unserved are the drawers for which no setting of this cutter is right.
	Unserved []int
}

// maxExact is how many different needs are searched to the end: 2 to that power of
// steps. More are put together as they come; no shop has that many thicknesses at once.
const maxExact = 12

// GroupSettings looks for the fewest settings.
func GroupSettings(needs []Requirement) Grouping {
	var v Grouping
	kinds := distinct(needs)
	for i := range needs {
		v.Compromise.Drawers = append(v.Compromise.Drawers, i)
	}
	v.Compromise.choose(needs)
	var able []kind
	for _, k := range kinds {
		if k.need.Impossible != "" {
			v.Unserved = append(v.Unserved, k.drawers...)
		} else {
			able = append(able, k)
		}
	}
	v.Minimal, v.Optimal = cover(able)
	v.One = len(v.Unserved) == 0 && len(v.Minimal) == 1
	return v
}

// kind are the drawers with one need.
type kind struct {
	need    Requirement
	drawers []int
}

func distinct(needs []Requirement) (list []kind) {
	type key struct{ a, b, c, d, e, f float64 }
	at := make(map[key]int)
	for i, n := range needs {
		k := key{n.Fence.Min, n.Fence.Max, n.Height.Min, n.Height.Max, n.AtFence, n.AtHeight}
		j, known := at[k]
		if !known {
			j = len(list)
			at[k] = j
			list = append(list, kind{need: n})
		}
		list[j].drawers = append(list[j].drawers, i)
	}
	return list
}

// cover serves all kinds with few points. Where some needs have a point in common,
// they have one at the greatest of their least fence distances and of their least
// heights: so those are all the points that have to be tried.
func cover(kinds []kind) (groups []Group, proven bool) {
	if len(kinds) == 0 {
		return nil, true
	}
	if len(kinds) > maxExact {
		return firstFit(kinds), false
	}
	serves := candidates(kinds)
	all := uint64(1)<<len(kinds) - 1
	best := make([]int, all+1)     // settings for those in the set
	first := make([]uint64, all+1) // one of them
	for set := uint64(1); set <= all; set++ {
		best[set] = math.MaxInt
		lowest := set & -set
		for _, s := range serves {
			if s&lowest == 0 {
				continue
			}
			if n := best[set&^s] + 1; n < best[set] {
				best[set], first[set] = n, s&set
			}
		}
	}
	for set := all; set != 0; set &^= first[set] {
		var together []kind
		for i, k := range kinds {
			if first[set]>>i&1 == 1 {
				together = append(together, k)
			}
		}
		groups = append(groups, group(together))
	}
	return groups, true
}

// candidates are the sets of kinds that have a setting in common, each once.
func candidates(kinds []kind) (list []uint64) {
	seen := make(map[uint64]bool)
	for _, f := range kinds {
		for _, h := range kinds {
			var set uint64
			for i, k := range kinds {
				if within(f.need.Fence.Min, k.need.Fence) && within(h.need.Height.Min, k.need.Height) {
					set |= 1 << i
				}
			}
			if set != 0 && !seen[set] {
				seen[set] = true
				list = append(list, set)
			}
		}
	}
	return list
}

func within(v float64, r geom.Interval) bool { return r.Grow(settle).Contains(v) }

// firstFit puts each need, the one that ends first before the others, into the first
// setting that it has something in common with.
func firstFit(kinds []kind) (groups []Group) {
	order := slices.Clone(kinds)
	slices.SortStableFunc(order, func(a, b kind) int { return cmp.Compare(a.need.Fence.Max, b.need.Fence.Max) })
	var sets [][]kind
	var common []Group
next:
	for _, k := range order {
		for i, g := range common {
			f, h := g.Fence.Intersect(k.need.Fence), g.Height.Intersect(k.need.Height)
			if !empty(f) && !empty(h) {
				sets[i], common[i].Fence, common[i].Height = append(sets[i], k), f, h
				continue next
			}
		}
		sets, common = append(sets, []kind{k}), append(common, Group{Fence: k.need.Fence, Height: k.need.Height})
	}
	for _, set := range sets {
		groups = append(groups, group(set))
	}
	return groups
}

// group is the setting for some kinds that have one in common.
func group(kinds []kind) Group {
	var list []Requirement
	var g Group
	for _, k := range kinds {
		list = append(list, k.need)
		g.Drawers = append(g.Drawers, k.drawers...)
	}
	slices.Sort(g.Drawers)
	g.choose(list)
	return g
}

// choose takes what suits the drawers best in what they have in common. Where that
// is nothing, what is wrong for the worst of them is the least in the middle.
func (g *Group) choose(list []Requirement) {
	g.Fence, g.Height = geom.Interval{Max: math.Inf(1)}, geom.Interval{Max: math.Inf(1)}
	for _, n := range list {
		g.Fence, g.Height = g.Fence.Intersect(n.Fence), g.Height.Intersect(n.Height)
	}
	pick := func(r geom.Interval, of func(Requirement) float64) float64 {
		if empty(r) {
			return r.Mid()
		}
		return clamp(middleOf(list, of), r)
	}
	g.AtFence, g.AtHeight = pick(g.Fence, atFence), pick(g.Height, atHeight)
}

func atFence(n Requirement) float64  { return n.AtFence }
func atHeight(n Requirement) float64 { return n.AtHeight }

// middleOf is the middle between the outermost of what the drawers would have best,
// from which the worst served of them is the least away.
func middleOf(list []Requirement, of func(Requirement) float64) float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for _, n := range list {
		least, most = min(least, of(n)), max(most, of(n))
	}
	return (least + most) / 2
}
