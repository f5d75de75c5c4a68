package files

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/export/step"
	"drawerwright/geom"
	"drawerwright/preview/scene"
)

// exact writes the parts of a drawer and its box as STEP where the job asks for that: as they
// go into the box, which is as milled where there are such panels.
func (w *writer) exact(d batch.Drawer, milled []geom.Panel) error {
	if d.Step == "" {
		return nil
	}
	var parts []step.Part
	var pieces []step.Piece
	for i, p := range d.Parts {
		part := step.Part{Name: p.Name, Panel: p.Panel}
		if len(milled) > 0 {
			part.Panel = milled[i]
		}
		parts = append(parts, part)
		for k, at := range p.Placements {
			pieces = append(pieces, step.Piece{Name: scene.PieceName(*p.Part, k), Part: i, Place: at})
		}
		w.out.Reset()
		if err := step.WritePart(&w.out, part); err != nil {
			return err
		}
		if err := w.to.WriteFile(p.Step, w.out.Bytes()); err != nil {
			return err
		}
	}
	w.out.Reset()
	if err := step.WriteBox(&w.out, d.Spec.Name, parts, pieces); err != nil {
		return err
	}
	return w.to.WriteFile(d.Step, w.out.Bytes())
}
