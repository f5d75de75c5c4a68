package outside

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/sweep"
)

// sweptShape is what sweep_shapes.py reads.
type sweptShape struct {
	What   string       `json:"what"`
	Radius float64      `json:"radius"`
	Points [][3]float64 `json:"points"`
}

func (s sweptShape) vertices() []geom.Vertex {
	list := make([]geom.Vertex, len(s.Points))
	for i, p := range s.Points {
		list[i] = geom.Vertex{Point: geom.Point{X: p[0], Y: p[1]}, Bulge: p[2]}
	}
	return list
}

// covered is what either side says of a shape.
type covered struct {
	Area    float64
	Parts   int
	Islands int
}

// own asks geom/sweep.
func (s sweptShape) own() (covered, error) {
	var loops []geom.Loop
	var err error
	switch s.What {
	case "line":
		loops, err = sweep.Line(s.vertices(), s.Radius)
	case "pocket":
		loops, err = sweep.Pocket(s.vertices(), s.Radius)
	default:
		var l geom.Loop
		l, err = sweep.Outside(s.vertices(), s.Radius)
		loops = []geom.Loop{l}
	}
	var c covered
	for _, l := range loops {
		a := l.Area()
		c.Area += a
		if a < 0 {
			c.Islands++
		} else {
			c.Parts++
		}
	}
	return c, err
}

// sweptArea is the most, in square millimeters, that two areas may differ.
const sweptArea = 0.01

// shapes draws loops and paths of drawer-part size, the same every time.
type shapes struct{ *rand.Rand }

func (s shapes) between(low, high float64) float64 { return low + s.Float64()*(high-low) }

// skyline is a loop of upright and level sides with random notches and bumps all around.
func (s shapes) skyline() geom.Loop {
	w, h := s.between(60, 2500), s.between(50, 1300)
	var l geom.Loop
	side := func(from, to geom.Point, depth float64) {
		n := 1 + s.IntN(5)
		dx, dy := (to.X-from.X)/float64(n), (to.Y-from.Y)/float64(n)
		length := math.Hypot(to.X-from.X, to.Y-from.Y)
		nx, ny := -(to.Y-from.Y)/length, (to.X-from.X)/length
		for i := range n {
			in := depth * s.Float64() * float64(s.IntN(3)) / 2
			at := geom.Point{X: from.X + dx*float64(i), Y: from.Y + dy*float64(i)}
			a, b := s.between(0, 0.5), s.between(0.5, 1)
			if s.IntN(2) == 0 {
				width := s.between(0.3, 30) / (length / float64(n))
				b = math.Min(1, a+width)
			}
			for _, k := range [...][2]float64{{a, 0}, {a, in}, {b, in}, {b, 0}} {
				l = append(l, geom.Vertex{Point: geom.Point{X: at.X + dx*k[0] + nx*k[1], Y: at.Y + dy*k[0] + ny*k[1]}})
			}
		}
	}
	c := [4]geom.Point{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: 0, Y: h}}
	for i := range c {
		l = append(l, geom.Vertex{Point: c[i]})
		side(c[i], c[(i+1)%4], math.Min(w, h)*0.49)
	}
	return l
}

// star is a loop whose corners lie at rising angles about a middle.
func (s shapes) star() geom.Loop {
	n := 3 + s.IntN(20)
	rx, ry := s.between(20, 1250), s.between(20, 650)
	low := s.between(0.05, 1)
	var l geom.Loop
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + s.between(0, 0.9)) / float64(n))
		k := s.between(low, 1)
		l = append(l, geom.Vertex{Point: geom.Point{X: rx * k * cos, Y: ry * k * sin}})
	}
	return l
}

// bent makes arcs of some sides of a loop.
func (s shapes) bent(l geom.Loop) geom.Loop {
	for i := range l {
		if s.IntN(3) == 0 {
			l[i].Bulge = s.between(-0.6, 0.6)
			if s.IntN(4) == 0 {
				l[i].Bulge = s.between(-1.5, 1.5)
			}
		}
	}
	return l
}

func (s shapes) turned(l geom.Loop) geom.Loop {
	sin, cos := math.Sincos(s.between(0, 2*math.Pi))
	for i, v := range l {
		l[i].Point = geom.Point{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}
	}
	return l
}

func (s shapes) radius() float64 {
	if s.IntN(2) == 0 {
		return []float64{0.5, 1.5875, 3, 3.175, 6, 6.35, 12.7}[s.IntN(7)]
	}
	return s.between(0.5, 13)
}

// draw gives a sound shape, and what the package says of it.
func (s shapes) draw(t *testing.T, what string, number int) (sweptShape, covered) {
	for {
		var l geom.Loop
		switch number % 8 {
		case 0, 1:
			l = s.skyline()
		case 2, 3:
			l = s.turned(s.skyline())
		case 4, 5, 6:
			l = s.star()
		default:
			l = s.bent(s.star())
		}
		shape := sweptShape{What: what, Radius: s.radius()}
		for _, v := range l {
			shape.Points = append(shape.Points, [3]float64{v.X, v.Y, v.Bulge})
		}
		own, err := shape.own()
		switch {
		case err == nil:
			return shape, own
		case !errors.Is(err, sweep.ErrRing) && !errors.Is(err, sweep.ErrWinding):
			t.Fatalf("%v: %+v", err, shape)
		}
	}
}

// askShapely gives what shapely says of shapes.
func askShapely(t *testing.T, list []sweptShape) []covered {
	t.Helper()
	var input strings.Builder
	for _, s := range list {
		line, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	answers := lines[covered](t, input.String(), python, "sweep_shapes.py")
	if len(answers) != len(list) {
		t.Fatalf("%d answers for %d shapes", len(answers), len(list))
	}
	return answers
}

// same compares what both say.
func (c covered) same(d covered) bool {
	return math.Abs(c.Area-d.Area) <= sweptArea && c.Parts == d.Parts && c.Islands == d.Islands
}

// TestSweep compares with shapely what a round cutter covers of random pockets
// and paths, and what it leaves of random panels. A radius that is off by a
// thousandth must show wherever there is something to round.
func TestSweep(t *testing.T) {
	t.Parallel()
	for seed, what := range []string{"pocket", "outside", "line"} {
		t.Run(what, func(t *testing.T) {
			t.Parallel()
			s := shapes{rand.New(rand.NewPCG(11, uint64(seed)))}
			var list []sweptShape
			var own []covered
			for i := range geomtest.Cases(40, 120) {
				shape, c := s.draw(t, what, i)
				list, own = append(list, shape), append(own, c)
			}
			worst, seen := 0.0, 0
			for i, c := range askShapely(t, list) {
				worst = math.Max(worst, math.Abs(c.Area-own[i].Area))
				if !c.same(own[i]) {
					t.Errorf("shapely %+v, own %+v: %+v", c, own[i], list[i])
				}
				fault := list[i]
				fault.Radius *= 1.001
				if bad, err := fault.own(); err == nil && !c.same(bad) {
					seen++
				}
			}
			t.Logf("areas differ by %.4f mm2 at most; a radius off by 0.1 %% is seen in %d of %d", worst,
				seen, len(list))
			if seen < len(list)/2 {
				t.Errorf("a radius off by 0.1 %% is seen in %d of %d alone", seen, len(list))
			}
		})
	}
}
