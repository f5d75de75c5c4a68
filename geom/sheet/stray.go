package sheet

import (
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// near is within how much, in mm, a cut may reach over a line: sizes that are worked out
// in two ways.
const near = 1e-6

// Stray is a cut where none may be.
type Stray struct {
	Cut     mill.Cut
	Bounds  geom.Rect // of what it takes away
	KeptOut bool      // it is in an area to keep out of; else it leaves the shortest sheet
}

// StrayOf finds a cut that leaves the shortest of sheets of a size, or is in an area to keep
// out of, as it is drawn. Layouts keep clear of both: this looks at what came of them, and
// knows nothing of trims.
func StrayOf(cuts CutPart, shortest geom.Rect, keptOut []geom.Rect) (s Stray, found bool) {
	for _, c := range cuts.Work.Cuts {
		b, r := c.Outline.Bounds(), 0.0
		if len(c.Path) > 0 {
			b, r = geom.Loop(c.Path).Bounds(), cuts.Bits[c.Bit].Diameter/2
		} else if c.Operation == mill.Profile && c.Bit >= 0 {
			r = cuts.Bits[c.Bit].Diameter
		}
		b = b.Grow(r)
		if in := shortest.Grow(near); b.Min.X < in.Min.X || b.Min.Y < in.Min.Y || b.Max.X > in.Max.X || b.Max.Y > in.Max.Y {
			return Stray{Cut: c, Bounds: b}, true
		}
		for _, k := range keptOut {
			if b.Overlaps(k.Grow(-near)) {
				return Stray{Cut: c, Bounds: b, KeptOut: true}, true
			}
		}
	}
	return Stray{}, false
}
