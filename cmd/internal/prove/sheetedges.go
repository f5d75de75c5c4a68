package prove

import (
	"math"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

func (r *sheetReader) area(mm2 float64) string { return words.SmallArea(mm2, r.unit) }

// inBounds looks whether a cut leaves the sheet.
func (r *sheetReader) inBounds() {
	for _, c := range r.cuts {
		b := c.region.box
		if c.operation == "profile" && r.saw {
			continue
		}
		beyond := [4]float64{-b.Min.X, -b.Min.Y, b.Max.X - r.length, b.Max.Y - r.width}
		worst := 0
		for i, v := range beyond {
			if v > beyond[worst] {
				worst = i
			}
		}
		if beyond[worst] > sameEdge {
			r.fault("off-sheet", c.file, c.at, "write a larger trim in the section sheets, or less over-run", "the %s on %s reaches %s past the sheet's %s edge",
				c.operation, c.layer, r.text(beyond[worst]), [4]string{"left", "lower", "right", "upper"}[worst])
		}
	}
}

// pinned compares the holes that a sheet is put down on before and after it is turned over.
func (r *sheetReader) pinned() {
	if len(r.faces) < 2 || r.saw {
		return
	}
	in, out := r.register[geom.Inside], r.register[geom.Outside]
	if len(in) != len(out) {
		r.fault("register", r.files[geom.Inside], 0, "build the folder again", "%d registration holes are drilled, and %d pins are drawn on the other face", len(out), len(in))
		return
	}
	for _, a := range out {
		near, turned := math.Inf(1), math.Inf(1)
		for _, b := range in {
			near = math.Min(near, math.Max(a.at.To(b.at), math.Abs(a.radius-b.radius)))
		}
		for _, b := range out {
			turned = math.Min(turned, math.Hypot(r.length-a.at.X-b.at.X, a.at.Y-b.at.Y))
		}
		if near > tick {
			r.fault("register", r.files[geom.Inside], 0, "build the folder again", "a registration hole of the outside faces is %s off any pin of the inside, in place or radius: the turned sheet would be off", r.text(near))
		}
		if turned > tick {
			r.fault("register", r.files[geom.Outside], 0, "build the folder again", "a registration hole falls %s off any pin when the sheet is turned over", r.text(turned))
		}
	}
}
