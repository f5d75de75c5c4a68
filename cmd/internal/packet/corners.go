package packet

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// corners draws the joints of every different corner at 2:1, as they come together
// by the mean of the readings.
func (m maker) corners() {
	first := true
	for _, group := range m.alike() {
		d := group[0]
		if first {
			m.Chapter("Corners")
			first = false
		}
		var all []string
		for _, g := range group {
			all = append(all, g.Spec.Name)
		}
		m.Heading(1, fmt.Sprintf("%s: %s", d.Spec.Joint, names(all)))
		m.joints(d)
	}
}

// alike gathers drawers whose corners are the same: stock, joint and setting.
func (m maker) alike() [][]batch.Drawer {
	type key struct {
		sides, front, back, bottom string
		joint, rear                joinery.Joint
		fit                        joinery.BottomFit
		setup                      joinery.Setup
		raised                     float64
	}
	return setup.Together(m.batch.Drawers, func(d batch.Drawer) key {
		s := d.Spec
		return key{s.Sides.Name, s.Front.Name, s.Back.Name, s.Bottom.Name, s.Joint, s.BackJoint, s.BottomFit, d.Setup, s.BottomHeight}
	})
}

// shown is how much of a corner a drawing shows, in mm: two at 2:1 stand beside each other.
const shown = 36.0

func (m maker) joints(d batch.Drawer) {
	var pieces []paper.Piece
	for _, p := range d.Parts {
		if p.Role == joinery.DrawerFrontRole || p.Role == joinery.DividerRole {
			continue
		}
		for _, at := range p.Placements {
			pieces = append(pieces, paper.Piece{Panel: p.Panel, At: at})
		}
	}
	// A little off the middle, where no row of fingers ends.
	level := 0.53 * d.Spec.Height
	outside := d.Outside
	var figures []paper.Figure
	view := func(axis paper.Axis, at, x, y float64, words string) {
		w := geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + shown + 8, Y: y + shown}}
		figures = append(figures, paper.Figure{Drawing: paper.Joint(pieces, axis, at, w, 2), Words: words})
	}
	const before = 4.0 // a proud front shows
	view(paper.AcrossZ, level, -before, -before,
		"2:1. The left front corner from above: "+m.clearances(d, joinery.Front)+".")
	if d.Spec.BackJoint == joinery.Housed {
		view(paper.AcrossZ, level, -before, outside.Depth-shown+before,
			"2:1. The left rear corner from above: "+m.clearances(d, joinery.Back)+".")
	}
	view(paper.AcrossX, 0.47*outside.Width, -before, -before,
		fmt.Sprintf("2:1. The bottom at the box front, from the right: %s.", m.clearances(d, joinery.Bottom)))
	m.Figures(figures)
	var rows []paper.ForecastRow
	for _, f := range m.report.FitOf(d.Spec.Name) {
		rows = append(rows, present.FitRow(f, m.unit))
	}
	m.Forecasts(rows)
}

// plays are the measures of a drawer's joints that concern a part.
func (m maker) clearances(d batch.Drawer, of joinery.Role) string {
	var said []string
	for _, c := range d.Fit {
		if c.Part == of || of == joinery.Front && c.Part == joinery.Side {
			value := m.caliper(c.Nominal)
			if math.IsInf(c.Nominal, 0) {
				continue
			}
			said = append(said, c.Name+" "+value+" "+m.unit.String())
		}
	}
	if len(said) == 0 {
		return "drawn as the parts are cut"
	}
	return strings.Join(said, "; ")
}
