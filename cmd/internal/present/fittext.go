package present

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// ForecastText prints a forecast. Drawers of which everything is the same stand
// together.
func ForecastText(f Forecast, u geom.Unit) []byte {
	var out bytes.Buffer
	if f.Job != "" {
		fmt.Fprintf(&out, "%s: what the boxes will do\n\n", f.Job)
	}
	var rows [][]string
	for _, b := range f.Boards {
		rows = append(rows, []string{b.Stock, caliper(b.Mean, u), caliper(b.Least, u), caliper(b.Most, u), b.Source()})
	}
	table(&out, []string{"stock", ">thickness " + u.String(), ">least", ">most", "by"}, rows)
	together(&out, f.Drawers, func(d Foreseen) string { return foreseenText(d, u) })
	fmt.Fprintf(&out, "\n%s\nworst: everything off by its most at once. all together: the root of the sum of squares.\n", Basis)
	return out.Bytes()
}

// together prints what is said of drawers under their names, those of which the same is
// said under one head.
func together(out *bytes.Buffer, list []Foreseen, say func(Foreseen) string) {
	var bodies []string
	names := make(map[string][]string)
	for _, d := range list {
		body := ": " + d.Said + "\n" + say(d)
		if names[body] == nil {
			bodies = append(bodies, body)
		}
		names[body] = append(names[body], d.Drawer)
	}
	for _, body := range bodies {
		fmt.Fprintf(out, "\n%s%s", words.Some(names[body]), body)
	}
}

// fits are the measures of the drawers with their verdicts.
func fits(out *bytes.Buffer, r record.Report, u geom.Unit) {
	fmt.Fprintln(out, "fit")
	var list []Foreseen
	for _, d := range r.Drawers {
		one := Foreseen{Drawer: d.Name, Said: d.Said}
		for _, f := range r.Fit {
			if f.Drawer == d.Name {
				one.Fit = append(one.Fit, f)
			}
		}
		list = append(list, one)
	}
	together(out, list, func(d Foreseen) string {
		var text bytes.Buffer
		head, rows := fitRows(d.Fit, u)
		table(&text, head, rows)
		return text.String()
	})
	fmt.Fprintf(out, "\n%s\n\n", Basis)
}

// fitRows is the table of measures that every text has.
func fitRows(list []record.Fit, u geom.Unit) (head []string, rows [][]string) {
	for _, f := range list {
		rows = append(rows, []string{f.Words, caliper(f.Nominal, u), Span(f.Limit, u), Span(f.Likely, u), f.Verdict, f.Of1000})
	}
	return []string{"measure", ">as set " + u.String(), ">limits", ">likely", "verdict", ">right of 1,000"}, rows
}

// Span prints a range of the report.
func Span(r [2]float64, u geom.Unit) string { return caliper(r[0], u) + " to " + caliper(r[1], u) }

func foreseenText(d Foreseen, u geom.Unit) string {
	var out bytes.Buffer
	head, rows := fitRows(d.Fit, u)
	head = append(head, ">worst")
	for i, f := range d.Fit {
		rows[i] = append(rows[i], Span(f.Worst, u))
	}
	table(&out, head, rows)
	fmt.Fprintln(&out)
	rows = nil
	for _, f := range d.Fit {
		if c := f.Largest; c != nil && c.Root > 0 {
			rows = append(rows, []string{f.Words, c.Source, "+-" + caliper(c.Half, u), fmt.Sprintf("%.0f %%", 100*c.Part), "+-" + caliper(c.Root, u), "+-" + caliper(c.Halved, u)})
		}
	}
	table(&out, []string{"measure", "moved most by", ">by itself " + u.String(), ">of the squares", ">all together", ">with it halved"}, rows)
	fmt.Fprintln(&out)
	stackText(&out, d.Stack, u)
	return out.String()
}
