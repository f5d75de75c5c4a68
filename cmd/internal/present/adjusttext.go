package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/testcut"
)

// AdjustmentHead answers whether anything is to be moved.
func AdjustmentHead(a Adjustment) Line {
	of := "Test cut of " + a.Drawer + ": "
	moves, missing := 0, 0
	for _, m := range a.Moves {
		switch testcut.Action(m.Action) {
		case testcut.Make, testcut.Try:
			moves++
		case testcut.Measure:
			missing++
		}
	}
	var again []string
	for _, r := range a.Readings {
		if r.Rejected {
			again = append(again, r.Reading)
		}
	}
	switch {
	case len(a.Conflicts) > 0:
		return Line{Bad, of + "readings contradict each other; measure them again."}
	case a.AllRight:
		return Line{Good, of + "it is right; leave all as it is."}
	case a.OffWidth != "" || a.Wrong != "":
		return Line{Bad, of + "the cutter does not cut as wide as the job says; see what to do."}
	case moves > 0 && missing > 0:
		return Line{Bad, of + "move " + words.Count(moves, "setting", "settings") + ", as follows, and measure " +
			words.And(Names(a.Measure)) + " before you move the rest."}
	case moves > 0:
		return Line{Bad, of + "move " + words.Count(moves, "setting", "settings") + ", as follows."}
	case len(again) > 0:
		return Line{Bad, of + "measure " + words.And(again) + " again before anything is called right."}
	case missing > 0:
		return Line{"", of + "nothing is to be moved yet; measure " + words.And(Names(a.Measure)) + " first."}
	}
	return Line{"", of + "nothing is to be moved."}
}

// PrintMoves prints what a test cut asks to be measured and moved, and nothing of what it leaves.
func PrintMoves(out *Printed, a Adjustment, u geom.Unit) {
	t := sheetText{Printed: out, unit: u}
	if t.contradict(a); len(a.Conflicts) > 0 {
		return
	}
	t.rejected(a)
	t.toMeasure(a.Measure)
	t.moves(a)
}

// contradict says of readings that they contradict each other.
func (t *sheetText) contradict(a Adjustment) {
	if len(a.Conflicts) > 0 {
		t.paragraph("", fmt.Sprintf("These readings contradict each other: %s. Measure them again; until then nothing is to be moved.", strings.Join(a.Conflicts, ", ")))
	}
}

// PrintAdjustment prints it for the bench.
func PrintAdjustment(out *Printed, a Adjustment, u geom.Unit) {
	t := sheetText{Printed: out, unit: u}
	decided := len(a.Readings) > 0 && len(a.Conflicts) == 0
	if t.contradict(a); decided {
		t.doing(a)
	}
	if len(a.Readings) > 0 {
		t.line("")
		t.readings(a.Readings)
	}
	if decided {
		t.line("")
		t.paragraph("", a.cutIs(u))
		t.measured("if nothing is moved", a.AsIs)
		if len(a.Salvages) > 0 && !a.AllRight {
			t.measured("if this is followed", a.After)
			t.line("")
			t.line("parts that are cut already")
			for _, s := range a.Salvages {
				t.paragraph("  ", s)
			}
		}
	}
	for _, more := range []string{a.Square, a.Fits} {
		if more != "" {
			t.line("")
			t.paragraph("", more)
		}
	}
	if len(a.Written) > 0 {
		t.line("")
		t.line("written for the parts not yet cut")
		for _, w := range a.Written {
			t.line("  %s", w)
		}
	}
	if len(a.Warns) > 0 {
		t.line("")
		t.line("with these values check warns of what it did not warn of before")
		for _, w := range a.Warns {
			t.paragraph("  ", w)
		}
	}
}

// rejected says of readings that they are left out.
func (t *sheetText) rejected(a Adjustment) {
	for _, r := range a.Readings {
		if r.Rejected {
			t.paragraph("", fmt.Sprintf("The reading %s, %s %s, does not agree with the others, which together say %s: measure it again. What follows leaves it out.", r.Reading, caliper(r.Value, t.unit), t.unit, caliper(r.Expected, t.unit)))
		}
	}
}

// doing is the answer: leave it, or what to do about each setting.
func (t *sheetText) doing(a Adjustment) {
	t.rejected(a)
	within := a.OffWidth == "" && !slices.ContainsFunc(a.Readings, func(r ReadingRow) bool { return r.Rejected }) &&
		!slices.ContainsFunc(a.AsIs, func(m MeasureRow) bool { return !m.within }) &&
		!slices.ContainsFunc(a.Moves,
			func(m MoveRow) bool { return m.Action == string(testcut.Make) || m.Action == string(testcut.Try) })
	t.toMeasure(a.Measure)
	if !a.AllRight && within {
		t.line("LEAVE IT: all that these readings say is within its limits.")
	} else if a.AllRight {
		t.line("LEAVE IT: the test cut is right.")
		for _, m := range a.Moves {
			if !m.Sure {
				t.paragraph("  ", m.Text)
			}
		}
	} else {
		t.moves(a)
	}
	if a.FrontLength > 0 {
		with := "With nothing moved, box fronts"
		if a.AllRight {
			with = "Fronts"
		}
		t.paragraph("",
			fmt.Sprintf("%s and backs still to be cut: %s %s long.", with, caliper(a.FrontLength, t.unit), t.unit))
	}
}

// moves says what to do about each setting.
func (t *sheetText) moves(a Adjustment) {
	if a.OffWidth == "" && len(a.Moves) == 0 && a.Wrong == "" {
		return
	}
	t.line("what to do")
	if a.OffWidth != "" {
		t.paragraph("  ", a.OffWidth+a.makeGood()+".")
	}
	for _, m := range a.Moves {
		t.paragraph("  ", m.Text)
	}
	if a.Wrong != "" {
		t.paragraph("  ", a.Wrong+".")
	}
}

// readings are those that were given, with what all of them together say.
func (t *sheetText) readings(list []ReadingRow) {
	table := NewTable(Words("reading"), In("", t.unit.String()), Numbers("together they say"),
		Numbers("rest"), Words(""))
	for _, r := range list {
		left := ""
		if r.Rejected {
			left = "left out: it does not agree with the others; measure it again"
		}
		table.Add(r.Reading, caliper(r.Value, t.unit), caliper(r.Expected, t.unit), caliper(r.Residual, t.unit), left)
	}
	table.Print(t.Printed, "")
}

func (t *sheetText) measured(title string, list []MeasureRow) {
	if len(list) == 0 {
		return
	}
	t.line("")
	table := NewTable(Words(title), In("", t.unit.String()), Numbers("known to"), Numbers("right"), Words("verdict"))
	for _, q := range list {
		table.Add(q.Name, beside(q.Value, q.Limits, t.unit), "+-"+t.number(2*q.Sigma), within(q.Limits, t.unit), q.Verdict)
		switch verdict := &table.Rows[len(table.Rows)-1][4]; {
		case q.within:
			verdict.Level = Good
		case q.Verdict != unknown:
			verdict.Level = Bad
		}
	}
	table.Print(t.Printed, "")
}
