// Package joinery turns a drawer box in a shop's words into panels and where
// they stand. [Build] is the one entry: a [Spec] goes in, a [Drawer] comes out,
// with every [Problem] that the shop has to know of.
//
// Everything after it sees panels, faces and pockets only, so that another
// corner, bottom or part is a function here and nothing elsewhere.
package joinery

import (
	"fmt"
	"math"

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

// text prints a computed length in the unit that the job is written in.
func (l *layout) text(mm float64) string { return geom.LengthOf(mm).Text(l.Units) }

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
		_, field := l.stockOf(p.Role)
		for _, v := range p.Panel.Check() {
			problem := Problem{
				Code: string(v.Rule), Error: !v.Warning, Field: field, Part: string(p.Role), Message: v.Describe(p.Panel),
				Hint: "change the cutter height, the fence distance or the stock",
			}
			l.problems = append(l.problems, problem)
		}
		l.checkSheet(p, field)
	}
}

// checkSheet refuses a part that no sheet of its stock can hold.
func (l *layout) checkSheet(p Part, field Field) {
	s, length, width := p.Stock, p.Panel.Length(), p.Panel.Width()
	if s.Length == 0 || length <= s.Length && width <= s.Width {
		return
	}
	hint := "make the box smaller or buy a larger sheet"
	if s.Grain == GrainNone {
		if width <= s.Length && length <= s.Width {
			return
		}
	} else if math.Max(length, width) <= math.Max(s.Length, s.Width) && math.Min(length, width) <= math.Min(s.Length, s.Width) {
		hint = "it would fit turned across the grain: write grain: none if that does not matter"
	}
	l.fail("sheet", field, p.Role, fmt.Sprintf("the %s is %s x %s; a sheet of %s is %s x %s",
		p.Role, l.text(length), l.text(width), s.Name, l.text(s.Length), l.text(s.Width)), hint)
}
