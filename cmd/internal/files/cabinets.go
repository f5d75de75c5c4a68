package files

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/cabinet"
)

// writeCabinets writes the sides of the cabinets with their slide lines, and the
// table of these.
func writeCabinets(b batch.Batch, r record.Kept, to Folder) error {
	if len(b.Banks) == 0 {
		return nil
	}
	if err := to.WriteFile(filing.SlideLines, present.LinesCSV(r)); err != nil {
		return err
	}
	for _, bank := range b.Banks {
		if bank.Files.Left == "" {
			continue
		}
		for _, f := range []struct {
			name string
			hand cabinet.Hand
		}{{bank.Files.Left, cabinet.Left}, {bank.Files.Right, cabinet.Right}} {
			var out bytes.Buffer
			if _, err := cabinet.Draw(bank.Side, f.hand, b.DXF.Version, b.DXF.Unit).WriteTo(&out); err != nil {
				return fmt.Errorf("%s: %w", f.name, err)
			}
			if err := to.WriteFile(f.name, out.Bytes()); err != nil {
				return err
			}
		}
		var out bytes.Buffer
		if err := cabinet.SVG(&out, bank.Side, b.Units); err != nil {
			return fmt.Errorf("%s: %w", bank.Files.SVG, err)
		}
		if err := to.WriteFile(bank.Files.SVG, out.Bytes()); err != nil {
			return err
		}
	}
	return nil
}
