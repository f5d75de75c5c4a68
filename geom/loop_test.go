package geom

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.9f, want %.9f", what, got, want)
	}
}

// TestLoopOracles: areas and perimeters in closed form; the first two polygons
// are published worked examples of the shoelace formula (3,4)(5,11)(12,8)(9,5)(5,6):
// 30, clockwise, a public task's answer; the second's points are a lesson's, its
// area computed.
func TestLoopOracles(t *testing.T) {
	p := func(x, y float64) Point { return Point{x, y} }
	for name, c := range map[string]struct {
		loop            Loop
		area, perimeter float64
	}{
		"shoelace 1":        {Polygon(p(3, 4), p(5, 11), p(12, 8), p(9, 5), p(5, 6)), -30, -1},
		"shoelace 2":        {Polygon(p(5, 3), p(2, 4), p(-3, 2), p(1, -2), p(4, -1)), 29, -1},
		"L shape":           {Polygon(p(0, 0), p(100, 0), p(100, 40), p(60, 40), p(60, 80), p(0, 80)), 6400, 360},
		"rounded rectangle": {RoundedRectangle(0, 0, 100, 60, 10), 5914.159265, 302.831853},
		"slot":              {RoundedRectangle(0, 0, 100, 20, 10), 1914.159265, 222.831853},
		"upright slot":      {RoundedRectangle(0, 0, 20, 100, 99), 1914.159265, 222.831853},
		"circle":            {Circle(p(7, -3), 10), 100 * math.Pi, 20 * math.Pi},
		// Chord 10, quarter turn: r 7.071068, segment area 14.269908 (computed).
		"circle segment": {Loop{{Point: p(0, 0), Bulge: math.Tan(math.Pi / 8)}, {Point: p(10, 0), Bulge: 0}}, 14.269908, 10 + 7.0710678*math.Pi/2},
		"bite":           {Loop{{Point: p(0, 0), Bulge: -1}, {Point: p(10, 0), Bulge: 0}, {Point: p(10, 20), Bulge: 0}, {Point: p(0, 20), Bulge: 0}}, 200 - math.Pi*25/2, 50 + 5*math.Pi},
	} {
		t.Run(name, func(t *testing.T) {
			within(t, "area", c.loop.Area(), c.area, 1e-6)
			if c.perimeter >= 0 {
				within(t, "perimeter", c.loop.Perimeter(), c.perimeter, 1e-6)
			}
			within(t, "area reversed", c.loop.Reverse().Area(), -c.area, 1e-6)
			within(t, "area turned over", c.loop.TurnOver(500).Area(), c.area, 1e-6)
		})
	}
}

func TestBounds(t *testing.T) {
	for name, c := range map[string]struct {
		loop Loop
		want Rect
	}{
		"empty":   {nil, Rect{}},
		"circle":  {Circle(Point{7, -3}, 10), Rect{Point{-3, -13}, Point{17, 7}}},
		"rounded": {RoundedRectangle(1, 2, 100, 60, 10), Rect{Point{1, 2}, Point{100, 60}}},
		// A half turn below the chord reaches 5 down, clockwise 5 up.
		"half turn": {Loop{{Point: Point{0, 0}, Bulge: 1}, {Point: Point{10, 0}, Bulge: 0}}, Rect{Point{0, -5}, Point{10, 0}}},
		"clockwise": {Loop{{Point: Point{0, 0}, Bulge: -1}, {Point: Point{10, 0}, Bulge: 0}}, Rect{Point{0, 0}, Point{10, 5}}},
		"over half": {Loop{{Point: Point{0, 0}, Bulge: math.Tan(3 * math.Pi / 8)}, {Point: Point{10, 0}, Bulge: 0}}, Rect{Point{5 - 5*math.Sqrt2, -5 - 5*math.Sqrt2}, Point{5 + 5*math.Sqrt2, 0}}},
	} {
		got := c.loop.Bounds()
		for i, d := range []float64{got.Min.X - c.want.Min.X, got.Min.Y - c.want.Min.Y, got.Max.X - c.want.Max.X, got.Max.Y - c.want.Max.Y} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("%s: bounds %v, want %v (%d)", name, got, c.want, i)
			}
		}
	}
}

// TestFlattenKeepsTolerance: chords' middles, where they are furthest from the
// arc, are within the tolerance; points lie on the circle.
func TestFlattenKeepsTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tolerance := rapid.Float64Range(0.001, 2).Draw(t, "tolerance")
		r := rapid.Float64Range(0.5, 300).Draw(t, "r")
		points := Circle(Point{10, 20}, r).Flatten(tolerance)
		if len(points) < 4 {
			t.Fatalf("a circle of %d points", len(points))
		}
		for i, p := range points {
			q := points[(i+1)%len(points)]
			middle := Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2}
			if off := r - middle.To(Point{10, 20}); len(points) > 4 && (off > tolerance*(1+1e-9) || off < 0) {
				t.Fatalf("a chord is off by %g, tolerance %g", off, tolerance)
			}
			if d := math.Abs(p.To(Point{10, 20}) - r); d > 1e-9 {
				t.Fatalf("point off the circle by %g", d)
			}
		}
	})
}

// TestFlattenEnds: a tolerance that cannot be kept, and an arc that is none.
func TestFlattenEnds(t *testing.T) {
	for _, tolerance := range []float64{0, -1, math.NaN(), 1e-300} {
		if n := len(Circle(Point{}, 500).Flatten(tolerance)); n != 2*maxChords {
			t.Errorf("tolerance %g: %d points", tolerance, n)
		}
	}
	flat := Loop{{Point: Point{0, 0}, Bulge: 1e-13}, {Point: Point{1000, 0}, Bulge: 0}, {Point: Point{1000, 100}, Bulge: 0}, {Point: Point{0, 100}, Bulge: 0}}
	if n := len(flat.Flatten(0.01)); n != 4 || flat.Bounds() != (Rect{Point{0, 0}, Point{1000, 100}}) {
		t.Errorf("a sagitta of 5e-11 mm makes %d points within %v", n, flat.Bounds())
	}
	if v := (Panel{Outline: flat, Thickness: 12}).Check(); len(v) != 0 {
		t.Errorf("%+v", v)
	}
}

func TestLeastInsideRadius(t *testing.T) {
	for _, c := range []struct {
		name string
		loop Loop
		want float64
	}{
		{"square corners", Rectangle(0, 0, 10, 5), math.Inf(1)},
		{"rounded corners", RoundedRectangle(0, 0, 30, 20, 4), 4},
		{"circle", Circle(Point{3, 4}, 2.5), 2.5},
		{"the same seen from outside", Circle(Point{3, 4}, 2.5).Reverse(), math.Inf(1)},
	} {
		if got := c.loop.MinInsideRadius(); math.Abs(got-c.want) > 1e-9 && got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

func TestAsCircle(t *testing.T) {
	if c, r, ok := Circle(Point{3, 4}, 5).TurnOver(100).AsCircle(); !ok || c != (Point{97, 4}) || r != 5 {
		t.Errorf("turned over: %v %g %t", c, r, ok)
	}
	if _, _, ok := (Loop{{Point: Point{0, 0}, Bulge: 1}, {Point: Point{10, 0}, Bulge: 0}}).AsCircle(); ok {
		t.Error("half a disc is a circle")
	}
}
