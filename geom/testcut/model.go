// Package testcut works back from what was measured on a test cut to what the
// machine does: how wide its cutter cuts, where its fence and its height really
// are. It says what to move, whether the readings settle that, what the parts that
// are already cut will do, and how they can be saved. Lengths are in millimetres.
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
	unknowns
)

// vector has a number for each unknown.
type vector [unknowns]float64

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

// What is usually known of a machine before a test cut, as standard deviations:
// a cutter is mounted by its label, and scales and stops are half a millimetre off;
// common practice, no source.
const (
	cutterPrior  = 0.2
	settingPrior = 0.5
	// boardPrior is the least for a thickness: what a caliper tells.
	boardPrior = 0.02
)

// Cut is a drawer as it is cut for a test, on its machine.
type Cut struct {
	drawer joinery.Drawer
	spec   joinery.Spec
	f, h   float64
	blade  float64 // width of the cutter that makes the slots
	dado   float64 // width of the slot for the tongues, or of the groove alone
	moves  bool    // between passes over a slot the fence is moved
	own    bool    // dados have a height of their own
	router bool
	floor  bool // depths from the spoilboard
	flat   bool // fronts lie flat for their rabbets, outside face down
	passes int  // over such a rabbet
	joined bool // front and sides are joined by tongues in dados
	noise  fit.Accuracy
	limits map[joinery.CheckCode]joinery.Check // of the box, by their codes: those of a forecast
	depths geom.Interval                       // what dados or grooves may be deep, of a corner without tongues
	inside bool                                // the slide goes by the width inside
	prior  vector                              // standard deviations
}

// New takes a drawer that can be built, with between what thicknesses its boards are,
// how exactly the shop works and what its slide takes; nil without one. What is right is
// what a forecast and a setup sheet call right.
func New(d joinery.Drawer, boards fit.Boards, a fit.Accuracy, slide *fit.Running) Cut {
	s := d.Spec
	c := Cut{drawer: d, spec: s, f: d.Setup.FenceDistance, h: d.Setup.CutterHeight, own: d.Setup.DadoHeight > 0, router: s.Cutter.Kind.FollowsDrawing(),
		joined: s.Joint == joinery.DadoRabbet, flat: d.Setup.FlatTongues, passes: d.Setup.RabbetPasses, noise: a, dado: s.Cutter.Width, blade: s.Cutter.Width}
	c.floor = c.router && s.DepthFrom == joinery.FromSpoilboard
	if s.Cutter.Kind.MadeToFit() {
		c.dado = s.DadoWidth(c.f, s.DadoPlay)
	}
	if w := grooveWidth(d); !c.joined && w > 0 {
		c.dado, c.blade, c.moves, c.f = w, d.Setup.GrooveCutter(), d.Setup.GroovePasses > 1, d.Setup.GrooveFences()[0]
	}
	c.limits, c.inside = make(map[joinery.CheckCode]joinery.Check), slide != nil && slide.InsideCounts
	for _, m := range fit.Box(d, boards, a, slide) {
		if m.Part != joinery.Back {
			c.limits[m.Code] = m.Check
		}
	}
	if slide != nil && !c.inside { // one width has to suit both
		w, runs := c.limits[joinery.CheckOutsideWidth], c.limits[fit.SlideClearance]
		w.Least, w.Most = max(w.Least, runs.Least), min(w.Most, runs.Most)
		c.limits[joinery.CheckOutsideWidth] = w
	}
	if !c.joined {
		c.depths = c.rightDepths(gauge.Of([]gauge.Drawer{{Drawer: d, Boards: fit.MeasuredBoards(s), Accuracy: a, Slide: slide}}))
	}
	board := func(b fit.Spread) float64 { return max(boardPrior, (b.Minus+b.Plus)/2/math.Sqrt(3)) }
	c.prior = vector{
		ofCutter: cutterPrior, ofFence: settingPrior, ofHeight: settingPrior, ofDado: settingPrior, ofEnd: settingPrior, ofRabbet: settingPrior,
		ofSides: board(boards.Sides), ofFront: board(boards.Front), ofLength: max(a.Length/3, 0.01),
	}
	return c
}

// Grooves reports whether the slots of the test cut are made by the cutter for grooves.
func (c Cut) Grooves() bool { return !c.joined && c.drawer.Setup.GroovePasses > 0 }

// rightDepths are those of a setup sheet for cuts as deep as the cutter is high; what a
// shop keeps to where the sheet has none.
func (c Cut) rightDepths(set gauge.Set) geom.Interval {
	keeps := c.noise.Height + c.noise.Cut
	r := geom.Interval{Min: c.h - keeps, Max: c.h + keeps}
	for _, row := range set.Rows {
		switch row.Kind {
		case fit.SideRabbet, fit.GrooveDepth:
			r = geom.Interval{Min: c.h + row.Least - row.Target, Max: c.h + row.Most - row.Target}
		case fit.UnderSide, fit.UnderGroove: // what is left is less where a cut is deeper
			r = geom.Interval{Min: c.h - (row.Most - row.Target), Max: c.h + row.Target - row.Least}
		default:
			continue
		}
		break
	}
	return r
}

// grooveWidth is that of the bottom's groove; 0 without one.
func grooveWidth(d joinery.Drawer) float64 {
	for _, p := range d.Parts {
		for _, k := range p.Panel.Pockets {
			if k.Kind == geom.Groove {
				return min(k.Outline.Bounds().Width(), k.Outline.Bounds().Height())
			}
		}
	}
	return 0
}

func (c Cut) frontLength() float64 {
	return c.spec.Width - 2*c.spec.Sides.Thickness.Mean + 2*c.h
}

// The measures of the test cut. On a saw the fence and the height make both the
// dado and the tongue of a front that stands on end. Of one that lies flat the cutter
// takes as much as it is high, and the tongue is what that leaves of the board. On a
// router each part lies where it was put, cuts from the top take the same from every
// board and cuts from the spoilboard leave the same.

func (c Cut) slot() form { return form{c.dado, unit(ofCutter)} }

func (c Cut) edge() form {
	f := form{c.f, unit(ofFence)}
	if c.router { // a wider bit takes half of it on either side
		f.by[ofCutter] = -0.5
	}
	return f
}

func (c Cut) depth() form {
	f := form{c.h + c.spec.GlueRoom, unit(ofHeight)}
	if c.own {
		f.by = unit(ofDado)
	}
	if c.floor {
		f.by[ofSides] = 1
	}
	return f
}

func (c Cut) tongue() form {
	switch {
	case c.flat:
		return form{c.f, unit(ofFront).plus(unit(ofRabbet), -1)}
	case !c.router:
		return form{c.f, unit(ofFence)}
	case c.floor:
		return form{c.f, vector{}.plus(unit(ofHeight), -1)}
	}
	return form{c.f, unit(ofFront).plus(unit(ofHeight), -1)}
}

func (c Cut) tongueLength() form {
	switch {
	case c.flat && c.passes > 1: // the last of them is set by the cutter's near side
		return form{c.h, unit(ofEnd).plus(unit(ofCutter), 1)}
	case c.flat:
		return form{c.h, unit(ofEnd)}
	case !c.router:
		return form{c.h, unit(ofHeight)}
	}
	return form{c.h, unit(ofEnd).plus(unit(ofCutter), 0.5)}
}

// rabbet is how deep the front's rabbets are.
func (c Cut) rabbet() form { return c.frontThickness().less(c.tongue()) }

func (c Cut) frontThickness() form { return form{c.spec.Front.Thickness.Mean, unit(ofFront)} }
func (c Cut) sideThickness() form  { return form{c.spec.Sides.Thickness.Mean, unit(ofSides)} }
func (c Cut) length() form         { return form{c.frontLength(), unit(ofLength)} }

// recess is how far the front stands behind the ends of the sides, its tongue
// against the outer wall: the wall's distance less the rabbet's depth.
func (c Cut) recess() form { return c.edge().less(c.rabbet()) }

// play is what the tongue has in its dado.
func (c Cut) play() form { return c.slot().less(c.tongue()) }

// insideWidth is that between the sides.
func (c Cut) insideWidth(u vector) form { return c.width(u).less(c.sideThickness().scaled(2)) }

// width is that of the box dry fitted: the front reaches into each side by its
// tongue's length or, where that is less, by the dado's depth. Which of them it is,
// is taken from what is already known.
func (c Cut) width(u vector) form {
	into := c.tongueLength()
	if d := c.depth(); d.at(u) < into.at(u) {
		into = d
	}
	return c.length().less(into.scaled(2)).less(c.sideThickness().scaled(-2))
}
