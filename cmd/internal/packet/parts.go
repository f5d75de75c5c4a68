package packet

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// parts draws every different part, both faces where both need it, with tables of its cuts
// and holes: those that differ in sizes alone as one, and as many on a page as it has room for.
func (m maker) parts(ctx context.Context) {
	families := m.families(batch.Merged(m.batch))
	m.Chapter("Parts")
	said := "All distances are from the circle: with the face that is named before you, from the left end and the " +
		"lower edge, of a bottom the front edge. Dashed, and \"seen through\" in tables: cut into the other face. " +
		"A-A, B-B: sections, seen along the arrows; what is framed in them is drawn larger here, with depths from " +
		"the face."
	if slices.ContainsFunc(families, func(f family) bool { return len(f.groups) > 1 }) {
		said += " Parts that differ in sizes alone have one drawing, of the first: L along it and W across it are " +
			"letters for what differs, and the row of your part in the table under it has the figures."
	}
	m.Text(said)
	details := &paper.Details{Number: m.asSet}
	list := make([]sectioned, len(families))
	for i, f := range families {
		if ctx.Err() != nil {
			return
		}
		list[i] = m.sectioned(f, details)
	}
	m.details(details.List())
	var blocks []block
	if len(list) <= maxTried {
		blocks = m.fewest(list)
	}
	onto := pages{room: m.Room, turn: func() { m.Page() }, put: func(b block) { b.write(m.Book) },
		slack: m.slack(blocks)}
	for i, s := range list {
		if ctx.Err() != nil {
			return
		}
		if blocks != nil {
			onto.add(blocks[i])
		} else {
			onto.add(m.block(s, 0))
		}
	}
	onto.end()
}

// slack is what is left of each page, in mm, so that the last one is not nearly empty.
func (m maker) slack(list []block) float64 {
	const step, most = 10.0, 100.0
	turns, left := m.count(list, 0)
	for slack := step; turns > 0 && left > lastUsed*m.Whole() && slack <= most; slack += step {
		if n, room := m.count(list, slack); n == turns && room < lastUsed*m.Whole() {
			return slack
		}
	}
	return 0
}

// lastUsed is the part of a page that may be left at the end of a chapter, if it can be helped.
const lastUsed = 0.65

// maxTried are how many drawings are looked at for the fewest pages; of more, each goes onto paper as it is made.
const maxTried = 40

// fewest are the blocks of families that take the fewest pages: where that saves a page, the drawing of one is smaller
// by a usual scale, or those of several are, the highest first.
func (m maker) fewest(list []sectioned) []block {
	usual, smaller := make([]block, len(list)), make([]block, len(list))
	var order []int // of those that can be smaller
	for i, s := range list {
		usual[i] = m.block(s, 0)
		high := 0.0
		for _, v := range usual[i].views {
			high += v.Height + afterView
		}
		if high -= afterView; s.drawing.Plain() && high > smallHigh {
			high = smallHigh
		}
		if smaller[i] = m.block(s, high); smaller[i].height < usual[i].height {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return -cmp.Compare(usual[a].height, usual[b].height) })
	least, _ := m.count(usual, 0)
	for _, i := range order {
		one := slices.Clone(usual)
		one[i] = smaller[i]
		if n, _ := m.count(one, 0); n < least {
			return one
		}
	}
	several := slices.Clone(usual)
	for _, i := range order {
		several[i] = smaller[i]
		if n, _ := m.count(several, 0); n < least {
			return several
		}
	}
	return usual
}

// count is how many pages blocks begin, after what is left of this one, and what they leave of the last, in mm.
func (m maker) count(list []block, slack float64) (turns int, room float64) {
	room = m.Room()
	onto := pages{
		room:  func() float64 { return room },
		turn:  func() { turns, room = turns+1, m.Whole() },
		put:   func(b block) { room -= b.height },
		slack: slack,
	}
	for _, b := range list {
		onto.add(b)
	}
	onto.end()
	return turns, room
}

// details shows what is framed in sections, beside each other.
func (m maker) details(list []paper.Detail) {
	var figures []paper.Figure
	for _, d := range list {
		m.Scale(paper.ScaleText(d.Scale))
		figures = append(figures, paper.Figure{Drawing: d.Drawing, Words: "in " + firstOf(d.Of)})
	}
	m.Figures(figures)
}

// firstOf are numbers of parts in order, of many the first.
func firstOf(list []int) string {
	const most = 6
	var said []string
	for i, n := range slices.Sorted(slices.Values(list)) {
		if i == most-1 && len(list) > most {
			return names(said) + " ..."
		}
		said = append(said, fmt.Sprint(n))
	}
	return names(said)
}

// sectioned is a family with its drawing's planes.
type sectioned struct {
	family
	drawing paper.Part
}

// sectioned finds the planes of a family's drawing, and adds what they show to details.
func (m maker) sectioned(f family, details *paper.Details) sectioned {
	p := f.part()
	edge := f.edge()
	drawn := paper.Part{Panel: p.Panel, Names: tags(p.Panel), Words: func(f geom.Face, scale float64) string {
		return fmt.Sprintf("%s face, %s below, %s", f, edge, paper.ScaleText(scale))
	}, Letter: f.letterOf}
	return sectioned{f, drawn.Sectioned(details, f.all()...)}
}

// block lays a family out, with views less high than so many mm, or as high as usual for 0.
func (m maker) block(s sectioned, below float64) block {
	told := m.on(func(m maker) { m.about(&s.family) })
	tables := m.lists(&s.family, true)
	listed := m.on(func(m maker) { m.tables(tables) })
	most := m.Whole() - m.Height(told) - min(m.Height(listed), listedMost*m.Whole())
	usual := most - m.Whole()/2
	if below > 0 {
		usual = min(usual, below-0.01)
	}
	views := m.views(s, most, usual)
	if !slices.ContainsFunc(views, func(v paper.View) bool { return v.Left }) {
		tables = m.lists(&s.family, false)
	}
	tables, unseen := withoutNeedless(tables, s.unseen(views))
	all := m.on(func(m maker) {
		m.about(&s.family)
		m.drawn(views, tables, unseen)
	})
	b := block{write: all, views: views, air: m.Gap(paper.AfterTable), narrow: m.wide(s, views, tables) <= m.ColumnWidth(abreast)}
	if len(tables) == 0 {
		b.air = 0
	}
	if b.narrow {
		b.height = m.HeightIn(abreast, all)
	} else {
		b.height = m.Height(all)
	}
	return b
}

// abreast is how many narrow parts stand beside each other, and listedMost how much of a page tables take at most from
// the drawings above them: long ones go on over the next.
const abreast, listedMost = 2, 0.35

// wide is how wide a family is where nothing of it is broken but sentences, in mm.
func (m maker) wide(s sectioned, views []paper.View, tables []present.Table) (most float64) {
	for _, v := range views {
		most = max(most, v.Width)
	}
	for _, t := range tables {
		most = max(most, paper.TableWidth(columns(t), t.Texts()))
	}
	return most
}

// on is what writes pages, on whatever book.
func (m maker) on(write func(maker)) func(*paper.Book) {
	return func(b *paper.Book) {
		m.Book = b
		write(m)
	}
}

// about says what parts are, and which are the same.
func (m maker) about(f *family) {
	for _, g := range f.groups {
		m.Entry(drawing.Bookmark{Name: g.Parts[0].Name, Level: 1})
	}
	m.Heading(1, f.numbers()+": "+f.name())
	p := f.part()
	grain := ""
	if p.Stock.Grain != joinery.GrainNone {
		grain = "; the grain runs along the length"
	}
	unit := m.unit.String()
	of := fmt.Sprintf("%s, %s %s thick", p.Stock.Name, m.asSet(p.Panel.Thickness), unit)
	if slices.ContainsFunc(p.Panel.Pockets, func(k geom.Pocket) bool { return k.Lean != 0 }) {
		defer m.Text("A flank leans through the board: from its line nearer to the middle of the pin, on the outside " +
			"face, to its other line, on the inside face.")
	}
	if len(f.groups) > 1 {
		m.Text(fmt.Sprintf("Of %s%s.", of, grain))
		return
	}
	g := f.groups[0]
	if len(g.Parts) > 1 {
		m.Text(partsAre + names(partNames(g)) + ".")
	}
	said := fmt.Sprintf("%s, %s x %s %s, of %s", words.Count(g.Quantity, "piece", "pieces"),
		m.measured(p.Panel.Length()), m.measured(p.Panel.Width()), unit, of)
	if g.Spares > 0 {
		said += fmt.Sprintf(", %d of them spare", g.Spares)
	}
	m.Text(said + grain + ".")
}

// partsAre is before the names of parts that are the same.
const partsAre = "Parts: "

// partNames are the names of parts that are alike.
func partNames(g batch.Group) (list []string) {
	for _, p := range g.Parts {
		list = append(list, p.Name)
	}
	return list
}

// views draws the faces of a part that need it, within a height in mm of a page, and within a
// usual one where one of the usual scales down to 1:5 does that; a part that shows no more when it is larger, down to
// 1:20.
func (m maker) views(s sectioned, most, usual float64) []paper.View {
	p := s.part().Panel
	faces := paper.Faces(p)
	least := 1.0 / 5
	switch {
	case len(p.Pockets) == 0 && !p.Shaped():
		least, usual = 1.0/20, min(usual, smallHigh)
	case s.drawing.Plain():
		least = 1.0 / 10
	}
	list := make([]paper.View, len(faces))
	for i := len(faces) - 1; i >= 0; i-- { // the first has sections, and what the other leaves
		n := float64(i + 1)
		in := paper.Frame{Width: m.Width(), Height: usual / n, Most: max(most/n, leastHigh), Least: least}
		list[i] = s.drawing.Face(faces[i], in, m.dimension(p))
		most -= list[i].Height + afterView
		usual -= list[i].Height + afterView
	}
	return list
}

// dimension prints what stands in a drawing of a panel: its length and width as a tape reads them, as
// everywhere, and places of cuts as they are set.
func (m maker) dimension(p geom.Panel) func(mm float64) string {
	return func(mm float64) string {
		switch geom.LengthOf(mm) {
		case 0, geom.LengthOf(p.Length()), geom.LengthOf(p.Width()):
			return m.number(mm)
		}
		return m.asSet(mm)
	}
}

// smallHigh is how high, in mm, a drawing is that shows no more when it is larger.
const smallHigh = 75.0

// drawn prints views of a part and the tables that go with them: beside the view where there is room. Letters that are
// in none of the views are told.
func (m maker) drawn(views []paper.View, tables []present.Table, unseen []string) {
	for _, v := range views {
		m.Scale(paper.ScaleText(v.Scale))
	}
	if len(views) == 1 && len(tables) > 0 && len(unseen) == 0 && m.beside(views[0], tables) {
		m.Beside(views[0].Drawing, func() { m.tables(tables) })
		return
	}
	for _, v := range views {
		m.Figure(v.Drawing, "")
	}
	if len(unseen) > 0 {
		m.Text("No room in the drawing for " + words.And(unseen) + ": the tables say from where to where each cut is.")
	}
	m.tables(tables)
}

// beside reports whether tables have room to the right of a view.
func (m maker) beside(v paper.View, tables []present.Table) bool {
	for _, t := range tables {
		if paper.TableWidth(columns(t), t.Texts()) > m.Width()-v.Width-paper.ColumnGap {
			return false
		}
	}
	return true
}

// tables prints tables below each other.
func (m maker) tables(list []present.Table) {
	for _, t := range list {
		m.table(t)
	}
}

// leastHigh is what a view has in any case, in mm: long tables go on over the next page.
const leastHigh = 90.0

// afterView is the space after a view, in mm.
const afterView = 2.0
