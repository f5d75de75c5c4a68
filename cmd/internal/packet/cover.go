package packet

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// cover is the bench sheet: what to make, what becomes of the boxes, every warning, what each machine is set to, the
// order of work, and what stands where.
func (m maker) cover() error {
	m.Page(drawing.Bookmark{Name: "Bench sheet"})
	m.Heading(0, title(m.batch))
	m.Text(fmt.Sprintf("%s of %s. Lengths are in %s; sizes are width x height x "+
		"depth.", words.Count(m.batch.Boxes(), "box", "boxes"),
		words.Count(len(m.batch.Kinds()), "kind", "kinds"), unitWords[m.unit]))
	m.Small(words.Rounding(m.unit))
	m.Strong(record.VerdictOn(m.batch).Text)
	for _, w := range present.Remarks(m.report.Warnings, geom.LevelWarning) {
		m.Item(0, "!", w.Text)
		if w.Hint != "" {
			m.Item(1, "", "Way out, in the job: "+present.OnPaper(w.Hint)+".")
		}
	}
	m.notes()
	m.whatToMake()
	m.figures()
	return m.besidePicture()
}

// notes are what makes more work but comes out right.
func (m maker) notes() {
	notes := present.Gathered(m.report.Warnings, geom.LevelNote)
	if len(notes) == 0 {
		return
	}
	m.Small("Notes: more work, but nothing that comes out wrong:")
	for _, line := range notes {
		m.SmallItem(0, "-", line)
	}
}

// leastPicture and mostPicture are rooms for the picture of the bench sheet, with its legend, in mm of height.
const leastPicture, mostPicture = 78.0, 110.0

// underPicture is what the words below it take.
const underPicture = 6.0

// besidePicture prints the order of work and purchases with the first box taken apart beside them, and the chapters
// below. Where the page has no room for that the picture stands on the next one, with what does not answer first.
func (m maker) besidePicture() error {
	if len(m.batch.Drawers) == 0 {
		m.Columns(2, m.inTurn(m.order, m.pages, m.buy))
		return nil
	}
	first := m.batch.Drawers[0]
	box, err := m.take(first)
	if err != nil {
		return err
	}
	pair := func(left func(), right ...func()) func() {
		high, _ := m.TakesIn(2, left)
		below, _ := m.TakesIn(2, m.inTurn(right...))
		high = min(max(high-below-underPicture, leastPicture), mostPicture)
		picture := box.Exploded(geom.Point{X: m.ColumnWidth(2), Y: high})
		return func() {
			m.Columns(2, func() {
				left()
				m.Break()
				m.Figure(picture, first.Spec.Name+", taken apart.")
				m.inTurn(right...)()
			})
		}
	}
	buy, both := func() { m.Columns(2, m.buy) }, m.inTurn(m.order, m.buy)
	m.Shortest(m.inTurn(pair(both), m.pages), m.inTurn(pair(m.order, m.buy), m.pages),
		m.inTurn(pair(m.order), buy, m.pages), func() {
			m.Columns(2, m.order)
			m.pages()
			pair(m.buy)()
		})()
	return nil
}

// inTurn does one after the other, none of it torn apart.
func (m maker) inTurn(list ...func()) func() {
	return func() {
		for _, draw := range list {
			m.Together(draw)
		}
	}
}

// order is the order of work, a step to tick after the other.
func (m maker) order() {
	m.Heading(2, "Order of work")
	for _, step := range m.work {
		m.Tick(0, step)
	}
}

// pages are the chapters with their pages, beside each other.
func (m maker) pages() {
	m.Heading(2, "Pages")
	m.Contents(m.chapters(), 4)
}

// chapters is how many there are at most besides this one.
func (m maker) chapters() int {
	n := len([]string{"Cut list", "Before you begin", "Setups", "Parts", "Corners", "Assembly", "First box",
		"Form for readings", "Labels"})
	for _, there := range []bool{len(m.report.Sheets) > 0, len(m.report.Cabinets) > 0, len(m.report.Templates) > 0} {
		if there {
			n++
		}
	}
	return n
}

// whatToMake is the table of the boxes, with a tick for each kind.
func (m maker) whatToMake() {
	t := present.NewTable(present.Numbers("boxes"), present.Numbers("outside"), present.Numbers("inside"),
		present.Words("corner"), present.Words("drawers"))
	for _, kind := range m.batch.Kinds() {
		d, boxes := kind[0], 0
		var called []string
		for _, one := range kind {
			called = append(called, one.Spec.Name)
			boxes += one.Spec.Count
		}
		t.Add(fmt.Sprint(boxes), m.size(d.Outside), m.size(d.Inside), string(d.Spec.Joint), names(called))
	}
	m.ticked(t)
}

// figures are what each machine is set to, to be read from where one stands at it.
func (m maker) figures() {
	for _, c := range m.sheet.Machines {
		if len(c.Files) > 0 {
			m.BigFigures(upper(joinery.CutterKind(c.Machine).Machine()), m.bits(c), nil)
		}
		for i, s := range c.Settings {
			m.BigFigures(settingLabel(c, i), m.set(s, c.Machine), nil)
		}
		away := func(s present.Setting) bool { return s.Fence > 0 }
		if joinery.CutterKind(c.Machine).Fenced() && slices.ContainsFunc(c.Settings, away) {
			m.Small("Fence " + present.FenceFrom(c.Machine) + ".")
		}
	}
}

// settingLabel names a setting of a machine.
func settingLabel(c present.Machine, at int) string {
	return fmt.Sprintf("Setting %d, %s", at+1, joinery.CutterKind(c.Machine).Machine())
}

// set is what is set for a setting.
func (m maker) set(s present.Setting, machine string) (list []paper.BigFigure) {
	for _, f := range s.Figures(machine, m.unit) {
		if f.Words != "" {
			list = append(list, paper.BigFigure{Caption: f.Name, Words: f.Words})
			continue
		}
		number, beside := f.FigureParts()
		list = append(list, paper.BigFigure{Caption: f.Name + " " + beside, Figure: number})
	}
	return list
}

// bits are the diameters of a router's bits that cut something.
func (m maker) bits(c present.Machine) (list []paper.BigFigure) {
	all := c.Bits
	if len(all) == 0 {
		all = []record.Length{c.Cutter}
	}
	for _, b := range all {
		number, beside := present.Figure{Value: words.Bit(b.MM(), m.unit)}.FigureParts()
		list = append(list, paper.BigFigure{Caption: "bit " + beside, Figure: number})
	}
	return list
}
