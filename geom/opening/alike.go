package opening

import "math"

// DefaultAlike is how far openings may differ, in mm, and still share a box by
// means of shims; common practice, no source.
const DefaultAlike = 2.0

// Shared is openings that one box size would serve.
type Shared struct {
	Openings []int // as they were given
	Width    float64
	Depth    float64
	Shims    []float64 // at each side, for each of them
}

// Alike gathers openings whose widths and depths differ by no more than within: the
// first of a group is the narrowest that no group
// before has. Groups of one, and of openings that are the same, are left out.
func Alike(list []Opening, within float64) []Shared {
	used := make([]bool, len(list))
	var groups []Shared
	for {
		first := -1
		for i, o := range list {
			if !used[i] && (first < 0 || o.Counted().Width < list[first].Counted().Width-settle) {
				first = i
			}
		}
		if first < 0 {
			return groups
		}
		base := list[first].Counted()
		shallow, deep := base.Depth, base.Depth // of the group
		g := Shared{Width: base.Width, Depth: base.Depth}
		differ := false
		for i, o := range list {
			c := o.Counted()
			if used[i] || c.Width > base.Width+within+settle || math.Max(deep, c.Depth)-math.Min(shallow, c.Depth) > within+settle {
				continue
			}
			shallow, deep = math.Min(shallow, c.Depth), math.Max(deep, c.Depth)
			used[i] = true
			g.Openings = append(g.Openings, i)
			g.Shims = append(g.Shims, (c.Width-base.Width)/2)
			differ = differ || c.Width > base.Width+settle || math.Abs(c.Depth-base.Depth) > settle
		}
		g.Depth = shallow
		if differ {
			groups = append(groups, g)
		}
	}
}
