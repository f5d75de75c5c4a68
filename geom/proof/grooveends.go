package proof

import "math"

// slab is wood over a stretch of the common axis: of one extent at its beginning and
// of another at its end, between which it changes evenly.
type slab struct {
	from, to float64
	ends     [2]rect
}

// slabs gives a pair's wood, of the first piece and of the other.
func (p *pair) slabs() (of [2][]slab) {
	for i := range p.strips {
		s := &p.strips[i]
		if s.to-s.from < penetration {
			continue
		}
		for k := range of {
			first, last := p.shown(s.sections[0], k), p.shown(s.sections[2], k)
			if s.even || len(first) != len(last) { // of what begins or ends within a chord, the middle
				first = p.shown(s.sections[1], k)
				last = first
			}
			for n, r := range first {
				of[k] = p.goesOn(of[k], slab{s.from, s.to, [2]rect{r, last[n]}})
			}
		}
	}
	return of
}

// shown is the wood of one of both pieces in a section.
func (p *pair) shown(t section, piece int) []rect {
	if piece == 0 {
		return p.w.rects[t.first:t.second]
	}
	return p.w.rects[t.second:t.end]
}

// goesOn adds a slab to a list, or makes one longer that goes on in it.
func (p *pair) goesOn(list []slab, s slab) []slab {
	for i := len(list) - 1; i >= 0; i-- {
		l := &list[i]
		if l.to < s.from-narrowStrip {
			continue
		}
		if p.alike(l.ends[0], l.ends[1]) && p.alike(l.ends[1], s.ends[0]) && p.alike(s.ends[0], s.ends[1]) {
			l.to = s.to
			return list
		}
	}
	return append(list, s)
}

// alike reports whether two rectangles are the same across the common axis.
func (p *pair) alike(a, b rect) bool {
	for axis := range 3 {
		if axis != p.common && !(level(a.low[axis], b.low[axis]) && level(a.high[axis], b.high[axis])) {
			return false
		}
	}
	return true
}

func level(a, b float64) bool { return a-b < sliver && b-a < sliver }

// barringAlong lists the offsets of b along the common axis, from where the pieces
// stand now, at which it would be in a. With off, b is taken that much further along
// the other axes than it stands.
func (p *pair) barringAlong(off [3]float64) []barred {
	for axis := range off {
		off[axis] += p.moved(axis)
	}
	var list []barred
	of := p.slabs()
	for _, a := range of[0] {
		for _, b := range of[1] {
			a0, a1, b0, b1 := a.from, a.to, b.from, b.to
			meet := true
			switch {
			case !p.alike(a.ends[0], a.ends[1]) && !p.alike(b.ends[0], b.ends[1]):
				if one, meet := p.leaning(a, b, off); meet {
					list = append(list, one)
				}
				continue
			case p.alike(a.ends[0], a.ends[1]):
				var t [2]float64
				t, meet = p.stretch(b, a.widest(), off, -1)
				b0, b1 = b.from+float64(t[0]*(b.to-b.from)), b.from+float64(t[1]*(b.to-b.from))
			default:
				var t [2]float64
				t, meet = p.stretch(a, b.widest(), off, 1)
				a0, a1 = a.from+float64(t[0]*(a.to-a.from)), a.from+float64(t[1]*(a.to-a.from))
			}
			if meet {
				list = append(list, barred{low: a0 - b1 - off[p.common], high: a1 - b0 - off[p.common]})
			}
		}
	}
	return list
}

// leaning are the offsets at which two slabs bar each other that both change, as the flanks of a tail and a
// pin do: of the two axes across, one on which they change, and one on which they count as wide as they get.
func (p *pair) leaning(a, b slab, off [3]float64) (one barred, meet bool) {
	one.low, one.high = math.Inf(1), math.Inf(-1)
	a, b = a.whole(), b.whole()
	wide, slab := a.widest(), b.widest()
	for axis := range 3 {
		if axis == p.common {
			continue
		}
		low, high := max(wide.low[axis], slab.low[axis]+off[axis]), min(wide.high[axis], slab.high[axis]+off[axis])
		if high-low <= penetration {
			return one, false
		}
	}
	// Each is convex: it comes nearest to the other, either way, at a level of one of the corners.
	axis := axisY
	if p.common == axisY {
		axis = axisZ
	}
	low := max(wide.low[axis], slab.low[axis]+off[axis]) + penetration/2
	high := min(wide.high[axis], slab.high[axis]+off[axis]) - penetration/2
	levels := []float64{low, high}
	for k := range 2 {
		levels = append(levels, a.ends[k].low[axis], a.ends[k].high[axis],
			b.ends[k].low[axis]+off[axis], b.ends[k].high[axis]+off[axis])
	}
	for _, at := range levels {
		at = max(low, min(high, at))
		a0, a1, ok := a.at(axis, at)
		b0, b1, also := b.at(axis, at-off[axis])
		if ok && also {
			one.low, one.high = min(one.low, a0-b1-off[p.common]), max(one.high, a1-b0-off[p.common])
			meet = true
		}
	}
	return one, meet
}

// whole is a slab with its extents at its very ends, not at the lines just inside them.
func (s slab) whole() slab {
	out := s
	for axis := range 3 {
		low, high := s.ends[1].low[axis]-s.ends[0].low[axis], s.ends[1].high[axis]-s.ends[0].high[axis]
		const beyond = lineInset / (1 - 2*lineInset)
		out.ends[0].low[axis] -= float64(low * beyond)
		out.ends[0].high[axis] -= float64(high * beyond)
		out.ends[1].low[axis] += float64(low * beyond)
		out.ends[1].high[axis] += float64(high * beyond)
	}
	return out
}

// at is where along the common axis a slab has wood at a level of another axis.
func (s slab) at(axis int, level float64) (from, to float64, ok bool) {
	t := [2]float64{0, 1}
	for _, side := range [2][2]float64{{s.ends[0].high[axis] - level, s.ends[1].high[axis] - level},
		{level - s.ends[0].low[axis], level - s.ends[1].low[axis]}} {
		if side[0] < 0 && side[1] < 0 {
			return 0, 0, false
		}
		if cross := side[0] / (side[0] - side[1]); side[0] < 0 {
			t[0] = max(t[0], cross)
		} else if side[1] < 0 {
			t[1] = min(t[1], cross)
		}
	}
	return s.from + float64(t[0]*(s.to-s.from)), s.from + float64(t[1]*(s.to-s.from)), t[0] <= t[1]
}

// widest is the box about both ends of a slab.
func (s slab) widest() rect {
	r := s.ends[0]
	for axis := range 3 {
		r.low[axis], r.high[axis] = min(r.low[axis], s.ends[1].low[axis]), max(r.high[axis], s.ends[1].high[axis])
	}
	return r
}

// stretch is the part of a slab, of its length, in which wood would be in it that is
// taken that much further across it, off times sign; ok is false where there is none.
func (p *pair) stretch(s slab, r rect, off [3]float64, sign float64) (t [2]float64, ok bool) {
	t = [2]float64{0, 1}
	// How deep each is in the other changes evenly, from one end to the other.
	narrow := func(first, last float64) bool {
		if first > penetration && last > penetration {
			return true
		}
		if first <= penetration && last <= penetration {
			return false
		}
		at := (penetration - first) / (last - first)
		if first > penetration {
			t[1] = min(t[1], at)
		} else {
			t[0] = max(t[0], at)
		}
		return true
	}
	for axis := range 3 {
		if axis == p.common {
			continue
		}
		low, high := r.low[axis]+float64(sign*off[axis]), r.high[axis]+float64(sign*off[axis])
		if high-low <= penetration || !narrow(s.ends[0].high[axis]-low, s.ends[1].high[axis]-low) || !narrow(high-s.ends[0].low[axis], high-s.ends[1].low[axis]) ||
			!narrow(s.ends[0].high[axis]-s.ends[0].low[axis], s.ends[1].high[axis]-s.ends[1].low[axis]) {
			return t, false
		}
	}
	return t, t[1] > t[0]
}

// ahead reports whether something is in b's way when it is moved toward higher
// places, from where it stands.
func ahead(list []barred) bool {
	for _, b := range list {
		if b.high > penetration {
			return true
		}
	}
	return false
}

// behind is ahead the other way.
func behind(list []barred) bool {
	for _, b := range list {
		if b.low < -penetration {
			return true
		}
	}
	return false
}
