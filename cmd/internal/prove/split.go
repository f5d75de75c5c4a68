package prove

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/report"
	"drawerwright/export/dxf/dxfread"
)

// split compares the files of single bits with the whole drawing: each has what the whole
// has on the layers of its bit, in the same order, and nothing else that is cut.
func (s *sheet) split() {
	done := make(map[string]bool)
	for _, l := range s.legend[s.name] {
		if l.BitFile == "" || done[l.BitFile] {
			continue
		}
		done[l.BitFile] = true
		s.splitFile(l.BitFile)
	}
}

func (s *sheet) splitFile(name string) {
	const again = "build the folder again"
	data, err := s.read(name)
	if err != nil {
		s.fault("missing-file", name, 0, again, "the drawing of one bit cannot be read: %v", err)
		return
	}
	one, err := dxfread.Parse(data)
	if err != nil {
		s.fault("unreadable", name, 0, "export it again", "no DXF that can be read: %v", err)
		return
	}
	if one.Unit != s.file.Unit {
		s.fault("units", name, 0, "export it again with the units of "+s.name, "the drawing says another unit than %s", s.name)
		return
	}
	of := func(list []dxfread.Entity) (kept []dxfread.Entity) {
		for _, e := range list {
			if slices.ContainsFunc(s.legend[s.name], func(l report.Layer) bool { return l.BitFile == name && same(l.Layer, e.Layer) }) {
				kept = append(kept, e)
			}
		}
		return kept
	}
	want, got := of(s.file.Entities), of(one.Entities)
	for _, e := range one.Entities {
		cut := !slices.ContainsFunc(notCut, func(n string) bool { return same(n, e.Layer) })
		if cut && !slices.ContainsFunc(got, func(g dxfread.Entity) bool { return g.Line == e.Line }) {
			s.fault("unlisted-layer", name, e.Line, again, "the layer %s is for another bit than this file is", e.Layer)
			return
		}
	}
	if len(want) != len(got) {
		s.fault("count", name, 0, again, "%d lines are cut, and in %s there are %d for this bit", len(got), s.name, len(want))
		return
	}
	for i := range want {
		if !sameLine(want[i], got[i]) {
			s.fault("moved", name, got[i].Line, again, "a line on %s is not that of %s", got[i].Layer, s.name)
			return
		}
	}
}

// sameLine reports whether two entities are the same, wherever they stand in their files.
func sameLine(a, b dxfread.Entity) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 } // as files round
	return a.Type == b.Type && same(a.Layer, b.Layer) && a.Closed == b.Closed && a.Paper == b.Paper && a.Tilted == b.Tilted && near(a.X, b.X) && near(a.Y, b.Y) && near(a.Low, b.Low) && near(a.High, b.High) && near(a.Thickness, b.Thickness) && near(a.Radius, b.Radius) &&
		slices.EqualFunc(a.Vertices, b.Vertices, func(v, w dxfread.Vertex) bool { return near(v.X, w.X) && near(v.Y, w.Y) && near(v.Bulge, w.Bulge) })
}
