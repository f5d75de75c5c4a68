package sheet

import (
	"cmp"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// KeptOut are areas to keep out of, as they lie with inside faces up, while a face is up.
// What is clamped stays where it is on the machine, so that on a sheet of a length that is
// turned over end for end the same areas are seen from the other end.
func KeptOut(areas []geom.Rect, up geom.Face, length float64) []geom.Rect {
	list := slices.Clone(areas)
	if up == geom.Outside {
		for i, k := range list {
			list[i] = k.TurnOver(length)
		}
	}
	return list
}

// ClearTrim takes as the trims of a sheet what leaves the largest rectangle of it in which
// no part's cuts, which reach so far past it in mm, meet one of some areas. Nothing is left
// where there is none.
func ClearTrim(z nest.Sheet, areas []geom.Rect, past float64) nest.Trim {
	t := z.Trim
	whole := area{t.Left, t.Bottom, z.Length - t.Right, z.Width - t.Top}
	reach := int64(geom.LengthOf(past))
	var taken []area
	for _, k := range areas {
		a := area{int64(geom.LengthOf(k.Min.X)) - reach, int64(geom.LengthOf(k.Min.Y)) - reach,
			int64(geom.LengthOf(k.Max.X)) + reach, int64(geom.LengthOf(k.Max.Y)) + reach}
		if a.x0 < whole.x1 && a.x1 > whole.x0 && a.y0 < whole.y1 && a.y1 > whole.y0 {
			taken = append(taken, a)
		}
	}
	best := largest(whole, taken)
	return nest.Trim{Left: best.x0, Right: z.Length - best.x1, Bottom: best.y0, Top: z.Width - best.y1}
}

// area is a rectangle of a sheet, in nanometers.
type area struct{ x0, y0, x1, y1 int64 }

// largest is the largest rectangle in another that meets none of some: it reaches from one
// edge of them, or of the whole, to another along x, and then from one to the next along y.
func largest(whole area, taken []area) (best area) {
	xs := []int64{whole.x0, whole.x1}
	for _, k := range taken {
		xs = append(xs, k.x0, k.x1)
	}
	slices.Sort(xs)
	xs = slices.DeleteFunc(slices.Compact(xs), func(x int64) bool { return x < whole.x0 || x > whole.x1 })
	byHeight := slices.Clone(taken)
	slices.SortFunc(byHeight, func(a, b area) int { return cmp.Compare(a.y0, b.y0) })
	size := 0.0
	for i, x0 := range xs {
		for _, x1 := range xs[i+1:] {
			y := whole.y0
			try := func(to int64) {
				if a := float64(x1-x0) * float64(to-y); to > y && a > size {
					size, best = a, area{x0, y, x1, to}
				}
			}
			for _, k := range byHeight {
				if k.x0 < x1 && k.x1 > x0 {
					try(min(k.y0, whole.y1))
					y = max(y, k.y1)
				}
			}
			try(whole.y1)
		}
	}
	return best
}
