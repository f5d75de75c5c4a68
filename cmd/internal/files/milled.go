package files

import (
	"bytes"
	"fmt"
	"io/fs"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/milled"
)

// MilledOf are the parts of a drawer as bits leave them, where its previews show that: by its
// drawings, which are made and read back without a folder. There are none where one of them
// cannot be cut.
func MilledOf(b batch.Batch, drawer int) []geom.Panel {
	d := b.Drawers[drawer]
	if !b.Milled(d) {
		return nil
	}
	alone := b
	alone.Drawers, alone.Banks, alone.SharedSizes, alone.Templates = []batch.Drawer{d}, nil, nil, nil
	p, err := prove.New(record.MakeKept(alone, sheets.Plan{}, nil))
	if err != nil {
		return nil
	}
	return trimmed(boards(p.Worker(), d, func(name string) ([]byte, error) { return drawn(b, d, name) }))
}

// drawn is the drawing of one face of a drawer's parts, by the name of its file.
func drawn(b batch.Batch, d batch.Drawer, name string) ([]byte, error) {
	for _, p := range d.Parts {
		for _, k := range p.Drawings {
			if k.File != name {
				continue
			}
			var out bytes.Buffer
			_, err := router.Draw(p.Drawn(b.Router), k.Face, b.Layers(p, k), b.DXF).WriteTo(&out)
			return out.Bytes(), err
		}
	}
	return nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
}

// boards are the parts of a drawer as the drawings that are read have them cut. Where one has no
// board there are none: the proof says why, and without one the design is shown.
func boards(w *prove.Worker, d batch.Drawer, read prove.Read) (list []milled.Board) {
	for _, p := range d.Parts {
		b, err := w.Board(p.Name, read)
		if err != nil {
			return nil
		}
		list = append(list, b)
	}
	return list
}

// trimmed are boards as they go into a box.
func trimmed(list []milled.Board) (panels []geom.Panel) {
	for _, b := range list {
		panels = append(panels, b.Trimmed())
	}
	return panels
}
