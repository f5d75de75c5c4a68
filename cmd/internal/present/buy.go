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
	fmt.Fprintln(out, "Sag and stress of a bottom as a plate: with clamped, and with simply supported edges; the truth is between. In")
	fmt.Fprintln(out, "years is the most that it sags by when the load stays.")
}

// bores lists the holes in the ends of parts, and the mortises there.
func bores(out *Printed, r record.Kept, u geom.Unit) {
	unit := u.String()
	holes := NewTable(Words("drawer"), Words("bores in both ends of"), Numbers("diameter"), In("depth", unit),
		In("from the outside face", unit), Words("over the lower edge"))
	mortises := NewTable(Words("drawer"), Words("mortises in both ends of"), Numbers("width"), Words("length"),
		In("depth", unit), In("from the outside face", unit), Words("over the lower edge"))
	holes.UnitOnce, mortises.UnitOnce = true, true
	places := func(list []record.Length) string {
		said := make([]string, len(list))
		for i, v := range list {
			said[i] = words.Place(v.MM(), u)
		}
		return strings.Join(said, ", ")
	}
	for _, d := range r.Drawers {
		for _, e := range d.Bores {
			bit, _ := words.Drill(e.Diameter.MM(), u)
			if len(e.Lengths) > 0 {
				mortises.Add(d.Name, e.Part, bit, places(e.Lengths), caliper(e.Depth, u), caliper(e.FromOutside, u),
					places(e.Heights))
				continue
			}
			holes.Add(d.Name, e.Part, bit, caliper(e.Depth, u), caliper(e.FromOutside, u), places(e.Heights))
		}
	}
	for _, t := range []Table{holes, mortises} {
		if len(t.Rows) > 0 {
			fmt.Fprintln(out)
			t.Print(out, "")
		}
	}
}
