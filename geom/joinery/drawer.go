// Package joinery turns a drawer box in a shop's words into panels and where
// they stand. [Build] is the one entry: a [Spec] goes in, a [Drawer] comes out,
// with every [Problem] that the shop has to know of.
//
// Everything after it sees panels, faces and pockets only, so that another
// corner, bottom or part is a function here and nothing elsewhere.
package joinery

import (
	"fmt"
	"slices"

	"drawerwright/geom"
)

// Role is what a part is in the box.
type Role string

const (
	Side   Role = "side"
	Front  Role = "front"
	Back   Role = "back"
	Bottom Role = "bottom"
)

// Part is a panel with its stock and a place for each piece of it in the box.
type Part struct {
	Role   Role
	Stock  Stock
	Panel  geom.Panel
	Stands []geom.Placement
}

// Size is a box's width (left to right), height and depth (front to back), in mm.
type Size struct{ Width, Height, Depth float64 }

// Drawer is a box worked out: its parts in cutting order, what its joints will
// do, and the one setting that serves all its cuts.
type Drawer struct {
	Spec    Spec
	Outside Size // as it comes out: deeper than asked where front or back are proud
	Inside  Size // clear, above the bottom
	Parts   []Part
	Fit     []Check
	Setup   Setup
}

// Setup is the fence distance f and the cutter height h of every cut, in mm.
type Setup struct {
	Cutter                      Cutter
	FenceDistance, CutterHeight float64
	// RabbetPasses is how many passes the widest rabbet takes on a saw, the first
	// at FenceDistance, the last at LastFence, the others evenly between, so that
	// none is further from the next than the cutter is wide.
	RabbetPasses int
	LastFence    float64
	// BottomFence is the fence distance for the rabbets of a flush bottom, stood
	// on end like the front; 0 where it is FenceDistance too, or there are none.
	BottomFence float64
}

// Build works out a drawer box. Errors among the problems mean that it cannot
// be made as asked; then the drawer holds what could be worked out and is not
// to be cut.
func Build(s Spec) (Drawer, []Problem) {
	l := newLayout(s)
	switch s.Joint {
	case DadoRabbet:
		l.dadoRabbet()
	default:
		l.fail("joint", FieldJoint, "", fmt.Sprintf("there is no corner called %q", s.Joint), "write "+string(DadoRabbet))
	}
	if !l.failed() {
		l.checkPanels()
	}
	return l.drawer, l.problems
}

// layout gathers a drawer and its problems while it is worked out. Short names
// are those of the trade's arithmetic: T for thickness, f the fence distance, h
// the cutter height.
type layout struct {
	Spec
	Ts, Tf, Tk, Tb float64 // of sides, front, back, bottom
	f, h           float64
	dado, groove   float64 // widths of the slots
	flush          bool    // the bottom stands on a tongue, level with the bottom edge
	drawer         Drawer
	problems       []Problem
}

func newLayout(s Spec) *layout {
	l := &layout{
		Spec: s,
		Ts:   s.Sides.Thickness.Mean, Tf: s.Front.Thickness.Mean, Tk: s.Back.Thickness.Mean, Tb: s.Bottom.Thickness.Mean,
		f: s.FenceDistance, h: s.CutterHeight,
		drawer: Drawer{Spec: s, Outside: Size{s.Width, s.Height, s.Depth}},
	}
	if l.f == 0 {
		l.f = l.Tf / 2
	}
	if l.h == 0 {
		l.h = l.Ts / 2
	}
	l.drawer.Setup = Setup{Cutter: s.Cutter, FenceDistance: l.f, CutterHeight: l.h, RabbetPasses: 1, LastFence: l.f}
	return l
}

func (l *layout) fail(code string, field Field, part Role, message, hint string) {
	l.problems = append(l.problems, Problem{Code: code, Error: true, Field: field, Part: string(part), Message: message, Hint: hint})
}

func (l *layout) warn(code string, field Field, part Role, message, hint string) {
	l.problems = append(l.problems, Problem{Code: code, Field: field, Part: string(part), Message: message, Hint: hint})
}

func (l *layout) failed() bool {
	for _, p := range l.problems {
		if p.Error {
			return true
		}
	}
	return false
}

// text prints a computed length in the unit that the job is written in; atLeast
// and atMost print bounds, so that what they advise is right when followed.
func (l *layout) text(mm float64) string    { return geom.LengthOf(mm).Text(l.Units) }
func (l *layout) atLeast(mm float64) string { return geom.LengthOf(mm).RoundUp(l.Units).Text(l.Units) }
func (l *layout) atMost(mm float64) string  { return geom.LengthOf(mm).RoundDown(l.Units).Text(l.Units) }

// stockOf gives the stock of a role and the entry of the job file it comes from.
func (l *layout) stockOf(r Role) (Stock, Field) {
	switch r {
	case Front:
		return l.Front, FieldFront
	case Back:
		return l.Back, FieldBack
	case Bottom:
		return l.Bottom, FieldBottom
	}
	return l.Sides, FieldSides
}

func (l *layout) add(r Role, p geom.Panel, stands ...geom.Placement) {
	stock, _ := l.stockOf(r)
	l.drawer.Parts = append(l.drawer.Parts, Part{Role: r, Stock: stock, Panel: p, Stands: stands})
}

// checkPanels judges every panel by the rules of package geom and by its sheet.
func (l *layout) checkPanels() {
	for _, p := range l.drawer.Parts {
		if p.Role == Back && !slices.Contains(l.ends(), Back) {
			continue // the front's twin
		}
		_, field := l.stockOf(p.Role)
		told := make(map[geom.Rule]bool) // once a panel is enough
		for _, v := range p.Panel.Check() {
			if told[v.Rule] {
				continue
			}
			told[v.Rule] = true
			l.problems = append(l.problems, Problem{
				Code: string(v.Rule), Error: !v.Warning, Field: field, Part: string(p.Role),
				Message: string(p.Role) + ": " + v.Describe(p.Panel, l.Units),
				Hint:    "change the cutter height, the fence distance or the stock",
			})
		}
		l.checkSheet(p, field)
	}
}

// checkSheet refuses a part that no sheet of its stock can hold.
func (l *layout) checkSheet(p Part, field Field) {
	s, length, width := p.Stock, p.Panel.Length(), p.Panel.Width()
	fits := func(length, width float64) bool { return length <= s.Length+settle && width <= s.Width+settle }
	if s.Length == 0 || fits(length, width) {
		return
	}
	hint := "make the box smaller or buy a larger sheet"
	if s.Grain == GrainNone {
		if fits(width, length) {
			return
		}
	} else if fits(width, length) {
		hint = "it would fit turned: if the grain runs along the second number of the sheet, write grain: width; if it does not matter, grain: none"
	}
	l.fail("sheet", field, p.Role, fmt.Sprintf("the %s is %s x %s; a sheet of %s is %s x %s",
		p.Role, l.text(length), l.text(width), s.Name, l.text(s.Length), l.text(s.Width)), hint)
}
