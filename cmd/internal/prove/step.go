package prove

import (
	"math"

	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/milled"
	"drawerwright/geom/proof"
)

// step reads a STEP file.
func (c *checking) step(name string, read Read) (out readback.Step, ok bool) {
	data, ok := c.file(name, read)
	if !ok {
		return out, false
	}
	out, err := readback.StepOf(data)
	if err != nil {
		c.fault("unreadable", place{c.out.Name, name, 0}, rebuild, "no STEP that can be read: %v", err)
	}
	return out, err == nil
}

// exactPart holds the exact solid of a part, alone or in the file of its box, against what the
// job asks for of it.
func (w *Worker) exactPart(c *checking, part record.Part, file string, is readback.Step, read Read) {
	want, known := w.shown(c, part, read, milled.Board.Trimmed)
	if !known {
		return
	}
	flat := float64(want.box.Width() * want.box.Height() * solidGrid / 4)
	allowed := float64((want.allowed+proof.MinCut)*want.thickness) + flat
	if got, asked := is.Volumes[part.Name], want.volume(); !(math.Abs(got-asked) <= allowed) {
		c.fault("solid-volume", place{part.Name, file, 0}, rebuild, "the exact solid holds %.2f cm3; the job asks for %.2f cm3",
			got/1e3, asked/1e3)
	}
}

// exactBox holds the exact solids of a box against its parts and their places.
func (w *Worker) exactBox(c *checking, d record.Drawer, read Read) {
	is, ok := c.step(d.Step, read)
	if !ok {
		return
	}
	at := place{d.Name, d.Step, 0}
	pieces := 0
	for _, name := range d.Parts {
		part := w.report.Parts.At(w.parts[name])
		w.exactPart(c, part, d.Step, is, read)
		for _, s := range part.Placements {
			pieces++
			if !stands(is, name, placement(s)) {
				c.fault("box-parts", at, rebuild,
					"no exact solid of %s begins at %s, %s, %s, turned as the report has it there", name,
					c.text(s.Origin[0].MM()), c.text(s.Origin[1].MM()), c.text(s.Origin[2].MM()))
			}
		}
	}
	if len(is.Pieces) != pieces {
		c.fault("box-count", at, rebuild, "the box has %d exact solids; it has %d parts", len(is.Pieces), pieces)
	}
}

// stands reports whether a piece of a part is in a place.
func stands(is readback.Step, part string, s geom.Placement) bool {
	for _, p := range is.Pieces {
		turned := max(length(p.Place.X.Sub(s.X)), length(p.Place.Y.Sub(s.Y)))
		if p.Product == part && length(p.Place.Origin.Sub(s.Origin)) <= sameSize && turned < proof.MinCut {
			return true
		}
	}
	return false
}
