package packet

import (
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// parts draws every different part on a page of its own, both faces where both are
// cut, with a table of its cuts.
func (m maker) parts() {
	unit := m.unit.String()
	for i, g := range batch.Merged(m.batch) {
		p := g.Parts[0]
		entries := []drawing.Bookmark{{Name: p.Name, Level: 1}}
		if i == 0 {
			entries = append([]drawing.Bookmark{{Name: "Parts"}}, entries...)
		}
		m.Page(entries...)
		m.Heading(0, fmt.Sprintf("%d: %s", p.Number, p.Name))
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
		m.part(p)
	}
}

// tagOf names the cuts of a part: a, b, ... z, aa.
func tagOf(i int) string {
	if i >= 26 {
		return tagOf(i/26-1) + tagOf(i%26)
	}
	return string(rune('a' + i))
}

func (m maker) part(p batch.Part) {
	tags := make([]string, len(p.Panel.Pockets))
	for i := range tags {
		tags[i] = tagOf(i)
	}
	faces := []geom.Face{geom.Inside}
	if p.Panel.CutOn(geom.Outside) {
		faces = append(faces, geom.Outside)
	}
	if len(faces) == 2 && !p.Panel.CutOn(geom.Inside) {
		faces = faces[1:]
	}
	high := oneFace
	if len(faces) > 1 {
		high = oneOfTwo
	}
	edge := "lower edge"
	if p.Role == joinery.Bottom {
		edge = "front edge"
	}
	for _, f := range faces {
		d, scale := paper.Face(p.Panel, f, tags, paper.Frame{Width: m.Width(), Height: high}, m.number)
		m.Figure(d, fmt.Sprintf("The %s face, %s below, %s. All distances from the left end and the %[2]s, %[4]s. "+
			"Dashed: cut into the other face. The sections through the middle, above and to the right, have their "+
			"thickness at 1:1.",
			f, edge, paper.ScaleText(scale), m.unit))
	}
	m.cuts(p, tags)
}

// What a view and its sections may take, in mm, so that one or two of them and the
// table of cuts go on a page.
const (
	oneFace  = 160.0
	oneOfTwo = 92.0
)

// cuts lists where each cut is, in panel coordinates of the inside face.
func (m maker) cuts(p batch.Part, tags []string) {
	if len(p.Panel.Pockets) == 0 {
		return
	}
	unit := m.unit.String()
	t := present.NewTable(present.Words(""), present.Words("cut"), present.Words("face"), present.In("depth", unit),
		present.In("from the left end", unit), present.In("from the lower edge", unit), present.Words("size"))
	t.UnitOnce = true
	for i, k := range p.Panel.Pockets {
		b := k.Outline.Bounds()
		if k.Face == geom.Outside {
			b.Min.X, b.Max.X = p.Panel.Length()-b.Max.X, p.Panel.Length()-b.Min.X
		}
		depth := m.caliper(k.Depth)
		if k.Through(p.Panel.Thickness) {
			depth = "through"
		}
		size := fmt.Sprintf("%s x %s", m.caliper(b.Width()), m.caliper(b.Height()))
		if _, r, round := k.Outline.AsCircle(); round {
			size = "diameter " + m.measured(2*r)
		}
		t.Add(tags[i], k.Kind.String(), k.Face.String(), depth, words.Span(b.Min.X, b.Max.X, m.unit),
			words.Span(b.Min.Y, b.Max.Y, m.unit), size)
	}
	m.table(t)
}
