// Package merge finds parts that a shop cuts as one: those that are equal, and those that
// are made of one blank in one setting before they get holes and notches of their own.
package merge

import (
	"fmt"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// Part is one part of one drawer.
type Part struct {
	Stock   string
	Setting joinery.Setup // equal where one setting serves
	Bits    []mill.Bit    // of a router, none of others
	Panel   geom.Panel
}

// EqualParts gathers parts by their places in a list: those of equal panels, to the
// nanometer, of one stock, setting and set of bits. Groups come by stock, in order of first
// use, and within a stock by setting, in order of first use too.
func EqualParts(parts []Part) (groups [][]int) {
	type place struct {
		stock   string
		setting joinery.Setup
	}
	var order []place
	var stocks []string
	in := make(map[place][][]int)
	at := make(map[string]int)
	seen := make(map[string]bool)
	for i, p := range parts {
		if !seen[p.Stock] {
			seen[p.Stock] = true
			stocks = append(stocks, p.Stock)
		}
		where := place{p.Stock, p.Setting}
		if _, known := in[where]; !known {
			order = append(order, where)
		}
		key := fmt.Sprintf("%v\x00%v\x00%s", where, p.Bits, shape(p.Panel))
		n, known := at[key]
		if !known {
			n = len(in[where])
			at[key] = n
			in[where] = append(in[where], nil)
		}
		in[where][n] = append(in[where][n], i)
	}
	for _, s := range stocks {
		for _, where := range order {
			if where.stock == s {
				groups = append(groups, in[where]...)
			}
		}
	}
	return groups
}

// shape tells panels apart to the nanometer.
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
