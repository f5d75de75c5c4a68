package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
	"drawerwright/geom/setup"
)

// openings says where the slides of each opening come, drawn and as a table, and in which order
// they are screwed on.
func (m maker) openings() {
	if len(m.report.Cabinets) == 0 {
		return
	}
	m.Chapter("Slides")
	unit := m.unit.String()
	for _, c := range m.report.Cabinets {
		bank := m.bankOf(c)
		drawn := m.sides(bank, c)
		m.Keep(highestOf(drawn) + 40) // the heading with what it is about
		m.Heading(1, fmt.Sprintf("%s: %s %s, %s", c.Name, present.OpeningSize(c, m.unit), unit, c.Slide))
		if c.Packing > 0 {
			m.Text(upper(present.PackingText(c, m.unit)) + ".")
		}
		if c.Shim > 0 {
			m.Text(upper(present.ShimText(c, m.unit)) + ".")
		}
		m.elevations(drawn)
		m.table(present.RowTable(c, m.unit).Pick("drawer", "slide line", "box from", "front from", "front height"))
		if len(c.Spacers) > 0 {
			m.Text("Spacers: " + present.SpacerText(c) + ".")
		}
		for _, s := range c.Spacers {
			m.Item(0, "·", "spacer of "+present.SpacerFor(s, m.unit))
		}
		m.pilots(bank)
	}
	m.mountings()
	for _, a := range m.report.SharedSizes {
		m.Text(upper(present.SharedSizeText(a, m.unit)))
	}
	m.Small("Heights are over the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet " +
		"comes first.")
}

// mountings says in which order slides and boxes come into each cabinet, once where it is the same.
func (m maker) mountings() {
	for _, group := range setup.Together(m.report.Cabinets, func(c record.Cabinet) string {
		return strings.Join(m.mounting(m.bankOf(c), c), "\n")
	}) {
		list := m.mounting(m.bankOf(group[0]), group[0])
		if len(list) == 0 {
			continue
		}
		var all []string
		for _, c := range group {
			all = append(all, c.Name)
		}
		m.Heading(2, "In this order: "+names(all))
		for n, said := range list {
			m.Item(0, fmt.Sprintf("%d.", n+1), said)
		}
	}
}

// bankOf is the opening of a cabinet of the report.
func (m maker) bankOf(c record.Cabinet) batch.Bank {
	i := slices.IndexFunc(m.batch.Banks, func(b batch.Bank) bool { return b.Name == c.Name })
	return m.batch.Banks[i]
}

// mark is a distance of an elevation; the table has those of slides by the rule too.
func (m maker) mark(mm float64) drawing.Mark { return drawing.Mark{At: mm, Text: m.caliper(mm)} }

// elevation draws a board, and says at which scale and what else there is to say.
func (m maker) elevation(e paper.Elevation, room geom.Point, said string) paper.Figure {
	d, scale := e.Draw(room)
	return paper.Figure{Drawing: d, Words: paper.ScaleText(scale) + ". " + said}
}

// elevations puts boards on the page, whose title block has their scale.
func (m maker) elevations(list []paper.Figure) {
	m.Figures(list)
	for _, f := range list {
		scale, _, _ := strings.Cut(f.Words, ". ")
		m.Scale(scale)
	}
}

// maxHoles is how many holes of a slide have their distances on a drawing; of more the first two and the last.
const maxHoles = 6

// sides draws the left side of a cabinet, and the side of a box where half of a slide is screwed to it.
func (m maker) sides(bank batch.Bank, c record.Cabinet) []paper.Figure {
	s := bank.Side
	if len(s.Lines) == 0 {
		return nil
	}
	e := paper.Elevation{Width: s.Depth, Height: s.Height, Edge: "front edge"}
	for i := len(s.Lines) - 1; i >= 0; i-- { // from below
		l := s.Lines[i]
		e.Lines = append(e.Lines, paper.Level{At: l.At, Words: l.Name})
		e.Up = append(e.Up, m.mark(l.At))
	}
	for _, x := range firstHoles(s.Holes) {
		e.Across = append(e.Across, m.mark(x))
	}
	for _, h := range s.Holes {
		e.Holes = append(e.Holes, geom.Circle(h, s.Diameter/2))
	}
	list := []paper.Figure{m.elevation(e, geom.Point{X: m.Width() * 0.56, Y: 130},
		"The cabinet's left side from inside, slide lines over the opening's lower edge; the right side is its mirror "+
			"image.")}
	if line, ok := boxLine(bank, c); ok {
		d := m.batch.Drawers[bank.Drawers[len(bank.Drawers)-1]]
		box := paper.Elevation{Width: d.Outside.Depth, Height: d.Outside.Height, Edge: "",
			Lines: []paper.Level{{At: line, Words: "middle of the slide"}}, Up: []drawing.Mark{m.mark(line)}}
		list = append(list, m.elevation(box, geom.Point{X: m.Width() * 0.42, Y: 130},
			"The left side of "+d.Spec.Name+" from outside, turned over: its front edge at the left. The line is as "+
				"high on every box of the opening."))
	}
	return list
}

// highestOf is how high the highest of some figures is, in mm.
func highestOf(list []paper.Figure) (high float64) {
	for _, f := range list {
		high = max(high, f.Height)
	}
	return high
}

// firstHoles are the distances of holes from the front edge, sorted, each once.
func firstHoles(holes []geom.Point) (list []float64) {
	for _, h := range holes {
		list = append(list, h.X)
	}
	list = sorted(list)
	if n := len(list); n > maxHoles {
		list = []float64{list[0], list[1], list[n-1]}
	}
	return list
}

// boxLine is how high the slide's line is over a box's lower edge, where half of the slide is
// screwed to the box.
func boxLine(bank batch.Bank, c record.Cabinet) (float64, bool) {
	low := c.Rows[len(c.Rows)-1]
	line := low.SlideLine.MM() - low.BoxBottom.MM()
	return line, bank.Plan.Slide.Kind == opening.SideMount && line > 0
}

// mounting is the order in which slides and boxes come into a cabinet.
func (m maker) mounting(bank batch.Bank, c record.Cabinet) (list []string) {
	s := bank.Side
	if len(s.Lines) == 0 {
		return nil
	}
	on := "Strike the slide lines on both sides of the cabinet, from the opening's lower edge up"
	if len(c.Spacers) > 0 {
		on += ", or stand the slides on the spacers"
	}
	list = append(list, on+": the lowest first.")
	if holes := firstHoles(s.Holes); len(holes) > 0 {
		list = append(list, fmt.Sprintf("Bore where the slide has holes: the first %s behind the cabinet's front "+
			"edge, %s wide, %s deep.", words.Length(holes[0], m.unit), words.Length(s.Diameter, m.unit),
			words.Length(s.HoleDepth, m.unit)))
	}
	list = append(list, "Screw on the slides by two screws each, the ones through long holes first; see that left and "+
		"right are level and parallel, front and back; then all other screws.")
	if line, ok := boxLine(bank, c); ok {
		list = append(list, fmt.Sprintf("Strike a line on both sides of each box, %s over its lower edge, and screw "+
			"the box's half of the slide on it, its front end at the front edge of the side.",
			words.Length(line, m.unit)))
	}
	list = append(list, "Run the boxes in, the lowest first, and open and close each before the next.")
	if slices.ContainsFunc(bank.Drawers, func(i int) bool { return m.batch.Drawers[i].Spec.DrawerFront != nil }) {
		list = append(list, "Hang the drawer fronts last, the lowest first, at the heights of the table.")
	}
	return list
}

// pilots draws the backs of drawer fronts with the pilot holes for the screws from inside the box,
// those that are alike once.
func (m maker) pilots(bank batch.Bank) {
	var list []paper.Figure
	drawn := make(map[int]int) // by number: which figure
	for _, i := range bank.Drawers {
		d := m.batch.Drawers[i]
		front := partOf(d, joinery.DrawerFrontRole)
		box := partOf(d, joinery.Front)
		if front == nil || box == nil {
			continue
		}
		if at, known := drawn[front.Number]; known {
			list[at].Words += ", " + d.Spec.Name
			continue
		}
		e := m.pilotsOf(front.Part, box.Part)
		if len(e.Holes) == 0 {
			continue
		}
		drawn[front.Number] = len(list)
		list = append(list, m.elevation(e, geom.Point{X: m.Width()*0.5 - 4, Y: 70},
			fmt.Sprintf("Number %d from behind, lower edge below; dashed is its box. For %s", front.Number,
				d.Spec.Name)))
	}
	if len(list) == 0 {
		return
	}
	m.Keep(highestOf(list) + 30)
	m.Heading(2, "Pilot holes in the backs of drawer fronts")
	m.elevations(list)
}

// partOf is the first part of a role of a drawer, nil for none.
func partOf(d batch.Drawer, r joinery.Role) *batch.Part {
	for i := range d.Parts {
		if d.Parts[i].Role == r {
			return &d.Parts[i]
		}
	}
	return nil
}

// pilotsOf is the back of a drawer front with the places behind which the box front has holes for
// screws, and the box.
func (m maker) pilotsOf(front, box joinery.Part) (e paper.Elevation) {
	e.Width, e.Height = front.Panel.Length(), front.Panel.Width()
	stand, on := box.Placements[0], front.Placements[0]
	place := func(p geom.Point) geom.Point { // of the box front, on the drawer front
		v := stand.Apply(geom.Vec3{X: p.X, Y: p.Y}).Sub(on.Origin)
		return geom.Point{X: v.Dot(on.X), Y: v.Dot(on.Y)}
	}
	r := box.Panel.Outline.Bounds()
	e.Dashed = []geom.Rect{geom.Around(place(r.Min), place(r.Max))}
	var xs, ys []float64
	for _, at := range screwHoles(box.Panel) {
		p := place(at)
		e.Holes = append(e.Holes, geom.Circle(p, 1))
		xs, ys = append(xs, p.X), append(ys, p.Y)
	}
	for _, x := range sorted(xs) {
		e.Across = append(e.Across, m.mark(x))
	}
	for _, y := range sorted(ys) {
		e.Up = append(e.Up, m.mark(y))
	}
	return e
}

// sorted are different distances, the least first.
func sorted(list []float64) []float64 {
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(b-a) < 0.005 })
}

// screwHoles are the middles of the narrowest holes through a box front, which are those for the
// screws of its drawer front: those for handles are wider.
func screwHoles(p geom.Panel) (list []geom.Point) {
	least := 0.0
	for _, k := range p.Pockets {
		c, r, round := k.Outline.AsCircle()
		if !round || k.Kind != geom.Drill || !k.Through(p.Thickness) || least > 0 && r > least+0.005 {
			continue
		}
		if least == 0 || r < least-0.005 {
			least, list = r, nil
		}
		list = append(list, c)
	}
	return list
}
