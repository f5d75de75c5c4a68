package prove

import (
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom/joinery"
)

// row is the line of the legend that an entity belongs to, -1 for none: of those of its
// layer the one whose elevation is nearest.
func (s *sheet) row(legend []record.Layer, e dxfread.Entity) int {
	found, nearest := -1, 0.0
	for i, l := range legend {
		if !same(l.Layer, e.Layer) {
			continue
		}
		off := 0.0
		if l.Elevation != nil {
			off = math.Abs(l.Elevation.MM() - float64(e.Low*s.scale))
		}
		if found < 0 || off < nearest {
			found, nearest = i, off
		}
	}
	return found
}

// above is the height of the face that is cut: 0, or the board's thickness where Z = 0 is
// the top of the spoilboard.
func (s *sheet) above() float64 {
	if s.report.Router.DepthFrom == string(joinery.FromSpoilboard) && !s.saw {
		return s.out.thickness
	}
	return 0
}

// floor is the height at which a cut of the legend has to end. What goes through has to do
// so in the thickest board that was measured; exact says that it must not go deeper.
func (s *sheet) floor(l record.Layer, says said) (z float64, exact bool) {
	switch {
	case l.Operation == "register" && says.depthSaid && !says.through:
		return -says.depth, true
	case l.Stated != "through":
		return s.above() - l.Depth.MM(), true
	case s.above() > 0:
		return -s.report.Router.IntoSpoilboard.MM(), l.Operation != "register"
	}
	return -s.thickest() - s.report.Router.IntoSpoilboard.MM(), l.Operation != "register"
}

// setTo judges what the legend tells the operator to set for a layer, by the height of its
// lines, or else by its name and depth. What goes through may be set deeper than that.
func (s *sheet) setTo(l record.Layer, says said, line int) {
	from, ends, want := joinery.FromTop, -l.Set.MM(), s.above()-l.Depth.MM()
	if s.above() > 0 {
		from, ends = joinery.FromSpoilboard, l.Set.MM()
	}
	switch {
	case l.Elevation != nil:
		want = l.Elevation.MM()
	case says.depthSaid && says.floor:
		want = says.depth
	case says.depthSaid && !says.through:
		want = s.above() - says.depth
		if l.Operation == "register" {
			want = -says.depth
		}
	}
	step := sameDepth + says.step
	exact := l.Elevation != nil || l.Stated != "through"
	if l.From != string(from) || ends > want+step || exact && ends < want-step {
		s.fault("set", s.place(s.name, line), rebuild,
			"by the legend %s is set to %s from the %s; its cuts end at Z = %s, from the %s",
			l.Layer, s.text(l.Set.MM()), l.From, s.text(want), from)
	}
}

// lies judges the height at which a line lies: at Z = 0, or at the floor of its cut where
// elevations are asked for. It reports whether the line is taken.
func (s *sheet) lies(c *drawnCut, e dxfread.Entity, says said, once bool) bool {
	low, high, up := float64(e.Low*s.scale), float64(e.High*s.scale), float64(e.Thickness*s.scale)
	if !s.report.DXF.Elevation {
		for _, z := range []float64{low, high, low + up, high + up} {
			if math.Abs(z) > tick {
				s.fault("height", s.place(s.name, e.Line), "export it again, or build the job into a new folder",
					"a line on %s does not lie at Z = 0", e.Layer)
				return false
			}
		}
		return true
	}
	if !says.depthSaid && c.operation != "register" { // then it is the height that gets cut
		c.depth = s.above() - low
		c.through = c.depth > s.out.thickness-tick
	}
	if c.row < 0 {
		return true
	}
	want, step := s.ends(s.rows[c.row], says, e.Line, once), sameDepth+says.step
	fault := func(format string, args ...any) {
		s.fault("height", s.place(s.name, e.Line), rebuild, "a line on "+e.Layer+" "+format, args...)
	}
	switch {
	case high-low > tick:
		fault("runs from Z = %s to %s: it has to lie level", s.text(low), s.text(high))
	case math.Abs(low-want) > step:
		fault("lies at Z = %s, and the floor of its cut is at %s", s.text(low), s.text(want))
	case math.Abs(low+up-s.above()) > step:
		fault("at Z = %s is %s thick and reaches up to %s; the face is at %s",
			s.text(low), s.text(up), s.text(low+up), s.text(s.above()))
	}
	return true
}

// ends is the height at which the cuts on a layer of the legend end: as it says, if that
// agrees with their depth.
func (s *sheet) ends(l record.Layer, says said, line int, once bool) float64 {
	want, exact := s.floor(l, says)
	step := sameDepth + says.step
	fault := func(format string, args ...any) {
		if once {
			s.fault("height", s.place(s.name, line), rebuild,
				"the legend has the layer "+l.Layer+" "+format, args...)
		}
	}
	if l.Elevation == nil {
		fault("without an elevation")
		return want
	}
	told := l.Elevation.MM()
	if told > want+step || exact && told < want-step {
		fault("at Z = %s; its cuts end at %s", s.text(told), s.text(want))
		return want
	}
	return told
}
