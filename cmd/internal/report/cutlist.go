package report

import (
	"bytes"
	"encoding/csv"
	"math"
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
				length.Number(b.Units) + " x " + width.Text(b.Units), p.Stock.Name, string(p.Stock.Grain), p.Inside, p.Outside,
			})
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// Material adds up the board of each stock, in order of first use. Areas are in
// square metres or square feet.
func Material(b batch.Batch) []Stock {
	list := []Stock{}
	at := make(map[string]int)
	unit := 1e6
	if b.Units == geom.Inch {
		unit = 12 * 12 * geom.InchMM * geom.InchMM
	}
	whole := make(map[string]float64) // area of a sheet in mm2
	price := make(map[string]float64)
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			name := p.Stock.Name
			i, known := at[name]
			if !known {
				i = len(list)
				at[name] = i
				list = append(list, Stock{Stock: name})
				whole[name], price[name] = p.Stock.Length*p.Stock.Width, p.Stock.Price
			}
			list[i].Pieces += p.Quantity
			list[i].Area += float64(float64(p.Quantity) * p.Panel.Length() * p.Panel.Width())
		}
	}
	for i := range list {
		s := &list[i]
		if whole[s.Stock] > 0 {
			// A millionth of a sheet is rounding, not another sheet.
			s.AtLeast = int(math.Ceil(s.Area/whole[s.Stock] - 1e-6))
			s.Cost = math.Round(float64(s.AtLeast)*price[s.Stock]*100) / 100
		}
		s.Area = math.Round(s.Area/unit*1e4) / 1e4
	}
	return list
}
