package opening

import (
	"slices"
	"testing"

	"drawerwright/geom"
)

// only is the one error of a bank, in millimeters.
func only(t *testing.T, b Bank) (d geom.Diagnosis, fact, ask string) {
	t.Helper()
	_, found := Solve(b)
	found = slices.DeleteFunc(found, func(d geom.Diagnosis) bool { return !d.IsError() })
	if len(found) != 1 {
		t.Fatalf("%d errors: %v", len(found), found)
	}
	return found[0], found[0].Fact.In(geom.Millimeter), found[0].Ask.In(geom.Millimeter)
}

// TestRowsThatDoNotGoIn: of rows against a low opening it is said of which sum they come, and what gives them room. Of
// 200 high with 16 of overlay at either end, 232, a row of 230 with two gaps of 3 leaves nothing; one of 180 leaves 23
// for each of two, and the lower one has 7 of those in the opening.
func TestRowsThatDoNotGoIn(t *testing.T) {
	low := func(first float64, n int) Bank {
		return base(func(b *Bank) {
			b.Opening.Height = []float64{200}
			b.Rows = make([]Row, n)
			b.Rows[0].Front = first
		})
	}
	for _, c := range []struct {
		bank      Bank
		fact, ask string
	}{
		{low(230, 3), "the rows with a height of their own are 230 mm high, with 6 mm for the gaps between all rows 236 mm, and have 232 mm: the opening's 200 mm and 32 mm of overlay at top and bottom; nothing is left for the free ones", "lower or fewer rows"},
		{low(180, 3), "row 2 is 23 mm high in the opening; what the slide keeps free leaves a box of 3 mm, at least 40 mm is needed", "fewer rows, or lower ones where a height is written"},
		{low(220, 3), "no part of row 2 is in the opening, which is 200 mm high: the overlay and the other rows take all of it; a box of 40 mm is needed", "fewer rows, or lower ones where a height is written"},
		{low(0, 5), "row 1 is 28 mm high in the opening; what the slide keeps free leaves a box of 8 mm, at least 40 mm is needed", "fewer rows"},
		// 50 less the 16 of overlay is 34; with 2 x 10 for the slide 60 are needed.
		{low(50, 2), "row 1 is 34 mm high in the opening; what the slide keeps free leaves a box of 14 mm, at least 40 mm is needed", "write 83.5 mm or more for row 1"}, // the slide reaches 10 + 35 + 45/2 up, and has 34
	} {
		if _, fact, ask := only(t, c.bank); fact != c.fact || ask != c.ask {
			t.Errorf("%s\n  %s\nnot %s\n  %s", fact, ask, c.fact, c.ask)
		}
	}
	for front, errors := range map[float64]bool{76: false, 75.9: true} {
		_, found := Solve(low(front, 2))
		if slices.ContainsFunc(found, func(d geom.Diagnosis) bool { return d.Code == "row" }) != errors {
			t.Errorf("row 1 of %g: %v", front, found)
		}
	}
}

// TestNarrowOpening: it is said at the width how wide the boxes would be and the least width that does: 80 and
// 2 x 12.7.
func TestNarrowOpening(t *testing.T) {
	narrow := func(width float64) Bank { return base(func(b *Bank) { b.Opening.Width = []float64{width} }) }
	d, fact, _ := only(t, narrow(90))
	const boxes = "the opening is 90 mm wide: that leaves 64.6 mm for boxes, and they need 80 mm"
	if fact != boxes || d.Subject.Setting != SettingWidth {
		t.Errorf("%s, at %s", fact, d.Subject.Setting)
	}
	if len(d.Remedies) != 1 || d.Remedies[0].Changes[0].Min != 105.4 || d.Remedies[0].Changes[0].Key != KeyWidth {
		t.Errorf("the way out is %+v", d.Remedies)
	}
	if _, found := Solve(narrow(105.4)); geom.AnyError(found) {
		t.Errorf("at the width that is named: %v", found)
	}
	inset := base(func(b *Bank) {
		b.Opening.Width, b.Opening.Fronts, b.Edge = []float64{106}, Inset, Edges{15, 15, 3, 3}
	})
	const fronts = "the opening is 106 mm wide: that leaves 76 mm for drawer fronts, and they need 80 mm"
	if _, fact, _ := only(t, inset); fact != fronts {
		t.Error(fact)
	}
}

// TestFarOverhang: a frame that overhangs by more than any usual one is asked about, in either unit.
func TestFarOverhang(t *testing.T) {
	for _, c := range []struct {
		unit     geom.Unit
		overhang float64
		far      bool
	}{{geom.Millimeter, 50, false}, {geom.Millimeter, 50.1, true}, {geom.Inch, 50.8, false}, {geom.Inch, 3 * geom.InchMM, true}} {
		_, found := Solve(base(func(b *Bank) { b.Unit, b.Opening.FrameOverhang = c.unit, c.overhang }))
		i := slices.IndexFunc(found, func(d geom.Diagnosis) bool { return d.Code == "frame-overhang" })
		if (i >= 0) != c.far {
			t.Errorf("%g %s: %v", c.overhang, c.unit, found)
		} else if c.far && (found[i].Subject.Setting != SettingOverhang || found[i].Level != geom.LevelWarning) {
			t.Errorf("%g: %+v", c.overhang, found[i])
		}
	}
}
