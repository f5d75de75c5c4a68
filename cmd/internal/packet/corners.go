package packet

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// corners draws the joints of every different corner, as they come together by the mean of
// the readings: the details beside each other, below them what is right of the joint and what is likely, and last the
// sizes of the boxes.
//
// Where that takes no page more before the chapters after it end, tightened as they may be, joints are enlarged.
func (m maker) corners(after ...func()) {
	usual, enlarged := func() { m.joints(func(j joint) joint { return j }) }, func() { m.joints(m.enlarge) }
	draw := usual
	if m.few() && !m.Trial() && slices.Max(m.begun(enlarged, after)) <= slices.Max(m.begun(usual, after)) {
		draw = enlarged
	}
	draw()
}

// joints draws all joints, changed as given.
func (m maker) joints(change func(joint) joint) {
	groups := m.alike()
	sizes := m.sizedAll(groups)
	for i, group := range groups {
		j := joint{group: group, meetings: m.meetings(group[0]), sizes: sizes[i]}
		m.drawJoint(&j)
		j = change(j)
		m.Keep(j.kept + chapterHead) // headings stay with the first
		if i == 0 {
			m.Chapter("Corners")
		}
		m.joint(j)
	}
}

// joint is the corners of alike drawers.
type joint struct {
	group    []batch.Drawer
	meetings []meeting
	across   int     // how many stand beside each other
	kept     float64 // how much of a page is not torn apart, in mm
	sizes    []sized
	enlarged bool // the first is as large as it can be, and what is said of them goes on over the page
}

// chapterHead is what the heading of a chapter takes up, in mm, and cornerLow how high the drawing of a corner has to
// be to tell much.
const chapterHead, cornerLow = 10.0, 80.0

// drawJoint draws the corners of a joint so that they go on one page with all that is said of them; where that is too
// much, they have a page of their own, and are larger.
func (m maker) drawJoint(j *joint) {
	heading := m.Height(m.on(func(m maker) { m.jointHeading(*j) }))
	told := m.Height(m.on(func(m maker) { m.jointTold(*j) }))
	j.across = abreast
	rows := math.Ceil(float64(len(j.meetings)) / abreast)
	page := m.Whole() - chapterHead - heading + m.Gap(paper.AfterTable)
	if high := (page-told)/rows - cornerWords; high >= cornerLow {
		m.drawMeetings(j.meetings, high, abreast)
		j.kept = m.Whole() - chapterHead
		return
	}
	if len(j.meetings) <= 2 {
		j.across, rows = 1, float64(len(j.meetings))
	}
	m.drawMeetings(j.meetings, page/rows-cornerWords, j.across)
	j.kept = page
}

// cornerWords is what the words under the drawing of a corner take up, in mm.
const cornerWords = 8.0

// joint shows the corners of alike drawers.
func (m maker) joint(j joint) {
	m.jointHeading(j)
	if j.enlarged {
		m.pair(j.meetings[0], j.meetings[1])
		m.jointTold(j)
		return
	}
	for row := range slices.Chunk(j.meetings, j.across) {
		things := make([]func(*paper.Book), j.across)
		for i := range things {
			things[i] = func(*paper.Book) {}
		}
		for i, c := range row {
			things[i] = m.on(func(m maker) { m.meeting(c) })
		}
		m.Abreast(things...)
	}
	m.Together(func() { m.jointTold(j) })
}

func (m maker) jointHeading(j joint) {
	m.Heading(1, fmt.Sprintf("%s: %s", j.group[0].Spec.Joint, names(drawerNames(j.group))))
}

// jointTold says what is right of a joint and what is likely, and the same of the sizes of its boxes.
func (m maker) jointTold(j joint) {
	m.Forecasts(m.forecasts(j.group[0]))
	if len(j.sizes) > 0 {
		m.table(m.sizedTable(j.sizes, j.group))
	}
	if m.listed(j.group) < len(j.group) {
		m.Text("The form for readings has the limits of the other drawers' sizes.")
	}
}

// meeting shows a corner.
func (m maker) meeting(c meeting) {
	m.Scale(paper.ScaleText(c.scale))
	m.Figure(c.drawn, "")
	m.Text(upper(c.words()))
}

// pair shows a corner, and beside it another that is smaller, with the words of both.
func (m maker) pair(first, other meeting) {
	m.Scale(paper.ScaleText(first.scale))
	m.Beside(first.drawn, func() {
		m.Text("At the left: " + first.words())
		m.meeting(other)
	})
}

// words say what a corner is, and its scale.
func (c meeting) words() string { return fmt.Sprintf("%s, %s.", c.what, paper.ScaleText(c.scale)) }

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

// meeting is a corner with what it is, and its drawing when it is made.
type meeting struct {
	paper.Corner
	what  string
	drawn drawing.Drawing
	scale float64
}

// drawMeetings draws corners, all at one scale, so many beside each other, up to a height in mm.
func (m maker) drawMeetings(list []meeting, high float64, across int) {
	corners := make([]paper.Corner, len(list))
	for i, c := range list {
		corners[i] = c.Corner
	}
	drawn, scale := paper.Corners(corners, paper.Frame{Width: m.ColumnWidth(across), Height: high}, m.asSet)
	for i := range list {
		list[i].drawn, list[i].scale = drawn[i], scale
	}
}

// secondLeast is the scale of the second of two corners at least, where the first one is larger.
const secondLeast = 1.5

// enlarge draws the first of two corners, the joint itself, as large as a page has room for beside the other.
func (m maker) enlarge(j joint) joint {
	if len(j.meetings) != 2 {
		return j
	}
	pair, scales, ok := paper.CornerPair([2]paper.Corner{j.meetings[0].Corner, j.meetings[1].Corner},
		paper.Frame{Width: m.Width(), Height: m.Whole() / 2}, secondLeast, m.asSet)
	if !ok || scales[0] <= j.meetings[0].scale {
		return j
	}
	j.meetings = slices.Clone(j.meetings)
	for i := range pair {
		j.meetings[i].drawn, j.meetings[i].scale = pair[i], scales[i]
	}
	j.enlarged = true
	j.kept = m.Height(m.on(func(m maker) { m.jointHeading(j); m.pair(j.meetings[0], j.meetings[1]) }))
	return j
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
	list := []meeting{{Corner: level, what: "the left front corner from above"}}
	if d.Spec.BackJoint == joinery.Housed {
		level.Near.Y = d.Outside.Depth
		list = append(list, meeting{Corner: level, what: "the left rear corner from above"})
	}
	upright := paper.Corner{Pieces: pieces, Axis: paper.AcrossX, At: 0.47 * d.Outside.Width}
	return append(list, meeting{Corner: upright, what: "the bottom at the box front, from the right"})
}
