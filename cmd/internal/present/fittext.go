package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// PrintForecast prints a forecast. Drawers of which everything is the same stand
// together.
func PrintForecast(out *Printed, f record.Forecast, u geom.Unit) {
	if f.Job != "" {
		fmt.Fprintf(out, "%s: what the boxes will do\n\n", f.Job)
	}
	BoardTable(f.Boards, u).Print(out, "")
	together(out, f.Drawers, func(part *Printed, d record.SimulatedDrawer) { foreseen(part, d, u) })
	PrintLog(out, f.Log, u)
	fmt.Fprintf(out,
		"\n%s\nworst: everything off by its most at once. all together: the root of the sum of squares.\n", Basis)
}

// BoardTable is between which thicknesses boards are.
func BoardTable(list []record.Board, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("stock"), In("thickness", unit), In("least", unit), In("most", unit), Words("by"))
	t.UnitOnce = true
	for _, b := range list {
		t.Add(b.Stock, caliper(b.Mean, u), caliper(b.Min, u), caliper(b.Max, u), readingsOf(b))
	}
	return t
}

// together prints what is said of drawers under their names, those of which the same is
// said under one head.
func together(out *Printed, list []record.SimulatedDrawer, say func(*Printed, record.SimulatedDrawer)) {
	var bodies []string
	names := make(map[string][]string)
	for _, d := range list {
		part := Printed{Width: out.Width, Paint: out.Paint}
		say(&part, d)
		body := ": " + d.Text + "\n" + part.String()
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
func fits(out *Printed, r record.Kept, u geom.Unit) {
	fmt.Fprintln(out, "fit")
	var list []record.SimulatedDrawer
	for _, d := range r.Drawers {
		list = append(list, record.SimulatedDrawer{Drawer: d.Name, Text: d.Summary, Fit: r.FitOf(d.Name)})
	}
	together(out, list, func(part *Printed, d record.SimulatedDrawer) {
		t := FitTable(d.Fit, u).Pick("measure", "as set", "limits", "likely", "right of 1,000", "verdict")
		for i, f := range d.Fit {
			t.Rows[i][0].Text = f.Short()
		}
		t.Renamed("right of 1,000", "of 1,000").Print(part, "")
	})
	fmt.Fprintf(out, "\n%s%s\n\n", signs(list), Basis)
}

// signs says what measures and their signs mean, which tables of short names leave out.
func signs(list []record.SimulatedDrawer) string {
	var said []string
	for _, d := range list {
		for _, f := range d.Fit {
			_, means, has := strings.Cut(f.Name, " (")
			if one := f.Short() + ", " + strings.TrimSuffix(means, ")"); has && !slices.Contains(said, one) {
				said = append(said, one)
			}
		}
	}
	if len(said) == 0 {
		return ""
	}
	return "Measures: " + strings.Join(said, "; ") + ". "
}

// FitTable is the measures of a drawer: as set, between what they are right, what nearly all
// boxes are, the verdict, and with everything off by its most at once.
func FitTable(list []record.Fit, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("measure"), In("as set", unit), In("limits", unit), In("likely", unit), Words("verdict"),
		Numbers("right of 1,000"), In("worst", unit))
	t.UnitOnce = true
	for _, f := range list {
		t.Add(f.Name, FitSet(f, u), FitLimits(f, u), FitLikely(f, u), FitVerdict(f), f.Of1000,
			rangeBeside(f.WorstCase, f.Limits, u))
		t.Rows[len(t.Rows)-1][4].Level = levelOf(f.Verdict)
	}
	return t
}

// SetTable is the measures of a drawer as set, where no more is known of them.
func SetTable(list []record.Fit, u geom.Unit) Table {
	t := NewTable(Words("measure"), In("as set", u.String()), In("limits", u.String()), Words("verdict"))
	t.UnitOnce = true
	for _, f := range list {
		t.Add(f.Short(), FitSet(f, u), FitLimits(f, u), f.State.Sign()+" "+FitVerdict(f))
		t.Rows[len(t.Rows)-1][3].Level = levelOf(f.Verdict)
	}
	return t
}

// beside prints a length of a record beside its limits, as it keeps them or not.
func beside(v record.Length, limits [2]record.Length, u geom.Unit) string {
	return geom.FixedBeside(v.MM(), geom.Interval{Min: limits[0].MM(), Max: limits[1].MM()}, u)
}

// rangeBeside is the same of a range.
func rangeBeside(r, limits [2]record.Length, u geom.Unit) string {
	return beside(r[0], limits, u) + " to " + beside(r[1], limits, u)
}

// foreseen prints the measures of a drawer, what moves them, and what its parts must measure.
func foreseen(out *Printed, d record.SimulatedDrawer, u geom.Unit) {
	FitTable(d.Fit, u).Print(out, "")
	fmt.Fprintln(out)
	t := NewTable(Words("measure"), Words("moved most by"), In("by itself", u.String()), Numbers("of the squares"),
		Numbers("all together"), Numbers("with it halved"))
	for _, f := range d.Fit {
		if c := f.Largest; c != nil && c.RootSumSquare > 0 {
			t.Add(f.Name, c.Source, "+-"+caliper(c.PlusMinus, u), fmt.Sprintf("%.0f %%", 100*c.Share),
				"+-"+caliper(c.RootSumSquare, u),
				"+-"+caliper(c.IfHalved, u))
		}
	}
	t.Print(out, "")
	fmt.Fprintln(out)
	stackText(out, d.Stack, u)
}
