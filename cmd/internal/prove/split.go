package prove

import (
	"fmt"
	"math"
	"path"
	"slices"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/export/dxf/dxfread"
)

// bitRun is what a bit cuts of a drawing until it is changed, by the legend.
type bitRun struct {
	file, bit string
	tool      int
	layers    []string
}

func (b bitRun) has(layer string) bool {
	return slices.ContainsFunc(b.layers, func(n string) bool { return same(n, layer) })
}

const splitAgain = rebuild

// split proves the files of single bits: one for each change of bit, numbered in the order
// of cutting; each holds what the whole drawing has on its layers and nothing else that is
// cut, and one after the other they cut what the whole has in its order.
func (s *sheet) split() {
	runs, sound := s.bitRuns()
	for _, r := range runs {
		s.splitFile(r)
	}
	last := 0
	for _, e := range s.file.Entities {
		i := slices.IndexFunc(runs, func(r bitRun) bool { return r.has(e.Layer) })
		if i < 0 || !sound {
			continue
		}
		if i < last {
			s.fault("order", s.place(s.name, e.Line), splitAgain,
				"a line on %s comes after those of %s, and %s has it, which is cut before",
				e.Layer, runs[last].file, runs[i].file)
			return
		}
		last = i
	}
}

// bitRuns are the runs of the drawing as the legend has them, and whether it can be cut by
// them.
func (s *sheet) bitRuns() (runs []bitRun, sound bool) {
	sound = true
	fault := func(code, format string, args ...any) {
		sound = false
		s.fault(code, s.place(s.name, 0), splitAgain, format, args...)
	}
	for _, l := range s.rows {
		if l.BitFile == "" {
			if s.report.DXF.Split && l.Diameter > 0 {
				fault("split", "the legend names no file of a single bit for the layer %s", l.Layer)
			}
			continue
		}
		n := len(runs) - 1
		changed := n < 0 || runs[n].bit != l.Bit || runs[n].tool != l.Tool
		if i := slices.IndexFunc(runs, func(r bitRun) bool { return r.file == l.BitFile }); i >= 0 {
			switch {
			case i < n:
				fault("order", "%s has the layer %s, which is cut after what %s has: no order of the files is right",
					l.BitFile, l.Layer, runs[n].file)
			case changed:
				fault("bit", "%s has the layer %s of the bit %s, and others of the bit %s",
					l.BitFile, l.Layer, l.Bit, runs[n].bit)
			}
			runs[i].layers = append(runs[i].layers, l.Layer)
			continue
		}
		if !changed {
			fault("split", "the bit %s is not changed between %s and %s", l.Bit, runs[n].file, l.BitFile)
		}
		runs = append(runs, bitRun{l.BitFile, l.Bit, l.Tool, []string{l.Layer}})
	}
	for i, r := range runs {
		stem := strings.TrimSuffix(s.name, ".dxf")
		number := fmt.Sprintf("%0*d", len(fmt.Sprint(len(runs))), i+1)
		if path.Dir(r.file) != path.Dir(s.name) || !strings.HasPrefix(r.file, stem+"."+number+".") {
			fault("order", "%s is file %s of %d of this drawing, and its name does not say so",
				r.file, number, len(runs))
		}
	}
	return runs, sound
}

// splitFile compares the file of a run with the whole drawing.
func (s *sheet) splitFile(r bitRun) {
	data, err := s.read(r.file)
	if err != nil {
		s.fault("missing-file", s.place(r.file, 0), splitAgain, "the drawing of one bit cannot be read: %v", err)
		return
	}
	one, err := dxfread.Parse(data)
	if err != nil {
		line, why := broken(err)
		s.fault("unreadable", s.place(r.file, line), "export it again", noDXF, why)
		return
	}
	if one.Unit != s.file.Unit {
		s.fault("units", s.place(r.file, 0), "export it again with the units of "+s.name,
			"the drawing says another unit than %s", s.name)
		return
	}
	for _, e := range one.Entities {
		if !isNotCut(e.Layer) && !r.has(e.Layer) {
			s.fault("unlisted-layer", s.place(r.file, e.Line), splitAgain,
				"the layer %s is for another bit than this file is", e.Layer)
			return
		}
	}
	s.alike(r.file, one, r.has, "is cut with this bit")
	// The outline is drawn where it is not cut: only in some of the files.
	shown := func(layer string) bool { return isNotCut(layer) && !same(layer, "OUTLINE") }
	s.alike(r.file, one, shown, "is only shown")
}

// alike compares the lines of a file on some layers with those of the whole drawing.
func (s *sheet) alike(name string, one *dxfread.File, on func(layer string) bool, what string) {
	lines := func(list []dxfread.Entity) (kept []dxfread.Entity) {
		for _, e := range list {
			if on(e.Layer) {
				kept = append(kept, e)
			}
		}
		return kept
	}
	want, got := lines(s.file.Entities), lines(one.Entities)
	if len(want) != len(got) {
		s.fault("count", s.place(name, 0), splitAgain, "%s of what %s, and there are %d in %s",
			words.Count(len(got), "line", "lines"), what, len(want), s.name)
		return
	}
	for i := range want {
		if !sameLine(want[i], got[i]) {
			s.fault("moved", s.place(name, got[i].Line), splitAgain, "a line on %s is not that of %s", got[i].Layer,
				s.name)
			return
		}
	}
}

// isNotCut reports whether nothing on a layer is cut.
func isNotCut(layer string) bool {
	return slices.ContainsFunc(notCut, func(n string) bool { return same(n, layer) })
}

// sameLine reports whether two entities are the same, wherever they stand in their files.
func sameLine(a, b dxfread.Entity) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 } // as files round
	return a.Type == b.Type && same(a.Layer, b.Layer) && a.Closed == b.Closed && a.Paper == b.Paper &&
		a.Tilted == b.Tilted && near(a.X, b.X) && near(a.Y, b.Y) && near(a.Radius, b.Radius) &&
		near(a.Low, b.Low) && near(a.High, b.High) && near(a.Thickness, b.Thickness) &&
		slices.EqualFunc(a.Vertices, b.Vertices, func(v, w dxfread.Vertex) bool {
			return near(v.X, w.X) && near(v.Y, w.Y) && near(v.Bulge, w.Bulge)
		})
}
