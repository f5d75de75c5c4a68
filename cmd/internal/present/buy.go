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

// buying prints what to buy beside the board, and what it all costs.
func buying(out *bytes.Buffer, r record.Report) {
	var rows [][]string
	total, priced := 0.0, false
	for _, x := range r.Buy {
		total += x.Cost
		priced = priced || x.Cost > 0
		if x.Kind == "board" {
			continue
		}
		cost := "-"
		if x.Cost > 0 {
			cost = fmt.Sprintf("%.2f", x.Cost)
		}
		rows = append(rows, []string{x.Kind, x.Name, fmt.Sprint(x.Quantity), x.Unit, cost})
	}
	if len(rows) == 0 {
		return
	}
	fmt.Fprintln(out)
	table(out, []string{"to buy", "what", ">quantity", "unit", ">price"}, rows)
	for _, x := range r.Buy {
		if x.Kind == "banding" {
			fmt.Fprintln(out, "Sizes of parts are those of the wood: banding comes on top of them.")
			break
		}
	}
	if priced {
		fmt.Fprintf(out, "board and banding as priced: %.2f\n", record.Money(total))
	}
}

// weights prints what drawers weigh, and how their bottoms bear the load.
func weights(out *bytes.Buffer, r record.Report, u geom.Unit) {
	var rows [][]string
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
			row[3] = words.Weight(d.Rating, u)
		}
		if s := d.Sag; s != nil {
			row[4], row[5], row[6], row[7] = between(s.Clamped, s.Simple, u), caliper(s.Limit, u), caliper(s.Lasting, u), words.Stresses(s.StressClamped, s.StressSimple, u)
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return
	}
	fmt.Fprintln(out)
	table(out, []string{"drawer", ">empty", ">loaded", ">slides carry", ">bottom sags " + u.String(), ">1/200 of its span", ">in years", ">stress " + words.StressUnit(u)}, rows)
	fmt.Fprintln(out, "Sag and stress of a bottom as a thin plate: with clamped, and with simply supported edges; the truth is between. In")
	fmt.Fprintln(out, "years is the most that it sags by when the load stays.")
}

// bores lists the holes in the edges of parts.
func bores(out *bytes.Buffer, r record.Report, u geom.Unit) {
	var rows [][]string
	for _, d := range r.Drawers {
		for _, e := range d.Bores {
			heights := make([]string, len(e.Heights))
			for i, h := range e.Heights {
				heights[i] = words.Place(h*u.MM(), u)
			}
			bit, _ := words.Drill(e.Diameter*u.MM(), u)
			rows = append(rows, []string{d.Name, e.Part, bit, words.Number(e.Depth*u.MM(), u), words.Number(e.FromOutside*u.MM(), u), strings.Join(heights, ", ")})
		}
	}
	if len(rows) == 0 {
		return
	}
	fmt.Fprintln(out)
	unit := u.String()
	table(out, []string{"drawer", "bores in both ends of", ">diameter", ">depth " + unit, ">from the outside face", "over the lower edge"}, rows)
}
