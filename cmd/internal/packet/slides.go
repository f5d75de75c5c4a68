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
	"drawerwright/geom/opening"
	"drawerwright/geom/setup"
)

// openings says where the slides of each opening come, drawn and as a table, and in which order they are screwed
// on, in two columns. Without openings drawer fronts have their pilot holes all the same.
func (m maker) openings() {
	if len(m.report.Cabinets) == 0 {
		if len(m.pilotBacks()) > 0 {
			m.Chapter("Drawer fronts")
			m.Columns(slideColumns, m.pilots)
		}
		return
	}
	m.Chapter("Slides")
	m.Small("Cabinet sides are the left ones from inside; the right ones are their mirror images. Heights are over " +
		"the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet " +
		"comes first.")
	m.table(m.rows())
	m.strips()
	m.Columns(slideColumns, func() {
		for _, c := range m.report.Cabinets {
			m.opening(c)
		}
		m.spacers()
		m.boxLines()
		m.pilots()
		m.mountings()
		for _, a := range m.report.SharedSizes {
			m.Text(upper(present.SharedSizeText(a, m.unit)))
		}
	})
}

// slideColumns is in how many columns slides are shown; the rest is mm: the room of a drawing
// in one.
const (
	slideColumns = 2
	slideHigh    = 110.0
	openingWords = 28.0 // of what stands over and under a cabinet's side
)

// rows is where the drawers of all openings come.
func (m maker) rows() (all present.Table) {
	for _, c := range m.report.Cabinets {
		from, height := present.RowHeads(c)
		t := present.RowTable(c, m.unit).Pick("drawer", "slide line", "box lower edge", from, height)
		allFrom, allHeight := present.RowHeads(m.report.Cabinets...)
		t = t.Renamed(from, allFrom).Renamed(height, allHeight)
		all.UnitOnce = t.UnitOnce
		all.Columns = slices.Insert(t.Columns, 1, present.Words("opening"))
		for _, row := range t.Rows {
			all.Rows = append(all.Rows, slices.Insert(row, 1, present.Cell{Text: c.Name}))
		}
	}
	return all
}

// opening shows the side of a cabinet, and where its drawers come.
func (m maker) opening(c record.Cabinet) {
	bank := m.bankOf(c)
	side := m.cabinetSide(bank)
	m.Together(func() {
		if side.Width > 0 { // the name stays with the drawing, at whatever page or column that begins
			d, _ := m.Elevation(side, slideHigh)
			m.Keep(d.Height + openingWords)
		}
		m.Strong(fmt.Sprintf("Opening %s: %s.", c.Name, present.OpeningText(c, m.unit)))
		if c.BoxWidth > 0 {
			m.Text(upper(present.WidthText(c, m.unit)) + ".")
		}
		if c.Packing > 0 {
			m.Text(upper(present.PackingText(c, m.unit)) + ".")
		}
		if c.Shim > 0 {
			m.Text(upper(present.ShimText(c, m.unit)) + ".")
		}
		if side.Width > 0 {
			said := "The cabinet's left side, from inside."
			if len(bank.Side.Lines) > len(bank.Plan.Rows) {
				said += " Lines without a name are of kickers."
			}
			m.elevation(side, slideHigh, said)
		}
	})
	m.Together(func() {
		for _, s := range c.Spacers {
			m.Item(0, "·", "spacer of "+present.SpacerFor(s, m.unit))
		}
	})
}

// spacers says how the spacers are used, once for all openings in which it is the same.
func (m maker) spacers() {
	var with []record.Cabinet
	for _, c := range m.report.Cabinets {
		if len(c.Spacers) > 0 {
			with = append(with, c)
		}
	}
	for _, group := range setup.Together(with, func(c record.Cabinet) string {
		return present.SpacersOf(c, "the lowest drawer")
	}) {
		said := "Spacers: "
		if len(with) > len(group) {
			said = "Spacers of " + names(openingNames(group)) + ": "
		}
		m.Text(said + present.SpacersOf(group[0], "the lowest drawer") + ". " + m.assumedHigh(group))
	}
}

// assumedHigh says for slides of which height the spacers of openings are, and how they change for others: a slide
// stands by half of its height below its line.
func (m maker) assumedHigh(list []record.Cabinet) string {
	var high []string
	for _, c := range list {
		if h := words.Length(m.bankOf(c).Plan.Slide.Height, m.unit); !slices.Contains(high, h) {
			high = append(high, h)
		}
	}
	return "They are for slides " + words.And(high) + " high: give the job the height of others."
}

// openingNames are the names of cabinets' openings.
func openingNames(list []record.Cabinet) (all []string) {
	for _, c := range list {
		all = append(all, c.Name)
	}
	return all
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
		m.Heading(2, "In this order: "+names(openingNames(group)))
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

// mark is a distance of an elevation, which is marked with a rule.
func (m maker) mark(mm float64) drawing.Mark { return drawing.Mark{At: mm, Text: m.ruled(mm)} }

// elevation puts a board on the page, at most as high as given in mm, says at which scale and what else there is
// to say; the title block has its scale.
func (m maker) elevation(e paper.Elevation, high float64, said string) {
	d, scale := m.Elevation(e, high)
	m.Figure(d, paper.ScaleText(scale)+". "+said)
	m.Scale(paper.ScaleText(scale))
}

// maxHoles is how many holes of a slide have their distances on a drawing; of more the first two and the last.
const maxHoles = 6

// cabinetSide is the left side of a cabinet; empty where it has no slide lines.
func (m maker) cabinetSide(bank batch.Bank) (e paper.Elevation) {
	s := bank.Side
	if len(s.Lines) == 0 {
		return e
	}
	e = paper.Elevation{Width: s.Depth, Height: s.Height, Edge: "front edge"}
	for i := len(s.Lines) - 1; i >= 0; i-- { // from below
		l := s.Lines[i]
		if i >= len(bank.Plan.Rows) { // a kicker, near the runner above it: the table has its height
			e.Lines = append(e.Lines, paper.Level{At: l.At})
			continue
		}
		e.Lines = append(e.Lines, paper.Level{At: l.At, Words: l.Name})
		e.Up = append(e.Up, m.mark(l.At))
	}
	for _, x := range firstHoles(s.Holes) {
		e.Across = append(e.Across, m.mark(x))
	}
	for _, h := range s.Holes {
		e.Holes = append(e.Holes, geom.Circle(h, s.Diameter/2))
	}
	return e
}

// boxLines draws the sides of boxes where half of a slide is screwed to them, once for all that have its line at one
// height.
func (m maker) boxLines() {
	type boxSide struct {
		line, long, high float64
		first            string
		openings         []string
	}
	var list []boxSide
	for _, c := range m.report.Cabinets {
		bank := m.bankOf(c)
		line, ok := boxLine(bank, c)
		if !ok {
			continue
		}
		at := slices.IndexFunc(list, func(s boxSide) bool { return m.caliper(s.line) == m.caliper(line) })
		if at < 0 {
			d := m.batch.Drawers[bank.Drawers[len(bank.Drawers)-1]]
			at, list = len(list), append(list, boxSide{line: line, long: d.Outside.Depth, high: d.Outside.Height,
				first: d.Spec.Name})
		}
		list[at].openings = append(list[at].openings, c.Name)
	}
	for _, s := range list {
		m.Together(func() {
			m.Heading(2, "Slides on the boxes: "+names(s.openings))
			m.elevation(paper.Elevation{Width: s.long, Height: s.high,
				Lines: []paper.Level{{At: s.line}}, Up: []drawing.Mark{m.mark(s.line)}}, slideHigh,
				"The middle of the slide on the left side of "+s.first+", front edge at the left: as high on every "+
					"box.")
		})
	}
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
		bore, _ := words.Drill(s.Diameter, m.unit)
		k := bank.Plan.Slide
		places := words.PlaceIn(holes[0], m.unit) + " behind the cabinet's front edge"
		if n := len(s.Holes) / len(s.Lines); n > 1 {
			// Without a fraction, which would end elsewhere when it is stepped off many times.
			places += fmt.Sprintf(", then every %s %s, %d holes, the last %s behind it", m.caliper(k.HolePitch), m.unit,
				n, words.PlaceIn(holes[len(holes)-1], m.unit))
		}
		where := "where the slide has holes"
		if k.Kind == opening.Wooden {
			where = "for the screws of runners and kickers, which are bored through as wide as their shanks at the " +
				"same places"
		}
		list = append(list, fmt.Sprintf("Bore %s wide "+where+", %s deep; see first that the "+
			"cabinet's side is thicker than that. The first is %s. Screws for these holes are not in the list of "+
			"what to buy.", bore, words.PlaceIn(s.HoleDepth, m.unit), places))
		if bank.Opening.WebFrame == 0 { // which have their places in the table
			list = append(list, "The front ends of the slides are "+m.frontEnds(holes[0]-k.Setback)+".")
		}
	}
	list = append(list, screwedOn(bank.Plan.Slide.Kind))
	if line, ok := boxLine(bank, c); ok {
		list = append(list, fmt.Sprintf("Strike a line on both sides of each box, %s over its lower edge, and screw "+
			"the box's half of the slide on it, its front end at the front edge of the side, with screws that are "+
			"shorter than the side is thick, %s.", words.PlaceIn(line, m.unit), m.thinnestSide(bank)))
	}
	list = append(list, "Run the boxes in, the lowest first, and open and close each before the next.")
	if k := bank.Plan.Slide.Kind; k == opening.Wooden && c.Fronts != string(opening.Overlay) {
		list = append(list, "Fix a stop behind each box, where its front is level with the cabinet's front edge: "+
			"wooden runners have none.")
	}
	if slices.ContainsFunc(bank.Drawers, func(i int) bool { return m.batch.Drawers[i].Spec.DrawerFront != nil }) {
		list = append(list, "Hang the drawer fronts last, the lowest first, at the heights of the table.")
	}
	return list
}

// screwedOn says in which order the screws of slides come.
func screwedOn(kind opening.Kind) string {
	by := "Screw on the slides by two screws each, the ones through long holes first"
	if kind == opening.Wooden {
		by = "Screw on runners, guides and kickers by the front screw and the rear one each"
	}
	return by + "; see that left and right are level and parallel, front and back; then all other screws."
}

// frontEnds says where slides begin that are so far behind the cabinet's front edge, in mm.
func (m maker) frontEnds(behind float64) string {
	if text := words.PlaceIn(behind, m.unit); text != words.PlaceIn(0, m.unit) {
		return text + " behind the cabinet's front edge"
	}
	return "level with the cabinet's front edge"
}

// thinnestSide is the least thickness of the sides of boxes of an opening, in words.
func (m maker) thinnestSide(bank batch.Bank) string {
	least := math.Inf(1)
	for _, i := range bank.Drawers {
		least = min(least, m.batch.Drawers[i].Spec.Sides.Thickness.Min)
	}
	return words.Length(least, m.unit)
}

// sorted are different distances, the least first.
func sorted(list []float64) []float64 {
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(b-a) < 0.005 })
}
