package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// What commands print of a job on one screen: what matters most of what they print with --all.

// PartsBrief prints the cut list, and the board that it takes.
func PartsBrief(out *Printed, r record.Kept) {
	cutListText(out, r)
	board(out, r, r.Unit())
}

// ForecastBrief prints the measures of drawers: sizes by how far they are off what is asked, so
// that drawers which differ in nothing else stand in one table, with the widest range of them.
func ForecastBrief(out *Printed, f record.Forecast, u geom.Unit) {
	for i, like := range alike(f.Drawers) {
		if i > 0 {
			fmt.Fprintln(out)
		}
		fmt.Fprintln(out, words.Some(names(like)))
		t := NewTable(Words("measure"), In("likely", u.String()), In("limits", u.String()), Words("right of 1,000"))
		t.UnitOnce = true
		for k, first := range like[0].Fit {
			row := relative(first)
			for _, d := range like[1:] {
				row = wider(row, relative(d.Fit[k]))
			}
			right := row.Of1000
			if levelOf(row.Verdict) == Bad {
				right += ", " + FitVerdict(row)
			}
			t.Add(row.Name, rangeBeside(row.Likely, row.Limits, u), within(row.Limits, u), right)
			t.Rows[k][3].Level = levelOf(row.Verdict)
		}
		t.Print(out, "")
	}
}

// levelOf is how a verdict on a measure is to be seen.
func levelOf(verdict string) Level {
	if joinery.Verdict(verdict).Right() {
		return Good
	}
	return Bad
}

// alike are drawers with the same measures, whose limits are the same but for the sizes.
func alike(list []record.SimulatedDrawer) (groups [][]record.SimulatedDrawer) {
	at := make(map[string]int)
	for _, d := range list {
		var key strings.Builder
		for _, f := range d.Fit {
			f = relative(f)
			fmt.Fprintf(&key, "%s %.4f %.4f %t;", f.Name, f.Limits[0], f.Limits[1], joinery.Verdict(f.Verdict).Right())
		}
		i, known := at[key.String()]
		if !known {
			i = len(groups)
			at[key.String()] = i
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], d)
	}
	return groups
}

func names(list []record.SimulatedDrawer) (names []string) {
	for _, d := range list {
		names = append(names, d.Drawer)
	}
	return names
}

// sizes are the measures that hang on how large a drawer is asked for.
var sizes = []joinery.CheckCode{joinery.CheckOutsideWidth, joinery.CheckOutsideDepth, fit.OutsideHeight,
	fit.Diagonal, fit.SlideClearance}

// relative is a measure by its short name, that of a size as how far it is off what is asked.
func relative(f record.Fit) record.Fit {
	f.Name, _, _ = strings.Cut(f.Name, " (")
	if !slices.Contains(sizes, f.Check) {
		return f
	}
	f.Name += ", off by"
	for i := range 2 {
		f.Limits[i] -= f.Nominal
		f.Likely[i] -= f.Nominal
	}
	return f
}

// wider is the range over two drawers, with the odds and the verdict of the less sure one.
func wider(a, b record.Fit) record.Fit {
	if b.Odds < a.Odds {
		a.Verdict, a.State, a.Odds, a.Of1000 = b.Verdict, b.State, b.Odds, b.Of1000
	}
	a.Likely[0], a.Likely[1] = min(a.Likely[0], b.Likely[0]), max(a.Likely[1], b.Likely[1])
	return a
}

// SetupBrief prints the settings with their cuts in order and what can hurt at each, without limits
// and the cautions for all work.
func SetupBrief(out *Printed, s SetupSheet, u geom.Unit) {
	t := &sheetText{Printed: out, unit: u}
	t.paragraph("", "! The cautions for all work, and the limits to measure, stand in the whole sheet and in the packet: read "+
		"them before you cut.")
	for i, m := range s.Machines {
		if i > 0 {
			t.line("")
		}
		t.line("%s: %s", strings.ToUpper(joinery.CutterKind(m.Machine).Machine()), words.Some(m.Drawers))
		t.paragraph("", "One setting for everything? "+m.OneSetup.Text)
		t.refused(m)
		t.step = 0
		for i, s := range m.Settings {
			t.line("%s", s.Heading(i+1, m.Machine, u))
			if len(s.Steps) > 1 {
				t.paragraph("  ", s.Raised(u))
			}
			for _, c := range s.Cuts {
				t.step++
				t.paragraph("  ", fmt.Sprintf("%d. %s: %s.", t.step, c.How(u), c.PartsText))
				if len(c.Passes) > 1 {
					t.paragraph("     ", c.Fences(u))
				}
				t.cautions("     ", c.Cautions)
			}
		}
		if joinery.CutterKind(m.Machine).FollowsDrawing() {
			t.files(m)
		}
	}
}

// SheetsBrief prints what each stock takes, and which pieces lie on which sheet.
func SheetsBrief(out *Printed, s record.Sheets, u geom.Unit) {
	for _, k := range s.Stocks {
		fmt.Fprintf(out, "\n%s: %s\n", k.Stock, SheetsSummary(k, u))
		piecesText(out, k, u)
	}
}

// SheetsHead says what is to be bought, and what has no sheet.
func SheetsHead(s record.Sheets) Line {
	var buy, left []string
	cost := 0.0
	for _, k := range s.Stocks {
		buy = append(buy, fmt.Sprintf("%s of %s (%s)", words.Count(k.Count, "sheet", "sheets"), k.Stock, k.Summary))
		cost += k.Cost
		for _, p := range k.Unplaced {
			left = append(left, fmt.Sprintf("%d x %s", p.Count, p.Part))
		}
	}
	switch {
	case len(s.Stocks) == 0:
		return Line{Bad, "No stock has the size of its sheets: write `sheet: 2440 x 1220` into it."}
	case len(left) > 0:
		return Line{Bad, "No sheet holds " + words.Some(left) + "."}
	}
	text := "Sheets to buy: " + words.And(buy)
	if cost > 0 {
		text += fmt.Sprintf("; cost %.2f", cost)
	}
	return Line{Good, text + "."}
}
