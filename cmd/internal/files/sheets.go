package files

import (
	"bytes"
	"context"
	"fmt"

	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/dxf"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

// sheetRoom and offcutRoom are the rooms for pictures of a sheet and of an offcut, in mm.
var sheetRoom, offcutRoom = geom.Point{X: 240, Y: 160}, geom.Point{X: 120, Y: 80}

// WriteSheets writes the drawings and pictures of every sheet that is cut in another way,
// and the tables of places and cuts. A plan without stocks has no files.
func WriteSheets(ctx context.Context, p sheets.Plan, to Folder) error {
	if len(p.Stocks) == 0 {
		return nil
	}
	type task struct {
		stock *sheets.Stock
		one   sheets.Sheet
	}
	var tasks []task
	for i := range p.Stocks {
		for _, one := range p.Stocks[i].Laid {
			tasks = append(tasks, task{&p.Stocks[i], one})
		}
	}
	err := Each(ctx, len(tasks), func() func(int) error {
		return func(i int) error { return writeSheet(p, tasks[i].stock, tasks[i].one, to) }
	})
	if err != nil {
		return err
	}
	r := record.SheetsOf(p)
	if err := to.WriteFile("sheets/layout.csv", present.SheetsCSV(r)); err != nil {
		return err
	}
	return to.WriteFile("sheets/cuts.csv", present.CutsCSV(r))
}

func writeSheet(p sheets.Plan, s *sheets.Stock, one sheets.Sheet, to Folder) error {
	drawn := one.Drawn
	if drawn == nil {
		var err error
		if drawn, err = s.Drawings(p.DXF, one); err != nil {
			return err
		}
	}
	write := func(name string, d *dxf.Drawing) error {
		var out bytes.Buffer
		if _, err := d.WriteTo(&out); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		return to.WriteFile(name, out.Bytes())
	}
	for _, d := range drawn {
		if err := writeDrawing(d, write); err != nil {
			return err
		}
	}
	picture, _ := packet.SheetPicture(p, s, one, sheetRoom)
	title := fmt.Sprintf("%s, sheet %d", s.Name, one.Number)
	if _, err := writePicture(to, s.Picture(one), title, picture); err != nil {
		return err
	}
	for i, o := range one.Offcuts {
		title := fmt.Sprintf("%s, offcut of sheet %d", s.Name, one.Number)
		offcut := packet.OffcutPicture(p, s, o, offcutRoom)
		if _, err := writePicture(to, s.OffcutPicture(one, i), title, offcut); err != nil {
			return err
		}
	}
	return nil
}

// writePicture writes a drawing once for any size, which it gives, and once for everywhere.
func writePicture(to Folder, name, title string, d drawing.Drawing) ([]byte, error) {
	d = paper.Framed(d)
	var svg, png bytes.Buffer
	if err := d.WriteSVG(&svg, title); err != nil {
		return nil, fmt.Errorf("%s.svg: %w", name, err)
	}
	if err := to.WriteFile(name+".svg", svg.Bytes()); err != nil {
		return nil, err
	}
	if err := d.WritePNG(&png, dots); err != nil {
		return nil, fmt.Errorf("%s.png: %w", name, err)
	}
	return svg.Bytes(), to.WriteFile(name+".png", png.Bytes())
}
