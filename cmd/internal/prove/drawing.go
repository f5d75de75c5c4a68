package prove

import (
	"errors"
	"fmt"
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// notCut are the layers that are not cut, by the contract of the drawings.
var notCut = []string{"LABEL", "BLANK", "SCALE", "SHEET", "TABS", "OUTLINE", "0"}

// How near what is read has to be to what was meant.
const (
	sameSize  = proof.SameSize
	sameDepth = proof.SameDepth
	tick      = proof.Tick
)

// sheet is one drawing while it is read.
type sheet struct {
	*panelReader
	name  string
	face  geom.Face
	file  *dxfread.File
	rows  []record.Layer // of its legend
	scale float64        // mm to the drawing's unit
	at    geom.Point     // lower left of the panel, in the drawing, mm
	size  geom.Point
}

// noDXF is what is said of a drawing that cannot be read, with why.
const noDXF = "no DXF that can be read: %s"

// broken is why a drawing cannot be read, with the line.
func broken(err error) (line int, why string) {
	if e := (*dxfread.Error)(nil); errors.As(err, &e) {
		return e.Line, e.Found + "; broken rule: " + e.Rule.Error()
	}
	return 0, err.Error()
}

// sheetOf is a drawing that is to be read.
func (r *panelReader) sheetOf(name string, face geom.Face, f *dxfread.File) sheet {
	return sheet{panelReader: r, name: name, face: face, file: f, rows: r.legend(name), scale: 1}
}

// drawing reads one drawing.
func (r *panelReader) drawing(name string, face geom.Face, f *dxfread.File) {
	s := r.sheetOf(name, face, f)
	found := len(s.faults)
	s.units()
	s.scaled()
	if !s.outline() {
		return
	}
	if s.mark(); len(s.faults) == found { // letters of a drawing that is stretched or lies otherwise cannot be read
		s.labeled()
	}
	s.layers()
}

// units finds the unit and compares it with that of the build.
func (s *sheet) units() {
	asked := s.report.DXF.Units
	found := map[dxfread.Unit]string{dxfread.Millimeter: "mm", dxfread.Inch: "in"}[s.file.Unit]
	switch {
	case found == "":
		s.fault("units", s.place(s.name, 0), "export it again with its units",
			"the drawing does not say its unit; it was written in %s", asked)
		found = asked
	case found != asked:
		s.fault("units", s.place(s.name, 0), "export it again in "+asked,
			"the drawing says it is in %s, and was written in %s", found, asked)
	}
	if found == "in" {
		s.scale = geom.InchMM
	}
}

// on lists the entities of a layer.
func (s *sheet) on(layer string) []dxfread.Entity {
	var list []dxfread.Entity
	for _, e := range s.file.Entities {
		if same(e.Layer, layer) {
			list = append(list, e)
		}
	}
	return list
}

// scaled measures the square, which is left out of drawings without notes.
func (s *sheet) scaled() {
	if !s.report.DXF.Notes && len(s.on("SCALE")) == 0 {
		return
	}
	if m := s.square(s.file, s.scale); m != nil {
		s.fault("scale", s.place(s.name, m.line), m.hint, "%s", m.message)
	}
}

// loop is a closed entity in millimeters, counter-clockwise.
func (s *sheet) loop(e dxfread.Entity) geom.Loop {
	if e.Type == "CIRCLE" {
		return geom.Circle(geom.Point{X: e.X * s.scale, Y: e.Y * s.scale}, e.Radius*s.scale)
	}
	l := make(geom.Loop, len(e.Vertices))
	for i, v := range e.Vertices {
		l[i] = geom.Vertex{Point: geom.Point{X: v.X * s.scale, Y: v.Y * s.scale}, Bulge: v.Bulge}
	}
	if l.Area() < 0 {
		l = l.Reverse()
	}
	return l
}

// drawnOutline finds the panel's outline, its line in the file and how often it is cut: where it
// is cut, or else on OUTLINE.
func (s *sheet) drawnOutline() (found geom.Loop, line, profiles int) {
	for _, l := range s.rows {
		if l.Operation != "profile" {
			continue
		}
		for _, e := range s.on(l.Layer) {
			if s.chords(e) > maxCorners {
				continue
			}
			if e.Closed && len(e.Vertices) > 1 || e.Type == "CIRCLE" {
				found, line = s.loop(e), e.Line
				profiles++
			}
		}
	}
	if profiles > 0 {
		return found, line, profiles
	}
	for _, e := range s.on("OUTLINE") {
		if s.chords(e) > maxCorners {
			continue
		}
		if l := s.loop(e); e.Closed && len(l) > 3 && (found == nil || l.Area() > found.Area()) {
			found, line = l, e.Line
		}
	}
	return found, line, 0
}

// outline holds the panel's outline against the one that the job has.
func (s *sheet) outline() bool {
	found, line, profiles := s.drawnOutline()
	if len(found) < 3 {
		s.fault("no-outline", s.place(s.name, 0), rebuild, "the drawing has no outline of the panel")
		return false
	}
	b := found.Bounds()
	s.at, s.size = b.Min, geom.Point{X: b.Width(), Y: b.Height()}
	want := geom.Point{X: s.part.Length.MM(), Y: s.part.Width.MM()}
	if math.Abs(s.size.X-want.X) > sameSize || math.Abs(s.size.Y-want.Y) > sameSize {
		s.fault("size", s.place(s.name, line), rebuild, "the panel is drawn %s x %s; %s is %s x %s",
			s.text(s.size.X), s.text(s.size.Y), s.part.Name, s.text(want.X), s.text(want.Y))
	}
	asked, ok := loopOf(s.part.Outline)
	if wrongSize := math.Abs(s.size.X-want.X) > sameSize || math.Abs(s.size.Y-want.Y) > sameSize; ok && !wrongSize {
		if off, at := differs(s.panelLoop(found), asked, s.part.ReliefCorners, s.widest); off > sameSize+2*outlineChord {
			s.fault("shape", s.place(s.name, line), rebuild,
				"the outline of the panel is %s off the one that the job has, near x %s, y %s", s.text(off),
				s.text(at.X), s.text(at.Y))
		}
	}
	if math.Abs(s.at.X) > tick || math.Abs(s.at.Y) > tick {
		s.fault("origin", s.place(s.name, line), "export it again without moving it",
			"the panel's lower left corner is at %s, %s, not at 0, 0", s.text(s.at.X), s.text(s.at.Y))
	}
	if profiles > 0 || !s.out.whole {
		s.outlines += profiles
		s.marksAlone(found)
		panel := s.panelLoop(found)
		s.out.outline, s.out.left, s.out.whole = proof.ShapeOf(panel), panel, true
		s.length, s.width, s.region = s.size.X, s.size.Y, regionOf(panel)
		if len(asked) > 0 {
			s.asked = regionOf(asked)
		}
	}
	return true
}

// panelLoop takes a loop of the drawing to panel coordinates: the outside face is
// turned over end for end.
func (s *sheet) panelLoop(l geom.Loop) geom.Loop {
	out := make(geom.Loop, len(l))
	for i, v := range l {
		out[i] = geom.Vertex{Point: v.Sub(s.at), Bulge: v.Bulge}
	}
	if s.face == geom.Outside {
		return out.TurnOver(s.size.X)
	}
	return out
}

// mark looks for the mark in the panel's first corner, which a turned panel has
// at its other end.
func (s *sheet) mark() {
	for _, e := range s.on("BLANK") {
		if e.Type == "CIRCLE" { // a pin
			center, radius, _ := s.panelLoop(s.loop(e)).AsCircle()
			s.register[s.face] = append(s.register[s.face], hole{center, radius, e.Line})
		}
	}
	for _, e := range s.on("BLANK") {
		if !e.Closed || len(e.Vertices) != 3 {
			continue
		}
		b := s.panelLoop(s.loop(e)).Bounds()
		switch {
		case math.Abs(b.Min.X) < tick && math.Abs(b.Min.Y) < tick:
		case math.Abs(b.Max.X-s.size.X) < tick && math.Abs(b.Min.Y) < tick:
			s.fault("mirror", s.place(s.name, e.Line), "mirror it end for end, or build the job into a new folder",
				"the corner mark is at the wrong end: the drawing of the %s face is not turned over as it has to be",
				s.face)
		default:
			s.fault("mirror", s.place(s.name, e.Line), rebuild,
				"the corner mark is in no corner at the bottom edge: the drawing was turned or mirrored")
		}
		return
	}
	s.fault("mirror", s.place(s.name, 0), rebuild,
		"the drawing has no corner mark on BLANK, that shows which way it lies")
}

// layers reads everything that is cut.
func (s *sheet) layers() {
	legend := s.rows
	counts := make([]int, len(legend))
	told := make(map[string]bool)
	for _, e := range s.file.Entities {
		if isNotCut(e.Layer) {
			continue
		}
		if s.lines += s.chords(e); s.lines > s.most() {
			s.tooMany(s.name, e.Line)
			return
		}
		i := s.row(legend, e)
		key := fmt.Sprint(i, e.Layer)
		once := !told[key]
		told[key] = true
		c := drawnCut{boardCut: boardCut{file: s.name, layer: e.Layer, at: e.Line, face: s.face}, row: i}
		says, readable := s.names.read(e.Layer)
		switch {
		case i >= 0:
			counts[i]++
			says, readable = s.names.readOf(e.Layer, legend[i].Bit)
			if s.listed(&c, legend[i], says, readable, once); once {
				s.setTo(legend[i], says, e.Line)
			}
		case readable:
			if once {
				s.fault("unlisted-layer", s.place(s.name, e.Line), rebuild,
					"the layer %s is not in the legend", e.Layer)
			}
			s.named(&c, says)
		default:
			if once {
				s.fault("unknown-layer", s.place(s.name, e.Line), "delete it, or build the job into a new folder",
					"it is not known what to do with the layer %s", e.Layer)
			}
			continue
		}
		if s.entity(&c, e, i >= 0 && legend[i].Line || i < 0 && says.line) && s.lies(&c, e, says, once) {
			s.drawn = append(s.drawn, c)
		}
	}
	s.split()
	for i, l := range legend {
		switch {
		case counts[i] == 0:
			s.fault("missing", s.place(s.name, 0), rebuild,
				"the layer %s has nothing on it; the legend says %d", l.Layer, l.Cuts)
		case counts[i] != l.Cuts:
			s.fault("count", s.place(s.name, 0), rebuild,
				"the layer %s has %s; the legend says %d", l.Layer, words.Count(counts[i], "line", "lines"), l.Cuts)
		}
	}
}

// listed takes what the legend says of a layer, and compares what its name says.
// Of the two depths the name's is the one that gets cut.
func (s *sheet) listed(c *drawnCut, l record.Layer, says said, readable, once bool) {
	c.operation, c.bit = l.Operation, l.Diameter.MM()
	c.depth, c.through = l.Depth.MM(), l.Stated == "through"
	c.kept = l.Stated == "remaining" || s.saw && s.face == geom.Outside
	fault := func(code, hint, format string, args ...any) {
		if once {
			s.fault(code, s.place(s.name, c.at), hint, format, args...)
		}
	}
	const again = rebuild
	if l.Face != s.face.String() {
		fault("wrong-face", again, "the legend has the layer %s on the %s face, and this is the drawing of the %s face",
			l.Layer, l.Face, s.face)
	}
	if once {
		s.oneBit(l, c.at)
	}
	if l.Operation == "register" {
		if once && readable {
			s.pinned(l, says, c.at)
		}
		return
	}
	if !s.saw && l.Diameter == 0 {
		fault("bit", again, "the legend names no bit for the layer %s", l.Layer)
	}
	if !readable {
		fault("layer-name", again, "the layer %s is not named as %s", l.Layer, s.report.DXF.Layers)
		return
	}
	if says.face != "" && says.face != s.face.String() {
		fault("wrong-face", again,
			"the layer %s is for the %s face, and this is the drawing of the %s face", l.Layer, says.face, s.face)
	}
	if says.operation != "" && says.operation != l.Operation {
		fault("layer-name", again, "the layer %s is a %s by its name and a %s by the legend", l.Layer,
			says.operation, l.Operation)
	}
	if !says.depthSaid {
		return
	}
	legend := c.depth
	if l.Stated == "remaining" {
		legend = l.Remaining.MM()
	}
	switch {
	case says.through != c.through || says.floor != (l.Stated == "remaining"):
		fault("layer-name", again, "the layer %s and the legend do not tell the same kind of depth", l.Layer)
	case !says.through && math.Abs(says.depth-legend) > says.step+sameDepth:
		fault("depth", again, "the layer %s says %s, the legend %s", l.Layer, s.text(says.depth), s.text(legend))
	}
	s.named(c, says)
}

// named takes what a layer's name says.
func (s *sheet) named(c *drawnCut, says said) {
	if says.operation != "" {
		c.operation = says.operation
	}
	if !says.depthSaid {
		return
	}
	c.through, c.kept = says.through, says.floor || s.saw && s.face == geom.Outside
	if c.depth = says.depth; says.floor {
		c.depth = s.out.thickness - says.depth
	}
}

// entity takes the line itself.
func (s *sheet) entity(c *drawnCut, e dxfread.Entity, line bool) bool {
	const again = "export it again, or build the job into a new folder"
	switch {
	case e.Type != "LWPOLYLINE" && e.Type != "POLYLINE" && e.Type != "CIRCLE":
		s.fault("entity", s.place(s.name, e.Line), again, "a %s on %s: cuts are closed polylines and circles", e.Type,
			e.Layer)
		return false
	case e.Paper || e.Tilted:
		s.fault("height", s.place(s.name, e.Line), again, "a line on %s does not lie level in the model", e.Layer)
		return false
	case line && e.Closed:
		s.fault("closed", s.place(s.name, e.Line), again,
			"a closed line on %s, where the path of the bit's middle is drawn", e.Layer)
		return false
	case !line && !e.Closed:
		s.fault("open", s.place(s.name, e.Line), "close it", "an open line on %s: a toolpath needs it closed", e.Layer)
		return false
	case len(e.Vertices) < 2 && e.Type != "CIRCLE":
		s.fault("entity", s.place(s.name, e.Line), again, "a polyline without length on %s", e.Layer)
		return false
	}
	if line {
		for _, v := range e.Vertices {
			x := float64(v.X*s.scale) - s.at.X
			if s.face == geom.Outside {
				x, v.Bulge = s.size.X-x, -v.Bulge
			}
			c.path = append(c.path, geom.Vertex{Point: geom.Point{X: x, Y: float64(v.Y*s.scale) - s.at.Y}, Bulge: v.Bulge})
		}
		return true
	}
	c.loop = s.panelLoop(s.loop(e))
	if center, radius, ok := c.loop.AsCircle(); ok && c.operation == "register" {
		s.register[s.face] = append(s.register[s.face], hole{center, radius, e.Line})
	}
	return true
}
