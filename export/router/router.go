// Package router draws one panel as the layered DXF that a router's toolpath
// program picks its cuts from: a layer for each operation, face and depth, and
// layers that are not cut. [Draw] is the entry.
//
// The drawing is the panel with one face up, the lower left of the blank at
// 0, 0, Z = 0. The outside face is the panel turned over end for end: x becomes
// length - x, y stays. Every cut is a closed polyline, with bulges for arcs, or
// a circle, in the order of cutting.
package router

import (
	"cmp"
	"fmt"
	"slices"

	"drawerwright/export/dxf"
	"drawerwright/export/stroke"
	"drawerwright/geom"
)

// Part is a panel with the words that its drawing carries.
type Part struct {
	Name     string
	Quantity int
	Stock    string
	Panel    geom.Panel
}

// Options of a drawing. The zero value asks for R2000 in millimetres.
type Options struct {
	Version dxf.Version
	Unit    geom.Unit
}

// Draw makes the drawing of one face. A cut belongs to the face that it is stored
// on, through cuts too; holes and the outline belong to the inside face. The
// drawing of the outside face shows the outline on a layer that is not cut, to
// line up with.
func Draw(p Part, face geom.Face, o Options) *dxf.Drawing {
	d := &pen{Options: o, part: p, face: face, length: p.Panel.Length(), origin: p.Panel.Outline.Bounds().Min,
		cuts: make(map[string]dxf.LayerID), out: &dxf.Drawing{Version: o.Version, Unit: dxf.Millimetre}}
	if o.Unit == geom.Inch {
		d.out.Unit = dxf.Inch
	}
	d.out.Comments = []string{"drawerwright, part " + p.Name, d.face.String() + " face up"}

	pockets := make([]geom.Pocket, 0, len(p.Panel.Pockets)+len(p.Panel.Holes))
	for _, k := range p.Panel.Pockets {
		if k.Face == face {
			pockets = append(pockets, k)
		}
	}
	if face == geom.Inside {
		for _, h := range p.Panel.Holes {
			pockets = append(pockets, geom.Pocket{Kind: geom.Cutout, Depth: p.Panel.Thickness, Outline: h})
		}
	}
	slices.SortStableFunc(pockets, func(a, b geom.Pocket) int { return cmp.Compare(order(a.Kind), order(b.Kind)) })
	for _, k := range pockets {
		d.loop(d.cut(CutLayer(k.Kind.String(), face, k.Depth, p.Panel.Thickness, o.Unit)), k.Outline)
	}
	if face == geom.Inside { // last, while the panel is still held by the sheet
		d.loop(d.cut(CutLayer("profile", face, p.Panel.Thickness, p.Panel.Thickness, o.Unit)), p.Panel.Outline)
	} else {
		d.loop(d.out.Layer(BlankLayer, blankColour), p.Panel.Outline)
	}
	d.margin()
	return d.out
}

// order is when a kind of cut is made: drills, then pockets, then cutouts.
func order(k geom.Kind) int {
	switch k {
	case geom.Drill:
		return 0
	case geom.Cutout:
		return 2
	}
	return 1
}

// pen draws one face; lengths are in millimetres until they go into the drawing.
type pen struct {
	Options
	part     Part
	face     geom.Face
	length   float64
	origin   geom.Point
	out      *dxf.Drawing
	cuts     map[string]dxf.LayerID
	vertices []dxf.Vertex
}

// cut finds or declares a layer that is cut.
func (d *pen) cut(name string) dxf.LayerID {
	id, known := d.cuts[name]
	if !known {
		id = d.out.Layer(name, cutColour(len(d.cuts)))
		d.cuts[name] = id
	}
	return id
}

// loop draws a loop of the panel as the face that is up shows it.
func (d *pen) loop(layer dxf.LayerID, l geom.Loop) {
	at := d.origin
	if d.face == geom.Outside {
		l = l.TurnOver(2*at.X + d.length)
	}
	scale := d.Unit.MM()
	if c, r, ok := l.AsCircle(); ok {
		d.out.Circle(layer, (c.X-at.X)/scale, (c.Y-at.Y)/scale, r/scale)
		return
	}
	d.vertices = d.vertices[:0]
	for _, v := range l {
		d.vertices = append(d.vertices, dxf.Vertex{X: (v.X - at.X) / scale, Y: (v.Y - at.Y) / scale, Bulge: v.Bulge})
	}
	d.out.Polyline(layer, true, d.vertices)
}

// margin draws what is not cut, above the panel, so that the lower left of the
// drawing is that of the blank: the square to measure and the label.
func (d *pen) margin() {
	size := scaleSquare(d.Unit)
	gap := size / 5
	low := d.part.Panel.Width()/d.Unit.MM() + gap
	d.out.Polyline(d.out.Layer(ScaleLayer, scaleColour), true,
		[]dxf.Vertex{{X: 0, Y: low}, {X: size, Y: low}, {X: size, Y: low + size}, {X: 0, Y: low + size}})
	label := d.out.Layer(LabelLayer, labelColour)
	words := d.words()
	pitch := size / float64(len(words))
	height := pitch / 2
	for i, line := range words {
		base := low + size - float64(float64(i+1)*pitch) + height/2
		for _, s := range stroke.Text(line, height) {
			d.vertices = d.vertices[:0]
			for _, p := range s {
				d.vertices = append(d.vertices, dxf.Vertex{X: size + gap + p.X, Y: base + p.Y})
			}
			// A stroke that comes back to its start is a closed one.
			closed := len(s) > 2 && s[0] == s[len(s)-1]
			if closed {
				d.vertices = d.vertices[:len(d.vertices)-1]
			}
			d.out.Polyline(label, closed, d.vertices)
		}
	}
}

// words are the label's lines.
func (d *pen) words() []string {
	text := func(mm float64) string { return geom.LengthOf(mm).Text(d.Unit) }
	return []string{
		d.part.Name,
		fmt.Sprintf("quantity %d", d.part.Quantity),
		fmt.Sprintf("%s x %s x %s %s", text(d.part.Panel.Length()), text(d.part.Panel.Width()), text(d.part.Panel.Thickness), d.part.Stock),
		fmt.Sprintf("%s face up, bottom edge at y 0", d.face),
		fmt.Sprintf("the square is %g %s", scaleSquare(d.Unit), d.Unit),
	}
}

// scaleSquare is the side of the square to measure before the file is used, in
// the drawing's unit.
func scaleSquare(u geom.Unit) float64 {
	if u == geom.Inch {
		return 4
	}
	return 100
}
