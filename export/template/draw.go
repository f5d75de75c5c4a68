package template

import (
	"fmt"
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/geom"
	"drawerwright/geom/kerf"
)

// Layers of a template, by the pattern of all drawings, in the order of cutting; the
// last one is not cut.
const (
	EngraveLayer = "ENGRAVE_INSIDE_LINE_SURFACE"
	CutoutLayer  = "CUTOUT_INSIDE_THROUGH"
	ProfileLayer = "PROFILE_INSIDE_THROUGH"
	ScaleLayer   = layer.Scale
)

// rounding is how far apart, in mm, points are that are one.
const rounding = 1e-6

// Cut is a plate with the lines that a beam or bit is led along.
type Cut struct {
	Plate
	Paths kerf.Paths
	Kerf  float64 // mm, made up for in the paths; 0 where they are as drawn
	Found []kerf.Finding
}

// Made makes up for a kerf, or with 0 leaves the lines as drawn.
func (p Plate) Made(width float64) Cut {
	c := Cut{Plate: p, Kerf: width}
	c.Paths, c.Found = kerf.Compensate(kerf.Plate{Outline: p.Outline, Openings: p.cuts()}, width)
	return c
}

// Stamp is what the plate says of its kerf.
func (c Cut) Stamp() string {
	if c.Kerf == 0 {
		return "AS DRAWN"
	}
	return fmt.Sprintf("KERF %s %s", geom.LengthOf(c.Kerf).Fixed(c.Unit), strings.ToUpper(c.Unit.String()))
}

// scored are all lines that are scored: paths, words and the stamp.
func (c Cut) scored() [][]geom.Vertex {
	list := append([][]geom.Vertex{}, c.lines()...)
	for _, w := range c.Words {
		list = append(list, w.strokes()...)
	}
	if w := c.stamp; w.Text != "" {
		w.Text = c.Stamp()
		list = append(list, w.strokes()...)
	}
	return list
}

// Draw makes the drawing for the laser or router.
func Draw(c Cut, version dxf.Version, u geom.Unit) *dxf.Drawing {
	out := &dxf.Drawing{Version: version, Unit: dxf.Millimeter, Comments: []string{"drawerwright, " + c.Title, strings.ToLower(c.Stamp())}}
	if u == geom.Inch {
		out.Unit = dxf.Inch
	}
	k := 1 / u.MM()
	path := func(layer dxf.LayerID, closed bool, l []geom.Vertex) {
		if n := len(l) - 1; !closed && n > 2 && l[0].To(l[n].Point) < rounding {
			closed, l = true, l[:n] // the round of a letter
		}
		v := make([]dxf.Vertex, len(l))
		for i, p := range l {
			v[i] = dxf.Vertex{X: p.X * k, Y: p.Y * k, Bulge: p.Bulge}
			if !closed && i == len(l)-1 {
				v[i].Bulge = 0
			}
		}
		out.Polyline(layer, dxf.Course(closed), v)
	}
	loop := func(layer dxf.LayerID, l geom.Loop) {
		if center, r, round := l.AsCircle(); round {
			out.Circle(layer, center.X*k, center.Y*k, r*k)
			return
		}
		path(layer, true, l)
	}
	engrave, cutout, profile := out.Layer(EngraveLayer, layer.Color("engrave")), out.Layer(CutoutLayer,
		layer.Color("cutout")), out.Layer(ProfileLayer, layer.Color("profile"))
	for _, l := range c.scored() {
		path(engrave, false, l)
	}
	for _, l := range c.Paths.Openings {
		loop(cutout, l)
	}
	loop(profile, c.Paths.Outline)
	high, side := c.Outline.Bounds().Max.Y+20, layer.Square(u)*u.MM()
	path(out.Layer(ScaleLayer, layer.Color(layer.Scale)), true, geom.Rectangle(0, high, side, high+side))
	return out
}

// OfUseOnPaper tells plates that a print does the work of, or is a pattern for.
func (p Plate) OfUseOnPaper() bool { return len(p.paper) > 0 }

// OnPaper is a whole plate for a print at its true size, with the edges of the panel that it lies on and without
// what plates alone have, and how a print is used.
func (p Plate) OnPaper() (d drawing.Drawing, notes []string) {
	marks := p
	marks.Holes, marks.stamp, marks.lip = nil, Word{}, false
	d = marks.Made(0).Picture()
	for _, l := range p.edges {
		d.Shapes = append(d.Shapes, drawing.Shape{Paths: [][]geom.Vertex{l},
			Pen: drawing.Pen{Width: 0.18, Ink: 0.8, Dash: drawing.Chain.Dash}})
	}
	return d, p.paper
}

// Picture shows a plate at its true size, in groups named as the layers: what is cut in
// strong lines, what is scored in fine ones, each in an ink of its own by which a
// machine tells them apart where it knows no groups.
func (c Cut) Picture() drawing.Drawing {
	b := c.Outline.Bounds()
	d := drawing.Drawing{Width: b.Max.X, Height: b.Max.Y}
	draw := func(group string, pen drawing.Pen, closed bool, l []geom.Vertex) {
		d.Shapes = append(d.Shapes, drawing.Shape{Paths: [][]geom.Vertex{l}, Closed: closed, Pen: pen, Group: group})
	}
	for _, l := range c.scored() {
		draw(EngraveLayer, drawing.Pen{Width: 0.18, Ink: 0.6}, false, l)
	}
	for _, l := range c.Paths.Openings {
		draw(CutoutLayer, drawing.Pen{Width: 0.25, Ink: 0.8}, true, l)
	}
	draw(ProfileLayer, drawing.Pen{Width: 0.25, Ink: 1}, true, c.Paths.Outline)
	return d
}
