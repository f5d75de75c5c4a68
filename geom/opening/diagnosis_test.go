package opening

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// TestHintsHold: an opening or a bank changed as a hint says, by the number as printed,
// has the complaint no more, and no other instead.
func TestHintsHold(t *testing.T) {
	followed := make(map[geom.Code]int)
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		slide, _ := BuiltIn(rapid.SampledFrom(Kinds).Draw(t, "slide"), unit)
		thick := rapid.Float64Range(8, 24).Draw(t, "sides")
		b := base(func(b *Bank) {
			b.Unit, b.Slide = unit, slide
			b.Opening.Depth = []float64{rapid.Float64Range(200, 500).Draw(t, "depth")}
			b.Opening.Fronts = rapid.SampledFrom([]Fronts{Inset, Overlay}).Draw(t, "fronts")
			b.Sides = stock(thick, thick+rapid.Float64Range(0, 0.6).Draw(t, "spread"))
			b.Front.Solid, b.Front.Swelling = true, rapid.SampledFrom([]float64{0, 0.012, 0.03}).Draw(t, "swelling")
			b.Rows = make([]Row, rapid.IntRange(1, 5).Draw(t, "rows"))
		})
		_, found := Solve(b)
		failed := geom.AnyError(found)
		for _, d := range found {
			if d.Ask.IsEmpty() {
				t.Fatalf("%s asks for nothing", d.Code)
			}
			for _, r := range d.Remedies {
				if v := r.Ends()[0][0]; math.Abs(v-printed(v, unit)) > 1e-6 {
					t.Fatalf("%s: %g is not what is printed, %g", d.Code, v, printed(v, unit))
				}
				followed[d.Code]++
				_, after := Solve(follow(b, r))
				for _, o := range after {
					if o.Code == d.Code || (o.IsError() || !failed) && !slices.ContainsFunc(found, func(q geom.Diagnosis) bool { return q.Code == o.Code }) {
						t.Fatalf("%v\nfollowed with %+v leads to %v", d, r, o)
					}
				}
			}
		}
	})
	for _, code := range []geom.Code{"side-thickness", "depth", "front-movement"} {
		if followed[code] == 0 {
			t.Errorf("no hint of %s was followed: %v", code, followed)
		}
	}
}

// printed is a length as it reads when it has been printed.
func printed(mm float64, u geom.Unit) float64 {
	l, err := geom.ParseLength(geom.Millimeters(mm).In(u), u)
	if err != nil {
		panic(err)
	}
	return l.MM()
}
