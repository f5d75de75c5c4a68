// Package cabinet draws the side of a cabinet with the lines on which slides stand
// and the holes that they are screwed into: as DXF to bore from, and as SVG to
// look at and to measure from.
//
// The side is seen from inside the cabinet: x runs from its front edge to the back
// and y up from the datum, at the left side; the right side is its mirror image.
package cabinet

import (
	"fmt"

	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/export/stroke"
	"drawerwright/geom"
)

// Side is the left side of an opening. Lengths are in mm.
type Side struct {
	Name          string
	Height, Depth float64
	Shim          float64 // thickness of what is put behind the slides; 0 for none
	Lines         []Line
	Holes         []geom.Point
	Diameter      float64 // of the holes
	HoleDepth     float64
}

// Line is where the middle of a slide comes.
type Line struct {
	Name string
	At   float64 // over the datum
}

// drillLayer is the layer of the holes, its depth in the drawing's unit.
func (s Side) drillLayer(u geom.Unit) string {
	return "DRILL_INSIDE_" + layer.Number(s.HoleDepth, u)
}

// Hand is left or right, one of the two sides of a cabinet, which mirror each other.
type Hand uint8

const (
	Left Hand = iota
	Right
)

func (h Hand) String() string { return [...]string{"left", "right"}[h] }

// Draw makes the drawing of one side, seen from inside.
func Draw(s Side, hand Hand, version dxf.Version, u geom.Unit) *dxf.Drawing {
	out := &dxf.Drawing{Version: version, Unit: dxf.Millimeter, Comments: []string{"drawerwright, slide lines of " + s.Name}}
	if s.Shim > 0 {
		out.Comments = append(out.Comments, s.shims(u))
	}
	if u == geom.Inch {
		out.Unit = dxf.Inch
	}
	k := 1 / u.MM()
	x := func(v float64) float64 {
		if hand == Right {
			v = s.Depth - v
		}
		return v * k
	}
	drill := out.Layer(s.drillLayer(u), layer.Color("drill"))
	for _, h := range s.Holes {
		out.Circle(drill, x(h.X), h.Y*k, s.Diameter/2*k)
	}
	blank := out.Layer(layer.Blank, layer.Color(layer.Blank))
	out.Polyline(blank, dxf.Closed, []dxf.Vertex{{}, {X: s.Depth * k}, {X: s.Depth * k, Y: s.Height * k}, {Y: s.Height * k}})
	size := layer.Square(u) // of the text too
	low := s.Height*k + size/5
	out.Polyline(out.Layer(layer.Scale, layer.Color(layer.Scale)), dxf.Closed, []dxf.Vertex{{Y: low}, {X: size, Y: low}, {X: size, Y: low + size}, {Y: low + size}})
	label := out.Layer(layer.Label, layer.Color(layer.Label))
	text := func(line string, left, low float64) {
		stroke.Set(line, size/12, left, low, func(line []stroke.Point, closed bool) {
			v := make([]dxf.Vertex, len(line))
			for i, p := range line {
				v[i] = dxf.Vertex{X: p.X, Y: p.Y}
			}
			out.Polyline(label, dxf.Course(closed), v)
		})
	}
	for _, l := range s.Lines {
		out.Polyline(label, dxf.Open, []dxf.Vertex{{Y: l.At * k}, {X: s.Depth * k, Y: l.At * k}})
		text(l.words(u), size/5, l.At*k+size/20)
	}
	for i, line := range s.heading(hand, u) {
		text(line, size*1.2, low+size*(0.75-0.2*float64(i)))
	}
	return out
}

func (l Line) words(u geom.Unit) string { return l.Name + "  " + geom.LengthOf(l.At).Text(u) }

func (s Side) shims(u geom.Unit) string {
	return "shims of " + geom.LengthOf(s.Shim).Text(u) + " behind the slides"
}

func (s Side) heading(hand Hand, u geom.Unit) []string {
	name := s.Name + ", " + hand.String() + " side from inside"
	if s.Shim > 0 {
		name += ", " + s.shims(u)
	}
	return []string{
		name,
		"front edge at the " + hand.String() + ", heights over the opening's lower edge",
		fmt.Sprintf("holes of %s, %s deep, %d in all: use those that the slide has", geom.LengthOf(s.Diameter).Text(u), geom.LengthOf(s.HoleDepth).Text(u), len(s.Holes)),
		fmt.Sprintf("the square is %g %s", layer.Square(u), u),
	}
}
