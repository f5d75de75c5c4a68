package present

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/supplies"
)

// CutListCSV is what a shop cuts: a line for each group of equal parts, by stock
// and setting, with the part whose drawing serves for all of them first.
func CutListCSV(b batch.Batch) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"stock", "setting", "pieces", "spares", "length", "width", "thickness", "units", "size", "grain", "cuts", "banding", "parts"})
	for _, g := range batch.Merged(b) {
		p := g.Parts[0]
		length, width, thickness := geom.LengthOf(p.Panel.Length()), geom.LengthOf(p.Panel.Width()), geom.LengthOf(p.Panel.Thickness)
		names := make([]string, len(g.Parts))
		for i, q := range g.Parts {
			names[i] = q.Name
		}
		w.Write([]string{
			p.Stock.Name, setting(g, b.Units), strconv.Itoa(g.Quantity), strconv.Itoa(g.Spares),
			length.Decimal(b.Units), width.Decimal(b.Units), thickness.Decimal(b.Units), b.Units.String(),
			length.Number(b.Units) + " x " + width.Text(b.Units), grainOf(p), cutFaces(p.Panel), banded(p), strings.Join(names, " "),
		})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// setting is the fence distance and cutter height that serve a group; a dash for parts
// that are not cut.
func setting(g batch.Group, u geom.Unit) string {
	if cutFaces(g.Parts[0].Panel) == uncut {
		return "-"
	}
	return geom.LengthOf(g.Setup.FenceDistance).Fixed(u) + " / " + geom.LengthOf(g.Setup.CutterHeight).Fixed(u)
}

// PairHead is the head of the column of settings of some groups.
func PairHead(groups []batch.Group) string {
	if slices.ContainsFunc(groups, func(g batch.Group) bool { return g.Setup.Cutter.Kind != joinery.Router }) {
		return "fence / height"
	}
	return "slots from edge / deep"
}

// grainOf says along which side of a part the grain runs.
func grainOf(p batch.Part) string {
	if p.Stock.Grain == "none" {
		return "none"
	}
	return "along the length"
}

// cutFaces says which faces of a panel are cut.
func cutFaces(p geom.Panel) string {
	switch inside, outside := p.CutOn(geom.Inside), p.CutOn(geom.Outside); {
	case inside && outside:
		return "both faces"
	case outside:
		return "outside face"
	case inside:
		return "inside face"
	}
	if len(p.Outline) > 4 { // fingers, notches, slots
		return "outline"
	}
	return uncut
}

// uncut is a part that is sawn to its size and no more.
const uncut = "none"

// banded says which edges get edge banding, of stock that has one.
func banded(p batch.Part) string {
	switch {
	case p.Banding == 0:
		return "none"
	case supplies.AllRound(p.Role):
		return "all edges"
	}
	return "upper edge"
}

// partsOf lists the groups of one stock.
func partsOf(out *bytes.Buffer, groups []batch.Group, u geom.Unit) {
	text := func(mm float64) string { return geom.LengthOf(mm).Measured(u) }
	var rows [][]string
	spares, settings := false, make(map[string]bool)
	for _, g := range groups {
		spares = spares || g.Spares > 0
		if one := setting(g, u); one != "-" {
			settings[one] = true
		}
	}
	for _, g := range groups {
		p := g.Parts[0]
		name := p.Name
		if n := len(g.Parts) - 1; n > 0 {
			name += " = " + g.Parts[1].Name
			if n > 1 {
				name += fmt.Sprintf(" and %d more", n-1)
			}
		}
		row := []string{name, fmt.Sprint(g.Quantity), text(p.Panel.Length()), text(p.Panel.Width()), cutFaces(p.Panel)}
		if spares {
			row = append(row, fmt.Sprint(g.Spares))
		}
		if len(settings) > 1 {
			row = append(row, setting(g, u))
		}
		rows = append(rows, row)
	}
	p := groups[0].Parts[0]
	unit := u.String()
	grain := ""
	if p.Stock.Grain != "none" {
		grain = "; the grain runs along the length"
	}
	fmt.Fprintf(out, "%s, %s %s thick (mean of the readings)%s\n", p.Stock.Name, geom.LengthOf(p.Panel.Thickness).Number(u), unit, grain)
	head := []string{"part", ">pieces", ">length " + unit, ">width " + unit, "cuts"}
	if spares {
		head = append(head, ">of them spare")
	}
	if len(settings) > 1 {
		head = append(head, PairHead(groups)+" "+unit)
	}
	table(out, head, rows)
	for _, said := range BlankNotes(groups, u) {
		fmt.Fprintln(out, said)
	}
	fmt.Fprintln(out)
}

// byStock divides groups where the stock changes.
func byStock(groups []batch.Group) [][]batch.Group {
	var list [][]batch.Group
	for _, g := range groups {
		if n := len(list); n > 0 && list[n-1][0].Parts[0].Stock.Name == g.Parts[0].Stock.Name {
			list[n-1] = append(list[n-1], g)
			continue
		}
		list = append(list, []batch.Group{g})
	}
	return list
}
