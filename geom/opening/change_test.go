package opening

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// TestHintsHold: an opening or a bank changed as a hint says, by the number as printed,
// has the complaint no more, and no other instead.
func TestHintsHold(t *testing.T) {
	followed := make(map[string]int)
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]geom.Unit{geom.Millimetre, geom.Inch}).Draw(t, "unit")
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
		_, problems := Make(b)
		failed := slices.ContainsFunc(problems, func(q Problem) bool { return q.Error })
		for _, q := range problems {
			if q.Hint == "" {
				t.Fatalf("%s has no hint", q.Code)
			}
			if q.Change == nil {
				continue
			}
			if !strings.HasPrefix(q.Hint, q.Change.text(unit)) {
				t.Fatalf("%q does not say %q", q.Hint, q.Change.text(unit))
			}
			followed[q.Code]++
			_, after := Make(q.Change.Follow(b))
			for _, r := range after {
				if r.Code == q.Code || (r.Error || !failed) && !slices.ContainsFunc(problems, func(o Problem) bool { return o.Code == r.Code }) {
					t.Fatalf("%s: %s\nleads to %s: %s", q.Message, q.Hint, r.Code, r.Message)
				}
			}
		}
	})
	for _, code := range []string{"side-thickness", "depth", "front-movement"} {
		if followed[code] == 0 {
			t.Errorf("no hint of %s was followed: %v", code, followed)
		}
	}
}
