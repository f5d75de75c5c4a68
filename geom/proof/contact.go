package proof

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Piece is a board in its place in the box. Stand's directions run along the axes.
type Piece struct {
	Name  string
	Board Board
	Stand geom.Placement
}

// Axes of the box.
const (
	axisX = iota
	axisY
	axisZ
)

// axisOf is the axis that a direction runs along, and its sign.
func axisOf(v geom.Vec3) (axis int, sign float64) {
	switch {
	case math.Abs(v.X) > 0.5:
		return axisX, v.X
	case math.Abs(v.Y) > 0.5:
		return axisY, v.Y
	}
	return axisZ, v.Z
}

func component(v geom.Vec3, axis int) float64 { return [3]float64{v.X, v.Y, v.Z}[axis] }

func shifted(v geom.Vec3, axis int, by float64) geom.Vec3 {
	switch axis {
	case axisX:
		v.X += by
	case axisY:
		v.Y += by
	default:
		v.Z += by
	}
	return v
}

// frame is how a piece lies to the axes of the box.
type frame struct {
	axis [3]int     // of panel x, y, z
	sign [3]float64 // of each
	from [3]float64 // its origin, by axes of the box
}

func (p *Piece) frame() frame {
	var f frame
	f.axis[0], f.sign[0] = axisOf(p.Stand.X)
	f.axis[1], f.sign[1] = axisOf(p.Stand.Y)
	f.axis[2], f.sign[2] = axisOf(p.Stand.Normal())
	f.from = [3]float64{p.Stand.Origin.X, p.Stand.Origin.Y, p.Stand.Origin.Z}
	return f
}

// span is the piece's extent along an axis of the box.
func (p *Piece) span(axis int) (low, high float64) {
	f := p.frame()
	box := p.Board.Outline.box
	ends := [3][2]float64{{box.Min.X, box.Max.X}, {box.Min.Y, box.Max.Y}, {0, p.Board.Thickness}}
	for k := range 3 {
		if f.axis[k] == axis {
			a, b := f.from[axis]+float64(f.sign[k]*ends[k][0]), f.from[axis]+float64(f.sign[k]*ends[k][1])
			return math.Min(a, b), math.Max(a, b)
		}
	}
	return 0, 0
}

// reach is how far a piece stands in another along an axis, by their extents;
// below 0 by how much it falls short.
func (p *Piece) reach(into *Piece, axis int) float64 {
	p0, p1 := p.span(axis)
	q0, q1 := into.span(axis)
	return math.Min(p1, q1) - math.Max(p0, q0)
}

// rect is wood in a section: its extent along two axes of the box.
type rect struct {
	low, high [3]float64 // the common axis is not used
	uncut     bool       // the inside face there is as it was
}

// rects appends what a piece shows in the section at a place along an axis.
func (s *sections) rects(list []rect, p *Piece, f frame, common int, at float64, runs []run) ([]rect, []run) {
	k, other := 0, 1 // the panel axis that is common, and the one that is not
	if f.axis[0] != common {
		k, other = 1, 0
	}
	runs = s.along(&p.Board, runs[:0], k, (at-f.from[common])*f.sign[k])
	for _, r := range runs {
		var q rect
		set := func(panel int, a, b float64) {
			axis := f.axis[panel]
			a, b = f.from[axis]+float64(f.sign[panel]*a), f.from[axis]+float64(f.sign[panel]*b)
			q.low[axis], q.high[axis] = math.Min(a, b), math.Max(a, b)
		}
		set(other, r.from, r.to)
		set(2, r.low, r.high)
		q.uncut = r.uncut
		list = append(list, q)
	}
	return list, runs
}

// pair is two pieces at right angles, with the axis that they have in common.
type pair struct {
	a, b   *Piece
	common int
	fa, fb frame
	strips []strip
	*work
}

// strip is a stretch of the common axis in which nothing begins or ends.
type strip struct{ from, to float64 }

// work is memory that many pairs use in turn.
type work struct {
	sections
	ra, rb []rect
	runs   []run
	events []float64
}

// join makes a pair; ok is false for pieces that are not at right angles or
// nowhere near each other along their common axis.
func (w *work) join(a, b *Piece) (p pair, ok bool) {
	p = pair{a: a, b: b, fa: a.frame(), fb: b.frame(), work: w}
	if p.fa.axis[2] == p.fb.axis[2] {
		return p, false
	}
	p.common = 3 - p.fa.axis[2] - p.fb.axis[2]
	a0, a1 := a.span(p.common)
	b0, b1 := b.span(p.common)
	from, to := math.Max(a0, b0), math.Min(a1, b1)
	if to-from < penetration {
		return p, false
	}
	w.events = append(w.events[:0], from, to)
	for _, q := range []struct {
		piece *Piece
		f     frame
	}{{a, p.fa}, {b, p.fb}} {
		k := 0
		if q.f.axis[0] != p.common {
			k = 1
		}
		add := func(s Shape) {
			for _, v := range s.ring {
				c := v.X
				if k == 1 {
					c = v.Y
				}
				if c = q.f.from[p.common] + float64(q.f.sign[k]*c); c > from && c < to {
					w.events = append(w.events, c)
				}
			}
		}
		add(q.piece.Board.Outline)
		for _, c := range q.piece.Board.Cuts {
			add(c.Shape)
		}
	}
	slices.Sort(w.events)
	last := w.events[0]
	for _, e := range w.events[1:] {
		if e-last > narrowStrip {
			p.strips = append(p.strips, strip{last, e})
			last = e
		}
	}
	return p, true
}

const (
	// penetration is how far, in millimetres, one piece must be in another to be
	// in its way.
	penetration = 1e-3
	// narrowStrip is the width, in millimetres, of strips that are left out:
	// nothing that is penetration wide can hide in them.
	narrowStrip = 1e-5
)

// at gives the rectangles of both pieces in the section at a place.
func (p *pair) at(c float64) (a, b []rect) {
	p.ra, p.runs = p.rects(p.ra[:0], p.a, p.fa, p.common, c, p.runs)
	p.rb, p.runs = p.rects(p.rb[:0], p.b, p.fb, p.common, c, p.runs)
	return p.ra, p.rb
}

// ends are the places of a strip at which sections are taken: just inside it.
func (s strip) ends() [2]float64 {
	inset := (s.to - s.from) * 1e-3
	return [2]float64{s.from + inset, s.to - inset}
}

// barred is an open range of offsets at which b would be in a.
type barred struct {
	low, high float64
	shoulder  bool // it is a's uncut inside face that is in the way
}

// barring lists the offsets of b along an axis at which it would be in a.
func (p *pair) barring(axis int) []barred {
	third := 3 - axis - p.common
	var list []barred
	for _, s := range p.strips {
		if s.to-s.from < penetration {
			continue
		}
		for _, c := range s.ends() {
			ra, rb := p.at(c)
			for _, a := range ra {
				for _, b := range rb {
					if math.Min(a.high[third], b.high[third])-math.Max(a.low[third], b.low[third]) > penetration {
						list = append(list, barred{a.low[axis] - b.high[axis], a.high[axis] - b.low[axis], a.uncut})
					}
				}
			}
		}
	}
	return list
}

// gap is a closed range of offsets at which nothing is in the way; its width can
// be a little below 0, where the fit is that tight.
type gap struct{ low, high float64 }

func (g gap) width() float64 { return g.high - g.low }

// overlap is the volume in both pieces, in cubic millimetres. Between the ends of
// a strip rectangles move evenly, so that Simpson's rule is exact.
func (p *pair) overlap() float64 {
	sum := 0.0
	for _, s := range p.strips {
		e := s.ends()
		first, middle, last := p.area(e[0]), p.area((e[0]+e[1])/2), p.area(e[1])
		sum += (s.to - s.from) * (first + float64(4*middle) + last) / 6
	}
	return sum
}

func (p *pair) area(c float64) float64 {
	ra, rb := p.at(c)
	sum := 0.0
	for _, a := range ra {
		for _, b := range rb {
			area := 1.0
			for axis := range 3 {
				if axis != p.common {
					area *= math.Max(0, math.Min(a.high[axis], b.high[axis])-math.Max(a.low[axis], b.low[axis]))
				}
			}
			sum += area
		}
	}
	return sum
}
