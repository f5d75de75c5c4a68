package brep

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
)

// alike is the distance, in millimeters, below which two sides lie on one line, or a corner
// lies on an arc: far over the rounding of a job's lengths, far under the grid of solids.
const alike = 1e-6

// side is a straight or round side of one of a panel's loops.
type side struct {
	a, b   geom.Point
	arc    geom.Arc
	center geom.Point
	radius float64 // 0 where it is straight
	sweep  float64 // above 0 counter-clockwise
	first  int     // the first of all sides on the same line, itself where it is round
}

// sides are those of a panel.
type sides struct {
	list    []side
	corners []geom.Point
	grid    float64 // of its solid, in mm
}

func sidesOf(p geom.Panel) *sides {
	s := &sides{}
	box := p.Outline.Bounds()
	for _, l := range loopsOf(p) {
		box = box.Union(l.Bounds())
		for i, v := range l {
			s.corners = append(s.corners, v.Point)
			if v.To(l.Next(i).Point) > alike {
				s.list = append(s.list, sideOf(l, i))
			}
		}
	}
	s.grid = geom.FineGrid(max(-box.Min.X, box.Max.X, -box.Min.Y, box.Max.Y))
	for i := range s.list {
		s.list[i].first = s.firstOn(i)
	}
	return s
}

// loopsOf are all loops of a panel.
func loopsOf(p geom.Panel) []geom.Loop {
	list := append([]geom.Loop{p.Outline}, p.Holes...)
	for _, k := range p.Pockets {
		list = append(list, k.Outline)
	}
	return list
}

func sideOf(l geom.Loop, i int) side {
	out := side{a: l[i].Point, b: l.Next(i).Point}
	if l[i].Bulge == 0 {
		return out
	}
	out.arc = l.Arc(i)
	sagitta := math.Abs(l[i].Bulge) * out.a.To(out.b) / 2
	if sagitta > alike {
		out.center, out.radius, out.sweep = out.arc.Center(), out.arc.Radius(), out.arc.Sweep()
	}
	return out
}

// firstOn is the first side on the line of side i.
func (s *sides) firstOn(i int) int {
	one := s.list[i]
	if one.radius > 0 {
		return i
	}
	for j, other := range s.list[:i] {
		if other.radius == 0 && max(other.off(one.a), other.off(one.b)) < alike {
			return j
		}
	}
	return i
}

// left is how far a place lies to the left of a straight side, or beyond the circle of a
// round one, in mm, and in which direction that grows.
func (s side) left(p geom.Point) (by float64, to geom.Point) {
	if s.radius > 0 {
		out := p.Sub(s.center)
		return out.Norm() - s.radius, out.Unit()
	}
	_, by = geom.Beside(p, s.a, s.b)
	return by, s.b.Sub(s.a).Unit().Left()
}

// off is how far a place is from the line or circle of a side.
func (s side) off(p geom.Point) float64 {
	by, _ := s.left(p)
	return math.Abs(by)
}

// along is the share of a side that has been gone at a place: below 0 before its first end,
// above 1 behind its last.
func (s side) along(p geom.Point) float64 {
	if s.radius == 0 {
		return geom.Foot(p, s.a, s.b)
	}
	// From the middle of the arc, so that what lies beside either end stays beside it.
	mid := s.arc.At(0.5).Sub(s.center)
	turn := mid.Turn(p.Sub(s.center))
	return 0.5 + turn/s.sweep
}

// length of a side in mm.
func (s side) length() float64 {
	if s.radius > 0 {
		return math.Abs(s.radius * s.sweep)
	}
	return s.a.To(s.b)
}

// has reports whether a place lies beside a side, at most so far beyond its ends.
func (s side) has(p geom.Point, beyond float64) bool {
	t, more := s.along(p), beyond/s.length()
	return t >= -more && t <= 1+more
}

// flat is a panel with chords in the place of arcs. Arcs on one circle get the same chords
// wherever they run together, so that nothing is left between them: their corners are those
// of all loops, and places about the circle that do not depend on where an arc begins.
func (s *sides) flat(p geom.Panel) geom.Panel {
	out := geom.Panel{Outline: s.chorded(p.Outline), Thickness: p.Thickness}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, s.chorded(h))
	}
	for _, k := range p.Pockets {
		k.Outline = s.chorded(k.Outline)
		out.Pockets = append(out.Pockets, k)
	}
	return out
}

// chordSteps is how far chords are from their arcs at most, in steps of the grid: enough to
// tell an arc from a side that touches it.
const chordSteps = 4

// maxChords bounds those of a whole circle.
const maxChords = 8192

func (s *sides) chorded(l geom.Loop) geom.Loop {
	var out geom.Loop
	for i, v := range l {
		out = append(out, geom.Vertex{Point: v.Point})
		if one := sideOf(l, i); one.radius > 0 {
			for _, p := range s.chords(one) {
				out = append(out, geom.Vertex{Point: p})
			}
		}
	}
	return out
}

// chords are the places along an arc between its ends.
func (s *sides) chords(one side) []geom.Point {
	type place struct {
		t float64
		p geom.Point
	}
	near := 2 * chordSteps * s.grid
	ends := []geom.Point{one.a, one.b}
	var list []place
	add := func(p geom.Point) { list = append(list, place{one.along(p), p}) }
	for _, c := range s.corners {
		if one.off(c) < alike && one.has(c, -near) {
			ends = append(ends, c)
			add(c)
		}
	}
	radius := math.Round(one.radius/alike) * alike
	step := 2 * math.Acos(math.Max(0, 1-float64(chordSteps*s.grid/radius)))
	n := min(maxChords, max(8, int(math.Ceil(2*math.Pi/step))))
	for k := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		p := geom.Point{X: one.center.X + float64(one.radius*cos), Y: one.center.Y + float64(one.radius*sin)}
		far := func(end geom.Point) bool { return end.To(p) > near }
		if one.has(p, 0) && !slices.ContainsFunc(ends, func(e geom.Point) bool { return !far(e) }) {
			add(p)
		}
	}
	slices.SortFunc(list, func(a, b place) int { return cmp.Compare(a.t, b.t) })
	var out []geom.Point
	for _, at := range list {
		out = append(out, at.p)
	}
	return out
}

// of is the side on which a piece of wall from u to v lies.
func (s *sides) of(u, v geom.Point) (best int, ok bool) {
	least := math.Inf(1)
	for i, one := range s.list {
		off := max(one.off(u), one.off(v))
		if off > 2*chordSteps*s.grid || off >= least-s.grid {
			continue
		}
		if one.has(u, 4*s.grid) && one.has(v, 4*s.grid) {
			best, least = i, off
		}
	}
	if math.IsInf(least, 1) {
		return 0, false
	}
	return s.list[best].first, true
}

// corner is the place for which a corner of the solid stands: that of a loop's corner, or
// where two of the sides that meet there cross.
func (s *sides) corner(at geom.Point, meet []int) geom.Point {
	for _, c := range s.corners {
		if math.Abs(c.X-at.X) <= s.grid && math.Abs(c.Y-at.Y) <= s.grid {
			return c
		}
	}
	for i, a := range meet {
		for _, b := range meet[:i] {
			if p, ok := s.crossing(a, b, at); ok {
				return p
			}
		}
	}
	return at
}

// shallow is the sine of the angle below which two sides are no longer said to cross.
const shallow = 1e-3

// crossing is where two sides cross beside a place, by Newton's method.
func (s *sides) crossing(i, j int, at geom.Point) (geom.Point, bool) {
	p := at
	for range 10 {
		f, a := s.list[i].left(p)
		g, b := s.list[j].left(p)
		det := a.Cross(b)
		if !(math.Abs(det) > shallow) {
			return at, false
		}
		p = geom.Point{X: p.X - (float64(f*b.Y)-float64(g*a.Y))/det, Y: p.Y - (float64(g*a.X)-float64(f*b.X))/det}
	}
	return p, p.To(at) <= chordSteps*s.grid/shallow
}
