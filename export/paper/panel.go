package paper

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Number prints a length in mm as the shop reads it.
type Number func(mm float64) string

// Sizes of letters in drawings, in mm: numbers of dimensions, and names of cuts.
const (
	numeral = 2.5
	tag     = 3.0
)

// scales are those that drawings are made at, as usual as ISO 5455 has them (from
// memory).
var scales = []float64{2, 1, 1.0 / 2, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 50}

// ScaleText names a scale.
func ScaleText(s float64) string {
	if s >= 1 {
		return fmt.Sprintf("%g:1", s)
	}
	return fmt.Sprintf("1:%g", math.Round(1/s))
}

// Frame is what a drawing may take up of a page, in mm.
type Frame struct{ Width, Height float64 }

// Face draws one face of a panel as it lies before you, with the distances of all
// that is cut into it from the left end and the lower edge, a section along it above
// and one across it to the right, in which the depths stand. names has a name for
// each pocket. The view is as large as one of the usual scales lets it be in the
// frame; the thickness in the sections is drawn at its true size. It returns the
// scale of the view.
func Face(p geom.Panel, face geom.Face, names []string, in Frame, number Number) (drawing.Drawing, float64) {
	if face == geom.Outside {
		p = turnedOver(p)
	}
	v := view{panel: p, face: face, names: names, number: number}
	v.measure()
	room := geom.Point{X: in.Width - v.left - v.right, Y: in.Height - v.below - v.above}
	for _, v.scale = range scales {
		if v.scale*p.Length() <= room.X && v.scale*p.Width() <= room.Y {
			break
		}
	}
	if fits := min(room.X/p.Length(), room.Y/p.Width()); v.scale > fits { // longer than any scale has
		v.scale = fits
	}
	v.draw()
	return v.out, v.scale
}

// turnedOver is a panel end for end, its outside face up.
func turnedOver(p geom.Panel) geom.Panel {
	long := p.Length()
	p.Outline = p.Outline.TurnOver(long)
	p.Holes = slices.Clone(p.Holes)
	for i, h := range p.Holes {
		p.Holes[i] = h.TurnOver(long)
	}
	p.Pockets = slices.Clone(p.Pockets)
	for i := range p.Pockets {
		k := &p.Pockets[i]
		k.Outline = k.Outline.TurnOver(long)
		k.Face = geom.Inside + geom.Outside - k.Face
	}
	return p
}

// view is a face of a panel in the making; the face that is up is its inside one.
type view struct {
	panel                     geom.Panel
	face                      geom.Face
	names                     []string
	number                    Number
	scale                     float64
	xs, ys, along, across     []drawing.Mark
	lengthwise, crosswise     []geom.Run // sections along x and y
	left, right, below, above float64    // what numbers and sections take up
	out                       drawing.Drawing
}

// strip is between the view and a section, in mm.
const strip = 4.0

func (v *view) measure() {
	p := v.panel
	var xs, ys []float64
	add := func(l geom.Loop) {
		if c, _, round := l.AsCircle(); round {
			xs, ys = append(xs, c.X), append(ys, c.Y)
			return
		}
		for _, q := range l {
			xs, ys = append(xs, q.X), append(ys, q.Y)
		}
		b := l.Bounds()
		xs, ys = append(xs, b.Min.X, b.Max.X), append(ys, b.Min.Y, b.Max.Y)
	}
	add(p.Outline)
	for _, h := range p.Holes {
		add(h)
	}
	for _, k := range p.Pockets {
		if k.Face == geom.Inside {
			add(k.Outline)
		}
	}
	v.xs, v.ys = v.marks(xs, p.Length()), v.marks(ys, p.Width())
	// Near the middle, off what may end there.
	sections := p.SectionLines(chord)
	v.lengthwise = sections.At(geom.AlongX, 0.53*p.Width()).Runs()
	v.crosswise = sections.At(geom.AlongY, 0.47*p.Length()).Runs()
	v.along, v.across = v.depths(v.lengthwise), v.depths(v.crosswise)
	v.left, v.below = drawing.Reach(v.ys, numeral), drawing.Reach(v.xs, numeral)
	v.above = strip + p.Thickness + drawing.Reach(v.along, numeral) + 1
	v.right = strip + p.Thickness + drawing.Reach(v.across, numeral) + 1
}

// marks sorts places and names each once. What pockets have beyond the panel is not
// measured on it.
func (v *view) marks(places []float64, most float64) (list []drawing.Mark) {
	const apart = 0.005 // mm, half of what is printed
	slices.Sort(places)
	for _, x := range places {
		if x < -apart || x > most+apart || len(list) > 0 && x-list[len(list)-1].At < apart {
			continue
		}
		list = append(list, drawing.Mark{At: x, Text: v.number(x)})
	}
	return list
}

// depths names the depth of every pocket that a section shows.
func (v *view) depths(runs []geom.Run) (list []drawing.Mark) {
	other := [2]string{geom.Inside: "outside", geom.Outside: "inside"}[v.face]
	for _, r := range runs {
		m := drawing.Mark{At: r.Mid()}
		if r.Inside > 0 {
			m.Text = v.number(r.Inside) + " deep"
		}
		if r.Outside > 0 {
			if m.Text != "" {
				m.Text += ", "
			}
			m.Text += v.number(r.Outside) + " " + other
		}
		if m.Text != "" {
			list = append(list, m)
		}
	}
	return list
}

func (v *view) draw() {
	p, d := v.panel, &v.out
	long, high := v.scale*p.Length(), v.scale*p.Width()
	d.Width, d.Height = v.left+long+v.right, v.below+high+v.above
	o := geom.Point{X: v.left, Y: v.below}
	var face drawing.Drawing
	for _, k := range p.Pockets {
		switch {
		case k.Face != geom.Inside:
			face.Loops(drawing.Hidden, 0, k.Outline)
		case k.Through(p.Thickness):
			face.Loops(drawing.Medium, 0, k.Outline)
		default:
			face.Loops(drawing.Thin, 0.08, k.Outline)
		}
	}
	face.Loops(drawing.Thick, 0, append([]geom.Loop{p.Outline}, p.Holes...)...)
	d.Add(face, o, v.scale)
	v.tags(o)
	right, top := geom.Point{X: o.X + long, Y: o.Y}, geom.Point{X: o.X, Y: o.Y + high}
	v.ordinates(drawing.Below, o, right, v.xs)
	v.ordinates(drawing.LeftSide, o, top, v.ys)

	// The sections: the face that is up points away from the view.
	y, x := top.Y+strip, right.X+strip
	for _, l := range profiles(v.lengthwise, p.Thickness) {
		v.section(l, func(q geom.Point) geom.Point { return geom.Point{X: o.X + float64(v.scale*q.X), Y: y + q.Y} })
	}
	for _, l := range profiles(v.crosswise, p.Thickness) {
		v.section(l, func(q geom.Point) geom.Point { return geom.Point{X: x + q.Y, Y: o.Y + float64(v.scale*q.X)} })
	}
	y, x = y+p.Thickness, x+p.Thickness
	v.ordinates(drawing.Above, geom.Point{X: o.X, Y: y}, geom.Point{X: right.X, Y: y}, v.along)
	v.ordinates(drawing.RightSide, geom.Point{X: x, Y: o.Y}, geom.Point{X: x, Y: top.Y}, v.across)
}

// ordinates writes the distances along an edge of the view.
func (v *view) ordinates(side drawing.Side, from, to geom.Point, marks []drawing.Mark) {
	v.out.Ordinates(drawing.Edge{Side: side, From: from, To: to, Scale: v.scale}, marks, numeral, 6)
}

func (v *view) section(l geom.Loop, place func(geom.Point) geom.Point) {
	placed := make(geom.Loop, len(l))
	for i, q := range l {
		placed[i].Point = place(q.Point)
	}
	hatch(&v.out, placed, false)
	v.out.Loops(drawing.Medium, 0, placed)
}

// tags writes the names of the cuts into them where that runs into no other words.
func (v *view) tags(o geom.Point) {
	for i, k := range v.panel.Pockets {
		if i >= len(v.names) || k.Face != geom.Inside {
			continue
		}
		b := k.Outline.Bounds()
		for _, part := range []float64{0.5, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.4, 0.6} {
			at := b.Center()
			if b.Width() > b.Height() {
				at.X = b.Min.X + float64(part*b.Width())
			} else {
				at.Y = b.Min.Y + float64(part*b.Height())
			}
			t := drawing.Text{String: v.names[i], Size: tag, Face: drawing.Bold, Align: drawing.Middle, Ink: 1,
				At: geom.Point{X: o.X + float64(v.scale*at.X), Y: o.Y + float64(v.scale*at.Y) - tag/3}}
			if !slices.ContainsFunc(v.out.Texts, func(u drawing.Text) bool { return t.Box().Overlaps(u.Box()) }) {
				b := t.Box() // lines of narrow cuts would run through it
				v.out.Loops(drawing.Pen{}, drawing.White, b.Loop())
				v.out.Write(t)
				break
			}
		}
	}
}
