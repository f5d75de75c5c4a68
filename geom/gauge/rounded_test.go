package gauge_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/gauge"

	"pgregory.net/rapid"
)

// TestRound: limits are rounded inward, by no more than a step, and the target stays
// between them.
func TestRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		target := rapid.Float64Range(0, 500).Draw(t, "target")
		r := gauge.Row{Target: target, Min: target - rapid.Float64Range(0, 0.2).Draw(t, "below"), Max: target + rapid.Float64Range(0.02, 0.3).Draw(t, "above")}
		for _, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
			p := r.Round(u)
			step := u.MM() * math.Pow10(-p.Places)
			is, least, most := p.Target*u.MM(), p.Min*u.MM(), p.Max*u.MM()
			if least < r.Min-2e-6 || least > r.Min+step || most > r.Max+2e-6 || most < r.Max-step {
				t.Fatalf("%+v is shown as %+v", r, p)
			}
			if is < least || is > most || math.Abs(is-target) > step {
				t.Fatalf("%+v is shown as %+v", r, p)
			}
		}
	})
	// 0.245 in between 0.2446 and 0.2454 in needs a fourth decimal, or the target would be
	// the only number on paper.
	r := gauge.Row{Target: 0.245 * geom.InchMM, Min: 0.2446 * geom.InchMM, Max: 0.2454 * geom.InchMM}
	if p := r.Round(geom.Inch); p != (gauge.Rounded{Target: 0.245, Min: 0.2446, Max: 0.2454, Places: 4}) || p.Text(p.Target) != "0.2450" {
		t.Errorf("%+v", p)
	}
}

// TestTargetIsPrintedAsTheSetting: half of a board of 12.15 mm is 6.075, which a float64
// holds a little above or below as it was computed; a sheet has one number for both.
func TestTargetIsPrintedAsTheSetting(t *testing.T) {
	for n := range 4000 {
		half := float64(n)*0.01 + 0.005
		for _, target := range []float64{half, math.Nextafter(half, 0), math.Nextafter(half, 100), half - 1e-9} {
			row := gauge.Row{Target: target, Min: target - 0.5, Max: target + 0.5}
			for _, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
				p := row.Round(u)
				if got, want := p.Text(p.Target), geom.LengthOf(target).Fixed(u); got != want {
					t.Fatalf("%v in %s: the sheet has %s, the setting %s", target, u, got, want)
				}
			}
		}
	}
}
