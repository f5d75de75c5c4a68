package prove

import (
	"math"
	"strings"

	"drawerwright/geom"
)

// svgCut is what an SVG cuts out of a template, for cutters that read no DXF.
type svgCut struct {
	box  geom.Rect
	line int
}

// svgPlate holds a template's SVG against its drawing: the same outline, and the same cut
// out in the same places, wherever on the page.
func (c *checking) svgPlate(part, name string, p plate, read Read) {
	data, ok := c.file(name, read)
	if !ok {
		return
	}
	shapes, line, err := svgShapes(data)
	if err != nil {
		c.fault("unreadable", place{part, name, line}, rebuild, "no SVG that can be read: %v", err)
		return
	}
	var outline *svgCut
	var cuts []svgCut
	for _, s := range shapes {
		cutout, profile := strings.HasPrefix(s.group, "CUTOUT_"), strings.HasPrefix(s.group, "PROFILE_")
		if !cutout && !profile || len(s.points) == 0 {
			continue
		}
		if s.kind == "path" && !s.closed {
			c.fault("open", place{part, name, s.line}, rebuild, "an open line in %s: what is cut out needs it closed", s.group)
			continue
		}
		one := svgCut{s.bounds(), s.line}
		if profile {
			outline = &one
		} else {
			cuts = append(cuts, one)
		}
	}
	if outline == nil {
		c.fault("no-outline", place{part, name, 0}, rebuild, "the SVG has no outline of the template")
		return
	}
	// y runs down there: the drawing's lower left corner is the outline's.
	want := p.outline.Bounds()
	at := geom.Point{X: outline.box.Min.X - want.Min.X, Y: outline.box.Max.Y + want.Min.Y}
	if dx, dy := outline.box.Width()-want.Width(), outline.box.Height()-want.Height(); math.Abs(dx) > sameSize ||
		math.Abs(dy) > sameSize {
		c.fault("template-svg", place{part, name, outline.line}, rebuild, "the outline is %s x %s; in %s it is %s x %s",
			c.text(outline.box.Width()), c.text(outline.box.Height()), p.file, c.text(want.Width()),
			c.text(want.Height()))
		return
	}
	if len(cuts) != len(p.openings) {
		c.fault("template-svg", place{part, name, 0}, rebuild, "%d are cut out, and in %s there are %d", len(cuts), p.file,
			len(p.openings))
	}
	for _, s := range cuts {
		best := math.Inf(1)
		for _, o := range p.openings {
			b := o.Bounds()
			best = math.Min(best, max(math.Abs(b.Min.X+at.X-s.box.Min.X), math.Abs(b.Max.X+at.X-s.box.Max.X),
				math.Abs(at.Y-b.Max.Y-s.box.Min.Y), math.Abs(at.Y-b.Min.Y-s.box.Max.Y)))
		}
		if best > sameSize+svgChord {
			c.fault("template-svg", place{part, name, s.line}, rebuild, "what is cut out here is %s off the nearest in %s",
				c.text(best), p.file)
		}
	}
}

// svgChord is how far the curves of an SVG keep to the arcs of a drawing, in millimeters,
// and the chords of both.
const svgChord = 0.02
