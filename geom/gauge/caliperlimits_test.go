package gauge_test

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
)

// plain is a box of 12 mm boards, cut on a saw at 6 and 6 with a cutter of 6.25.
func plain() joinery.Spec {
	ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(12)}
	return joinery.Spec{Name: "a", Count: 1, Units: geom.Millimeter, Width: 400, Height: 120, Depth: 500, Sides: ply, Front: ply, Back: ply,
		Bottom: joinery.Stock{Name: "thin", Thickness: joinery.Measure(6)}, Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.25},
		GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn, BottomClearance: 2, Limits: joinery.DefaultLimits}
}

func setOf(t *testing.T, s joinery.Spec, slide *fit.SlideFit) gauge.Limits {
	t.Helper()
	d, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatal(p)
		}
	}
	return gauge.Find([]gauge.Drawer{{Drawer: d, Boards: fit.MeasuredBoards(s), Accuracy: fit.AccuracyOf(s.Cutter.Kind), Slide: slide}})
}

func row(t *testing.T, s gauge.Limits, k fit.ReadingKind) gauge.Row {
	t.Helper()
	i := slices.IndexFunc(s.Rows, func(r gauge.Row) bool { return r.Kind == k })
	if i < 0 {
		t.Fatalf("no %s: %+v", k, s)
	}
	return s.Rows[i]
}

// TestPlainSet is worked out by hand. On a saw a shop keeps the width of a dado to
// 0.03 + 0.03 = 0.06, a tongue to 0.05 + 0.03 = 0.08. The play is 0.25, right from 0.1
// to 0.4: dado and tongue share 0.15 as 0.06 to 0.08, so that the dado may be
// 0.15 x 6/14 = 0.0643 off, the tongue 0.0857. The recess, 2 x 6 - 12 = 0, is right to
// 0.25; place and tongue go on together until the tongue has its 0.0857, and the place has
// the rest, 0.1643. Tongue and dado share the shoulder's 0.25 in halves. Depth, width, diagonals
// and slack are given room enough here not to be in the way.
func TestPlainSet(t *testing.T) {
	roomy := plain()
	roomy.Limits.Depth, roomy.Limits.Width, roomy.Limits.Diagonal, roomy.Limits.BottomClearance = 5, 3, 5, geom.Interval{Min: -5, Max: 9}
	s := setOf(t, roomy, nil)
	for k, by := range map[fit.ReadingKind]float64{fit.DadoWidth: 0.15 * 6 / 14, fit.TongueThick: 0.15 * 8 / 14, fit.DadoPlace: 0.25 - 0.15*8/14} {
		if r := row(t, s, k); math.Abs(r.Max-r.Target-by) > 1e-4 || math.Abs(r.Target-r.Min-by) > 1e-4 {
			t.Errorf("%s is right from %g to %g, not %g either way of %g", k, r.Min, r.Max, by, r.Target)
		}
	}
	if r := row(t, s, fit.TongueLong); math.Abs(r.Max-r.Target-0.125) > 1e-4 {
		t.Errorf("a tongue may be %g long", r.Max)
	}
	if r := row(t, s, fit.DadoDepth); math.Abs(r.Target-r.Min-0.125) > 1e-4 || math.Abs(r.Max-r.Target-0.24) > 1e-4 {
		t.Errorf("a dado may be %g to %g deep", r.Min, r.Max)
	}
	if len(s.OutOfLimits)+len(s.SortBoards)+len(s.TooNarrow) > 0 {
		t.Errorf("%+v", s)
	}
	// With a shoulder that may stay open by 0.9 the tongue may be as long as three times
	// the shop's accuracy lets it.
	wide := roomy
	wide.Limits.ShoulderGap = 0.9
	if r := row(t, setOf(t, wide, nil), fit.TongueLong); math.Abs(r.Max-r.Target-0.24) > 1e-4 {
		t.Errorf("a tongue may be %g long", r.Max)
	}
	// Where slides take no wider a box than drawn, nothing may make it wider.
	s = setOf(t, plain(), &fit.SlideFit{Min: 399, Max: 400})
	if r := row(t, s, fit.FrontLength); r.Max > r.Target+1e-4 || r.Min > r.Target-0.1 {
		t.Errorf("box front and back may be %g to %g long", r.Min, r.Max)
	}
	if r := row(t, s, fit.DadoDepth); r.Min < r.Target-1e-4 {
		t.Errorf("a dado may be %g deep", r.Min)
	}
}

// TestNoSet: limits that leave nothing have no set, and the measure is named; a measure
// that is out as drawn leaves the others theirs.
func TestNoSet(t *testing.T) {
	s := plain()
	s.Limits.TongueClearance = geom.Interval{Min: 0.25, Max: 0.25}
	if set := setOf(t, s, nil); len(set.Rows) > 0 || len(set.TooNarrow) != 1 || set.TooNarrow[0].Code != "tongue-clearance" {
		t.Errorf("%+v", set)
	}
	s = plain()
	s.FenceDistance, s.Cutter.Width = 6.3, 6.55 // recessed by 0.6
	if set := setOf(t, s, nil); len(set.OutOfLimits) == 0 || set.OutOfLimits[0].Code != "recess" || len(set.Rows) == 0 {
		t.Errorf("%+v", set)
	}
	// Sides that differ by 0.5 either way make boxes of 399 to 401, limits are 0.8 either
	// way: half of what the shop keeps to is left to the readings, (0.3 + 2 x 0.08) / 2 =
	// 0.23, and the rest to the boards, 0.57 = 2 x 0.285.
	s = plain()
	s.Sides = joinery.Stock{Name: "rough", Thickness: joinery.Measure(11.5, 12.5)}
	set := setOf(t, s, nil)
	if len(set.SortBoards) != 1 || set.SortBoards[0].Stock != "rough" || math.Abs(set.SortBoards[0].Min-11.715) > 1e-4 || math.Abs(set.SortBoards[0].Max-12.285) > 1e-4 || !set.Lengths || len(set.Rows) == 0 {
		t.Errorf("%+v", set)
	}
}
