package sheets

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// near is within how much, in mm, a cut may reach over a line: sizes that are worked out
// in two ways.
const near = 1e-6

// leaves finds a cut of a sheet that leaves the shortest sheet of its size, or is in an
// area to keep out of, as it is drawn. Layouts keep clear of both: this looks at what came
// of them, and knows nothing of trims.
func (s *Stock) leaves(one Sheet) error {
	if !s.Routed || len(one.Drawn) == 0 {
		return nil
	}
	z := s.Sheets[one.Sheet]
	length, width := geom.Length(z.Length).MM(), geom.Length(z.Width).MM()
	whole := one.Drawn[0].Part
	for _, c := range whole.Work.Cuts {
		b, r := c.Outline.Bounds(), 0.0
		if len(c.Path) > 0 {
			b, r = geom.Loop(c.Path).Bounds(), whole.Bits[c.Bit].Diameter/2
		} else if c.Operation == mill.Profile && c.Bit >= 0 {
			r = whole.Bits[c.Bit].Diameter
		}
		b = b.Grow(r)
		at := fmt.Sprintf("sheet %d: a %s from x %.2f, y %.2f to x %.2f, y %.2f mm", one.Number, c.Operation, b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
		if b.Min.X < -near || b.Min.Y < -near || b.Max.X > length-s.Short[0]+near || b.Max.Y > width-s.Short[1]+near {
			return fmt.Errorf("%s leaves the shortest sheet", at)
		}
		for _, k := range s.blocked(length) {
			if b.Overlaps(k.Grow(-near)) {
				return fmt.Errorf("%s is in an area to keep out of", at)
			}
		}
	}
	return nil
}
