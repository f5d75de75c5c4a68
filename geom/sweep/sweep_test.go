package sweep

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/internal/planar"
)

func at(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }

// v is a vertex; its bulge is left out where it is 0.
func v(x, y float64, bulge ...float64) geom.Vertex {
	w := geom.Vertex{Point: at(x, y)}
	if len(bulge) > 0 {
		w.Bulge = bulge[0]
	}
	return w
}

func areaSum(loops []geom.Loop) float64 {
	sum := 0.0
	for _, l := range loops {
		sum += l.Area()
	}
	return sum
}

// segment is the area that a chord cuts off a disc.
func segment(r, chord float64) float64 {
	half := math.Asin(chord / 2 / r)
	return r*r*half - chord/2*math.Sqrt(r*r-chord*chord/4)
}

// corner is what a disc leaves in a square corner.
func corner(r float64) float64 { return (1 - math.Pi/4) * r * r }

// ell is 100 by 80 without its upper right 40 by 40: five corners that point
// outward and one that points inward.
func ell() geom.Loop {
	return geom.Polygon(at(0, 0), at(100, 0), at(100, 40), at(60, 40), at(60, 80), at(0, 80))
}

// bells are two squares of 30 joined by a neck of a width, 10 long.
func bells(neck float64) geom.Loop {
	low, high := 15-neck/2, 15+neck/2
	return geom.Polygon(at(0, 0), at(30, 0), at(30, low), at(40, low), at(40, 0), at(70, 0),
		at(70, 30), at(40, 30), at(40, high), at(30, high), at(30, 30), at(0, 30))
}

// relieved is a rectangle with a half turn through each corner, whose ends lie
// on both sides: the diameter 2 rho is the long side of an isosceles triangle.
func relieved(w, h, rho float64) geom.Loop {
	e := rho * math.Sqrt2
	return geom.Loop{v(e, 0), v(w-e, 0, 1), v(w, e), v(w, h-e, 1), v(w-e, h), v(e, h, 1), v(0, h-e), v(0, e, 1)}
}

func turned(l geom.Loop, angle float64) geom.Loop {
	t := make(geom.Loop, len(l))
	for i, p := range l {
		t[i] = geom.Vertex{Point: p.Point.Rotate(angle), Bulge: p.Bulge}
	}
	return t
}

// soundLoops asserts what every result promises: loops that are simple on the
// grid that panels are judged on, those that run clockwise last, without -0 and
// without sides that are shorter than least, in millimeters.
func soundLoops(t interface {
	Helper()
	Errorf(string, ...any)
}, loops []geom.Loop, least float64) {
	t.Helper()
	const grid = geom.CoarseGrid
	clockwise := false
	for _, l := range loops {
		if clockwise && l.Area() > 0 {
			t.Errorf("a loop behind an island")
		}
		clockwise = l.Area() < 0
		var ring []planar.Point
		for i, p := range l {
			if !(math.Abs(p.X)+math.Abs(p.Y)+math.Abs(p.Bulge) < 1e5) || p.Bulge == 0 && math.Signbit(p.Bulge) {
				t.Errorf("vertex %v", p)
			}
			if p.To(l[(i+1)%len(l)].Point) < least {
				t.Errorf("vertex %d is on top of the next: %v", i, l)
			}
			if math.Abs(p.Bulge) > 2.5 {
				t.Errorf("vertex %d begins more than three quarters of a turn: %v", i, l)
			}
		}
		for _, p := range l.Flatten(0.001) {
			ring = append(ring, planar.Point{X: int32(math.Round(p.X / grid)), Y: int32(math.Round(p.Y / grid))})
		}
		if at, ok := planar.Simple(ring); !ok && math.Abs(l.Area()) > 1 {
			t.Errorf("not simple near %g, %g: %v", float64(at.X)*grid, float64(at.Y)*grid, l)
		}
	}
}

func TestErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	square := geom.Rectangle(0, 0, 10, 10)
	crowd := make(geom.Loop, MaxSides+2)
	for i := range crowd {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(crowd)))
		crowd[i] = v(1000*cos*(1+0.1*float64(i%2)), 1000*sin)
	}
	for name, c := range map[string]struct {
		loop geom.Loop
		r    float64
		want error
	}{
		"radius below 0":           {square, -1, ErrRadius},
		"no number":                {square, nan, ErrRadius},
		"infinite":                 {square, inf, ErrRadius},
		"empty":                    {nil, 1, ErrRing},
		"one corner":               {square[:1], 1, ErrRing},
		"a line":                   {square[:2], 1, ErrRing},
		"a point":                  {geom.Polygon(at(1, 1), at(1, 1), at(1, 1)), 1, ErrRing},
		"a bow tie":                {geom.Polygon(at(0, 0), at(10, 10), at(10, 0), at(0, 10)), 1, ErrRing},
		"a star in one go":         {geom.Polygon(at(0, 10), at(-6, -8), at(10, 3), at(-10, 3), at(6, -8)), 0.5, ErrRing},
		"a spike":                  {geom.Polygon(at(0, 0), at(10, 0), at(10, 5), at(20, 5), at(10, 5), at(10, 10), at(0, 10)), 1, ErrRing},
		"a spike turned":           {turned(geom.Polygon(at(0, 0), at(10, 0), at(10, 5), at(20, 5), at(10, 5), at(10, 10), at(0, 10)), 0.3), 1, ErrRing},
		"clockwise":                {square.Reverse(), 1, ErrWinding},
		"clockwise circle":         {geom.Circle(at(0, 0), 9).Reverse(), 1, ErrWinding},
		"beyond the extent":        {geom.Rectangle(0, 0, geom.MaxExtent+1, 10), 1, geom.ErrExtent},
		"an arc beyond":            {geom.Loop{v(0, 0), v(4090, 0, 1), v(4090, 100), v(0, 100)}, 1, geom.ErrExtent},
		"a circle beyond":          {geom.Circle(at(0, 4000), 200), 1, geom.ErrExtent},
		"a coordinate is nan":      {geom.Polygon(at(0, nan), at(10, 0), at(10, 10)), 1, geom.ErrExtent},
		"an infinite bulge":        {geom.Loop{v(0, 0, inf), v(10, 0), v(10, 10)}, 1, geom.ErrExtent},
		"more sides than the most": {crowd, 1, ErrTooMany},
	} {
		t.Run(name, func(t *testing.T) {
			if got, err := Pocket(c.loop, c.r); !errors.Is(err, c.want) || got != nil {
				t.Errorf("Pocket: %v, %v; want %v", got, err, c.want)
			}
			if got, err := Outside(c.loop, c.r); !errors.Is(err, c.want) || got != nil {
				t.Errorf("Outside: %v, %v; want %v", got, err, c.want)
			}
			if c.want == ErrRing || c.want == ErrWinding || name == "a circle beyond" {
				return // a path may be all of these; of a circle it is a half
			}
			if got, err := Line(c.loop, c.r); !errors.Is(err, c.want) || got != nil {
				t.Errorf("Line: %d loops, %v; want %v", len(got), err, c.want)
			}
		})
	}
	if _, err := Outside(square, geom.MaxExtent+1); !errors.Is(err, ErrRadius) {
		t.Errorf("Outside: %v", err)
	}
	if _, err := Line(square, geom.MaxExtent+1); !errors.Is(err, ErrRadius) {
		t.Errorf("Line: %v", err)
	}
}

// TestCrossedArc: an arc that crosses its neighbor by less than its chords show.
func TestCrossedArc(t *testing.T) {
	l := geom.Loop{v(0.857, 0.857), v(0.857, 0.571), v(0.875, 0.875, -math.Tan(math.Pi/8))}
	if got, err := Outside(l, 285); !errors.Is(err, ErrRing) {
		t.Errorf("%v, %v", got, err)
	}
}

// TestMeet: where two curves meet lies on both, be they lines, small arcs or
// large ones.
func TestMeet(t *testing.T) {
	s := rand.New(rand.NewPCG(1, 2))
	met := 0
	for range 20000 {
		draw := func() curve {
			a := at(s.Float64()*100, s.Float64()*100)
			switch s.IntN(3) {
			case 0:
				return newLine(a, at(s.Float64()*100, s.Float64()*100))
			case 1:
				return newArc(a, 1+20*s.Float64(), at(1, 0).Rotate(7*s.Float64()), 6*(s.Float64()-0.5))
			}
			return newSide(a, at(s.Float64()*100, s.Float64()*100),
				math.Copysign(1e-4+1e-3*s.Float64(), s.Float64()-0.5))
		}
		c, d := draw(), draw()
		for _, m := range meet(&c, &d, nil) {
			met++
			for _, p := range [...]geom.Point{c.at(m.s), d.at(m.t)} {
				if off := p.To(m.at); off > reach {
					t.Fatalf("%v and %v: %v is off by %g", c, d, m, off)
				}
			}
		}
	}
	if met < 1000 {
		t.Errorf("they meet %d times", met)
	}
}

// TestCrowdedPath: discs that meet more often than there is memory for.
func TestCrowdedPath(t *testing.T) {
	var path []geom.Vertex
	for i := range 4000 {
		path = append(path, v(float64(i%2)*100, float64(i)*0.01))
	}
	if got, err := Line(path, 50); !errors.Is(err, ErrTooMany) || got != nil {
		t.Errorf("%d loops, %v", len(got), err)
	}
}
