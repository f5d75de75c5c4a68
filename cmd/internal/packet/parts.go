package packet

import (
	"fmt"
	"slices"
	"strconv"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// parts draws every different part, both faces where both need it, with tables of its cuts
// and holes, as many parts on a page as it has room for.
func (m maker) parts() {
	m.Chapter("Parts")
	m.Text("The circle is the datum: with the face that is named before you, all distances are from the left end and " +
		"the lower edge. Dashed, and \"seen through\" in tables: cut into the other face. A-A, B-B: sections, seen " +
		"along the arrows; what is framed in them is drawn larger, with depths from the face.")
	var waiting []block
	for _, g := range batch.Merged(m.batch) {
		if waiting = append(waiting, m.block(g)); len(waiting) == lookedOver {
			waiting = m.next(waiting)
		}
	}
	for len(waiting) > 0 {
		waiting = m.next(waiting)
	}
}

// block is a part as it comes on a page in one piece, of a height in mm.
type block struct {
	write  func(*paper.Book)
	height float64
}

// lookedOver is how many parts are looked over for one that the rest of a page has room for.
const lookedOver = 16

// next writes the first block that this page has room for, or else the first of all on a new
// page, and gives those that are left.
func (m maker) next(waiting []block) []block {
	i := max(0, slices.IndexFunc(waiting, func(b block) bool { return b.height <= m.Room() }))
	m.Keep(waiting[i].height)
	waiting[i].write(m.Book)
	return slices.Delete(waiting, i, i+1)
}

// block draws a part.
func (m maker) block(g batch.Group) block {
	p := g.Parts[0]
	views := m.viewsOf(g)
	all := m.on(func(m maker) {
		m.about(g)
		m.drawn(p, views)
	})
	return block{all, m.Height(all)}
}

// on is what writes pages, on whatever book.
func (m maker) on(write func(maker)) func(*paper.Book) {
	return func(b *paper.Book) {
		m.Book = b
		write(m)
	}
}

// about says what a part is, and which are the same.
func (m maker) about(g batch.Group) {
	unit := m.unit.String()
	p := g.Parts[0]
	m.Entry(drawing.Bookmark{Name: p.Name, Level: 1})
	m.Heading(1, fmt.Sprintf("%d: %s", p.Number, p.Name))
	said := fmt.Sprintf("%s, %s x %s %s, of %s, %s %s thick", words.Count(g.Quantity, "piece", "pieces"),
		m.measured(p.Panel.Length()), m.measured(p.Panel.Width()), unit, p.Stock.Name, m.number(p.Panel.Thickness),
		unit)
	if g.Spares > 0 {
		said += fmt.Sprintf(", %d of them spare", g.Spares)
	}
	if p.Stock.Grain != joinery.GrainNone {
		said += "; the grain runs along the length"
	}
	m.Text(said + ".")
	if len(g.Parts) > 1 {
		var others []string
		for _, q := range g.Parts[1:] {
			others = append(others, q.Name)
		}
		m.Text("The same: " + names(others) + ".")
	}
}

// tagOf names the cuts of a part: a, b, ... z, aa.
func tagOf(i int) string {
	if i >= 26 {
		return tagOf(i/26-1) + tagOf(i%26)
	}
	return string(rune('a' + i))
}

// tags name the pockets of a panel: letters for cuts, numbers for round holes.
func tags(p geom.Panel) []string {
	list := make([]string, len(p.Pockets))
	cuts, holes := 0, 0
	for i, k := range p.Pockets {
		if _, _, round := k.Outline.AsCircle(); round {
			holes++
			list[i] = strconv.Itoa(holes)
		} else {
			list[i] = tagOf(cuts)
			cuts++
		}
	}
	return list
}

// viewsOf draws the faces of a part that leave room for its words and tables.
func (m maker) viewsOf(g batch.Group) []paper.View {
	told := m.on(func(m maker) { m.about(g) })
	lists := m.on(func(m maker) { m.lists(g.Parts[0], true) })
	return m.views(g.Parts[0], m.Whole()-m.Height(told)-m.Height(lists))
}

// views draws the faces of a part that need it, within a height in mm of a page, and within
// half a page with all that goes with them where one of the usual scales down to 1:5 does
// that; a part without cuts shows no more when it is larger.
func (m maker) views(p batch.Part, most float64) []paper.View {
	faces := paper.Faces(p.Panel)
	least := 1.0 / 5
	if len(p.Panel.Pockets) == 0 && !p.Panel.Shaped() {
		least = 1.0 / 10
	}
	edge := "lower edge"
	if p.Role == joinery.Bottom {
		edge = "front edge"
	}
	drawn := paper.Part{Panel: p.Panel, Names: tags(p.Panel), Words: func(f geom.Face, scale float64) string {
		return fmt.Sprintf("%s face, %s below, %s", f, edge, paper.ScaleText(scale))
	}}
	list := make([]paper.View, len(faces))
	for i := len(faces) - 1; i >= 0; i-- { // the first has sections, and what the other leaves
		n := float64(i + 1)
		in := paper.Frame{Width: m.Width(), Height: (most - m.Whole()/2) / n, Most: max(most/n, leastHigh), Least: least}
		drawn.Sections = i == 0
		list[i] = drawn.Face(faces[i], in, m.number)
		most -= list[i].Height + afterView
	}
	return list
}

// drawn prints views of a part and the tables that go with them.
func (m maker) drawn(p batch.Part, views []paper.View) {
	leftOut := false
	for _, v := range views {
		m.Scale(paper.ScaleText(v.Scale))
		if v.Details > 0 {
			m.Scale(paper.ScaleText(v.Details))
		}
		m.Figure(v.Drawing, "")
		leftOut = leftOut || v.Left
	}
	m.lists(p, leftOut)
}

// leastHigh is what a view has in any case, in mm: long tables go on over the next page.
const leastHigh = 90.0

// afterView is the space after a view, in mm.
const afterView = 2.0

// lists prints the tables of a part, that of its edges where drawings do not have them all.
func (m maker) lists(p batch.Part, edges bool) {
	names := tags(p.Panel)
	m.cuts(p, names)
	m.holes(p, names)
	if edges {
		m.edgeCuts(p)
	}
}

// depth of a pocket in words.
func (m maker) depth(p batch.Part, k geom.Pocket) string {
	if k.Through(p.Panel.Thickness) {
		return "through"
	}
	return m.caliper(k.Depth)
}

// cuts lists where each cut is that is no round hole, as seen in the view that it is drawn in.
func (m maker) cuts(p batch.Part, names []string) {
	unit := m.unit.String()
	t := present.NewTable(present.Words(""), present.Words("cut"), present.Words("face"), present.In("depth", unit),
		present.In("from the left end", unit), present.In("from the lower edge", unit), present.Words("size"))
	t.UnitOnce = true
	any := false
	through := paper.Faces(p.Panel)[0] == geom.Inside && len(paper.Faces(p.Panel)) == 1 // the other face is
	for i, k := range p.Panel.Pockets {
		if _, _, round := k.Outline.AsCircle(); round {
			continue
		}
		any = true
		b := k.Outline.Bounds()
		face := k.Face.String()
		switch {
		case k.Face == geom.Outside && through:
			face += ", seen through"
		case k.Face == geom.Outside:
			b.Min.X, b.Max.X = p.Panel.Length()-b.Max.X, p.Panel.Length()-b.Min.X
		}
		t.Add(names[i], k.Kind.String(), face, m.depth(p, k), words.Span(b.Min.X, b.Max.X, m.unit),
			words.Span(b.Min.Y, b.Max.Y, m.unit), m.caliper(b.Width())+" x "+m.caliper(b.Height()))
	}
	if any {
		m.table(t)
	}
}

// holes lists the round holes by their centers.
func (m maker) holes(p batch.Part, names []string) {
	unit := m.unit.String()
	t := present.NewTable(present.Words(""), present.Words("hole"), present.Words("face"), present.In("depth", unit),
		present.In("center from the left end", unit), present.In("from the lower edge", unit),
		present.In("diameter", unit))
	t.UnitOnce = true
	any := false
	for i, k := range p.Panel.Pockets {
		c, r, round := k.Outline.AsCircle()
		if !round {
			continue
		}
		any = true
		if k.Face == geom.Outside {
			c.X = p.Panel.Length() - c.X
		}
		t.Add(names[i], k.Kind.String(), k.Face.String(), m.depth(p, k), m.caliper(c.X), m.caliper(c.Y), m.caliper(2*r))
	}
	if any {
		m.table(t)
	}
}

// edgeCuts lists what is cut of the edges, as seen on the inside face.
func (m maker) edgeCuts(p batch.Part) {
	if len(p.Panel.EdgeCuts) == 0 {
		return
	}
	unit := m.unit.String()
	t := present.NewTable(present.Words("cut of an edge"), present.In("from the left end", unit),
		present.In("from the lower edge", unit))
	t.UnitOnce = true
	for _, k := range p.Panel.EdgeCuts {
		b := k.Area.Bounds()
		t.Add(k.Kind.String(), words.Span(b.Min.X, b.Max.X, m.unit), words.Span(b.Min.Y, b.Max.Y, m.unit))
	}
	m.table(t)
}
