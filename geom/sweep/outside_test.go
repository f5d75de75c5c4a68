package sweep

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

// slotted is 100 by 50 with a slot of a width and 20 deep in its upper side.
func slotted(width float64) geom.Loop {
	return geom.Polygon(at(0, 0), at(100, 0), at(100, 50), at(50+width/2, 50), at(50+width/2, 30),
		at(50-width/2, 30), at(50-width/2, 50), at(0, 50))
}

// bayed is 100 by 50 with a bay of 20 by 20 behind a mouth 10 long.
func bayed(mouth float64) geom.Loop {
	return geom.Polygon(at(0, 0), at(100, 0), at(100, 50), at(50+mouth/2, 50), at(50+mouth/2, 40),
		at(60, 40), at(60, 20),
		at(40, 20), at(40, 40), at(50-mouth/2, 40), at(50-mouth/2, 50), at(0, 50))
}

// TestOutside compares with closed forms; the disc of radius 5 leaves 5.365 mm2
// in a square corner.
func TestOutside(t *testing.T) {
	const r = 5
	square := corner(r)
	for name, c := range map[string]struct {
		loop geom.Loop
		r    float64
		area float64
	}{
		"L":                         {ell(), r, 6400 + square},
		"L turned":                  {turned(ell(), 2), r, 6400 + square},
		"L, large disc":             {ell(), 30, 6400 + corner(30)},
		"slot wider":                {slotted(12), r, 5000 - 12*20 + 2*square},
		"slot as the disc":          {slotted(10), r, 5000 - 10*20 + 2*square},
		"slot 1e-6 mm narrower":     {slotted(10 - 0.99e-6), r, 5000 - 10*20 + 2*square},
		"slot 2e-6 mm narrower":     {slotted(10 - 2e-6), r, 5000 - segment(r, 10-2e-6)},
		"slot narrower":             {slotted(6), r, 5000 - segment(r, 6)},
		"bay behind a wide mouth":   {bayed(10), r, 5000 - 100 - 400 + 4*square},
		"bay behind a narrow mouth": {bayed(8), r, 5000 - segment(r, 8)},
		"smooth":                    {geom.Loop{v(0, 0), v(100, 0), v(100, 50), v(70, 50, -1), v(30, 50), v(0, 50)}, r, 5000 - 200*math.Pi},
		// Pointed teeth 8 apart: the funnel above them is 28 wide at its top and 5 deep.
		"bay behind pointed teeth": {geom.Polygon(at(0, 0), at(100, 0), at(100, 50), at(64, 50), at(54, 45), at(60, 40), at(60, 20),
			at(40, 20), at(40, 40), at(46, 45), at(36, 50), at(0, 50)), r, 5000 - 90 - segment(r, 8)},
		"a bite as the disc": {geom.Loop{v(0, 0), v(100, 0), v(100, 50), v(55, 50, -1), v(45, 50), v(0, 50)}, r, 5000 - 12.5*math.Pi},
		"a bite of less":     {geom.Loop{v(0, 0), v(100, 0), v(100, 50), v(54, 50, -1), v(46, 50), v(0, 50)}, r, 5000 - segment(r, 8)},
		"radius 0":           {ell(), 0, 6400},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Outside(c.loop, c.r)
			if err != nil {
				t.Fatal(err)
			}
			tolerance := 5e-5
			if name == "slot 2e-6 mm narrower" {
				tolerance = 0.01 // the disc's place in the mouth hangs on the last millionth
			}
			if d := got.Area() - c.area; math.Abs(d) > tolerance {
				t.Errorf("area %.6f, want %.6f: %v", got.Area(), c.area, got)
			}
			soundLoops(t, []geom.Loop{got}, fit)
		})
	}
}

// TestOutsideItself: convex outlines, and others that a disc reaches all of.
func TestOutsideItself(t *testing.T) {
	for name, l := range map[string]geom.Loop{
		"rectangle": geom.Rectangle(0, 0, 100, 50),
		"rounded":   turned(geom.RoundedRectangle(0, 0, 100, 50, 3), 1),
		"circle":    geom.Circle(at(3, 4), 2),
		"smooth":    {v(0, 0), v(100, 0), v(100, 50), v(70, 50, -1), v(30, 50), v(0, 50)},
		"as round":  {v(0, 0), v(100, 0), v(100, 50), v(55, 50, -1), v(45, 50), v(0, 50)},
	} {
		got, err := Outside(l, 5)
		if err != nil || !slices.Equal(got, l) {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
}
