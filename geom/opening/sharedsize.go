package opening

import "math"

// DefaultGroupOpenings is how far openings may differ, in mm, and still share a box by
// means of shims; common practice, no source.
const DefaultGroupOpenings = 2.0

// Common is what a bank gives up so that its boxes are those of others.
type Common struct {
	// Shim is the thickness of what is put between the slides and the cabinet, at each
	// side: the boxes are those of an opening that is twice as much narrower.
	Shim float64
	// Shallower is by how much that opening is less deep.
	Shallower float64
	// Heights are the most that the boxes of the rows may be high, from the top down; 0
	// for any. Without Heights any will do.
	Heights []float64
}

// Shared is near-equal openings whose boxes can be made in one size.
type Shared struct {
	Banks  []int // as they were given
	Width  float64
	Depth  float64  // of the narrowest and the shallowest opening, for which the boxes are made
	Common []Common // for each of them
	// Rows is how many of the rows have boxes of one height in all of them.
	Rows int
}

// Standardize gathers planned banks of one make whose openings differ in width and depth by no
// more than within: the first of a group is the narrowest that no group before has. Rows
// at one place whose boxes differ in height by no more than that get the lowest height.
// Groups of one, and of banks whose boxes are the same anyway, are left out.
func Standardize(banks []Bank, plans []Plan, within float64) []Shared {
	used := make([]bool, len(banks))
	var groups []Shared
	for {
		first := -1
		for i, p := range plans {
			if !used[i] && (first < 0 || p.Opening.Width < plans[first].Opening.Width) {
				first = i
			}
		}
		if first < 0 {
			return groups
		}
		base := plans[first].Opening
		shallow, deep := base.Depth, base.Depth // of the group
		g := Shared{Width: base.Width, Depth: base.Depth}
		for i, p := range plans {
			o := p.Opening
			if used[i] || banks[i].Make != banks[first].Make || o.Width > base.Width+within+settle || math.Max(deep, o.Depth)-math.Min(shallow, o.Depth) > within+settle {
				continue
			}
			shallow, deep = math.Min(shallow, o.Depth), math.Max(deep, o.Depth)
			used[i] = true
			g.Banks = append(g.Banks, i)
		}
		g.Depth = shallow
		if g.share(plans, within) {
			groups = append(groups, g)
		}
	}
}

// share finds what each bank of a group gives up, and reports whether one of them does.
func (g *Shared) share(plans []Plan, within float64) (differ bool) {
	heights, rows := g.heights(plans, within)
	g.Rows = rows
	for _, i := range g.Banks {
		p := plans[i]
		g.Common = append(g.Common, Common{Shim: math.Max(0, p.Opening.Width-g.Width) / 2, Shallower: p.Opening.Depth - g.Depth, Heights: heights})
		differ = differ || p.Opening.Width > g.Width+settle || p.Opening.Depth > g.Depth+settle
		for row, most := range heights {
			differ = differ || most > 0 && row < len(p.Rows) && p.Rows[row].Box.Height > most+settle
		}
	}
	return differ && len(g.Banks) > 1
}

// heights are the common heights of boxes, row by row, 0 where they differ too much, and
// how many rows have one.
func (g *Shared) heights(plans []Plan, within float64) (list []float64, common int) {
	count := len(plans[g.Banks[0]].Rows)
	for _, i := range g.Banks {
		count = min(count, len(plans[i].Rows))
	}
	for row := range count {
		low, high := math.Inf(1), 0.0
		for _, i := range g.Banks {
			h := plans[i].Rows[row].Box.Height
			low, high = math.Min(low, h), math.Max(high, h)
		}
		if high-low > within+settle {
			low = 0
		} else {
			common++
		}
		list = append(list, low)
	}
	return list, common
}
