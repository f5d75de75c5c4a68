// Package testcut works back from what was measured on a test cut to what the
// machine does: how wide its cutter cuts, where its fence and its height really
// are. It says what to move, whether the readings settle that, what the parts that
// are already cut will do, and how they can be saved. Lengths are in millimeters.
package testcut

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
)

// What is not known of a machine and its boards: by how much each is off what the
// drawer was worked out with.
const (
	ofCutter = iota // width of the cut
	ofFence         // distance of the dados and grooves, and of a saw's tongues; of a router, where the side lies
	ofHeight        // how much deeper than meant it cuts
	ofDado          // the same of dados that have a height of their own
	ofEnd           // where the front's rabbets end: of a router, where the front lies; flat, their fence
	ofRabbet        // how much deeper than meant the rabbets of fronts that lie flat are cut
	ofSides         // thickness of the sides
	ofFront         // and of the front
	ofLength        // length of the front
	maxUnknowns
)

// vector has a number for each unknown.
type vector [maxUnknowns]float64

func (a vector) dot(b vector) float64 {
	sum := 0.0
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}

func (a vector) plus(b vector, times float64) vector {
	for i := range a {
		a[i] += float64(b[i] * times)
	}
	return a
}

// unit is a vector of one unknown.
func unit(i int) (v vector) {
	v[i] = 1
	return v
}

// form is a measure as a linear function of what is not known.
type form struct {
	at0 float64
	by  vector
}

func (f form) at(u vector) float64 { return f.at0 + f.by.dot(u) }

func (f form) less(g form) form { return form{f.at0 - g.at0, f.by.plus(g.by, -1)} }

func (f form) scaled(k float64) form { return form{float64(f.at0 * k), vector{}.plus(f.by, k)} }

// bent is a form and so many times the lesser of two forms at each bend.
type bent struct {
	form
	bends []bend
}

type bend struct {
	times float64
	a, b  form
}

// near is the form about what is known.
func (b bent) near(u vector) form {
	f := b.form
	for _, k := range b.bends {
		lesser := k.b
		if k.a.at(u) < k.b.at(u) {
			lesser = k.a
		}
		f = f.less(lesser.scaled(-k.times))
	}
	return f
}

// What is usually known of a machine before a test cut, as standard deviations:
// a cutter is mounted by its label, and scales and stops are half a millimeter off;
// common practice, no source.
const (
	cutterPrior  = 0.2
	settingPrior = 0.5
	// boardPrior is the least for a thickness: what a caliper tells.
	boardPrior = 0.02
)

// Model is a drawer as it is cut for a test, on its machine.
type Model struct {
	drawer joinery.Drawer
	spec   joinery.Spec
	is     forms
	blade  float64 // width of the cutter that makes the slots
	moves  bool    // between passes over a slot the fence is moved
	own    bool    // dados have a height of their own
	router bool
	flat   bool // fronts lie flat for their rabbets, outside face down
	joined bool // front and sides are joined by tongues in dados
	noise  fit.Accuracy
	limits map[joinery.CheckCode]joinery.Check // of the box: those of a forecast
	sheet  map[Kind]geom.Interval              // the limits of a setup sheet for the readings that it lists
	depths geom.Interval                       // what dados or grooves may be deep, of a corner without tongues
	inside bool                                // the slide goes by the width inside
	prior  vector                              // standard deviations
}

// New takes a drawer that can be built, with between what thicknesses its boards are,
// how exactly the shop works and what its slide takes; nil without one. What is right is
// what a forecast and a setup sheet, whose limits are set, call right.
func New(d joinery.Drawer, boards fit.Boards, a fit.Accuracy, slide *fit.SlideFit, set gauge.Limits) Model {
	s := d.Spec
	c := Model{drawer: d, spec: s, router: s.Cutter.Kind.FollowsDrawing(), joined: s.Joint == joinery.DadoRabbet,
		flat: d.Setup.FlatTongues, noise: a, blade: s.Cutter.Width}
	c.own = c.joined && d.Setup.DadoHeight > 0
	if !c.joined && d.Dimensions.Seat.Groove > 0 {
		c.blade, c.moves = d.Setup.GrooveCutter(), d.Setup.GroovePasses > 1
	}
	c.is = formsOf(d)
	c.limits, c.inside = make(map[joinery.CheckCode]joinery.Check), slide != nil && slide.InsideCounts
	for _, m := range fit.Measures(d, boards, a, slide) {
		if m.Part != joinery.Back {
			c.limits[m.Code] = m.Check
		}
	}
	if c.sheet = c.limitsOf(set); !c.joined {
		c.depths = c.rightDepths()
	}
	board := func(b fit.Spread) float64 { return max(boardPrior, (b.Minus+b.Plus)/2/math.Sqrt(3)) }
	c.prior = vector{
		ofCutter: cutterPrior, ofFence: settingPrior, ofHeight: settingPrior, ofDado: settingPrior, ofEnd: settingPrior, ofRabbet: settingPrior,
		ofSides: board(boards.Sides), ofFront: board(boards.Front), ofLength: max(a.Length/3, 0.01),
	}
	return c
}

// Joint is that of the corner that is cut.
func (c Model) Joint() joinery.Joint { return c.spec.Joint }

// Grooves reports whether the slots of the test cut are made by the cutter for grooves.
func (c Model) Grooves() bool { return !c.joined && c.drawer.Setup.GroovePasses > 0 }
