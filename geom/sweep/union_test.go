package sweep

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func areas(loops []geom.Loop) (sum float64) {
	for _, l := range loops {
		sum += l.Area()
	}
	return sum
}

// TestUnion: closed forms.
func TestUnion(t *testing.T) {
	r := geom.Rectangle
	relieved := geom.Loop{{Point: geom.Point{}}, {Point: geom.Point{X: 100}}, {Point: geom.Point{X: 100, Y: 10}, Bulge: 0}, {Point: geom.Point{X: 4, Y: 10}, Bulge: 1}, {Point: geom.Point{Y: 10}}}
	for name, c := range map[string]struct {
		loops   []geom.Loop
		outer   int
		islands int
		area    float64
	}{
		"apart":                {[]geom.Loop{r(0, 0, 10, 10), r(11, 0, 20, 10)}, 2, 0, 190},
		"over each other":      {[]geom.Loop{r(0, 0, 10, 10), r(6, 2, 20, 8)}, 1, 0, 100 + 10*6},
		"edge to edge":         {[]geom.Loop{r(0, 0, 10, 10), r(10, 0, 20, 10)}, 1, 0, 200},
		"a step on an edge":    {[]geom.Loop{r(0, 0, 10, 10), r(10, 2, 20, 8)}, 1, 0, 160},
		"in line":              {[]geom.Loop{r(0, 0, 10, 10), r(8, 0, 20, 10), r(19, 0, 30, 10)}, 1, 0, 300},
		"the same twice":       {[]geom.Loop{r(0, 0, 10, 10), r(0, 0, 10, 10)}, 1, 0, 100},
		"within":               {[]geom.Loop{r(0, 0, 10, 10), r(2, 2, 4, 4)}, 1, 0, 100},
		"within, on an edge":   {[]geom.Loop{r(2, 0, 4, 4), r(0, 0, 10, 10)}, 1, 0, 100},
		"a cross":              {[]geom.Loop{r(0, 4, 10, 6), r(4, 0, 6, 10)}, 1, 0, 36},
		"corner to corner":     {[]geom.Loop{r(0, 0, 10, 10), r(10, 10, 20, 20)}, 2, 0, 200},
		"a frame":              {[]geom.Loop{r(0, 0, 40, 5), r(35, 0, 40, 30), r(0, 25, 40, 30), r(0, 0, 5, 30)}, 1, 1, 1200 - 30*20},
		"a relieved corner":    {[]geom.Loop{relieved, r(90, -3, 130, 7)}, 1, 0, 1000 + 2*math.Pi + 40*10 - 10*7},
		"over a round":         {[]geom.Loop{geom.Circle(geom.Point{}, 5), r(0, -5, 20, 5)}, 1, 0, 12.5*math.Pi + 200},
		"two rounds that meet": {[]geom.Loop{geom.Circle(geom.Point{}, 5), geom.Circle(geom.Point{X: 5}, 5)}, 1, 0, 50*math.Pi - 25*(2*math.Pi/3-math.Sqrt(3)/2)},
	} {
		for range 2 { // whatever the order
			got, err := Union(c.loops)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			outer, islands := 0, 0
			for _, l := range got {
				if l.Area() > 0 {
					outer++
				} else {
					islands++
				}
			}
			if outer != c.outer || islands != c.islands || math.Abs(areas(got)-c.area) > 1e-6 {
				t.Errorf("%s: %d outlines, %d islands, %g mm2; want %d, %d, %g: %v", name, outer,
					islands, areas(got), c.outer, c.islands, c.area, got)
			}
			slices.Reverse(c.loops)
		}
	}
	// Arcs stay arcs, and what goes on straight has no corner.
	got, _ := Union([]geom.Loop{r(0, 0, 10, 10), r(8, 0, 20, 10)})
	if len(got) != 1 || len(got[0]) != 4 {
		t.Errorf("two in line: %v", got)
	}
	got, _ = Union([]geom.Loop{relieved, r(90, -3, 130, 7)})
	if n := slices.IndexFunc(got[0], func(v geom.Vertex) bool { return v.Bulge != 0 }); n < 0 || math.Abs(got[0][n].Bulge-1) > 1e-9 {
		t.Errorf("the relief is no half circle: %v", got)
	}
}

// TestAnyUnion: a point is in the union if it is in one of the loops, and the outlines of
// the union do not meet.
func TestAnyUnion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []geom.Loop
		on := rapid.SampledFrom([]float64{0.01, 1, 5}).Draw(t, "grid") // so that edges lie on each other
		place := func(name string) float64 { return on * float64(rapid.IntRange(0, int(60/on)).Draw(t, name)) }
		for range rapid.IntRange(2, 9).Draw(t, "loops") {
			x, y, w, h := place("x"), place("y"), on+place("w")/2, on+place("h")/2
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				list = append(list, geom.RoundedRectangle(x, y, x+w, y+h, min(w, h)/3))
			case 1:
				list = append(list, geom.Circle(geom.Point{X: x, Y: y}, w))
			default:
				list = append(list, geom.Rectangle(x, y, x+w, y+h))
			}
		}
		got, err := Union(list)
		if err != nil {
			t.Fatal(err)
		}
		shapesOf := func(loops []geom.Loop) (all []shape) {
			for _, l := range loops {
				sides, err := sidesOf(l, true)
				if err != nil {
					t.Fatal(err)
				}
				all = append(all, shape{sides, l.Bounds()})
			}
			return all
		}
		in, out := shapesOf(list), shapesOf(got)
		for range 60 {
			p := geom.Point{X: rapid.Float64Range(-40, 130).Draw(t, "px"), Y: rapid.Float64Range(-40, 130).Draw(t, "py")}
			inside, near := false, false
			for _, s := range in {
				inside = inside || s.place(p) > 0
				for i := range s.sides {
					near = near || s.sides[i].distance(p) < 1e-5
				}
			}
			covered := 0
			for _, s := range out {
				if s.place(p) > 0 {
					covered++
				}
			}
			if !near && inside != (covered%2 == 1) {
				t.Fatalf("%v is in one of the loops: %t; in %d outlines of %v", p, inside, covered, got)
			}
		}
		for i, a := range out {
			for _, b := range out[i+1:] {
				if overlap(a, b) || overlap(b, a) {
					t.Fatalf("outlines overlap: %v", got)
				}
			}
		}
	})
}

// overlap reports whether the outline of one shape runs within the other and outside it.
func overlap(a, b shape) bool {
	in, out := false, false
	for i := range b.sides {
		for k := range 7 {
			switch a.place(b.sides[i].at(b.sides[i].length * float64(k+1) / 8)) {
			case 1:
				in = true
			case -1:
				out = true
			}
		}
	}
	return in && out
}
