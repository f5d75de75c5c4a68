package present

import (
	"bytes"
	"encoding/csv"
	"strconv"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
)

// CSV is the cut list: a line for each part, lengths as decimal numbers in the
// job's unit, and the size once more as a person writes it.
func CSV(b batch.Batch) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"part", "drawer", "role", "quantity", "length", "width", "thickness", "units", "size", "stock", "grain", "inside_file", "outside_file"})
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			length, width, thickness := geom.LengthOf(p.Panel.Length()), geom.LengthOf(p.Panel.Width()), geom.LengthOf(p.Panel.Thickness)
			w.Write([]string{
				p.Name, p.Drawer, string(p.Role), strconv.Itoa(p.Quantity),
				length.Decimal(b.Units), width.Decimal(b.Units), thickness.Decimal(b.Units), b.Units.String(),
				length.Number(b.Units) + " x " + width.Text(b.Units), p.Stock.Name, string(p.Stock.Grain), p.File(geom.Inside), p.File(geom.Outside),
			})
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
