package present

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// BuyCSV is the list of what to buy.
func BuyCSV(list []record.Buy) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"kind", "name", "quantity", "unit", "cost"})
	for _, x := range list {
		cost := ""
		if x.Cost > 0 {
			cost = fmt.Sprintf("%.2f", x.Cost)
		}
		w.Write([]string{x.Kind, x.Name, fmt.Sprint(x.Quantity), x.Unit, cost})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// BuyTable is what to buy; what has no price has a dash.
func BuyTable(list []record.Buy) Table {
	t := NewTable(Words("kind"), Words("what"), Numbers("quantity"), Words("unit"), Numbers("price"))
	for _, x := range list {
		cost := "-"
		if x.Cost > 0 {
			cost = fmt.Sprintf("%.2f", x.Cost)
		}
		t.Add(x.Kind, x.Name, fmt.Sprint(x.Quantity), x.Unit, cost)
	}
	return t
}

// buying prints what to buy beside the board, and what it all costs.
func buying(out *Printed, r record.Kept) {
	var others []record.Buy
	total, priced, banded := 0.0, false, false
	for _, x := range r.Buy {
		total += x.Cost
		priced, banded = priced || x.Cost > 0, banded || x.Kind == "banding"
		if x.Kind != "board" {
			others = append(others, x)
		}
	}
	if len(others) == 0 {
		return
	}
	fmt.Fprintln(out)
	BuyTable(others).Renamed("kind", "to buy").Print(out, "")
	if banded {
		fmt.Fprintln(out, "Sizes of parts are those of the wood: banding comes on top of them.")
	}
	if priced {
		fmt.Fprintf(out, "board and banding as priced: %.2f\n", record.Money(total))
	}
}

// weights prints what drawers weigh, and how their bottoms bear the load.
func weights(out *Printed, r record.Kept, u geom.Unit) {
	t := NewTable(Words("drawer"), Numbers("empty"), Numbers("loaded"), Numbers("slides carry"),
		In("bottom sags", u.String()), Numbers("1/200 of its span"), Numbers("in years"), In("stress",
			words.StressUnit(u)))
	for _, d := range r.Drawers {
		if d.Weight == 0 && d.Sag == nil {
			continue
		}
		row := []string{d.Name, "-", "-", "-", "-", "-", "-", "-"}
		if d.Weight > 0 { // else a stock's density is not known
			row[1] = words.Weight(d.Weight, u)
		}
		if d.Weight > 0 && d.Load > 0 {
			row[2] = words.Weight(d.Weight+d.Load, u)
		}
		if d.Rating > 0 {
			row[3] = words.Rating(d.Rating, u)
		}
		if s := d.Sag; s != nil {
			row[4], row[5], row[6], row[7] = between(s.Clamped, s.Simple, u), caliper(s.Limit,
				u), caliper(s.LongTerm, u), words.Stresses(s.StressClamped, s.StressSimple, u)
		}
		t.Add(row...)
	}
	if len(t.Rows) == 0 {
		return
	}
	fmt.Fprintln(out)
	t.Print(out, "")
	fmt.Fprintln(out, "Sag and stress of a bottom as a thin plate: with clamped, and with simply supported edges; the truth is between. In")
	fmt.Fprintln(out, "years is the most that it sags by when the load stays.")
}

// bores lists the holes in the edges of parts.
func bores(out *Printed, r record.Kept, u geom.Unit) {
	unit := u.String()
	t := NewTable(Words("drawer"), Words("bores in both ends of"), Numbers("diameter"), In("depth", unit),
		In("from the outside face", unit), Words("over the lower edge"))
	t.UnitOnce = true
	for _, d := range r.Drawers {
		for _, e := range d.Bores {
			heights := make([]string, len(e.Heights))
			for i, h := range e.Heights {
				heights[i] = words.Place(h.MM(), u)
			}
			bit, _ := words.Drill(e.Diameter.MM(), u)
			t.Add(d.Name, e.Part, bit, caliper(e.Depth, u), caliper(e.FromOutside, u),
				strings.Join(heights, ", "))
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	fmt.Fprintln(out)
	t.Print(out, "")
}
