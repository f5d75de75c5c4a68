package sweep

import (
	"errors"
	"math"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func areaOfAll(list []geom.Loop) (sum float64) {
	for _, l := range list {
		sum += l.Area()
	}
	return sum
}

// TestOffsetClosedForms: a w by h rectangle moved in by r is (w-2r)(h-2r), moved out w h
// + 2 r (w + h) + pi r^2 (Steiner's formula); a circle stays one; an L keeps a sharp
// inner corner when it is moved in and an outer arc when it is moved out.
func TestOffsetClosedForms(t *testing.T) {
	ell := geom.Polygon(geom.Point{}, geom.Point{X: 40}, geom.Point{X: 40, Y: 10}, geom.Point{X: 10, Y: 10}, geom.Point{X: 10, Y: 30}, geom.Point{Y: 30})
	for _, c := range []struct {
		name    string
		l       geom.Loop
		r       float64
		in, out float64
	}{
		{"rectangle", geom.Rectangle(5, 7, 105, 57), 3, 94 * 44, 100*50 + 2*3*150 + math.Pi*9},
		{"circle", geom.Circle(geom.Point{X: 3, Y: 4}, 10), 2, math.Pi * 64, math.Pi * 144},
		// 600 mm2, 140 round, five corners out and one in. Moved in by 2 it is 36 by 6 and 6
		// by 26, of which 36 count twice, less what the inner corner's arc cuts off: 2^2 - pi.
		// Moved out, the inner corner is sharp: 2^2 less than with an arc's quarter, which
		// there is not: five quarters of a circle, one square that counts twice.
		{"ell", ell, 2, 36*6 + 6*20 + (4 - math.Pi), 600 + 140*2 + 5*math.Pi - 4},
	} {
		in, err := Inset(c.l, c.r)
		if err != nil || len(in) != 1 || math.Abs(areaOfAll(in)-c.in) > 1e-6 {
			t.Errorf("%s moved in: %v, area %.6f, should be %.6f, %v", c.name, in, areaOfAll(in), c.in, err)
		}
		out, err := Outset(c.l, c.r)
		if err != nil || len(out) != 1 || math.Abs(areaOfAll(out)-c.out) > 1e-6 {
			t.Errorf("%s moved out: %v, area %.6f, should be %.6f, %v", c.name, out, areaOfAll(out), c.out, err)
		}
	}
}

// TestOffsetParts: what is too narrow vanishes, a waist parts a loop in two, and a bay
// whose mouth closes becomes a hole.
func TestOffsetParts(t *testing.T) {
	if in, err := Inset(geom.Rectangle(0, 0, 100, 4), 3); err != nil || len(in) != 0 {
		t.Errorf("a slot too narrow: %v, %v", in, err)
	}
	waist := geom.Polygon(geom.Point{}, geom.Point{X: 20}, geom.Point{X: 20, Y: 8}, geom.Point{X: 30, Y: 8}, geom.Point{X: 30}, geom.Point{X: 50}, geom.Point{X: 50, Y: 20}, geom.Point{X: 30, Y: 20}, geom.Point{X: 30, Y: 12}, geom.Point{X: 20, Y: 12}, geom.Point{X: 20, Y: 20}, geom.Point{Y: 20})
	// Each room of 20 by 20 leaves 14 by 14, and into the mouth, 4 high, the center gets as
	// far as the circles of 3 about its corners let it: twice the integral of 3 - root(9 -
	// u^2) from 0 to 2, with root 5 + 4.5 asin(2/3) for the root's.
	mouth := 2 * (6 - math.Sqrt(5) - 4.5*math.Asin(2.0/3))
	if in, err := Inset(waist, 3); err != nil || len(in) != 2 || math.Abs(areaOfAll(in)-2*(14*14+mouth)) > 1e-6 {
		t.Errorf("a waist: %v, %v", in, err)
	}
	// A room of 20 by 20 with a mouth of 4, walls 5 thick: moved out by 3 the room is left
	// as 14 by 14 but for the corners of the mouth, whose arcs round it: each cuts off of the
	// corner at most 3 by 3.
	bay := geom.Polygon(geom.Point{}, geom.Point{X: 30}, geom.Point{X: 30, Y: 30}, geom.Point{X: 17, Y: 30}, geom.Point{X: 17, Y: 25}, geom.Point{X: 25, Y: 25}, geom.Point{X: 25, Y: 5}, geom.Point{X: 5, Y: 5}, geom.Point{X: 5, Y: 25}, geom.Point{X: 13, Y: 25}, geom.Point{X: 13, Y: 30}, geom.Point{Y: 30})
	out, err := Outset(bay, 3)
	if err != nil || len(out) != 2 || out[0].Area() < 0 || out[1].Area() > 0 || -out[1].Area() < 14*14 || -out[1].Area() > 14*14+4*3 {
		t.Errorf("a bay: %v, %v", out, err)
	}
}

func TestOffsetRefused(t *testing.T) {
	l := geom.Rectangle(0, 0, 10, 10)
	for _, f := range []func(geom.Loop, float64) ([]geom.Loop, error){Inset, Outset} {
		for _, r := range []float64{-1, math.NaN(), math.Inf(1)} {
			if _, err := f(l, r); !errors.Is(err, ErrRadius) {
				t.Errorf("a radius of %g: %v", r, err)
			}
		}
		if _, err := f(l.Reverse(), 1); !errors.Is(err, ErrWinding) {
			t.Errorf("clockwise: %v", err)
		}
		if same, err := f(l, 0); err != nil || len(same) != 1 || areaOfAll(same) != 100 {
			t.Errorf("by nothing: %v, %v", same, err)
		}
	}
}

// TestSteiner: a convex loop of lines and arcs moved out has the area that Steiner's
// formula tells, and moved in again it is what it was.
func TestSteiner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(10, 300).Draw(t, "w"), rapid.Float64Range(10, 300).Draw(t, "h")
		l := geom.RoundedRectangle(0, 0, w, h, rapid.Float64Range(0.01, 5).Draw(t, "round"))
		if rapid.Bool().Draw(t, "other") {
			l = anyConvex(t)
		}
		r := rapid.Float64Range(0.01, 8).Draw(t, "r")
		out, err := Outset(l, r)
		if err != nil || len(out) != 1 {
			t.Fatal(out, err)
		}
		if want := l.Area() + r*l.Perimeter() + math.Pi*r*r; math.Abs(out[0].Area()-want) > 1e-6*want {
			t.Fatalf("area %g, should be %g", out[0].Area(), want)
		}
		back, err := Inset(out[0], r)
		if err != nil || len(back) != 1 || math.Abs(back[0].Area()-l.Area()) > 1e-6*l.Area() {
			t.Fatalf("and back: %v, %v", back, err)
		}
	})
}

// TestOffsetDistance: every corner and middle of a side of a moved loop is as far from
// the loop as it was moved, and none is nearer.
func TestOffsetDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, _ := anyLoop(t)
		r := rapid.Float64Range(0.02, 6).Draw(t, "r")
		sides, err := sidesOf(l, true)
		if err != nil {
			t.Fatal(err) // anyLoop draws none of that kind
		}
		for name, f := range map[string]func(geom.Loop, float64) ([]geom.Loop, error){"in": Inset, "out": Outset} {
			list, err := f(l, r)
			if err != nil {
				t.Fatalf("moved %s by %g: %v", name, r, err)
			}
			for _, o := range list {
				for i, v := range o {
					for _, p := range []geom.Point{v.Point, middleOf(o, i)} {
						least := math.Inf(1)
						for k := range sides {
							least = min(least, sides[k].distance(p))
						}
						if math.Abs(least-r) > 2e-6 {
							t.Fatalf("moved %s by %g a place is %g away", name, r, least)
						}
					}
				}
			}
		}
	})
}

// middleOf is the middle of a side, on its arc.
func middleOf(l geom.Loop, i int) geom.Point {
	a, b := l[i], l[(i+1)%len(l)].Point
	s := a.Bulge / 2
	return geom.Point{X: (a.X+b.X)/2 + s*(b.Y-a.Y), Y: (a.Y+b.Y)/2 - s*(b.X-a.X)}
}
