package prove

import (
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
)

// cabinetCheck holds the drawings of a cabinet's sides against its rows: the lines at
// which slides come, in both, and the holes of the right side where the left has them.
func (w *Worker) cabinetCheck(k record.Cabinet, read Read) record.Checked {
	c := checking{Prover: w.Prover,
		out: record.Checked{Kind: record.CheckedCabinet, Name: k.Name, Faults: []record.Fault{}}}
	var holes [2][]hole
	for i, side := range []string{".left.", ".right."} {
		for _, name := range k.Files {
			if strings.Contains(name, side) && strings.HasSuffix(name, ".dxf") {
				holes[i] = c.side(k, name, i == 1, read)
			}
		}
	}
	for _, name := range k.Files {
		if !strings.Contains(name, ".right.") || holes[0] == nil || holes[1] == nil {
			continue
		}
		for _, h := range holes[1] {
			if !slices.ContainsFunc(holes[0],
				func(g hole) bool { return g.at.To(h.at) <= tick && math.Abs(g.radius-h.radius) <= tick }) {
				c.fault("cabinet-holes", place{k.Name, name, h.line}, rebuild,
					"a hole of the right side, %s behind the front edge and %s up, has none across from it",
					c.text(h.at.X), c.text(h.at.Y))
			}
		}
	}
	for _, name := range k.Files {
		if strings.HasSuffix(name, ".svg") {
			c.cabinetSVG(k, name, read)
		}
	}
	return c.out
}

// sideReader reads the drawing of one side of a cabinet.
type sideReader struct {
	*checking
	cabinet       record.Cabinet
	file          string
	scale         float64 // mm of one unit of the drawing
	depth, height float64 // mm, as drawn; the opening's where there is no outline
	outlined      bool
	lines         []bool // whether each of the cabinet's lines is drawn
	holes         []hole
}

// side reads one drawing and gives its holes, from the front edge.
func (c *checking) side(k record.Cabinet, name string, right bool, read Read) []hole {
	data, ok := c.file(name, read)
	if !ok {
		return nil
	}
	f, err := dxfread.Parse(data)
	if err != nil {
		line, why := broken(err)
		c.fault("unreadable", place{k.Name, name, line}, rebuild, noDXF, why)
		return nil
	}
	scale := 1.0
	if f.Unit == dxfread.Inch {
		scale = geom.InchMM
	}
	if found := map[dxfread.Unit]string{dxfread.Millimeter: "mm",
		dxfread.Inch: "in"}[f.Unit]; found != c.report.DXF.Units {
		c.fault("units", place{k.Name, name, 0}, "export it again in "+c.report.DXF.Units,
			"the drawing says it is in %q, and was written in %s", found, c.report.DXF.Units)
	}
	c.scaled(k.Name, name, f, scale)
	r := sideReader{checking: c, cabinet: k, file: name, scale: scale,
		depth: k.Opening.Depth.MM(), height: k.Opening.Height.MM(), lines: make([]bool, len(k.Lines()))}
	for _, e := range f.Entities {
		switch {
		case same(e.Layer, "BLANK") && e.Closed:
			r.outline(e)
		case strings.HasPrefix(strings.ToUpper(e.Layer), "DRILL_") && e.Type == "CIRCLE":
			h := hole{geom.Point{X: e.X * scale, Y: e.Y * scale}, e.Radius * scale, e.Line}
			r.holes = append(r.holes, h)
		case same(e.Layer, "LABEL") && !e.Closed && len(e.Vertices) == 2:
			r.slideLine(e)
		}
	}
	r.missing()
	r.misplacedHoles()
	if right {
		for i, h := range r.holes {
			r.holes[i].at.X = r.depth - h.at.X
		}
	}
	return r.holes
}

// outline takes the side's size, which stands at 0, 0 and is as high as the opening.
func (r *sideReader) outline(e dxfread.Entity) {
	k := r.cabinet
	r.outlined = true
	b := boundsOf(e, r.scale)
	if math.Abs(b.Min.X) > tick || math.Abs(b.Min.Y) > tick {
		r.fault("origin", place{k.Name, r.file, e.Line}, rebuild,
			"the side's lower front corner is at %s, %s, not at 0, 0", r.text(b.Min.X), r.text(b.Min.Y))
	}
	r.depth, r.height = b.Width(), b.Height()
	if math.Abs(r.height-k.Opening.Height.MM()) > sameSize {
		r.fault("cabinet-size", place{k.Name, r.file, e.Line}, rebuild, "the side is drawn %s high; the opening is %s",
			r.text(r.height), r.text(k.Opening.Height.MM()))
	}
}

// slideLine finds the slide or kicker of a line; strokes of letters are none.
func (r *sideReader) slideLine(e dxfread.Entity) {
	a, b := e.Vertices[0], e.Vertices[1]
	if a.Y != b.Y || math.Abs(a.X) > tick || math.Abs(b.X*r.scale-r.depth) > 1 && !r.outlined ||
		math.Abs(b.X-a.X)*r.scale < r.depth/2 {
		return
	}
	at := a.Y * r.scale
	row := screwLineAt(r.cabinet, at, sameSize)
	if row < 0 {
		r.fault("slide-line", place{r.cabinet.Name, r.file, e.Line}, rebuild,
			"a slide line is drawn %s over the opening's lower edge, and no row of the report has one there",
			r.text(at))
		return
	}
	r.lines[row] = true
}

// screwLineAt is the line of a cabinet's sides that is so near to a height; -1 where there is none.
func screwLineAt(k record.Cabinet, height, near float64) int {
	return slices.IndexFunc(k.Lines(), func(l record.Line) bool { return math.Abs(l.At.MM()-height) <= near })
}

// missing names what should be drawn and is not.
func (r *sideReader) missing() {
	k := r.cabinet
	if !r.outlined {
		r.fault("no-outline", place{k.Name, r.file, 0}, rebuild, "the drawing has no outline of the side on BLANK")
	}
	for i, there := range r.lines {
		if !there {
			l := k.Lines()[i]
			r.fault("slide-line", place{l.Name, r.file, 0}, rebuild,
				"the slide line of %s, %s over the opening's lower edge, is not drawn", l.Name, r.text(l.At.MM()))
		}
	}
	if len(r.holes) != k.Holes {
		r.fault("cabinet-holes", place{k.Name, r.file, 0}, rebuild, "holes that are drawn: %d; the report has %d", len(r.holes),
			k.Holes)
	}
}

// misplacedHoles names holes beside the side, and those that are on no slide line.
func (r *sideReader) misplacedHoles() {
	for _, h := range r.holes {
		if h.at.X < 0 || h.at.Y < 0 || h.at.X > r.depth || h.at.Y > r.height {
			r.fault("cabinet-holes", place{r.cabinet.Name, r.file, h.line}, rebuild, "a hole at %s, %s is beside the side",
				r.text(h.at.X), r.text(h.at.Y))
		}
		if screwLineAt(r.cabinet, h.at.Y, sameSize) < 0 {
			r.fault("cabinet-holes", place{r.cabinet.Name, r.file, h.line}, rebuild,
				"a hole %s over the opening's lower edge is on no row's slide line", r.text(h.at.Y))
		}
	}
}

// scaled measures the square of a drawing, which it has to have.
func (c *checking) scaled(name, file string, f *dxfread.File, scale float64) {
	if m := c.square(f, scale); m != nil {
		c.fault("scale", place{name, file, m.line}, m.hint, "%s", m.message)
	}
}

// boundsOf is the box about an entity's corners.
func boundsOf(e dxfread.Entity, scale float64) geom.Rect {
	ring := make(geom.Ring, len(e.Vertices))
	for i, v := range e.Vertices {
		ring[i] = geom.Point{X: v.X * scale, Y: v.Y * scale}
	}
	return ring.Bounds()
}
