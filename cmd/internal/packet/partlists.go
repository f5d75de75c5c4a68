package packet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

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

// lists are the tables of parts, that of their edges where drawings do not have them all.
func (m maker) lists(f *family, edges bool) (list []present.Table) {
	names := tags(f.part().Panel)
	cuts := []present.Table{m.cuts(f, names), m.holes(f, names)}
	if edges {
		cuts = append(cuts, m.edgeCuts(f))
	}
	if len(f.groups) > 1 { // when all letters are known
		list = append(list, m.sizes(f))
	}
	for _, t := range cuts {
		if len(t.Rows) > 0 {
			list = append(list, t)
		}
	}
	return list
}

// sizes lists the parts of a family with what its letters stand for.
func (m maker) sizes(f *family) present.Table {
	unit := m.unit.String()
	t := present.NewTable(present.Numbers("no."), present.Words("part"), present.Numbers("pieces"),
		present.In("length"+f.lengthsAre("L"), unit), present.In("width"+f.lengthsAre("W"), unit))
	t.UnitOnce = true
	for _, l := range f.letters {
		if l.name != "L" && l.name != "W" {
			t.Columns = append(t.Columns, present.In(l.name, unit))
		}
	}
	for i, g := range f.groups {
		p := g.Parts[0]
		pieces := fmt.Sprint(g.Quantity)
		if g.Spares > 0 {
			pieces += fmt.Sprintf(" (%d spare)", g.Spares)
		}
		row := []string{fmt.Sprint(p.Number), names(partNames(g)), pieces, m.measured(p.Panel.Length()),
			m.measured(p.Panel.Width())}
		for _, l := range f.letters {
			if l.name != "L" && l.name != "W" {
				row = append(row, m.caliper(l.values[i]))
			}
		}
		t.Add(row...)
	}
	return t
}

// withoutNeedless leaves out of the table of sizes, which is the first, the letters of some that no view has room for
// which no other table has either: where a rounded corner begins, its radius says. Needed are the others.
func withoutNeedless(tables []present.Table, unseen []string) (list []present.Table, needed []string) {
	if len(unseen) == 0 {
		return tables, nil
	}
	sizes, between := tables[0], func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }
	for _, name := range unseen {
		has := func(c present.Cell) bool { return slices.Contains(strings.FieldsFunc(c.Text, between), name) }
		if slices.ContainsFunc(tables[1:], func(t present.Table) bool {
			return slices.ContainsFunc(t.Rows, func(row []present.Cell) bool { return slices.ContainsFunc(row, has) })
		}) {
			needed = append(needed, name)
			continue
		}
		if at := slices.IndexFunc(sizes.Columns, func(c present.Column) bool { return c.Heading == name }); at >= 0 {
			sizes = sizes.Without(at)
		}
	}
	return append([]present.Table{sizes}, tables[1:]...), needed
}

// rounded is the radius of the round corners of a cut, in words; empty where it has none.
func (m maker) rounded(l geom.Loop) string {
	for i, v := range l {
		if v.Bulge != 0 {
			return ", radius " + m.caliper(l.Arc(i).Radius())
		}
	}
	return ""
}

// depth of a pocket in words.
func (m maker) depth(p *batch.Part, k geom.Pocket) string {
	if k.Through(p.Panel.Thickness) || k.Lean != 0 { // a leaning wall is through at the end of its pin
		return "through"
	}
	return m.caliper(k.Depth)
}

// cuts lists where each cut is that is no round hole, as seen in the view that it is drawn in.
func (m maker) cuts(f *family, names []string) present.Table {
	unit := m.unit.String()
	t := present.NewTable(present.Words(""), present.Words("cut"), present.Words("face"), present.In("depth", unit),
		present.In("from the left end", unit), present.In("from the "+f.edge(), unit), present.Words("size"))
	t.UnitOnce = true
	p := f.part()
	through := paper.Faces(p.Panel)[0] == geom.Inside && len(paper.Faces(p.Panel)) == 1 // the other face is
	for i, k := range p.Panel.Pockets {
		if _, _, round := k.Outline.AsCircle(); round {
			continue
		}
		face := k.Face.String()
		turned := k.Face == geom.Outside && !through
		if k.Face == geom.Outside && through {
			face += ", seen through"
		}
		round := ""
		if k.Kind == geom.Cutout || k.Kind == geom.Mortise {
			round = m.rounded(k.Outline)
		}
		left, right, low, high := f.bounds(func(p geom.Panel) geom.Loop { return p.Pockets[i].Outline }, turned)
		across, up := f.span(geom.AlongX, left, right), f.span(geom.AlongY, low, high)
		t.Add(names[i], k.Kind.String(), face, m.depth(p, k), across, up,
			f.extent(geom.AlongX, left, right)+" x "+f.extent(geom.AlongY, low, high)+round)
	}
	return t
}

// holes lists the round holes by their centers.
func (m maker) holes(f *family, names []string) present.Table {
	unit := m.unit.String()
	t := present.NewTable(present.Words(""), present.Words("hole"), present.Words("face"), present.In("depth", unit),
		present.In("center from the left end", unit), present.In("from the "+f.edge(), unit),
		present.In("diameter", unit))
	t.UnitOnce = true
	p := f.part()
	for i, k := range p.Panel.Pockets {
		_, r, round := k.Outline.AsCircle()
		if !round {
			continue
		}
		center := func(p geom.Panel) geom.Point {
			c, _, _ := p.Pockets[i].Outline.AsCircle()
			if k.Face == geom.Outside {
				c.X = p.Length() - c.X
			}
			return c
		}
		t.Add(names[i], k.Kind.String(), k.Face.String(), m.depth(p, k),
			f.say(geom.AlongX, f.each(func(p geom.Panel) float64 { return center(p).X })),
			f.say(geom.AlongY, f.each(func(p geom.Panel) float64 { return center(p).Y })), m.bore(2*r))
	}
	return t
}

// edgeCuts lists what is cut of the edges, as seen on the inside face: what is cut from one end in one row.
func (m maker) edgeCuts(f *family) present.Table {
	unit := m.unit.String()
	t := present.NewTable(present.Words("cut of an edge"), present.In("from the left end", unit),
		present.Words("from the "+f.edge()))
	t.UnitOnce = true
	var rows [][]string
	for i, k := range f.part().Panel.EdgeCuts {
		left, right, low, high := f.bounds(func(p geom.Panel) geom.Loop { return p.EdgeCuts[i].Area }, false)
		kind := k.Kind.String() + m.rounded(k.Area)
		if k.Kind == geom.TailCut || k.Kind == geom.PinCut {
			kind = "between " + k.Kind.String() + "s"
		}
		across, up := f.span(geom.AlongX, left, right), f.span(geom.AlongY, low, high)
		at := slices.IndexFunc(rows, func(r []string) bool { return r[0] == kind && r[1] == across })
		if at < 0 {
			rows = append(rows, []string{kind, across, up})
		} else {
			rows[at][2] += ", " + up
		}
	}
	for _, r := range rows {
		t.Add(r...)
	}
	return t
}

// bore is the diameter of a hole: of inches the fraction by which its bit is called.
func (m maker) bore(mm float64) string {
	if called := geom.LengthOf(mm).Equal(m.unit); called != "" {
		return called
	}
	return m.caliper(mm)
}
