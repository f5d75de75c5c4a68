package prove

import (
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// plate is a template as its drawing has it.
type plate struct {
	file     string
	outline  cutLoop
	openings []cutLoop
}

// cutLoop is a closed line and where it is in the file.
type cutLoop struct {
	geom.Loop
	line int
}

// templateCheck holds a template's drawing against the report, the walls between what is
// cut out, and the drawing for a beam's kerf against the one as drawn.
func (w *Worker) templateCheck(t record.Template, read Read) record.Checked {
	c := checking{Prover: w.Prover,
		out: record.Checked{Kind: record.CheckedTemplate, Name: t.Name, Faults: []record.Fault{}}}
	var plates []plate
	for _, name := range t.Files {
		if !strings.HasSuffix(name, ".dxf") {
			continue
		}
		p, ok := c.plate(t.Name, name, read)
		if !ok {
			return c.out
		}
		plates = append(plates, p)
		if svg := strings.TrimSuffix(name, ".dxf") + ".svg"; slices.Contains(t.Files, svg) {
			c.svgPlate(t.Name, svg, p, read)
		}
	}
	if len(plates) == 0 {
		return c.out
	}
	drawn := plates[0]
	b := drawn.outline.Bounds()
	if math.Abs(b.Max.X-t.Size[0].MM()) > sameSize || math.Abs(b.Max.Y-t.Size[1].MM()) > sameSize ||
		math.Abs(b.Min.X) > tick || math.Abs(b.Min.Y) > tick {
		c.fault("template-size", place{t.Name, drawn.file, drawn.outline.line}, rebuild,
			"the template is drawn from %s, %s to %s, %s; the report has it from 0, 0 to %s, %s",
			c.text(b.Min.X), c.text(b.Min.Y), c.text(b.Max.X), c.text(b.Max.Y), c.text(t.Size[0].MM()),
			c.text(t.Size[1].MM()))
	}
	c.walls(t.Name, drawn)
	c.marks(t, drawn)
	for _, made := range plates[1:] {
		c.kerf(t.Name, drawn, made, t.Kerf.MM())
	}
	return c.out
}

// plate reads one drawing.
func (c *checking) plate(part, name string, read Read) (p plate, ok bool) {
	data, ok := c.file(name, read)
	if !ok {
		return p, false
	}
	f, err := dxfread.Parse(data)
	if err != nil {
		line, why := broken(err)
		c.fault("unreadable", place{part, name, line}, rebuild, noDXF, why)
		return p, false
	}
	scale := 1.0
	if f.Unit == dxfread.Inch {
		scale = geom.InchMM
	}
	if found := map[dxfread.Unit]string{dxfread.Millimeter: "mm",
		dxfread.Inch: "in"}[f.Unit]; found != c.report.DXF.Units {
		c.fault("units", place{part, name, 0}, "export it again in "+c.report.DXF.Units,
			"the drawing says it is in %q, and was written in %s", found, c.report.DXF.Units)
	}
	c.scaled(part, name, f, scale)
	p.file = name
	s := sheet{scale: scale}
	profiles := 0
	for _, e := range f.Entities {
		cutout, profile := strings.HasPrefix(strings.ToUpper(e.Layer),
			"CUTOUT_"), strings.HasPrefix(strings.ToUpper(e.Layer), "PROFILE_")
		if !cutout && !profile {
			continue
		}
		if !e.Closed && e.Type != "CIRCLE" || e.Type != "CIRCLE" && len(e.Vertices) < 2 {
			c.fault("open", place{part, name, e.Line}, "close it", "an open line on %s: what is cut out needs it closed",
				e.Layer)
			continue
		}
		if s.chords(e) > maxCorners {
			c.fault("too-many", place{part, name, e.Line}, rebuild, "a line on %s has more corners than are proved", e.Layer)
			continue
		}
		l := cutLoop{s.loop(e), e.Line}
		if profile {
			p.outline = l
			profiles++
		} else {
			p.openings = append(p.openings, l)
		}
	}
	if profiles != 1 {
		c.fault("no-outline", place{part, name, 0}, rebuild, "the drawing has %d outlines on PROFILE; a template has one",
			profiles)
	}
	return p, profiles == 1
}

// walls measures the wood between what is cut out.
func (c *checking) walls(part string, p plate) {
	if len(p.openings) > maxLegend {
		return
	}
	out := p.outline.Flatten(outlineChord)
	outline := rings{}.with(out)
	var all []geom.Ring
	for _, o := range p.openings {
		ring := o.Flatten(outlineChord)
		all = append(all, ring)
		if len(ring)*len(out) > maxCompared {
			return
		}
		if !outline.inside(ring[0]) {
			c.fault("template-wall", place{part, p.file, o.line}, rebuild, "what is cut out here lies beside the template")
			continue
		}
		if d := between(ring, out); d < proof.MinWall-outlineChord {
			c.fault("template-wall", place{part, p.file, o.line}, rebuild,
				"the wall to the template's edge is %s; less than %s breaks", c.text(d), c.text(proof.MinWall))
		}
	}
	for i, o := range p.openings {
		for k, q := range p.openings[:i] {
			if o.Bounds().Apart(q.Bounds().Grow(proof.MinWall)) {
				continue
			}
			if d := between(all[i], all[k]); d < proof.MinWall-outlineChord {
				c.fault("template-wall", place{part, p.file, o.line}, rebuild,
					"the wall to what is cut out on line %d is %s; less than %s breaks", q.line, c.text(d),
					c.text(proof.MinWall))
			}
		}
	}
}

// between is how far the lines of two rings are apart.
func between(a, b geom.Ring) float64 {
	least := math.Inf(1)
	for _, p := range a {
		least = math.Min(least, b.Distance(p))
	}
	for _, p := range b {
		least = math.Min(least, a.Distance(p))
	}
	return least
}

// kerf compares a drawing in which a kerf is made up for with the one as drawn: its
// outline is half of it further out, what is cut out half of it further in.
func (c *checking) kerf(part string, drawn, made plate, kerf float64) {
	grown := func(a, b geom.Rect, by float64) float64 {
		off := 0.0
		for _, d := range [4]float64{a.Min.X - b.Min.X - by, a.Min.Y - b.Min.Y - by, b.Max.X - a.Max.X - by,
			b.Max.Y - a.Max.Y - by} {
			off = math.Max(off, math.Abs(d))
		}
		return off
	}
	if off := grown(drawn.outline.Bounds(), made.outline.Bounds(), kerf/2); off > sameSize {
		c.fault("template-kerf", place{part, made.file, made.outline.line}, rebuild,
			"the outline is not %s, half of the kerf, further out than as drawn: it is %s off", c.text(kerf/2),
			c.text(off))
	}
	if len(made.openings) != len(drawn.openings) {
		c.fault("template-kerf", place{part, made.file, 0}, rebuild, "%d are cut out, and %d as drawn", len(made.openings),
			len(drawn.openings))
	}
	unmatched := func(list, others []cutLoop, file string, by float64, than string) {
		for _, m := range list {
			best := math.Inf(1)
			for _, d := range others {
				best = math.Min(best, grown(d.Bounds(), m.Bounds(), by))
			}
			if best > sameSize {
				c.fault("template-kerf", place{part, file, m.line}, rebuild,
					"what is cut out here is not %s, half of the kerf, further %s: it is %s off the nearest",
					c.text(kerf/2), than, c.text(best))
			}
		}
	}
	unmatched(made.openings, drawn.openings, made.file, -kerf/2, "in than any as drawn")
	unmatched(drawn.openings, made.openings, drawn.file, kerf/2, "out than any with the kerf made up for")
}
