package prove

import (
	"math"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// tabMark is a mark on TABS: there a program is to leave a tab, from the outline of a part
// to the waste or the part beside it.
type tabMark struct {
	box  geom.Rect
	line int
	file string
	used bool // it stands at a part
}

// tabMarks reads the marks of a drawing.
func (s *sheet) tabMarks() (list []tabMark) {
	for _, e := range s.on("TABS") {
		if !e.Closed || len(e.Vertices) < 3 || s.chords(e) > maxCorners {
			s.fault("tab-mark", s.place(s.name, e.Line), rebuild,
				"a mark on TABS is no closed line about a place")
			continue
		}
		list = append(list, tabMark{box: s.panelLoop(s.loop(e)).Bounds(), line: e.Line, file: s.name})
	}
	return list
}

// onlyMarked reports whether the job leaves tabs to the program that makes the toolpaths.
func (p *Prover) onlyMarked() bool {
	t := p.report.Router.Tabs
	return t != nil && t.Marked
}

// contact is where a mark stands at a ring: on which side, from and to along it, and with
// its far edge, a hair beyond. ok is false where it stands at no straight stretch.
type contact struct{ a, b, farA, farB geom.Point }

// touch finds the stretch of a ring, counter-clockwise, on which a mark stands with one of
// its edges, outside the ring.
func (m tabMark) touch(ring []geom.Point) (c contact, ok bool) {
	b := m.box
	on := func(v, w, edge float64) bool { return math.Abs(v-edge) < sameEdge && math.Abs(w-edge) < sameEdge }
	in := func(low, high, v, w float64) bool {
		return math.Min(v, w) < low+sameEdge && math.Max(v, w) > high-sameEdge
	}
	at := func(x0, y0, x1, y1, fx, fy float64) contact {
		return contact{geom.Point{X: x0, Y: y0}, geom.Point{X: x1, Y: y1}, geom.Point{X: x0 + fx, Y: y0 + fy},
			geom.Point{X: x1 + fx, Y: y1 + fy}}
	}
	wide, high := b.Width()+beside, b.Height()+beside
	for i, v := range ring {
		w := ring[(i+1)%len(ring)]
		switch {
		case w.X > v.X && on(v.Y, w.Y, b.Max.Y) && in(b.Min.X, b.Max.X, v.X, w.X): // it hangs below
			return at(b.Min.X, b.Max.Y, b.Max.X, b.Max.Y, 0, -high), true
		case w.X < v.X && on(v.Y, w.Y, b.Min.Y) && in(b.Min.X, b.Max.X, v.X, w.X):
			return at(b.Min.X, b.Min.Y, b.Max.X, b.Min.Y, 0, high), true
		case w.Y > v.Y && on(v.X, w.X, b.Min.X) && in(b.Min.Y, b.Max.Y, v.Y, w.Y):
			return at(b.Min.X, b.Min.Y, b.Min.X, b.Max.Y, wide, 0), true
		case w.Y < v.Y && on(v.X, w.X, b.Max.X) && in(b.Min.Y, b.Max.Y, v.Y, w.Y):
			return at(b.Max.X, b.Min.Y, b.Max.X, b.Max.Y, -wide, 0), true
		}
	}
	return c, false
}

// markedTabs counts the marks at which a program is to hold a part: each on a straight
// stretch of its outline, as wide as the job has it, clear of what is cut into the part
// there, with wood at its other end.
func (r *sheetReader) markedTabs(p *placedPart) (count int) {
	to := r.toSheet(p)
	ring := rings{}.with(r.ringOf(p)).mapped(to).list[0]
	var own, all []layer
	for i, c := range p.cuts {
		own = append(own, layer{rings{}.with(c.shape.Ring()).mapped(to), c.deepest(p.thickness), i})
	}
	for i := range r.cuts {
		if c := &r.cuts[i]; r.through(c, r.least) {
			all = append(all, layer{c.region, r.out.thickness + 1, i})
		}
	}
	for i := range r.tabs {
		m := &r.tabs[i]
		at, ok := m.touch(ring)
		if !ok {
			continue
		}
		m.used = true
		here := place{p.Part, m.file, m.line}
		cut := func(layers []layer, a, b geom.Point) (length float64) {
			for _, s := range deepest(layers, func(list []float64, g rings) []float64 { return g.along(list, a, b) },
				0, 1) {
				if s.which >= 0 {
					length += float64((s.to - s.from) * a.To(b))
				}
			}
			return length
		}
		// A hair within the part, on the way from the far edge to the near one.
		inX, inY := at.a.X-(at.farA.X-at.a.X)/at.a.To(at.farA)*beside, at.a.Y-(at.farA.Y-at.a.Y)/at.a.To(at.farA)*beside
		within := [2]geom.Point{{X: inX, Y: inY}, {X: inX + at.b.X - at.a.X, Y: inY + at.b.Y - at.a.Y}}
		switch {
		case at.a.To(at.b) < r.report.Router.Tabs.Width.MM()-sameSize:
			r.fault("tab-mark", here, rebuild, "a mark for a tab at %s is %s wide; the job has %s",
				p.Part, r.text(at.a.To(at.b)), r.text(r.report.Router.Tabs.Width.MM()))
		case cut(own, within[0], within[1]) > proof.MinBridge/2:
			r.fault("tab-mark", here, rebuild,
				"a mark for a tab at %s stands at the mouth of what is cut there", p.Part)
		case cut(all, at.farA, at.farB) > proof.MinBridge/2:
			r.fault("tab-mark", here, "lay the parts further apart",
				"a mark for a tab at %s ends where it is cut through: the tab would hang at nothing", p.Part)
		default:
			count++
		}
	}
	return count
}

// ringOf is a part's outline counter-clockwise.
func (r *sheetReader) ringOf(p *placedPart) []geom.Point {
	ring := p.panel.outline.Ring()
	if geom.Polygon(ring...).Area() < 0 {
		return backward(ring)
	}
	return ring
}

func backward(ring []geom.Point) []geom.Point {
	out := make([]geom.Point, len(ring))
	for i, p := range ring {
		out[len(ring)-1-i] = p
	}
	return out
}

// strayTabs names marks for tabs that stand at no part, or twice.
func (r *sheetReader) strayTabs() {
	if len(r.parts) < len(r.laid.Placements) { // some could not be read
		return
	}
	for i, m := range r.tabs {
		if !m.used {
			r.fault("tab-mark", r.place(m.file, m.line), rebuild,
				"a mark for a tab at x %s, y %s stands at no straight edge of a part that tabs hold",
				r.text(m.box.Min.X), r.text(m.box.Min.Y))
		}
		for _, o := range r.tabs[:i] {
			if w, h := math.Min(m.box.Max.X, o.box.Max.X)-math.Max(m.box.Min.X, o.box.Min.X), math.Min(m.box.Max.Y,
				o.box.Max.Y)-math.Max(m.box.Min.Y, o.box.Min.Y); w > sameEdge && h > sameEdge {
				r.fault("tab-mark", r.place(m.file, m.line), rebuild,
					"a mark for a tab lies on that of line %d", o.line)
			}
		}
	}
}

// marksAlone says what the marks for tabs in a part's own drawing are worth: two at least,
// each at a straight edge of the outline.
func (s *sheet) marksAlone(outline geom.Loop) {
	list := s.tabMarks()
	if len(list) == 0 {
		return
	}
	if !s.onlyMarked() {
		s.fault("tab-mark", s.place(s.name, list[0].line), rebuild, "the job asks for no marks for tabs")
		return
	}
	ring := s.panelLoop(outline).Flatten(outlineChord)
	if geom.Polygon(ring...).Area() < 0 {
		ring = backward(ring)
	}
	count := 0
	for _, m := range list {
		switch at, ok := m.touch(ring); {
		case !ok:
			s.fault("tab-mark", s.place(s.name, m.line), rebuild,
				"a mark for a tab at x %s, y %s stands at no straight edge of the outline", s.text(m.box.Min.X),
				s.text(m.box.Min.Y))
		case at.a.To(at.b) < s.report.Router.Tabs.Width.MM()-sameSize:
			s.fault("tab-mark", s.place(s.name, m.line), rebuild,
				"a mark for a tab is %s wide; the job has %s", s.text(at.a.To(at.b)),
				s.text(s.report.Router.Tabs.Width.MM()))
		default:
			count++
		}
	}
	if count < proof.MinTied {
		s.fault("tab-mark", s.place(s.name, 0), rebuild, "%s for tabs; it takes %d to hold a part",
			words.Count(count, "mark", "marks"), proof.MinTied)
	}
}
