package report

import (
	"bytes"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Text is the job for a person: the parts by stock, the settings, what the
// joints will do, the board that it takes, and the warnings.
func Text(b batch.Batch, r Report) []byte {
	var out bytes.Buffer
	if b.Title != "" {
		fmt.Fprintf(&out, "%s\n\n", b.Title)
	}
	for _, m := range Material(b) {
		partsOf(&out, b, m.Stock)
	}
	settings(&out, r, b.Units)
	fits(&out, r, b.Units)
	proofs(&out, r, b.Units)
	drawings(&out, r, b.Units)
	board(&out, r, b.Units)
	if len(r.Warnings) > 0 {
		fmt.Fprintln(&out, "\nwarnings")
	}
	for _, w := range r.Warnings {
		fmt.Fprintf(&out, "%s: %s\n", w.Drawer, w.Message)
	}
	return out.Bytes()
}

// partsOf lists the parts of one stock.
func partsOf(out *bytes.Buffer, b batch.Batch, stock string) {
	text := func(mm float64) string { return geom.LengthOf(mm).Number(b.Units) }
	var rows [][]string
	thick := ""
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			if p.Stock.Name != stock {
				continue
			}
			thick = text(p.Panel.Thickness)
			cuts := "inside face"
			switch outside := p.Panel.CutOn(geom.Outside); {
			case len(p.Panel.Pockets) == 0:
				cuts = "none"
			case outside && p.Panel.CutOn(geom.Inside):
				cuts = "both faces"
			case outside:
				cuts = "outside face"
			}
			rows = append(rows, []string{p.Name, fmt.Sprint(p.Quantity), text(p.Panel.Length()), text(p.Panel.Width()), cuts})
		}
	}
	fmt.Fprintf(out, "%s, %s %s thick (mean of the readings)\n", stock, thick, b.Units)
	table(out, []string{"part", ">pieces", ">length " + b.Units.String(), ">width " + b.Units.String(), "cuts"}, rows)
	fmt.Fprintln(out)
}

func settings(out *bytes.Buffer, r Report, u geom.Unit) {
	var rows [][]string
	for _, s := range r.Setups {
		passes := "-" // a router follows its drawing
		if s.Machine == string(joinery.Saw) {
			passes = "1"
		}
		height := caliper(s.CutterHeight, u)
		if s.DadoHeight > 0 {
			height += " (dados " + caliper(s.DadoHeight, u) + ")"
		}
		bottom := "-"
		if s.BottomFence > 0 {
			bottom = caliper(s.BottomFence, u)
		}
		if s.RabbetPasses > 1 {
			passes = fmt.Sprintf("%d, the last at %s", s.RabbetPasses, caliper(s.LastFence, u))
		}
		rows = append(rows, []string{s.Machine, caliper(s.CutterWidth, u), caliper(s.FenceDistance, u), height, passes, bottom, some(s.Drawers)})
	}
	unit := u.String()
	table(out, []string{"machine", ">cutter " + unit, ">fence distance " + unit, ">cutter height " + unit, "passes for the rabbets", "fence for flush bottoms", "drawers"}, rows)
	fmt.Fprintln(out)
}

// some names the first few of a list.
func some(names []string) string {
	const most = 4
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

func fits(out *bytes.Buffer, r Report, u geom.Unit) {
	var rows [][]string
	for _, f := range r.Fit {
		rows = append(rows, []string{f.Drawer, f.Words, caliper(f.Nominal, u), caliper(f.Min, u), caliper(f.Max, u), f.Verdict})
	}
	unit := u.String()
	table(out, []string{"drawer", "fit", ">at the mean " + unit, ">least " + unit, ">most " + unit, "verdict"}, rows)
	fmt.Fprintln(out)
}

func board(out *bytes.Buffer, r Report, u geom.Unit) {
	area := "m2"
	if u == geom.Inch {
		area = "sq ft"
	}
	var rows [][]string
	for _, m := range r.Material {
		sheets, cost := "-", "-"
		if m.AtLeast > 0 {
			sheets = fmt.Sprint(m.AtLeast)
		}
		if m.Cost > 0 {
			cost = fmt.Sprintf("%.2f", m.Cost)
		}
		rows = append(rows, []string{m.Stock, fmt.Sprint(m.Pieces), fmt.Sprintf("%.2f", m.Area), sheets, cost})
	}
	table(out, []string{"stock", ">pieces", ">area " + area, ">whole sheets by area alone", ">their price"}, rows)
}

// caliper prints a number of the report, which is in the job's unit, as a
// caliper shows it.
func caliper(v float64, u geom.Unit) string { return geom.LengthOf(v * u.MM()).Fixed(u) }
