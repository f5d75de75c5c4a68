package sweep

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

// TestLine compares with closed forms.
func TestLine(t *testing.T) {
	const r = 5
	disc := math.Pi * r * r
	ring := []geom.Vertex{v(0, 0), v(100, 0), v(100, 50), v(0, 50), v(0, 0)}
	for name, c := range map[string]struct {
		path  []geom.Vertex
		r     float64
		loops int
		area  float64
	}{
		"nothing":         {nil, r, 0, 0},
		"a point":         {[]geom.Vertex{v(3, 4, 7)}, r, 1, disc},
		"a point twice":   {[]geom.Vertex{v(3, 4), v(3, 4, 1)}, r, 1, disc},
		"radius 0":        {ring, 0, 0, 0},
		"straight":        {[]geom.Vertex{v(10, 20), v(110, 20)}, r, 1, 1000 + disc},
		"slanted":         {[]geom.Vertex{v(1, 2), v(61, 82)}, r, 1, 1000 + disc},
		"in two":          {[]geom.Vertex{v(1, 2), v(31, 42), v(61, 82)}, r, 1, 1000 + disc},
		"there and back":  {[]geom.Vertex{v(1, 2), v(61, 82), v(1, 2)}, r, 1, 1000 + disc},
		"partly back":     {[]geom.Vertex{v(0, 0), v(100, 0), v(30, 0), v(80, 0)}, r, 1, 1000 + disc},
		"back and beyond": {[]geom.Vertex{v(0, 0), v(60, 0), v(-40, 0)}, r, 1, 1000 + disc},
		// Around the corner a quarter of a disc, inside it r² twice.
		"square corner": {[]geom.Vertex{v(0, 0), v(100, 0), v(100, 50)}, r, 1, 1500 - 25 + 1.25*disc},
		// A band of 2 r along the arc of 90 degrees about a radius of 40.
		"quarter turn": {[]geom.Vertex{v(0, 0, math.Tan(math.Pi/8)), v(40, 40)}, r, 1, 10*20*math.Pi + disc},
		// The other way round, and all but closed: the last bulge has no meaning.
		"half turn, clockwise": {[]geom.Vertex{v(0, 0, -1), v(40, 0, 1)}, r, 1, 10*20*math.Pi + disc},
		// The radius of the arc is that of the disc: the inner side is a point, and
		// what is covered is a half disc of 10 and the halves of two discs of 5.
		"half turn as the disc": {[]geom.Vertex{v(0, 0, 1), v(10, 0)}, r, 1, 50*math.Pi + disc},
		"round a rectangle":     {ring, r, 2, 110*60 - 4*corner(r) - 90*40},
		"and once more":         {slices.Concat(ring, ring[1:]), r, 2, 110*60 - 4*corner(r) - 90*40},
		// Discs along two sides touch in the middle, and nothing stays between.
		"round a narrow one": {[]geom.Vertex{v(0, 0), v(100, 0), v(100, 10), v(0, 10), v(0, 0)}, r, 1, 110*20 - 4*corner(r)},
		"a little less so":   {[]geom.Vertex{v(0, 0), v(100, 0), v(100, 10.001), v(0, 10.001), v(0, 0)}, r, 2, 110*20.001 - 4*corner(r) - 90*0.001},
		// Three corners, and 10 by 10 that are crossed.
		"a cross":             {[]geom.Vertex{v(0, 0), v(100, 0), v(100, 50), v(50, 50), v(50, -50)}, r, 2, 3000 - 3*25 - 100 + 1.75*disc},
		"a circle in two":     {[]geom.Vertex{v(20, 0, 1), v(-20, 0, 1), v(20, 0)}, r, 2, math.Pi * (25*25 - 15*15)},
		"almost a circle":     {[]geom.Vertex{v(20, 0, math.Tan((2*math.Pi-0.001)/4)), v(20*math.Cos(0.001), -20*math.Sin(0.001))}, r, 2, math.Pi * (25*25 - 15*15)},
		"a far too large arc": {[]geom.Vertex{v(0, 0, 1e-5), v(2000, 0)}, r, 1, 20000 + disc},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Line(c.path, c.r)
			if err != nil || len(got) != c.loops {
				t.Fatalf("%d loops, %v; want %d: %v", len(got), err, c.loops, got)
			}
			if d := areaSum(got) - c.area; math.Abs(d) > 1e-5 {
				t.Errorf("area %.6f, want %.6f", areaSum(got), c.area)
			}
			soundLoops(t, got, same)
		})
	}
}

// TestLineSides: two sides and two half turns, no more.
func TestLineSides(t *testing.T) {
	got, err := Line([]geom.Vertex{v(0, 0), v(40, 0), v(100, 0)}, 5)
	if err != nil || len(got) != 1 || len(got[0]) > 6 || got[0].MinInsideRadius() < 5-1e-9 {
		t.Errorf("%v, %v", got, err)
	}
}
