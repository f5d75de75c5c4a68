package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// corners draws the joints of every different corner, as they come together by the mean of
// the readings.
func (m maker) corners() {
	for i, group := range m.alike() {
		list := m.drawnMeetings(group[0])
		m.Keep(list[0].Height + cornerRest) // headings stay with the first
		if i == 0 {
			m.Chapter("Corners")
		}
		var all []string
		for _, g := range group {
			all = append(all, g.Spec.Name)
		}
		m.Heading(1, fmt.Sprintf("%s: %s", group[0].Spec.Joint, names(all)))
		m.joints(group[0], list)
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
		return key{s.Sides.Name, s.Front.Name, s.Back.Name, s.Bottom.Name, s.Joint, s.BackJoint, s.BottomFit, d.Setup,
			s.BottomHeight}
	})
}

// joints draws where the parts of a drawer meet, each with what its clearances are likely to
// be; what concerns the whole box follows the last.
func (m maker) joints(d batch.Drawer, list []drawnMeeting) {
	rows := make([][]paper.ForecastRow, len(list))
	for _, f := range m.report.FitOf(d.Spec.Name) {
		at := len(list) - 1
		for i, c := range list {
			if slices.Contains(c.of, joinery.Role(f.Part)) {
				at = i
			}
		}
		row := present.FitRow(f, m.unit)
		row.Numbers = "right " + present.FitLimits(f, m.unit) + ", " + row.Numbers
		rows[at] = append(rows[at], row)
	}
	for i, c := range list {
		m.Keep(c.Height + cornerRest/2)
		m.Scale(paper.ScaleText(c.scale))
		m.Figure(c.Drawing, "")
		m.Text(fmt.Sprintf("%s, %s. %s.", c.what, paper.ScaleText(c.scale), upper(c.clearances)))
		m.Forecasts(rows[i])
	}
}

// cornerRest is what headings, words and some of the forecasts take up of a page, in mm.
const cornerRest = 40.0

// meeting is a corner with what is said of it, and the parts whose measures go with it.
type meeting struct {
	paper.Corner
	what, clearances string
	of               []joinery.Role
}

// drawnMeeting is a meeting with its drawing.
type drawnMeeting struct {
	meeting
	drawing.Drawing
	scale float64
}

// drawnMeetings draws the corners of a drawer that differ, one to a page or smaller.
func (m maker) drawnMeetings(d batch.Drawer) (list []drawnMeeting) {
	for _, c := range m.meetings(d) {
		drawn, scale := c.Draw(paper.Frame{Width: m.Width(), Height: m.Whole() - cornerRest}, m.number)
		list = append(list, drawnMeeting{c, drawn, scale})
	}
	return list
}

// meetings are the corners of a drawer that differ.
func (m maker) meetings(d batch.Drawer) []meeting {
	var pieces []paper.Piece
	for _, p := range d.Parts {
		if p.Role == joinery.DrawerFrontRole || p.Role == joinery.DividerRole {
			continue
		}
		for _, at := range p.Placements {
			pieces = append(pieces, paper.Piece{Panel: p.Panel, At: at, Name: fmt.Sprintf("%d %s", p.Number, p.Role)})
		}
	}
	// A little off the middle, where no row of fingers ends.
	level := paper.Corner{Pieces: pieces, Axis: paper.AcrossZ, At: 0.53 * d.Spec.Height}
	list := []meeting{{level, "The left front corner from above", m.clearances(d, joinery.Front),
		[]joinery.Role{joinery.Front, joinery.Side, joinery.Back}}}
	if d.Spec.BackJoint == joinery.Housed {
		level.Near.Y = d.Outside.Depth
		list = append(list, meeting{level, "The left rear corner from above", m.clearances(d, joinery.Back),
			[]joinery.Role{joinery.Back}})
	}
	upright := paper.Corner{Pieces: pieces, Axis: paper.AcrossX, At: 0.47 * d.Outside.Width}
	return append(list, meeting{upright, "The bottom at the box front, from the right",
		m.clearances(d, joinery.Bottom), []joinery.Role{joinery.Bottom}})
}

// clearances are the measures of a drawer's joints that concern a part.
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
