package sweep

import (
	"math"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// one makes a single perturbation as long as a test runs.
func one(t *testing.T, p perturbation) {
	all := perturbations
	t.Cleanup(func() { perturbations = all })
	perturbations = []perturbation{p}
}

// TestPerturbationIsBounded: whichever perturbation settles a result, each of its arcs is
// one of the loop or has a radius that differs from the one asked for by less than fit.
func TestPerturbationIsBounded(t *testing.T) {
	settledBy := make([]int, len(perturbations))
	for k, p := range perturbations {
		if !(p.share >= 0 && p.share < 1) || p.of() >= fit {
			t.Errorf("perturbation %d changes a radius by %g of fit", k, p.share)
		}
		t.Run("", func(t *testing.T) {
			one(t, p)
			for name, c := range map[string]struct {
				loop geom.Loop
				r    float64
			}{
				"reliefs as the bit": {relieved(100, 50, 5), 5}, "reliefs": {relieved(100, 50, 5), 4}, "L": {ell(), 3},
				"necks": {bells(5), 3}, "necks as the bit": {bells(6), 3}, "island": {teeth(5, 0.7), 5}, "turned": {turned(ell(), 1), 7},
				"slot as the bit": {turned(geom.Rectangle(0, 0, 80, 6), 0.3), 3},
			} {
				loops, err := pocket(c.loop, c.r)
				if err != nil {
					continue // another settles it
				}
				settledBy[k]++
				checkRadii(t, name, c.loop, loops, c.r)
			}
		})
	}
	for k, n := range settledBy {
		if n < 4 {
			t.Errorf("perturbation %d settles %d loops", k, n)
		}
	}
}

func checkRadii(t *testing.T, name string, l geom.Loop, loops []geom.Loop, r float64) {
	t.Helper()
	own := func(radius float64) bool {
		for i, v := range l {
			if v.Bulge != 0 && math.Abs(l.Arc(i).Radius()-radius) < same {
				return true
			}
		}
		return false
	}
	for _, o := range loops {
		for i, v := range o {
			if v.Bulge == 0 || o.SideLength(i) < joint { // of a short arc the radius has no digits
				continue
			}
			if radius := o.Arc(i).Radius(); !own(radius) && !(radius > r-fit-same && radius < r+same) {
				t.Errorf("%s: an arc of %.9f, asked for %.9f", name, radius, r)
			}
		}
	}
}

// TestPerturbedArea: what a perturbed disc leaves of a polygon is what a disc of just that
// radius leaves in its corners.
func TestPerturbedArea(t *testing.T) {
	for _, p := range perturbations {
		t.Run("", func(t *testing.T) {
			one(t, p)
			rapid.Check(t, func(t *rapid.T) {
				n := rapid.IntRange(3, 7).Draw(t, "corners")
				l := make(geom.Loop, n)
				for i := range l {
					angle := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.3).Draw(t, "angle")) / float64(n)
					l[i].Point = geom.Point{X: 100}.Rotate(angle)
				}
				const r = 2.5
				loops, err := pocket(l, r)
				if err != nil || len(loops) != 1 {
					t.Fatal(len(loops), err)
				}
				want := l.Area()
				for i := range l {
					want -= geom.CornerArea(r-p.of(), l.Turn(i))
				}
				if off := math.Abs(loops[0].Area() - want); off > 1e-8 {
					t.Fatalf("perturbed by %g the area is %g off", p.of(), off)
				}
			})
		})
	}
}
