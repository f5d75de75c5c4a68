package drawing

import (
	"slices"

	"drawerwright/export/pdf"
)

// Tag is what a text or a shape of a page belongs to: the number of an element as [Page.Element] gave it. A text
// without one is of a paragraph, with those beside it, and a shape of none.
type Tag int32

// Artifact is no element: what stands on every page anyway.
const Artifact Tag = -1

// Kind is what an element of a page is, by the standard types of ISO 32000-1, 14.8.4.
type Kind string

const (
	Paragraph    Kind = "P"
	Illustration Kind = "Figure"
	Grid         Kind = "Table"
	GridRow      Kind = "TR"
	GridHead     Kind = "TH"
	GridCell     Kind = "TD"
)

// Headings are the kinds of headings, those of chapters first.
var Headings = [3]Kind{"H1", "H2", "H3"}

// element is a part of what a page says.
type element struct {
	kind Kind
	alt  string
	in   Tag
	at   int // how many texts stood on the page before it
}

// Element makes a part of what a page says, which is read after what stands on it already: within another one, or
// else by itself. An illustration says in words what it shows.
func (p *Page) Element(kind Kind, alt string, in Tag) Tag {
	p.elements = append(p.elements, element{kind, alt, in, len(p.Texts)})
	return Tag(len(p.elements))
}

// Count is how many texts and shapes are on a page.
type Count struct{ Texts, Shapes int }

// Count counts what is on the page.
func (p *Page) Count() Count { return Count{len(p.Texts), len(p.Shapes)} }

// TagTexts makes an element of the texts since a count that belong to none, if there are any.
func (p *Page) TagTexts(since Count, kind Kind) {
	var tag Tag
	for i := min(since.Texts, len(p.Texts)); i < len(p.Texts); i++ {
		if t := &p.Texts[i]; t.Tag == 0 {
			if tag == 0 {
				tag = p.Element(kind, "", 0)
				p.elements[tag-1].at = i
			}
			t.Tag = tag
		}
	}
}

// Tag makes texts and shapes since a count belong to an element.
func (p *Page) Tag(since Count, tag Tag) {
	for i := since.Texts; i < len(p.Texts); i++ {
		p.Texts[i].Tag = tag
	}
	for i := since.Shapes; i < len(p.Shapes); i++ {
		p.Shapes[i].Tag = tag
	}
}

// marking marks the stretches of a page's content with the elements that they show.
type marking struct {
	*pdf.Content
	elements []element
	marks    [][]int // the stretches of each
	next     int     // the number of the next one
	open     Tag     // 0 for none
	loose    bool    // it is a paragraph of texts that belong to none
}

// shape begins the stretch of a shape.
func (m *marking) shape(tag Tag) {
	if tag == 0 {
		tag = Artifact
	}
	m.begin(tag)
}

// text begins the stretch of the i-th text.
func (m *marking) text(tag Tag, i int) {
	if tag != 0 {
		m.begin(tag)
		m.loose = false
		return
	}
	if !m.loose {
		m.elements, m.marks = append(slices.Clip(m.elements), element{kind: Paragraph, at: i}), append(m.marks, nil)
		m.begin(Tag(len(m.elements)))
		m.loose = true
	}
}

func (m *marking) begin(tag Tag) {
	if tag == m.open {
		return
	}
	m.end()
	if m.open = tag; tag == Artifact {
		m.BeginArtifact()
		return
	}
	m.marks[tag-1] = append(m.marks[tag-1], m.next)
	m.Begin(string(m.elements[tag-1].kind), m.next)
	m.next++
}

func (m *marking) end() {
	if m.open != 0 {
		m.End()
	}
	m.open = 0
}

// list are the elements in the order in which they are read.
func (m *marking) list() []pdf.Element {
	order, place := make([]int, len(m.elements)), make([]int, len(m.elements))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return m.elements[a].at - m.elements[b].at })
	for to, i := range order {
		place[i] = to + 1
	}
	list := make([]pdf.Element, len(order))
	for to, i := range order {
		e := m.elements[i]
		list[to] = pdf.Element{Kind: string(e.kind), Alt: e.alt, Marks: m.marks[i]}
		if e.in > 0 {
			list[to].In = place[e.in-1]
		}
	}
	return list
}
