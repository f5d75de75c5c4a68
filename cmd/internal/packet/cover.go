package packet

import (
	"fmt"

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
	m.Text(fmt.Sprintf("%s of %s. Lengths are in %s; sizes are width x height x depth.", words.Count(m.batch.Boxes(), "box", "boxes"),
		words.Count(len(m.batch.Drawers), "kind", "kinds"), unitWords[m.unit]))
	m.Strong(record.VerdictOn(m.batch).Text)
	for _, line := range present.Gathered(m.report.Warnings, geom.LevelWarning) {
		m.Item(0, "!", line)
	}
	if notes := present.Gathered(m.report.Warnings, geom.LevelNote); len(notes) > 0 {
		m.Small("Notes: more work, but nothing that comes out wrong:")
		for _, line := range notes {
			m.SmallItem(0, "-", line)
		}
	}
	m.whatToMake()
	m.figures()
	picture, err := m.pictured(smallPicture)
	if err != nil {
		return err
	}
	if !m.Fits(func() { m.inColumns(picture); m.cutList() }) { // with more pages there is room for a larger one
		if picture, err = m.pictured(largePicture); err != nil {
			return err
		}
	}
	m.inColumns(picture)
	return nil
}

// smallPicture and largePicture are rooms for the picture of the bench sheet, with its legend, in mm of height.
const smallPicture, largePicture = 57.0, 95.0

// pictured draws the first box taken apart, when it is called.
func (m maker) pictured(high float64) (func(), error) {
	if len(m.batch.Drawers) == 0 {
		return func() {}, nil
	}
	first := m.batch.Drawers[0]
	drawn, err := m.exploded(first, geom.Point{X: m.ColumnWidth(2), Y: high})
	return func() { m.Figure(drawn, first.Spec.Name+", taken apart.") }, err
}

// inColumns prints order of work, purchases, pages and a picture in two columns; where the page has no room for all of
// them, those that answer first come first.
func (m maker) inColumns(picture func()) {
	all := func() {
		m.Columns(2, func() {
			for _, block := range []func(){m.order, m.buy, m.pages, picture} {
				m.Together(block)
			}
		})
	}
	if m.Fits(all) {
		all()
		return
	}
	m.Columns(2, func() {
		m.Together(m.order)
		m.Together(m.pages)
	})
	m.Columns(2, func() {
		m.Together(picture)
		m.Together(m.buy)
	})
}

// order is the order of work, a step to tick after the other.
func (m maker) order() {
	m.Heading(2, "Order of work")
	for _, step := range present.OrderOfWork(m.report, m.sheet) {
		m.Tick(0, step)
	}
}

// pages are the chapters with their pages.
func (m maker) pages() {
	m.Heading(2, "Pages")
	m.Contents(m.chapters())
}

// chapters is how many there are at most besides this one.
func (m maker) chapters() int {
	n := len([]string{"Cut list", "Before you begin", "Setups", "Parts", "Corners", "Assembly", "Forms"})
	for _, there := range []bool{len(m.report.Sheets) > 0, len(m.report.Cabinets) > 0, len(m.report.Templates) > 0, true} {
		if there {
			n++
		}
	}
	return n
}

// whatToMake is the table of the boxes, with a tick for each kind.
func (m maker) whatToMake() {
	t := present.NewTable(present.Words("drawer"), present.Numbers("boxes"),
		present.Numbers("outside"), present.Numbers("inside"), present.Words("corner"))
	for _, d := range m.batch.Drawers {
		t.Add(d.Spec.Name, fmt.Sprint(d.Spec.Count), m.size(d.Outside), m.size(d.Inside), string(d.Spec.Joint))
	}
	m.ticked(t)
}

// figures are what each machine is set to, to be read from where one stands at it.
func (m maker) figures() {
	for _, c := range m.sheet.Machines {
		if len(c.Settings) == 0 {
			m.BigFigures(upper(joinery.CutterKind(c.Machine).Machine()), m.bits(c), nil)
		}
		for i, s := range c.Settings {
			m.BigFigures(settingLabel(c, i), m.set(s, c.Machine), nil)
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
		number, beside := present.Figure{Value: words.Length(b.MM(), m.unit)}.FigureParts()
		list = append(list, paper.BigFigure{Caption: "bit " + beside, Figure: number})
	}
	return list
}
