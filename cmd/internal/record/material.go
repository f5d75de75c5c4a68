package record

import (
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
)

// material adds up the board of each stock, in order of first use, with the sheets of its
// layout. Areas are in square metres or square feet.
func material(b batch.Batch, laid []SheetStock) []Stock {
	list := []Stock{}
	at := make(map[string]int)
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			name := p.Stock.Name
			i, known := at[name]
			if !known {
				i = len(list)
				at[name] = i
				list = append(list, Stock{Stock: name})
			}
			list[i].Pieces += p.Quantity
			list[i].Area += float64(float64(p.Quantity) * p.Panel.Length() * p.Panel.Width())
		}
	}
	for i := range list {
		s := &list[i]
		for _, k := range laid {
			if k.Stock == s.Stock {
				s.Sheets, s.Cost = k.Count, k.Cost
			}
		}
		area, _ := words.Area(s.Area, b.Units)
		s.Area = math.Round(area*1e4) / 1e4
	}
	return list
}
