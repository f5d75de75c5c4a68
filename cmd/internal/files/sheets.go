package files

import (
	"bytes"
	"context"
	"fmt"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/dxf"
	"drawerwright/geom"
)

// sheetRoom is the room for the picture of a sheet, in mm.
var sheetRoom = geom.Point{X: 240, Y: 160}

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
	if err := to.WriteFile(filing.Layout, present.SheetsCSV(r)); err != nil {
		return err
	}
	return to.WriteFile(filing.Cuts, present.CutsCSV(r))
}

func writeSheet(p sheets.Plan, s *sheets.Stock, one sheets.Sheet, to Folder) error {
	drawn := s.Drawn(one)
	if drawn == nil && !s.Sawn {
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
	picture, _, _ := packet.SheetPicture(p, s, one, sheetRoom)
	title := fmt.Sprintf("%s, sheet %d", s.Name, one.Number)
	return pictureOf{s.Picture(one), title, picture}.write(to, p.Looks)
}
