package present

import (
	"slices"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// TestTablePrints: columns are as wide as what is longest in them, numbers are flush right, and
// nothing is left at the end of a line.
func TestTablePrints(t *testing.T) {
	table := NewTable(Words("part"), In("length", "mm"), In("", "mm"), Words(""))
	table.Add("side", "396.00", "12", "")
	table.Add("front-and-back", "7.5", "6.10", "ü, x")
	for _, c := range []struct {
		once bool
		want string
	}{
		{false, "  part            length mm    mm\n" +
			"  side               396.00    12\n  front-and-back        7.5  6.10  ü, x\n"},
		{true, "  part            length mm\n  side               396.00    12\n  front-and-back        7.5  6.10  ü, x\n"},
	} {
		table.UnitOnce = c.once
		var out Printed
		if table.Print(&out, "  "); out.String() != c.want {
			t.Errorf("units once %t:\n%s, want\n%s", c.once, out.String(), c.want)
		}
	}
	bare := NewTable(Words(""), Words(""))
	bare.Add("a", "b")
	var out Printed
	if bare.Print(&out, ""); out.String() != "a  b\n" {
		t.Errorf("without headings: %q", out.String())
	}
}

// TestTablePicks: columns come in the order asked for, with their cells and levels, and another
// heading changes no other table.
func TestTablePicks(t *testing.T) {
	fit := FitTable([]record.Fit{
		{Name: "play", Verdict: "goes together"}, {Name: "recess", Verdict: "recessed"},
		{Name: "lap", Verdict: "proud or recessed"}, {Name: "depth", Verdict: "as asked"}}, geom.Millimeter)
	picked := fit.Pick("verdict", "measure").Renamed("measure", "fit")
	if got := picked.Titles(); !slices.Equal(got, []string{"verdict", "fit"}) || fit.Titles()[0] != "measure" {
		t.Errorf("%q, %q", got, fit.Titles())
	}
	for i, want := range []Level{Good, Bad, Bad, Good} {
		if cell := picked.Rows[i][0]; cell.Level != want || picked.Rows[i][1] != fit.Rows[i][0] {
			t.Errorf("%v of %v, want %q", cell, fit.Rows[i][0], want)
		}
	}
	// The unit stands at the first column that is shown and has it.
	if got := fit.Pick("likely", "as set").Titles(); !slices.Equal(got, []string{"likely mm", "as set"}) {
		t.Errorf("%q", got)
	}
}
