package prove

import (
	"math"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/proof"
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
			r.fault("off-sheet", r.place(c.file, c.at), "write a larger trim in the section sheets, or less overcut",
				"the %s on %s reaches %s past the sheet's %s edge",
				c.operation, c.layer, r.text(beyond[worst]), [4]string{"left", "lower", "right", "upper"}[worst])
		}
	}
}

// keptOut looks whether a cut enters an area that is kept free for clamps and stops. These
// stay on the machine: where a drawing shows the sheet they are the same before and after
// it is turned over.
func (r *sheetReader) keptOut() {
	const step = 0.25 // mm between the lines on which it is looked
	for _, k := range r.stock.KeepOut {
		at := geom.Point{X: k.X.MM(), Y: k.Y.MM()}
		area := geom.Rect{Min: at, Max: geom.Point{X: at.X + k.Length.MM(), Y: at.Y + k.Width.MM()}}
		for _, c := range r.cuts {
			seen := area
			if c.face == geom.Outside {
				seen.Min.X, seen.Max.X = r.length-area.Max.X, r.length-area.Min.X
			}
			if c.region.box.Apart(seen) {
				continue
			}
			cut := 0.0
			for y := math.Max(seen.Min.Y, c.region.box.Min.Y) + step/2; y < math.Min(seen.Max.Y,
				c.region.box.Max.Y); y += step {
				list := c.region.spans(nil, y)
				for i := 0; i+1 < len(list); i += 2 {
					cut += float64(math.Max(0, math.Min(list[i+1], seen.Max.X)-math.Max(list[i], seen.Min.X)) * step)
				}
			}
			if cut > proof.MinCut {
				r.fault("keep-out", r.place(c.file, c.at), "move the clamp, or lay the parts out again",
					"the %s on %s cuts %s of the area to keep out of that begins at %s, %s", c.operation, c.layer,
					r.area(cut), r.text(at.X), r.text(at.Y))
			}
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
		r.fault("register", r.place(r.files[geom.Inside], 0), rebuild,
			"%d registration holes are drilled, and %d pins are drawn on the other face", len(out), len(in))
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
			r.fault("register", r.place(r.files[geom.Inside], 0), rebuild,
				"a registration hole of the outside faces is %s off any pin of the inside, in place or radius: the "+
					"turned sheet would be off", r.text(near))
		}
		if turned > tick {
			r.fault("register", r.place(r.files[geom.Outside], 0), rebuild,
				"a registration hole falls %s off any pin when the sheet is turned over", r.text(turned))
		}
	}
}
