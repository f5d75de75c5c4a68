package gauge_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/gauge"

	"pgregory.net/rapid"
)

// TestPrint: limits are rounded inwards, by no more than a step, and the target stays
// between them.
func TestPrint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		target := rapid.Float64Range(0, 500).Draw(t, "target")
		r := gauge.Row{Target: target, Min: target - rapid.Float64Range(0, 0.2).Draw(t, "below"), Max: target + rapid.Float64Range(0.02, 0.3).Draw(t, "above")}
		for _, u := range []geom.Unit{geom.Millimetre, geom.Inch} {
			p := r.Print(u)
			number := func(s string) float64 {
				v, err := strconv.ParseFloat(s, 64)
				if err != nil {
					t.Fatal(err)
				}
				return v * u.MM()
			}
			step := u.MM() * math.Pow10(-(len(p.Min) - 1 - strings.IndexByte(p.Min, '.')))
			is, least, most := number(p.Target), number(p.Min), number(p.Max)
			if least < r.Min-2e-6 || least > r.Min+step || most > r.Max+2e-6 || most < r.Max-step {
				t.Fatalf("%+v is printed %+v", r, p)
			}
			if is < least || is > most || math.Abs(is-target) > step {
				t.Fatalf("%+v is printed %+v", r, p)
			}
		}
	})
	// 0.245 in between 0.2446 and 0.2454 in needs a fourth decimal, or the target would be
	// the only number on paper.
	r := gauge.Row{Target: 0.245 * geom.InchMM, Min: 0.2446 * geom.InchMM, Max: 0.2454 * geom.InchMM}
	if p := r.Print(geom.Inch); p != (gauge.Printed{Target: "0.2450", Min: "0.2446", Max: "0.2454"}) {
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
			for _, u := range []geom.Unit{geom.Millimetre, geom.Inch} {
				if got, want := row.Print(u).Target, geom.LengthOf(target).Fixed(u); got != want {
					t.Fatalf("%v in %s: the sheet has %s, the setting %s", target, u, got, want)
				}
			}
		}
	}
}
