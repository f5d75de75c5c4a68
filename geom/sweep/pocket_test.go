package sweep

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

// teeth is a disc of radius 100 with three thin teeth whose tips are the corners
// of a triangle about its middle, 2 r sin(a) wide.
func teeth(r, a float64) geom.Loop {
	tip := 2 * r * math.Sin(a) / math.Sqrt(3)
	var l geom.Loop
	for k := range 3 {
		middle := 2 * math.Pi * float64(k) / 3
		for _, d := range [...]float64{-0.005, 0, 0.005} {
			sin, cos := math.Sincos(middle + d)
			far, bulge := 100.0, 0.0
			if d == 0 {
				far = tip
			} else if d > 0 {
				bulge = math.Tan((2*math.Pi/3 - 0.01) / 4)
			}
			l = append(l, v(far*cos, far*sin, bulge))
		}
	}
	return l
}

// TestPocket compares with closed forms. The disc of radius 5 leaves 5.365 mm2
// in a square corner.
func TestPocket(t *testing.T) {
	const r = 5
	square := corner(r)
	// A disc of radius 5 leaves r² (cot(w/2) - (pi - w)/2) in a corner of angle w.
	sharp := func(w float64) float64 { return r * r * (1/math.Tan(w/2) - (math.Pi-w)/2) }
	// The leg of the L between y = 0 and y = 40 is too narrow for a radius of 21:
	// the disc is stuck with its middle 21 above y = 0 and 21 from (60, 40), which
	// is d before x = 60. It reaches a segment of its circle beyond that, whose
	// chord is 38, and there is a rest under it from its touching y = 0 on.
	d := math.Sqrt(21*21 - 19*19)
	under := 21*d - (21*21*math.Asin(d/21)+d*19)/2
	stuck := 60*80 - 3*corner(21) + segment(21, 38) - under
	// Between a straight side and a half turn of radius 20 about a point of it, the
	// disc's middle is 25 from that point. What it leaves is the triangle of the
	// point, its middle and where it touches the side, less a sector of both.
	slope := math.Asin(5.0 / 25)
	beside := math.Sqrt(25*25-5*5)*5/2 - 200*slope - 12.5*(math.Pi/2-slope)
	triangle := geom.Polygon(at(0, 0), at(40, 0), at(0, 30))
	stadium := geom.RoundedRectangle(0, 0, 60, 20, 10)

	for name, c := range map[string]struct {
		loop        geom.Loop
		r           float64
		loops       int
		area        float64
		radiusBelow bool // fillets of a little less than r
	}{
		"rectangle":               {geom.Rectangle(10, 20, 110, 70), r, 1, 5000 - 4*square, false},
		"rectangle from a corner": {geom.Polygon(at(110, 20), at(110, 70), at(10, 70), at(10, 20)), r, 1, 5000 - 4*square, false},
		// A corner cut off by 1: the disc is 6.4 - 5 away from there.
		"a rest of a side":         {geom.Polygon(at(0, 0), at(100, 0), at(100, 49), at(99, 50), at(0, 50)), r, 1, 5000 - 4*square, false},
		"and as the last":          {geom.Polygon(at(99, 50), at(0, 50), at(0, 0), at(100, 0), at(100, 49)), r, 1, 5000 - 4*square, false},
		"and as the one before":    {geom.Polygon(at(100, 49), at(99, 50), at(0, 50), at(0, 0), at(100, 0)), r, 1, 5000 - 4*square, false},
		"rectangle turned":         {turned(geom.Rectangle(10, 20, 110, 70), 0.7), r, 1, 5000 - 4*square, false},
		"slot as wide as the disc": {geom.Rectangle(0, 0, 100, 10), r, 1, 900 + 25*math.Pi, false},
		"and turned":               {turned(geom.Rectangle(0, 0, 100, 10), 0.7), r, 1, 900 + 25*math.Pi, true},
		"1e-6 mm narrower":         {geom.Rectangle(0, 0, 100, 10-0.99e-6), r, 1, 900 - 90*0.99e-6 + 25*math.Pi, true},
		"turned and narrower":      {turned(geom.Rectangle(0, 0, 100, 10-0.99e-6), 0.7), r, 1, 900 - 90*0.99e-6 + 25*math.Pi, true},
		"2e-6 mm narrower":         {geom.Rectangle(0, 0, 100, 10-2e-6), r, 0, 0, false},
		"turned and 2e-6 narrower": {turned(geom.Rectangle(0, 0, 100, 10-2e-6), 0.7), r, 0, 0, false},
		"square as the disc":       {geom.Rectangle(0, 0, 10, 10), r, 1, 25 * math.Pi, false},
		"the disc":                 {geom.Circle(at(3, 4), r), r, 1, 25 * math.Pi, false},
		"less than the disc":       {geom.Circle(at(3, 4), r-2e-6), r, 0, 0, false},
		"radius 0":                 {ell(), 0, 1, 6400, false},
		"a far larger disc":        {ell(), 1e300, 0, 0, false},
		"L":                        {ell(), r, 1, 6400 - 5*square, false},
		"L, the disc fits a leg":   {ell(), 20, 1, 6400 - 5*corner(20), true},
		"L, one leg is too narrow": {ell(), 21, 1, stuck, false},
		"neck wider":               {bells(12), r, 1, 1800 + 120 - 8*square, false},
		"neck as the disc":         {bells(10), r, 1, 1800 + 100 - 8*square, true},
		"neck 1e-6 mm narrower":    {bells(10 - 0.99e-6), r, 1, 1800 + 100 - 8*square, true},
		"neck 2e-6 mm narrower":    {bells(10 - 2e-6), r, 2, 1800 + 2*segment(r, 10-2e-6) - 8*square, false},
		"neck narrower":            {bells(8), r, 2, 1800 + 2*segment(r, 8) - 8*square, false},
		"one relief": {
			geom.Loop{v(6*math.Sqrt2, 0), v(100, 0), v(100, 50), v(0, 50), v(0, 6*math.Sqrt2, 1)}, r, 1,
			5000 + 18*math.Pi - 36 - 3*square, false},
		"reliefs":                         {relieved(100, 50, 6), r, 1, 5000 + 4*(18*math.Pi-36), false},
		"reliefs as the disc":             {relieved(100, 50, 5), r, 1, 5000 + 4*(12.5*math.Pi-25), true},
		"triangle":                        {triangle, r, 1, 600 - sharp(math.Pi/2) - sharp(math.Atan(0.75)) - sharp(math.Atan(4.0/3)), false},
		"triangle about the disc":         {triangle, 10, 1, 100 * math.Pi, true},
		"half turns":                      {stadium, r, 1, 800 + 100*math.Pi, false},
		"half turns as the disc":          {stadium, 10, 1, 800 + 100*math.Pi, true},
		"quarter turns, 1e-6 mm narrower": {geom.RoundedRectangle(0, 0, 10-1e-6, 10-1e-6, 5), r, 1, 25 * math.Pi, true},
		"quarter turns, 3e-6 mm narrower": {geom.RoundedRectangle(0, 0, 10-3e-6, 10-3e-6, 5), r, 0, 0, false},
		"half turns less":                 {stadium, 10.01, 0, 0, false},
		"smaller fillets are there":       {geom.RoundedRectangle(0, 0, 100, 50, 3), r, 1, 5000 - 4*square, false},
		"larger fillets are there":        {geom.RoundedRectangle(0, 0, 100, 50, 8), r, 1, 5000 - 4*corner(8), false},
		"a bite into the middle":          {geom.Loop{v(0, 0), v(100, 0), v(100, 50), v(70, 50, -1), v(30, 50), v(0, 50)}, r, 1, 5000 - 200*math.Pi - 4*square - 2*beside, false},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Pocket(c.loop, c.r)
			if err != nil || len(got) != c.loops {
				t.Fatalf("%d loops, %v; want %d: %v", len(got), err, c.loops, got)
			}
			if d := areaSum(got) - c.area; math.Abs(d) > 5e-5 {
				t.Errorf("area %.6f, want %.6f", areaSum(got), c.area)
			}
			soundLoops(t, got, fit)
			least := math.Inf(1)
			for _, l := range got {
				least = math.Min(least, l.MinInsideRadius())
			}
			if slack := 1e-9 + map[bool]float64{true: fit}[c.radiusBelow]; c.r > 0 && least < c.r-slack {
				t.Errorf("an inside radius of %.9f", least)
			}
		})
	}
}

// TestIsland: stuck between two teeth, the disc's middle is r cos(a) behind the
// line that joins their tips; discs from two sides meet on the tooth between
// them, at the distance t from the middle. The chords of the three discs between
// such places are a triangle; the island lies in it.
func TestIsland(t *testing.T) {
	const r, a = 5, 40 * math.Pi / 180
	got, err := Pocket(teeth(r, a), r)
	if err != nil || len(got) != 2 {
		t.Fatalf("%d loops, %v", len(got), err)
	}
	soundLoops(t, got, fit)
	far := r*math.Cos(a) - r*math.Sin(a)/math.Sqrt(3)
	want := -(3*math.Sqrt(3)/4*far*far - 3*segment(r, far*math.Sqrt(3)))
	if math.Abs(got[1].Area()-want) > 1e-6 {
		t.Errorf("an island of %.6f, want %.6f", got[1].Area(), want)
	}
	// With wider gaps the discs meet in the middle.
	if got, err := Pocket(teeth(r, 65*math.Pi/180), r); err != nil || len(got) != 1 {
		t.Errorf("wide: %d loops, %v", len(got), err)
	}
}

// TestFlatArc: of a rectangle whose upper side is an arc of 25 km it leaves what
// it leaves of every square corner; the arc is a sagitta of 0.02 high, two thirds
// of which along 2000 are 26.7 mm2.
func TestFlatArc(t *testing.T) {
	l := geom.Loop{v(0, 0), v(2000, 0), v(2000, 100, 2e-5), v(0, 100)}
	got, err := Pocket(l, 5)
	if want := 200000 + 2.0/3*0.02*2000 - 4*corner(5); err != nil || len(got) != 1 || math.Abs(areaSum(got)-want) > 0.02 {
		t.Errorf("%d loops of %.5f, want %.5f; %v", len(got), areaSum(got), want, err)
	}
}

// TestPocketItself: where nothing is to be rounded, the result is the loop.
func TestPocketItself(t *testing.T) {
	for name, l := range map[string]geom.Loop{
		"circle":             geom.Circle(at(3, 4), 9),
		"reliefs":            relieved(100, 50, 6),
		"rounded rectangle":  geom.RoundedRectangle(0, 0, 100, 50, 8),
		"just as round":      geom.RoundedRectangle(0, 0, 100, 50, 5),
		"rounded and turned": turned(geom.RoundedRectangle(0, 0, 100, 50, 8), 0.3),
		"slot":               geom.RoundedRectangle(0, 0, 100, 10, 5),
	} {
		got, err := Pocket(l, 5)
		if err != nil || len(got) != 1 || !slices.Equal(got[0], l) {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
}
