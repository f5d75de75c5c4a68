package nest

import (
	"cmp"
	"math"
	"slices"
)

// tight looks for a layout of all pieces on one sheet that they nearly fill: a beam
// search over outlines, which are sheets filled from below up to a line. The next piece
// goes into the left corner of the narrowest valley of a line; of all outlines with so
// many pieces the most promising go on. What must waste more than there is to spare is
// dropped.
type tight struct {
	w, h   int64
	flip   bool      // filled from the left: x is y, and y is x
	ways   []variant // in the order of their height
	demand []uint16
	total  int
	spare  int64 // area that may be wasted
	unit   int64 // what all widths are multiples of; 0 where their sums are not looked at
	guide  guide
	value  []int64  // of each way
	name   []uint64 // of each kind
	work   int64
	stop   func() bool
	cut    bool // something was left out for the beam alone

	now, next []outline
	moves     []move
	sums      []uint64
	fits      []int32 // ways that fit into the valley
	seen      map[uint64]bool
	trail     []trace
}

// guide is what makes an outline promising, in thousandths of a mean piece's value.
type guide struct {
	root, mid, area int64 // for pieces by the root of their area, its third power, and the area: the large ones first
	ledge           int64 // against each ledge
	waste           int64 // against what is wasted
	chance          int64
	lot             uint64 // that chance is drawn by
}

// outline is a sheet filled up to a line.
type outline struct {
	line  []ledge
	left  []uint16 // of each kind
	waste int64
	score int64
	mark  uint64 // the same for the same line and pieces left
	trace int32
}

// trace is a step to an outline: a way to lie, or -1 where a valley is left empty.
type trace struct{ from, way int32 }

// move is a way that a piece may lie in an outline's valley.
type move struct {
	score, mark uint64
	from, way   int32
}

// mostSums are the widest valleys whose sums of widths are looked at, in units.
const mostSums = 4096

func newTight(kinds []kind, demand []int, z size, flip bool, g guide) *tight {
	t := &tight{w: z.w, h: z.h, guide: g, demand: make([]uint16, len(kinds)), seen: make(map[uint64]bool)}
	if flip {
		t.w, t.h = t.h, t.w
	}
	t.flip, t.spare, t.unit = flip, t.w*t.h, t.w
	add := func(i int, turned bool, x, y int64) {
		if flip {
			x, y = y, x
		}
		if demand[i] > 0 && x <= t.w && y <= t.h {
			t.ways = append(t.ways, variant{kind: i, turned: turned, along: x, across: y})
			t.unit = divisor(t.unit, x)
		}
	}
	for i, k := range kinds {
		n := demand[i]
		t.demand[i] = uint16(n)
		t.total += n
		t.spare -= int64(n) * k.w * k.h
		add(i, false, k.w, k.h)
		if k.turn && k.w != k.h {
			add(i, true, k.h, k.w)
		}
	}
	slices.SortFunc(t.ways, func(a, b variant) int {
		return cmp.Or(cmp.Compare(a.across, b.across), cmp.Compare(a.along, b.along))
	})
	if t.w/t.unit > mostSums {
		t.unit = 0
	}
	t.sums = make([]uint64, mostSums/64+1)
	t.name = make([]uint64, len(kinds))
	var sum [3]float64
	for _, v := range t.ways {
		// By size, so that the order in which pieces were given is nothing to go by.
		t.name[v.kind] += stir(stir(uint64(v.along)) + uint64(v.across))
	}
	grades := func(k kind) [3]float64 {
		r := math.Sqrt(float64(k.w) / float64(z.w) * float64(k.h) / float64(z.h))
		return [3]float64{r, r * math.Sqrt(r), r * r}
	}
	for i, k := range kinds {
		for j, v := range grades(k) {
			sum[j] += float64(v * float64(demand[i]))
		}
	}
	for _, v := range t.ways {
		s := int64(0)
		for j, q := range grades(kinds[v.kind]) {
			s += int64(q / sum[j] * float64(t.total) * float64([3]int64{g.root, g.mid, g.area}[j]))
		}
		t.value = append(t.value, s)
	}
	return t
}

func divisor(a, b int64) int64 {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}

// stir is the finish of SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, 2014; from memory).
func stir(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
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

// within tells whether there is room for one more, and notes where there is none.
func (t *tight) within(n, most int) bool {
	t.cut = t.cut || n >= most
	return n < most
}

// valley is the narrowest ledge between higher ones, and how high these are.
func (t *tight) valley(line []ledge) (at int, left, right int64) {
	at = -1
	for i, l := range line {
		a, b := t.h, t.h
		if i > 0 {
			a = line[i-1].y
		}
		if i+1 < len(line) {
			b = line[i+1].y
		}
		if l.y == t.h || a < l.y || b < l.y || at >= 0 && l.w >= line[at].w {
			continue
		}
		at, left, right = i, a, b
	}
	return at, left, right
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

// ledges are those that are not at the top.
func (t *tight) ledges(line []ledge) (n int) {
	for _, l := range line {
		if l.y < t.h {
			n++
		}
	}
	return n
}

// replay sets the pieces of a trail.
func (t *tight) replay(end int32) []spot {
	var steps []int32
	for i := end; i > 0; i = t.trail[i].from {
		steps = append(steps, t.trail[i].way)
	}
	slices.Reverse(steps)
	line := []ledge{{0, 0, t.w}}
	var out []spot
	for _, w := range steps {
		at, left, right := t.valley(line)
		if w < 0 {
			line = rise(line, at, min(left, right))
			continue
		}
		l, v := line[at], t.ways[w]
		p := spot{kind: v.kind, x: l.x, y: l.y, turned: v.turned}
		if t.flip {
			p.x, p.y = p.y, p.x
		}
		out = append(out, p)
		line[at] = ledge{l.x, l.y + v.across, v.along}
		if v.along < l.w {
			line = slices.Insert(line, at+1, ledge{l.x + v.along, l.y, l.w - v.along})
		}
		line = level(line)
	}
	return out
}
