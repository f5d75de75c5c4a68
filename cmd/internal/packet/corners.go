package packet

import (
	"context"
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// corners draws the joints of every different corner, as they come together by the mean of the readings: the details
// of a joint one above the other, and beside them what is right of it and what is likely.
func (m maker) corners(ctx context.Context) {
	for i, group := range m.alike() {
		if ctx.Err() != nil {
			return
		}
		m.joint(group, i == 0)
	}
}

// joint shows the corners of alike drawers, the first with the chapter's heading.
func (m maker) joint(group []batch.Drawer, first bool) {
	head := 0.0
	if first {
		head = m.Height(func(b *paper.Book) { b.Chapter("Corners") })
	}
	name, rows := fmt.Sprintf("%s: %s", group[0].Spec.Joint, names(drawerNames(group))), m.forecasts(group[0])
	mortised := group[0].Spec.Fastened() == joinery.Tenons
	for i, d := range m.detailed(group[0], m.Whole()-head) {
		m.Keep(head + d.Height)
		if head > 0 {
			m.Chapter("Corners")
			head = 0
		}
		n := len(rows)
		show := func() { m.stack(d, name, rows[:n], mortised) }
		for n > 0 && !m.Fits(show) {
			n--
		}
		show()
		if rows = rows[n:]; i == 0 {
			name += ", goes on"
		}
	}
	if len(rows) > 0 {
		m.Heading(1, name)
		m.Forecasts(rows)
	}
}

// stack is corners that differ, drawn one above the other, and what each is.
type stack struct {
	drawing.Drawing
	what   []string
	scales []float64
}

// detailed are the corners of a drawer that differ, two by two, no higher than a height in mm; one alone leaves some of
// it for what follows.
func (m maker) detailed(d batch.Drawer, high float64) (list []stack) {
	const together, alone = 2, 0.7
	wide := m.Width() - paper.ColumnGap - paper.BesideLeast
	for some := range slices.Chunk(m.meetings(d), together) {
		var corners []paper.Corner
		var of stack
		for _, c := range some {
			corners, of.what = append(corners, c.Corner), append(of.what, c.what)
		}
		in := paper.Frame{Width: wide, Height: high}
		if len(some) == 1 {
			in.Height = alone * high
		}
		of.Drawing, of.scales = paper.Corners(corners, in, m.asSet)
		list = append(list, of)
	}
	return list
}

// stack shows details, beside them a heading and forecasts. Mortised says that ends have mortises, which no panel
// shows.
func (m maker) stack(d stack, heading string, rows []paper.ForecastRow, mortised bool) {
	m.Beside(d.Drawing, func() {
		m.Heading(1, heading)
		for i, at := range []string{"Upper drawing", "Lower drawing"}[:len(d.what)] {
			if len(d.what) == 1 {
				at = "Drawing"
			}
			m.Scale(paper.ScaleText(d.scales[i]))
			m.Text(fmt.Sprintf("%s, %s: %s.", at, paper.ScaleText(d.scales[i]), d.what[i]))
		}
		if mortised {
			m.Text("Mortises in ends are not drawn: the setups have them.")
		}
		m.Forecasts(rows)
	})
}

// drawerNames are those of drawers, of many the first.
func drawerNames(group []batch.Drawer) (list []string) {
	const most = 12
	for i, d := range group {
		if i == most-1 && len(group) > most {
			return append(list, fmt.Sprintf("%d more", len(group)-i))
		}
		list = append(list, d.Spec.Name)
	}
	return list
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

// meeting is a corner with what it is.
type meeting struct {
	paper.Corner
	what string
}

// meetings are the corners of a drawer that differ.
func (m maker) meetings(d batch.Drawer) []meeting {
	var pieces []paper.Piece
	for _, p := range d.Parts {
		if slices.Contains([]joinery.Role{joinery.DrawerFrontRole, joinery.DividerRole, joinery.InsertRole}, p.Role) {
			continue
		}
		for _, at := range p.Placements {
			pieces = append(pieces, paper.Piece{Panel: p.Panel, At: at, Name: fmt.Sprintf("%d %s", p.Number, p.Role)})
		}
	}
	// A little off the middle, where no row of fingers ends.
	level := paper.Corner{Pieces: pieces, Axis: paper.AcrossZ, At: 0.53 * d.Spec.Height}
	upright := paper.Corner{Pieces: pieces, Axis: paper.AcrossX, At: 0.47 * d.Outside.Width}
	list := []meeting{{level, "the left front corner from above, front at the foot"},
		{upright, "the bottom at the box front, from the right, front at the left"}}
	if d.Spec.BackJoint == joinery.Housed {
		level.Near.Y = d.Outside.Depth
		list = append(list, meeting{level, "the left rear corner from above, rear at the top"})
	}
	return list
}
