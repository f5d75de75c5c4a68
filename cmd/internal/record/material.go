package record

import (
	"drawerwright/cmd/internal/batch"
)

// material adds up the board of each stock, in order of first use, with the sheets of its
// layout.
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
			length, width, _ := p.Blank()
			list[i].Area += Area(float64(p.Quantity) * length * width)
		}
	}
	for i := range list {
		s := &list[i]
		for _, k := range laid {
			if k.Stock == s.Stock {
				s.Sheets, s.Cost = k.Count, k.Cost
			}
		}
	}
	return list
}
