package sweep

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// equal is how near areas must be, in square millimeters, that are computed in
// different ways; where something fits by chance to the last millionth, what of
// it is covered hangs on that.
const equal = 0.005

func must(t *rapid.T, l geom.Loop, r float64) []geom.Loop {
	loops, err := Pocket(l, r)
	if err != nil {
		t.Fatalf("Pocket %v, %g: %v", l, r, err)
	}
	return loops
}

// TestOpening checks what makes an opening one: (1) it lies in the loop; (2) it
// is its own opening; (3) a smaller disc covers more.
func TestOpening(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, r := anyLoop(t)
		loops := must(t, l, r)
		soundLoops(t, loops, fit)
		for _, o := range loops {
			for _, p := range o.Flatten(0.05) {
				if !holds(l, p, 1e-4) {
					t.Fatalf("%v is covered beyond %v, radius %g", p, l, r)
				}
			}
		}
		area, again := areaSum(loops), 0.0
		for _, o := range loops {
			if o.Area() < 0 { // an island is no loop of its own
				again += o.Area()
				continue
			}
			again += areaSum(must(t, o, r))
		}
		if math.Abs(area-again) > equal {
			t.Fatalf("%v, radius %g covers %.6f, and of that %.6f", l, r, area, again)
		}
		less := r * rapid.Float64Range(0.5, 1).Draw(t, "less")
		if more := areaSum(must(t, l, less)); more < area-equal || more > l.Area()+equal {
			t.Fatalf("%v covers %.6f with %g, and %.6f with %g", l, area, r, more, less)
		}
	})
}

// TestPlace: where a loop lies, how it is seen and from which corner it starts
// changes nothing.
func TestPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, r := anyLoop(t)
		area, out := areaSum(must(t, l, r)), mustOutside(t, l, r).Area()
		dx, dy := rapid.Float64Range(-2000, 2000).Draw(t, "dx"), rapid.Float64Range(-2000, 2000).Draw(t, "dy")
		moved := slices.Clone(l)
		for i := range moved {
			moved[i].X, moved[i].Y = moved[i].X+dx, moved[i].Y+dy
		}
		k := rapid.IntRange(0, len(l)-1).Draw(t, "first")
		for name, m := range map[string]geom.Loop{
			"moved":      moved,
			"mirrored":   l.TurnOver(100),
			"turned":     turned(l, rapid.Float64Range(0, 7).Draw(t, "angle")),
			"elsewhere":  slices.Concat(l[k:], l[:k]),
			"once again": l,
		} {
			if got := areaSum(must(t, m, r)); math.Abs(got-area) > equal {
				t.Errorf("%s: %.6f, before %.6f: %v, radius %g", name, got, area, l, r)
			}
			if got := mustOutside(t, m, r).Area(); math.Abs(got-out) > equal {
				t.Errorf("%s: closing %.6f, before %.6f: %v, radius %g", name, got, out, l, r)
			}
		}
	})
}

func mustOutside(t *rapid.T, l geom.Loop, r float64) geom.Loop {
	o, err := Outside(l, r)
	if err != nil {
		t.Fatalf("Outside %v, %g: %v", l, r, err)
	}
	return o
}

// TestClosing: (1) it holds the loop; (2) it is its own closing; (3) a smaller
// disc leaves less.
func TestClosing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, r := anyLoop(t)
		o := mustOutside(t, l, r)
		soundLoops(t, []geom.Loop{o}, fit)
		for _, p := range l.Flatten(0.05) {
			if !holds(o, p, 1e-4) {
				t.Fatalf("%v is cut off %v, radius %g", p, l, r)
			}
		}
		if again := mustOutside(t, o, r); math.Abs(again.Area()-o.Area()) > equal {
			t.Fatalf("%v, radius %g leaves %.6f, and of that %.6f", l, r, o.Area(), again.Area())
		}
		less := r * rapid.Float64Range(0.5, 1).Draw(t, "less")
		if left := mustOutside(t, l, less).Area(); left > o.Area()+equal || left < l.Area()-equal {
			t.Fatalf("%v leaves %.6f with %g, and %.6f with %g", l, o.Area(), r, left, less)
		}
	})
}

// TestConvex: a convex outline is left as it is, whichever way is taken.
func TestConvex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyConvex(t)
		r := rapid.Float64Range(0.5, 20).Draw(t, "r")
		if got := mustOutside(t, l, r); !slices.Equal(got, l) {
			t.Fatalf("%v", got)
		}
		if got, err := outside(l, r); err != nil || math.Abs(got.Area()-l.Area()) > 1e-6 {
			t.Fatalf("%v, %v", got, err)
		}
	})
}

// anyConvex draws polygons around an ellipse.
func anyConvex(t *rapid.T) geom.Loop {
	n := rapid.IntRange(3, 12).Draw(t, "n")
	s := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	a, b := 20+1200*s.Float64(), 20+600*s.Float64()
	var l geom.Loop
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5*s.Float64()) / float64(n))
		l = append(l, v(a*cos, b*sin))
	}
	return turned(l, 7*s.Float64())
}

// TestClosedForms: closed forms and the way of everything else agree.
func TestClosedForms(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.5, 20).Draw(t, "r")
		w, h := rapid.Float64Range(1, 2500).Draw(t, "w"), rapid.Float64Range(1, 1300).Draw(t, "h")
		if rapid.Bool().Draw(t, "just as wide") {
			h = 2 * r
		}
		x, y := rapid.Float64Range(-1000, 1000).Draw(t, "x"), rapid.Float64Range(-1000, 1000).Draw(t, "y")
		for _, l := range []geom.Loop{
			geom.Rectangle(x, y, x+w, y+h),
			slices.Concat(geom.Rectangle(x, y, x+w, y+h)[3:], geom.Rectangle(x, y, x+w, y+h)[:3]),
			geom.Circle(at(x, y), h),
			anyConvex(t),
		} {
			fast, ok := closedForm(l, r)
			if !ok {
				continue
			}
			taken++
			general, err := pocket(l, r)
			if err != nil || len(fast) != len(general) || math.Abs(areaSum(fast)-areaSum(general)) > equal {
				t.Fatalf("%v, radius %g: %.6f in %d, otherwise %.6f in %d, %v", l, r, areaSum(fast),
					len(fast), areaSum(general), len(general), err)
			}
			soundLoops(t, fast, fit)
		}
	})
	if taken < 300 {
		t.Errorf("closed forms %d times", taken)
	}
}

// TestPath: (1) a straight path covers 2 r L + pi r²; (2) backward, and there
// and back, it is the same; (3) round a closed loop, what stays inside and what
// is covered outside are parts of the plane that add up: inside lies the loop's
// area less what is within r of it.
func TestPath(t *testing.T) {
	line := func(t *rapid.T, path []geom.Vertex, r float64) float64 {
		loops, err := Line(path, r)
		if err != nil {
			t.Fatalf("Line %v, %g: %v", path, r, err)
		}
		soundLoops(t, loops, same/2)
		return areaSum(loops)
	}
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(-2000, 2000)
		a, b := v(coordinate.Draw(t, "ax"), coordinate.Draw(t, "ay")), v(coordinate.Draw(t, "bx"),
			coordinate.Draw(t, "by"))
		r := rapid.Float64Range(0.5, 20).Draw(t, "r")
		if got, want := line(t, []geom.Vertex{a, b}, r), 2*r*a.To(b.Point)+math.Pi*r*r; math.Abs(got-want) > 1e-5 { // ends within 1e-7 are one
			t.Errorf("straight: %.9f, want %.9f", got, want)
		}

		l, r := anyLoop(t)
		whole := line(t, append(slices.Clone(l), l[0]), r)
		back := l.Reverse()
		if got := line(t, append(back, back[0]), r); math.Abs(got-whole) > equal {
			t.Errorf("%v, radius %g: %.6f, backward %.6f", l, r, whole, got)
		}
		if got := line(t, append(append(slices.Clone(l), l...), l[0]), r); math.Abs(got-whole) > equal {
			t.Errorf("%v, radius %g: %.6f, twice %.6f", l, r, whole, got)
		}
		part := l[:1+len(l)/2]
		once := line(t, part, r)
		if got := line(t, turnBack(part), r); math.Abs(got-once) > equal {
			t.Errorf("%v, radius %g: %.6f, there and back %.6f", part, r, once, got)
		}
	})
}

// turnBack is a path and the same way back.
func turnBack(path []geom.Vertex) []geom.Vertex {
	both := slices.Clone(path)
	for i := len(path) - 2; i >= 0; i-- {
		both[len(both)-1].Bulge = -path[i].Bulge
		both = append(both, geom.Vertex{Point: path[i].Point})
	}
	return both
}
