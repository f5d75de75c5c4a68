// Package router draws one face of a panel as the layered DXF that a router's
// toolpath program picks its cuts from: a layer for each operation, face and
// depth, and layers that are not cut. [Layers] is the legend, [Draw] the drawing.
//
// The drawing is the panel with one face up, its own lower left corner at
// 0, 0, Z = 0; what runs past its edges lies left of it and below. The outside
// face is the panel turned over end for end: x becomes length - x, y stays. Every
// cut is a closed polyline, with bulges for arcs, or a circle; the center lines on
// layers with the word LINE and the strokes of numbers are open. They stand in the order of cutting.
package router

import (
	"fmt"

	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/export/stroke"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Part is a panel with its work and the words that its drawing carries.
type Part struct {
	Name           string
	Quantity       int
	Stock          string
	Panel          geom.Panel
	Work           mill.Operations
	Bits           []mill.Bit
	FromSpoilboard bool // layers tell the wood left under a cut
	sheet          *Sheet
}

// Options of a drawing. The zero value asks for R2000 in millimeters with the
// usual layers.
type Options struct {
	Version dxf.Version
	Unit    geom.Unit
	Pattern string   // of layer names; empty is [DefaultPattern]
	Order   []string // of operations that come before all others
	// Elevation draws cuts at the height of their floors, with the depth as their thickness.
	Elevation bool
	NoNotes   bool   // leaves out the label and the square to measure
	Code      string // of the job, in the label; none without
	Split     bool   // each drawing has a file for each change of bit beside it, by [Options.Runs]
	// Shared are the names that cuts of several bits of the job would share, from [Sharing].
	Shared map[string]bool
	// Words are shorter ones for the names of bits, from [Sharing]; without one a bit has
	// its name.
	Words map[string]string
}

// Draw makes the drawing of one face from its [Layers].
func Draw(p Part, face geom.Face, layers []Layer, o Options) *dxf.Drawing {
	d := &pen{Options: o, part: p, face: face, length: p.Panel.Length(), origin: p.Panel.Outline.Bounds().Min,
		out: &dxf.Drawing{Version: o.Version, Unit: dxf.Millimeter}}
	if o.Unit == geom.Inch {
		d.out.Unit = dxf.Inch
	}
	what := "part "
	if p.sheet != nil {
		what = "sheet "
	}
	d.out.Comments = []string{"drawerwright, " + what + p.Name, d.face.String() + " face up"}
	cutOut := false
	for _, l := range layers {
		id := d.out.Layer(l.Name, layer.Color(l.Operation))
		if o.Elevation {
			low, up := l.Level(p.Panel.Thickness)
			d.out.Level(low/o.Unit.MM(), up/o.Unit.MM())
		}
		for _, c := range l.Cuts {
			if l.Line {
				d.path(id, c.Path)
			} else {
				d.loop(id, c.Outline)
			}
		}
		cutOut = cutOut || l.Operation == mill.Profile
	}
	d.out.Level(0, 0)
	blank := d.out.Layer(layer.Blank, layer.Color(layer.Blank))
	if p.sheet != nil {
		d.onSheet()
	} else {
		if !cutOut {
			d.loop(d.out.Layer(layer.Outline, layer.Color(layer.Outline)), p.Panel.Outline)
		}
		d.blank(blank)
		d.mark(blank)
	}
	d.datum(blank)
	if len(p.Work.Faces) > 0 && face != p.Work.Faces[0] { // pins stand there now
		for _, pin := range p.Work.Pins {
			d.loop(blank, pin)
		}
	}
	if len(p.Work.Faces) > 0 && face == p.Work.Faces[len(p.Work.Faces)-1] {
		for _, t := range p.Work.Tabs {
			d.loop(d.out.Layer(layer.Tabs, layer.Color(layer.Tabs)), t)
		}
	}
	if !o.NoNotes {
		d.margin()
	}
	return d.out
}

// pen draws one face; lengths are in millimeters until they go into the drawing.
type pen struct {
	Options
	part     Part
	face     geom.Face
	length   float64
	origin   geom.Point
	out      *dxf.Drawing
	vertices []dxf.Vertex
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
	d.polyline(layer, true, l)
}

// path draws an open path likewise.
func (d *pen) path(layer dxf.LayerID, path []geom.Vertex) {
	if d.face == geom.Outside {
		turned := make([]geom.Vertex, len(path))
		for i, v := range path {
			turned[i] = geom.Vertex{Point: geom.Point{X: 2*d.origin.X + d.length - v.X, Y: v.Y}, Bulge: -v.Bulge}
		}
		path = turned
	}
	d.polyline(layer, false, path)
}

func (d *pen) polyline(layer dxf.LayerID, closed bool, vertices []geom.Vertex) {
	scale := d.Unit.MM()
	d.vertices = d.vertices[:0]
	for _, v := range vertices {
		d.vertices = append(d.vertices, dxf.Vertex{X: (v.X - d.origin.X) / scale, Y: (v.Y - d.origin.Y) / scale, Bulge: v.Bulge})
	}
	d.out.Polyline(layer, dxf.Course(closed), d.vertices)
}

// blank is the least piece that a router cuts the panel from.
func (d *pen) blank(layer dxf.LayerID) {
	if len(d.part.Bits) == 0 {
		return // a saw's is as large as the panel
	}
	ends, edges := d.part.Work.EndGap, d.part.Work.Gap
	d.loop(layer, geom.Rectangle(d.origin.X-ends, d.origin.Y-edges, d.origin.X+d.length+ends, d.origin.Y+d.part.Panel.Width()+edges))
}

// datum is a cross at 0, 0, from which everything is measured.
func (d *pen) datum(layer dxf.LayerID) {
	leg := cornerMark / d.Unit.MM()
	d.out.Polyline(layer, dxf.Open, []dxf.Vertex{{X: -leg}, {X: leg}})
	d.out.Polyline(layer, dxf.Open, []dxf.Vertex{{Y: -leg}, {Y: leg}})
}

// mark is a triangle in the corner of the panel that is at 0, 0 when its inside
// face is up: whoever turns the panel over finds it at the other end.
func (d *pen) mark(layer dxf.LayerID) {
	size := min(cornerMark, d.length/4, d.part.Panel.Width()/4)
	x, y := d.origin.X, d.origin.Y
	d.loop(layer, geom.Polygon(geom.Point{X: x, Y: y}, geom.Point{X: x + size, Y: y}, geom.Point{X: x, Y: y + size}))
}

// cornerMark is the leg of that triangle, in mm.
const cornerMark = 8.0

// margin draws what is not cut, above the panel and what runs past its edge: the
// square to measure and the label.
func (d *pen) margin() {
	size := layer.Square(d.Unit)
	gap := size / 5
	low := (d.part.Panel.Width()+d.part.Work.Beyond)/d.Unit.MM() + gap
	d.out.Polyline(d.out.Layer(layer.Scale, layer.Color(layer.Scale)), dxf.Closed,
		[]dxf.Vertex{{X: 0, Y: low}, {X: size, Y: low}, {X: size, Y: low + size}, {X: 0, Y: low + size}})
	label := d.out.Layer(layer.Label, layer.Color(layer.Label))
	words := d.words()
	pitch := size / float64(len(words))
	height := pitch / 2
	for i, line := range words {
		base := low + size - float64(float64(i+1)*pitch) + height/2
		stroke.Set(line, height, size+gap, base, func(line []stroke.Point, closed bool) {
			d.vertices = d.vertices[:0]
			for _, p := range line {
				d.vertices = append(d.vertices, dxf.Vertex{X: p.X, Y: p.Y})
			}
			d.out.Polyline(label, dxf.Course(closed), d.vertices)
		})
	}
}

// words are the label's lines.
func (d *pen) words() []string {
	text := func(mm float64) string { return geom.LengthOf(mm).Text(d.Unit) }
	if s := d.part.sheet; s != nil {
		grain := "no grain"
		if s.Grain {
			grain = "grain along x"
		}
		return []string{
			s.Name,
			d.coded(fmt.Sprintf("quantity %d, parts on each %d", s.Quantity, len(s.Parts))),
			fmt.Sprintf("%s x %s x %s %s", text(s.Length), text(s.Width), text(s.Thickness), s.Stock),
			fmt.Sprintf("%s faces up, %s", d.face, grain),
			fmt.Sprintf("the square is %g %s", layer.Square(d.Unit), d.Unit),
		}
	}
	return []string{
		d.part.Name,
		d.coded(fmt.Sprintf("quantity %d", d.part.Quantity)),
		fmt.Sprintf("%s x %s x %s %s", text(d.part.Panel.Length()), text(d.part.Panel.Width()), text(d.part.Panel.Thickness), d.part.Stock),
		fmt.Sprintf("%s face up, bottom edge at y 0", d.face),
		fmt.Sprintf("the square is %g %s", layer.Square(d.Unit), d.Unit),
	}
}

// coded is a line of the label with the job's code after it.
func (d *pen) coded(line string) string {
	if d.Code == "" {
		return line
	}
	return line + ", code " + d.Code
}
