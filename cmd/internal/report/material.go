package report

import (
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
)

// sameSheet is the part of a sheet that is rounding, not another sheet.
const sameSheet = 1e-6

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
			s.AtLeast = int(math.Ceil(s.Area/whole[s.Stock] - sameSheet))
			s.Cost = math.Round(float64(s.AtLeast)*price[s.Stock]*100) / 100
		}
		s.Area = math.Round(s.Area/unit*1e4) / 1e4
	}
	return list
}
