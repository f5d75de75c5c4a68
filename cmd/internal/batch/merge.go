package batch

import (
	"fmt"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Group is what a shop cuts as one: parts of equal panels, stock and setting,
// whichever drawers they are for.
type Group struct {
	Parts    []Part // at least one; drawn alike
	Setup    joinery.Setup
	Quantity int // of all, spares among them
	Spares   int
}

// Merged gathers equal parts by stock, in order of first use, and within a stock by
// setting.
func Merged(b Batch) []Group {
	type place struct {
		stock string
		setup joinery.Setup
	}
	var order []place
	groups := make(map[place][]Group)
	at := make(map[string]int)
	var stocks []string
	seen := make(map[string]bool)
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			if !seen[p.Stock.Name] {
				seen[p.Stock.Name] = true
				stocks = append(stocks, p.Stock.Name)
			}
			in := place{p.Stock.Name, SettingKey(d)}
			if _, known := groups[in]; !known {
				order = append(order, in)
			}
			key := fmt.Sprintf("%v\x00%v\x00%s", in, p.Bits, shape(p.Panel))
			i, known := at[key]
			if !known {
				i = len(groups[in])
				at[key] = i
				groups[in] = append(groups[in], Group{Setup: d.Setup})
			}
			g := &groups[in][i]
			g.Parts = append(g.Parts, p)
			g.Quantity += p.Quantity
			g.Spares += p.Spares
		}
	}
	var list []Group
	for _, s := range stocks {
		for _, in := range order {
			if in.stock == s {
				list = append(list, groups[in]...)
			}
		}
	}
	return list
}

// shape tells panels apart to the nanometre.
func shape(p geom.Panel) string {
	var out strings.Builder
	loop := func(l geom.Loop) {
		for _, v := range l {
			fmt.Fprintf(&out, " %d,%d,%.9f", geom.LengthOf(v.X), geom.LengthOf(v.Y), v.Bulge)
		}
		out.WriteByte(';')
	}
	loop(p.Outline)
	fmt.Fprint(&out, p.Outline.Marked(geom.Relief), p.Bit, ";")
	for _, h := range p.Holes {
		loop(h)
	}
	for _, k := range p.Pockets {
		fmt.Fprintf(&out, "%s %s %d %v", k.Kind, k.Face, geom.LengthOf(k.Depth), k.Bit)
		loop(k.Outline)
		loop(k.Takes)
	}
	return out.String()
}
