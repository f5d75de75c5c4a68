package proof

// slab is wood that is the same over a stretch of the common axis.
type slab struct {
	from, to float64
	rect
}

// slabs gives a pair's wood, of the first piece and of the other. A strip in which
// it changes counts as it is in its middle: of an arc that is a chord.
func (p *pair) slabs() (of [2][]slab) {
	for i := range p.strips {
		s := &p.strips[i]
		if s.to-s.from < penetration {
			continue
		}
		t := s.sections[1]
		for k, list := range [2][]rect{p.w.rects[t.first:t.second], p.w.rects[t.second:t.end]} {
			for _, r := range list {
				of[k] = p.goesOn(of[k], slab{s.from, s.to, r})
			}
		}
	}
	return of
}

// goesOn adds a slab to a list, or makes one longer that goes on in it.
func (p *pair) goesOn(list []slab, s slab) []slab {
	for i := len(list) - 1; i >= 0; i-- {
		l := &list[i]
		if l.to < s.from-narrowStrip {
			continue
		}
		same := true
		for axis := range 3 {
			if axis != p.common {
				same = same && level(l.low[axis], s.low[axis]) && level(l.high[axis], s.high[axis])
			}
		}
		if same {
			l.to = s.to
			return list
		}
	}
	return append(list, s)
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
			meet := true
			for axis := range 3 {
				if axis != p.common {
					meet = meet && min(a.high[axis], b.high[axis]+off[axis])-max(a.low[axis], b.low[axis]+off[axis]) > penetration
				}
			}
			if meet {
				list = append(list, barred{low: a.from - b.to - off[p.common], high: a.to - b.from - off[p.common]})
			}
		}
	}
	return list
}

// ahead tells whether something is in b's way when it is moved towards higher
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
