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
		out: record.Checked{What: record.CheckedCabinet, Name: k.Name, Faults: []record.Fault{}}}
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
				c.fault("cabinet-holes", k.Name, name, h.line, rebuild,
					"a hole of the right side, %s behind the front edge and %s up, has none across from it", c.text(h.at.X), c.text(h.at.Y))
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

// side reads one drawing and gives its holes, from the front edge.
func (c *checking) side(k record.Cabinet, name string, right bool, read Read) []hole {
	data, ok := c.file(name, read)
	if !ok {
		return nil
	}
	f, err := dxfread.Parse(data)
	if err != nil {
		c.fault("unreadable", k.Name, name, 0, rebuild, "no DXF that can be read: %v", err)
		return nil
	}
	scale := 1.0
	if f.Unit == dxfread.Inch {
		scale = geom.InchMM
	}
	if found := map[dxfread.Unit]string{dxfread.Millimetre: "mm",
		dxfread.Inch: "in"}[f.Unit]; found != c.report.DXF.Units {
		c.fault("units", k.Name, name, 0, "export it again in "+c.report.DXF.Units,
			"the drawing says it is in %q, and was written in %s", found, c.report.DXF.Units)
	}
	c.scaled(k.Name, name, f, scale)
	depth, height := c.mm(k.Opening.Depth), c.mm(k.Opening.Height)
	var holes []hole
	lines := make([]bool, len(k.Rows))
	outlined := false
	for _, e := range f.Entities {
		switch {
		case same(e.Layer, "BLANK") && e.Closed:
			outlined = true
			b := boundsOf(e, scale)
			if math.Abs(b.Min.X) > tick || math.Abs(b.Min.Y) > tick {
				c.fault("origin", k.Name, name, e.Line, rebuild,
					"the side's lower front corner is at %s, %s, not at 0, 0", c.text(b.Min.X), c.text(b.Min.Y))
			}
			depth, height = b.Width(), b.Height()
			if math.Abs(height-c.mm(k.Opening.Height)) > sameSize {
				c.fault("cabinet-size", k.Name, name, e.Line, rebuild, "the side is drawn %s high; the opening is %s",
					c.text(height), c.text(c.mm(k.Opening.Height)))
			}
		case strings.HasPrefix(strings.ToUpper(e.Layer), "DRILL_") && e.Type == "CIRCLE":
			h := hole{geom.Point{X: e.X * scale, Y: e.Y * scale}, e.Radius * scale, e.Line}
			holes = append(holes, h)
		case same(e.Layer, "LABEL") && !e.Closed && len(e.Vertices) == 2:
			a, b := e.Vertices[0], e.Vertices[1]
			if a.Y != b.Y || math.Abs(a.X) > tick || math.Abs(b.X*scale-depth) > 1 && !outlined {
				continue // a stroke of a letter
			}
			at := a.Y * scale
			if math.Abs(b.X-a.X)*scale < depth/2 {
				continue
			}
			row := slices.IndexFunc(k.Rows, func(r record.Row) bool { return math.Abs(c.mm(r.Line)-at) <= sameSize })
			if row < 0 {
				c.fault("slide-line", k.Name, name, e.Line, rebuild,
					"a slide line is drawn %s over the opening's lower edge, and no row of the report has one there", c.text(at))
				continue
			}
			lines[row] = true
		}
	}
	if !outlined {
		c.fault("no-outline", k.Name, name, 0, rebuild, "the drawing has no outline of the side on BLANK")
	}
	for i, there := range lines {
		if !there {
			c.fault("slide-line", k.Rows[i].Drawer, name, 0, rebuild,
				"the slide line of %s, %s over the opening's lower edge, is not drawn", k.Rows[i].Drawer, c.text(c.mm(k.Rows[i].Line)))
		}
	}
	if len(holes) != k.Holes {
		c.fault("cabinet-holes", k.Name, name, 0, rebuild, "%d holes are drawn; the report has %d", len(holes), k.Holes)
	}
	for i, h := range holes {
		if h.at.X < 0 || h.at.Y < 0 || h.at.X > depth || h.at.Y > height {
			c.fault("cabinet-holes", k.Name, name, h.line, rebuild, "a hole at %s, %s is beside the side",
				c.text(h.at.X), c.text(h.at.Y))
		}
		if !slices.ContainsFunc(k.Rows, func(r record.Row) bool { return math.Abs(c.mm(r.Line)-h.at.Y) <= sameSize }) {
			c.fault("cabinet-holes", k.Name, name, h.line, rebuild,
				"a hole %s over the opening's lower edge is on no row's slide line", c.text(h.at.Y))
		}
		if right {
			holes[i].at.X = depth - h.at.X
		}
	}
	return holes
}

// scaled measures the square of a drawing, which it has to have.
func (c *checking) scaled(name, file string, f *dxfread.File, scale float64) {
	if m := c.square(f, scale); m != nil {
		c.fault("scale", name, file, m.line, m.hint, "%s", m.message)
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
