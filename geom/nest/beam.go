package nest

import (
	"cmp"
	"slices"
)

// move is a way that a piece may lie in an outline's valley.
type move struct {
	score, mark uint64
	from, way   int32
}

// run searches with a beam of so many outlines until it has spent its ration.
func (t *tight) run(beam int, most int64) ([]spot, bool) {
	t.trail = append(t.trail[:0], trace{})
	t.now = append(t.now[:0], outline{line: []ledge{{0, 0, t.w}}, left: slices.Clone(t.demand)})
	for range t.total {
		t.moves = t.moves[:0]
		for i := 0; i < len(t.now); i++ { // it grows by valleys left empty
			t.branch(i, 2*beam)
			if i%64 == 0 && (t.work > most || t.stop()) {
				t.cut = true
				return nil, false
			}
		}
		t.choose(beam)
		if len(t.next) == 0 {
			return nil, false
		}
		t.now, t.next = t.next, t.now
	}
	return t.replay(t.now[0].trace), true
}

// within reports whether there is room for one more, and notes where there is none.
func (t *tight) within(n, most int) bool {
	t.cut = t.cut || n >= most
	return n < most
}

// branch adds the moves from an outline.
func (t *tight) branch(i, most int) {
	o := &t.now[i]
	at, left, right := t.valley(o.line)
	l := o.line[at]
	t.work += int64(60 + len(t.ways))
	if empty := l.w * (min(left, right) - l.y); empty > 0 && empty <= t.spare-o.waste && t.within(len(t.now), most) {
		n := outline{left: slices.Clone(o.left), waste: o.waste + empty, score: o.score, mark: o.mark + lift(l.x, l.w, min(left, right)-l.y), trace: int32(len(t.trail))}
		n.line = rise(slices.Clone(o.line), at, min(left, right))
		n.score -= int64(float64(t.guide.waste) * float64(empty) / float64(t.w*t.h) * float64(t.total))
		t.trail = append(t.trail, trace{o.trace, -1})
		t.now = append(t.now, n)
		o = &t.now[i]
	}
	t.fits = t.fits[:0]
	for w, v := range t.ways {
		if l.y+v.across > t.h {
			break
		}
		if v.along <= l.w && o.left[v.kind] > 0 {
			t.fits = append(t.fits, int32(w))
		}
	}
	sums := t.unit > 0 && t.spare == o.waste
	if sums && !t.reach(o, l.w) {
		return
	}
	at0 := stir(uint64(l.x))
	for _, w := range t.fits {
		v := t.ways[w]
		if sums && !t.has(l.w-v.along) {
			continue
		}
		score := o.score + t.value[w]
		top := l.y + v.across
		if top == left || top == t.h {
			score += t.guide.ledge
		}
		if v.along < l.w {
			score -= t.guide.ledge
		} else if top == right && top < t.h {
			score += t.guide.ledge
		}
		mark := o.mark + (at0-stir(uint64(l.x+v.along)))*uint64(v.across) + t.name[v.kind]
		if t.guide.chance > 0 {
			score += int64(stir(mark^t.guide.lot)>>44) * t.guide.chance >> 20
		}
		t.moves = append(t.moves, move{uint64(score) ^ 1<<63, mark, int32(i), w})
	}
}

// lift is what a mark changes by when the line rises: a sum over its steps.
func lift(x, w, by int64) uint64 { return (stir(uint64(x)) - stir(uint64(x+w))) * uint64(by) }

// reach works out which sums of widths of pieces that fit on a ledge there are, and tells
// whether one fills it.
func (t *tight) reach(o *outline, wide int64) bool {
	words := int(wide/t.unit)/64 + 1
	s := t.sums[:words]
	clear(s)
	s[0] = 1
	for _, w := range t.fits {
		v := t.ways[w]
		n := int(v.along / t.unit)
		by, bit := n/64, n%64
		for range min(int64(o.left[v.kind]), wide/v.along) {
			for k := words - 1; k >= by; k-- {
				x := s[k-by] << bit
				if k > by {
					x |= s[k-by-1] >> (64 - bit)
				}
				s[k] |= x
			}
			t.work += int64(2*words + 4)
		}
	}
	return t.has(wide)
}

func (t *tight) has(w int64) bool { n := w / t.unit; return t.sums[n/64]>>(n%64)&1 != 0 }

// choose makes the next outlines by the best moves.
func (t *tight) choose(beam int) {
	t.work += int64(50 * len(t.moves))
	m := t.best(2 * beam)
	slices.SortFunc(m, func(a, b move) int {
		switch {
		case a.score != b.score:
			return cmp.Compare(b.score, a.score)
		case a.mark != b.mark:
			return cmp.Compare(a.mark, b.mark)
		case a.from != b.from:
			return int(a.from - b.from)
		}
		return int(a.way - b.way)
	})
	clear(t.seen)
	n := 0
	for _, v := range m {
		if t.seen[v.mark] {
			continue
		}
		if n == beam {
			t.cut = true
			break
		}
		t.seen[v.mark] = true
		if n == len(t.next) {
			if n < cap(t.next) {
				t.next = t.next[:n+1]
			} else {
				t.next = append(t.next, outline{})
			}
		}
		t.place(&t.next[n], &t.now[v.from], v)
		n++
	}
	t.next = t.next[:n]
}

// best throws away moves that are surely not among the best n.
func (t *tight) best(n int) []move {
	if len(t.moves) <= n {
		return t.moves
	}
	low, high := t.moves[0].score, t.moves[0].score
	for _, v := range t.moves {
		low, high = min(low, v.score), max(high, v.score)
	}
	var count [1024]int
	wide := (high-low)/uint64(len(count)) + 1
	for _, v := range t.moves {
		count[(v.score-low)/wide]++
	}
	from, sum := len(count), 0
	for sum < n {
		from--
		sum += count[from]
	}
	limit := low + uint64(from)*wide
	t.cut = t.cut || from > 0
	out := t.moves[:0]
	for _, v := range t.moves {
		if v.score >= limit {
			out = append(out, v)
		}
	}
	return out
}

// place makes the outline after a move.
func (t *tight) place(to, o *outline, m move) {
	v := t.ways[m.way]
	at, _, _ := t.valley(o.line)
	l := o.line[at]
	line := to.line[:0]
	line = append(line, o.line[:at]...)
	line = append(line, ledge{l.x, l.y + v.across, v.along})
	if v.along < l.w {
		line = append(line, ledge{l.x + v.along, l.y, l.w - v.along})
	}
	line = append(line, o.line[at+1:]...)
	to.line = level(line)
	to.left = append(to.left[:0], o.left...)
	to.left[v.kind]--
	to.waste, to.mark, to.trace = o.waste, m.mark, int32(len(t.trail))
	to.score = o.score + t.value[m.way] - t.guide.ledge*int64(t.ledges(to.line)-t.ledges(o.line))
	t.trail = append(t.trail, trace{o.trace, m.way})
	t.work += int64(400 + len(to.left)/2 + 4*len(to.line))
}
