package kerf

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func codes(found []Finding) (list []geom.Code) {
	for _, f := range found {
		list = append(list, f.Code)
		if f.Fact.IsEmpty() || f.Ask.IsEmpty() {
			list = append(list, "no words")
		}
	}
	return list
}

// notch is a plate with an open slot of a width, 12 deep.
func notch(wide float64) geom.Loop {
	return geom.Polygon(geom.Point{}, geom.Point{X: 60}, geom.Point{X: 60, Y: 40}, geom.Point{X: 30 + wide, Y: 40}, geom.Point{X: 30 + wide, Y: 28}, geom.Point{X: 30, Y: 28}, geom.Point{X: 30, Y: 40}, geom.Point{Y: 40})
}

// tongue is a plate with a tongue of a width, 12 long.
func tongue(wide float64) geom.Loop {
	return geom.Polygon(geom.Point{}, geom.Point{X: 60}, geom.Point{X: 60, Y: 40}, geom.Point{X: 30 + wide, Y: 40}, geom.Point{X: 30 + wide, Y: 52}, geom.Point{X: 30, Y: 52}, geom.Point{X: 30, Y: 40}, geom.Point{Y: 40})
}

// TestFindings: each thing that can be wrong, alone.
func TestFindings(t *testing.T) {
	sheet := geom.Rectangle(0, 0, 100, 60)
	rect := geom.Rectangle
	neck := geom.Polygon(geom.Point{}, geom.Point{X: 40}, geom.Point{X: 40, Y: 9}, geom.Point{X: 50, Y: 9}, geom.Point{X: 50}, geom.Point{X: 90}, geom.Point{X: 90, Y: 20}, geom.Point{X: 50, Y: 20}, geom.Point{X: 50, Y: 10.5}, geom.Point{X: 40, Y: 10.5}, geom.Point{X: 40, Y: 20}, geom.Point{Y: 20})
	bay := geom.Polygon(geom.Point{}, geom.Point{X: 40}, geom.Point{X: 40, Y: 40}, geom.Point{X: 20.1, Y: 40}, geom.Point{X: 20.1, Y: 30}, geom.Point{X: 30, Y: 30}, geom.Point{X: 30, Y: 10}, geom.Point{X: 10, Y: 10}, geom.Point{X: 10, Y: 30}, geom.Point{X: 20, Y: 30}, geom.Point{X: 20, Y: 40}, geom.Point{Y: 40})
	for _, c := range []struct {
		name     string
		outline  geom.Loop
		openings []geom.Loop
		kerf, is float64
		want     []geom.Code
	}{
		{"nothing wrong", sheet, []geom.Loop{rect(10, 10, 12, 50), geom.Circle(geom.Point{X: 50, Y: 30}, 3)}, 0.2, 0, nil},
		{"a slot finer than the kerf", sheet, []geom.Loop{rect(10, 10, 10.15, 50)}, 0.2, 0, []geom.Code{Narrow}},
		// A slot 2 wide with a notch 0.1 wide and 5 deep: its 0.5 mm2 stay but for what the
		// round of the beam takes of its mouth.
		{"a part of a slot", sheet, []geom.Loop{geom.Polygon(geom.Point{X: 10, Y: 10}, geom.Point{X: 12, Y: 10}, geom.Point{X: 12, Y: 20}, geom.Point{X: 17, Y: 20}, geom.Point{X: 17, Y: 20.1}, geom.Point{X: 12, Y: 20.1}, geom.Point{X: 12, Y: 50}, geom.Point{X: 10, Y: 50})}, 0.2, 0, []geom.Code{Narrow}},
		{"an island", sheet, []geom.Loop{rect(10, 10, 50, 50), rect(20, 20, 30, 30)}, 0.2, 0, []geom.Code{FallsOut}},
		{"crossing", sheet, []geom.Loop{rect(10, 10, 50, 20), rect(20, 5, 30, 30)}, 0.2, 0, []geom.Code{Meets}},
		{"touching", sheet, []geom.Loop{rect(10, 10, 20, 20), rect(20, 20, 30, 30)}, 0.2, 0, []geom.Code{Meets}},
		{"over the edge", sheet, []geom.Loop{rect(90, 10, 110, 20)}, 0.2, 0, []geom.Code{Meets}},
		{"beyond it", sheet, []geom.Loop{rect(110, 10, 120, 20)}, 0.2, 0, []geom.Code{Outside}},
		{"a thin bridge", sheet, []geom.Loop{rect(10, 10, 20, 20), rect(21.5, 10, 30, 20)}, 0.2, 1.5, []geom.Code{Bridge}},
		{"a thin rim", sheet, []geom.Loop{rect(10, 0.75, 20, 20)}, 0.2, 0.75, []geom.Code{Bridge}},
		// Centers 9 apart, radii 5 and 3: 1 is left.
		{"between circles", sheet, []geom.Loop{geom.Circle(geom.Point{X: 30, Y: 30}, 5), geom.Circle(geom.Point{X: 39, Y: 30}, 3)}, 0, 1, []geom.Code{Bridge}},
		{"a neck", neck, nil, 0, MinBridge, []geom.Code{Neck}},
		// A room of 20 by 20 stays uncut, and the mouth of 0.1 by 10, but for a round end.
		{"a bay's mouth", bay, nil, 0.2, 0, []geom.Code{OpenMouth}},
		{"an open slot", notch(0.15), nil, 0.2, 0, []geom.Code{OpenMouth}},
		{"an open slot wide enough", notch(0.25), nil, 0.2, 0, nil},
		{"a tongue", tongue(1.5), nil, 0.2, MinBridge, []geom.Code{Neck}},
		{"a tongue wide enough", tongue(2.5), nil, 0.2, 0, nil},
		{"a loop that crosses itself", geom.Polygon(geom.Point{}, geom.Point{X: 10, Y: 10}, geom.Point{X: 10}, geom.Point{Y: 10}, geom.Point{X: -5, Y: 5}), nil, 0, 0, []geom.Code{Shape}},
	} {
		_, found := Compensate(Plate{Outline: c.outline, Openings: c.openings}, c.kerf)
		if got := codes(found); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, should be %q", c.name, got, c.want)
			continue
		}
		if c.is > 0 && math.Abs(float64(found[0].Measured.(geom.Millimeters))-c.is) > 1e-9 {
			t.Errorf("%s: measured %v, should be %g", c.name, found[0].Measured, c.is)
		}
	}
}

// TestAsDrawn: without a kerf the lines are the plate's own.
func TestAsDrawn(t *testing.T) {
	p := Plate{Outline: geom.Rectangle(0, 0, 50, 50), Openings: []geom.Loop{geom.Rectangle(10, 10, 20, 20)}}
	got, found := Compensate(p, 0)
	if len(found) > 0 || !slices.Equal(got.Outline, p.Outline) || len(got.Openings) != 1 || !slices.Equal(got.Openings[0], p.Openings[0]) {
		t.Errorf("%v %v", got, found)
	}
}

// TestAreas: the outline grows by k/2 all round with round corners, an opening shrinks:
// (w+k)(h+k) - (4-pi) k^2/4 and (w-k)(h-k).
func TestAreas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.05, 3).Draw(t, "kerf")
		w, h := rapid.Float64Range(4, 40).Draw(t, "w"), rapid.Float64Range(4, 40).Draw(t, "h")
		got, found := Compensate(Plate{Outline: geom.Rectangle(0, 0, 100, 80), Openings: []geom.Loop{geom.Rectangle(20, 20, 20+w, 20+h)}}, k)
		if len(found) > 0 {
			t.Fatal(found)
		}
		if want := (100+k)*(80+k) - (4-math.Pi)*k*k/4; math.Abs(got.Outline.Area()-want) > 1e-6 {
			t.Fatalf("outline of %g, should be %g", got.Outline.Area(), want)
		}
		if want := (w - k) * (h - k); len(got.Openings) != 1 || math.Abs(got.Openings[0].Area()-want) > 1e-6 {
			t.Fatalf("opening of %v, should be %g", got.Openings, want)
		}
	})
}

// TestDistance: against the least of many places on both loops, which is never less
// and little more.
func TestDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loop := func(x float64) geom.Loop {
			var l geom.Loop
			n := rapid.IntRange(3, 7).Draw(t, "n")
			for i := range n {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
				far := rapid.Float64Range(5, 20).Draw(t, "far")
				l = append(l, geom.Vertex{Point: geom.Point{X: x + far*cos, Y: far * sin}, Bulge: rapid.SampledFrom([]float64{0, 0, 0.3, -0.3, 0.8}).Draw(t, "bulge")})
			}
			return l
		}
		a, b := loop(0), loop(rapid.Float64Range(20, 70).Draw(t, "x"))
		got, at := Distance(a, b)
		p, q := dense(a), dense(b)
		least, off := math.Inf(1), math.Inf(1)
		for _, v := range p {
			off = min(off, v.To(at))
			for _, w := range q {
				least = min(least, v.To(w))
			}
		}
		// Places are less than a fifth of a millimeter from the next, and on chords that
		// are up to a thousandth off their arcs, on both loops.
		if got > least+2e-3 || got < least-0.2 || off > 0.2 {
			t.Fatalf("%g at %v, which is %g off; by many places %g", got, at, off, least)
		}
	})
}

// dense are places along a loop.
func dense(l geom.Loop) (list []geom.Point) {
	ring := l.Flatten(1e-3)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		n := int(a.To(b)/0.15) + 1
		for k := range n {
			u := float64(k) / float64(n)
			list = append(list, geom.Point{X: a.X + u*(b.X-a.X), Y: a.Y + u*(b.Y-a.Y)})
		}
	}
	return list
}
