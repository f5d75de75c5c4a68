package proof

import (
	"math"
	"math/bits"
	"slices"

	"drawerwright/geom"
)

// rect is wood in a section: its extent along two axes of the box.
type rect struct {
	low, high [3]float64 // the common axis is not used
	uncut     bool       // the inside face there is as it was
}

// pair is two pieces at right angles, with the sections of both at places along
// the axis that they have in common. The pieces may be moved along the other two
// axes afterward.
type pair struct {
	a, b   *Piece
	common int
	strips []strip
	// Where the pieces stood when the sections were taken.
	fromA, fromB geom.Vec3
	w            *work
}

// strip is a stretch of the common axis in which nothing begins or ends, with
// what lies on lines across both boards just inside its two ends and in its
// middle, and the sections that these make at the boards' thicknesses.
type strip struct {
	from, to float64
	a, b     [3]stretchOf
	even     bool // all three are the same
	sections [3]section
}

// section is the rectangles of both pieces, in the arena of the work: the first
// piece's from first to second, the other's from there to end.
type section struct{ first, second, end int }

// work is memory that many pairs use in turn. Lines and strips depend on where
// pieces stand and on what is cut, but not on thickness and depths: they are kept
// for the next box with the same pieces.
type work struct {
	lines  lines
	laid   []laid // by the order of asking
	pieces []Piece
	rects  []rect // an arena, for one box
	events []float64
	bars   []barred
}

// laid is the strips of one pair of pieces, by their indices.
type laid struct {
	a, b   int
	strips []strip
}

// begin makes ready for a box.
func (w *work) begin(pieces []Piece) {
	w.rects = w.rects[:0]
	if slices.EqualFunc(w.pieces, pieces, sameLines) {
		return
	}
	w.lines.reset()
	w.laid = w.laid[:0]
	w.pieces = append(w.pieces[:0], pieces...)
}

// sameLines reports whether two pieces stand in the same place and have the same
// shapes cut from the same faces.
func sameLines(p, q Piece) bool {
	same := func(s, t Shape) bool {
		return len(s.ring) == len(t.ring) && (len(s.ring) == 0 || &s.ring[0] == &t.ring[0])
	}
	return p.Placement == q.Placement && same(p.Board.Outline, q.Board.Outline) &&
		slices.EqualFunc(p.Board.Cuts, q.Board.Cuts,
			func(c, d Cut) bool { return c.Face == d.Face && c.Lean == d.Lean && same(c.Shape, d.Shape) })
}

// vicinity is how far, in millimeters, pieces may be moved after their sections
// were taken: what lies further than that from the other piece is passed over.
const vicinity = 20.0

// join makes a pair; ok is false for pieces that are not at right angles or
// nowhere near each other along their common axis.
func (w *work) join(a, b *Piece) (p pair, ok bool) {
	strips, ok := w.lay(a, b, false)
	if !ok {
		return pair{}, false
	}
	return w.show(a, b, strips), true
}

// joinWhole is join with all of both pieces, also where only one of them is: along
// their common axis one may be moved to there.
func (w *work) joinWhole(a, b *Piece) (p pair, ok bool) {
	strips, ok := w.lay(a, b, true)
	if !ok {
		return pair{}, false
	}
	return w.show(a, b, strips), true
}

// joinAgain is join for the n-th pair that is asked of a box, by the numbers of its pieces,
// which may have been laid out before.
func (w *work) joinAgain(n int, pieces []Piece, i, j int, whole bool) (p pair, ok bool) {
	a, b := &pieces[i], &pieces[j]
	if n < len(w.laid) && w.laid[n].a == i && w.laid[n].b == j {
		return w.show(a, b, w.laid[n].strips), true
	}
	strips, ok := w.lay(a, b, whole)
	if !ok {
		return pair{}, false
	}
	w.laid = append(w.laid[:min(n, len(w.laid))], laid{i, j, strips})
	return w.show(a, b, strips), true
}

// lay finds the strips of two pieces, where both of them are or, with whole, where
// any of them is.
func (w *work) lay(a, b *Piece, whole bool) (strips []strip, ok bool) {
	fa, fb := a.frame(), b.frame()
	if fa.axis[2] == fb.axis[2] {
		return nil, false
	}
	common := 3 - fa.axis[2] - fb.axis[2]
	a0, a1 := a.span(common)
	b0, b1 := b.span(common)
	from, to := max(a0, b0), min(a1, b1)
	if whole {
		from, to = min(a0, b0), max(a1, b1)
	}
	if to-from < penetration {
		return nil, false
	}
	w.events = append(w.events[:0], from, to)
	first, second := beside{a, fa, b, common}, beside{b, fb, a, common}
	w.markEvents(first, from, to)
	w.markEvents(second, from, to)
	slices.Sort(w.events)
	last := w.events[0]
	strips = make([]strip, 0, len(w.events)-1)
	for _, e := range w.events[1:] {
		if e-last > narrowStrip {
			strips = append(strips, w.strip(first, second, last, e))
			last = e
		}
	}
	return strips, true
}

// across gives the panel axes along the common axis and across it.
func (f frame) across(common int) (k, other int) {
	if f.axis[0] == common {
		return 0, 1
	}
	return 1, 0
}

// beside is a piece, as it lies, beside another one with which it has an axis in common.
type beside struct {
	*Piece
	frame
	other  *Piece
	common int
}

// markEvents notes where along the common axis something of a piece begins or ends
// that could be in the other's way.
func (w *work) markEvents(p beside, from, to float64) {
	f := &p.frame
	k, across := f.across(p.common)
	low, high := p.other.span(f.axis[across])
	place := func(panel int, v geom.Point) float64 {
		c := v.X
		if panel == 1 {
			c = v.Y
		}
		return f.from[f.axis[panel]] + float64(f.sign[panel]*c)
	}
	add := func(s Shape) {
		for i, v := range s.ring {
			u := s.ring[(i+1)%len(s.ring)] // it is the side between them that may be near
			if p, q := place(across, v), place(across, u); max(p, q) < low-vicinity || min(p, q) > high+vicinity {
				continue
			}
			for _, c := range [2]float64{place(k, v), place(k, u)} {
				if c > from && c < to {
					w.events = append(w.events, c)
				}
			}
		}
	}
	add(p.Board.Outline)
	for _, c := range p.Board.Cuts {
		add(c.Shape)
	}
}

// strip lays one out.
func (w *work) strip(a, b beside, from, to float64) strip {
	s := strip{from: from, to: to}
	take := func(i int) { s.a[i], s.b[i] = w.line(a, s.at(i)), w.line(b, s.at(i)) }
	take(0)
	take(2)
	if s.even = w.lines.alike(&a.Board, s.a[0], s.a[2]) && w.lines.alike(&b.Board, s.b[0], s.b[2]); !s.even {
		take(1)
	}
	return s
}

// lineInset is how far inside the ends of a strip, of its length, its first and last lines are.
const lineInset = 1e-3

// at is where the first, the middle or the last line of a strip is.
func (s *strip) at(line int) float64 {
	inset := float64((s.to - s.from) * lineInset)
	return [3]float64{s.from + inset, (s.from + s.to) / 2, s.to - inset}[line]
}

// line finds the runs of a piece at a place along the common axis.
func (w *work) line(p beside, at float64) stretchOf {
	f := &p.frame
	k, across := f.across(p.common)
	axis := f.axis[across]
	low, high := p.other.span(axis)
	low = float64((low - vicinity - f.from[axis]) * f.sign[across])
	high = float64((high + vicinity - f.from[axis]) * f.sign[across])
	return w.lines.along(&p.Board, k, (at-f.from[p.common])*f.sign[k], min(low, high), max(low, high))
}

// show makes the sections of two pieces as thick and as deeply cut as they are.
func (w *work) show(a, b *Piece, strips []strip) pair {
	fa, fb := a.frame(), b.frame()
	p := pair{a: a, b: b, common: 3 - fa.axis[2] - fb.axis[2], strips: strips, w: w,
		fromA: a.Placement.Origin, fromB: b.Placement.Origin}
	for i := range strips {
		s := &strips[i]
		for k := range s.sections {
			if s.even && k > 0 {
				s.sections[k] = s.sections[0]
				continue
			}
			t := section{first: len(w.rects)}
			w.rectangles(a, fa, p.common, s.at(k), s.a[k])
			t.second = len(w.rects)
			w.rectangles(b, fb, p.common, s.at(k), s.b[k])
			t.end = len(w.rects)
			s.sections[k] = t
		}
	}
	return p
}

// rectangles appends the wood of a piece on a line at a place along the common axis.
func (w *work) rectangles(p *Piece, f frame, common int, at float64, runs stretchOf) {
	k, across := f.across(common)
	y := (at - f.from[common]) * f.sign[k]
	board := &p.Board
	n := words(board)
	var last rect
	first := len(w.rects)
	for _, r := range w.lines.runs[runs.first:runs.end] {
		low, high, uncut := 0.0, board.Thickness, true
		for i, word := range w.lines.sets[r.set : r.set+n] {
			for ; word != 0; word &= word - 1 {
				c := &board.Cuts[i*64+bits.TrailingZeros64(word)]
				if c.Lean != 0 && k == 0 { // what leans along the line counts as wood
					continue
				}
				if c.Face == geom.Outside {
					low = max(low, c.depthAt(y))
				} else {
					high, uncut = min(high, board.Thickness-c.depthAt(y)), false
				}
			}
		}
		if high-low < sliver {
			continue
		}
		q := rect{uncut: uncut}
		q.set(f, across, r.from, r.to)
		q.set(f, 2, low, high)
		if len(w.rects) > first && last.joins(q, f.axis[across], f.axis[2]) {
			last = last.with(q, f.axis[across])
			w.rects[len(w.rects)-1] = last
			continue
		}
		last = q
		w.rects = append(w.rects, q)
	}
}

// set places an extent of a panel in the box.
func (q *rect) set(f frame, panel int, from, to float64) {
	axis := f.axis[panel]
	if f.sign[panel] < 0 {
		from, to = -to, -from
	}
	q.low[axis], q.high[axis] = f.from[axis]+from, f.from[axis]+to
}

// joins reports whether the wood goes on in another rectangle as it is in this one.
func (q rect) joins(r rect, along, thick int) bool {
	return q.uncut == r.uncut && q.low[thick] == r.low[thick] && q.high[thick] == r.high[thick] &&
		(q.high[along] >= r.low[along]-sliver && q.low[along] <= r.high[along]+sliver)
}

func (q rect) with(r rect, along int) rect {
	q.low[along], q.high[along] = min(q.low[along], r.low[along]), max(q.high[along], r.high[along])
	return q
}

const (
	// penetration is how far, in millimeters, one piece must be in another to be
	// in its way.
	penetration = 1e-3
	// narrowStrip is the width, in millimeters, of strips that are left out: what
	// begins in one counts from the strip's beginning, so that a clearance comes out
	// wrong by as much at either end.
	narrowStrip = sliver
)

// moved is how far b has come along an axis, as a sees it, since the sections
// were taken.
func (p *pair) moved(axis int) float64 {
	return component(p.b.Placement.Origin, axis) - component(p.fromB,
		axis) - component(p.a.Placement.Origin, axis) + component(p.fromA, axis)
}

// barred is an open range of offsets at which b would be in a.
type barred struct {
	low, high float64
	shoulder  bool    // it is a's uncut inside face that is in the way
	at        float64 // where along the common axis
}

// barring lists the offsets of b along an axis, from where the pieces stand now, at
// which it would be in a. With pulled, a is taken that much further along the
// other axis of the sections than it stands. The list is used up by the next call.
func (p *pair) barring(axis int, pulled float64) []barred {
	third := 3 - axis - p.common
	along, off := p.moved(axis), p.moved(third)-pulled
	list := p.w.bars[:0]
	for i := range p.strips {
		s := &p.strips[i]
		if s.to-s.from < penetration {
			continue
		}
		for k, t := range s.sections {
			if k > 0 && s.even || k == 1 { // what moves evenly is furthest at an end
				continue
			}
			for _, a := range p.w.rects[t.first:t.second] {
				for _, b := range p.w.rects[t.second:t.end] {
					if min(a.high[third], b.high[third]+off)-max(a.low[third], b.low[third]+off) > penetration {
						low, high := a.low[axis]-b.high[axis]-along, a.high[axis]-b.low[axis]-along
						list = append(list, barred{low, high, a.uncut, (s.from + s.to) / 2})
					}
				}
			}
		}
	}
	p.w.bars = list
	return list
}

// gap is a closed range of offsets at which nothing is in the way; its width can
// be a little below 0, where the fit is that tight.
type gap struct{ low, high float64 }

// anywhere is where nothing is in the way at all.
var anywhere = gap{math.Inf(-1), math.Inf(1)}

func (g gap) width() float64 { return g.high - g.low }

func (g gap) and(h gap) gap { return gap{math.Max(g.low, h.low), math.Min(g.high, h.high)} }

// nearest is the offset in it that is nearest to one.
func (g gap) nearest(at float64) float64 { return math.Max(g.low, math.Min(at, g.high)) }

// overlap is the volume in both pieces as they stand, in cubic millimeters. Between
// the ends of a strip rectangles move evenly, so that Simpson's rule is exact but
// where two of them pass each other.
func (p *pair) overlap() float64 {
	sum := 0.0
	for i := range p.strips {
		s := &p.strips[i]
		first := p.area(s.sections[0])
		if s.even {
			sum += float64((s.to - s.from) * first)
			continue
		}
		sum += float64((s.to - s.from) * (first + float64(4*p.area(s.sections[1])) + p.area(s.sections[2])) / 6)
	}
	return sum
}

func (p *pair) area(t section) float64 {
	var off [3]float64
	for axis := range off {
		off[axis] = p.moved(axis)
	}
	sum := 0.0
	for _, a := range p.w.rects[t.first:t.second] {
		for _, b := range p.w.rects[t.second:t.end] {
			area := 1.0
			for axis := range 3 {
				if axis != p.common {
					area *= max(0, min(a.high[axis], b.high[axis]+off[axis])-max(a.low[axis], b.low[axis]+off[axis]))
				}
			}
			sum += float64(area)
		}
	}
	return sum
}
