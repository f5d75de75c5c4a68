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

// maxSums are the widest valleys whose sums of widths are looked at, in units.
const maxSums = 4096

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
	if t.w/t.unit > maxSums {
		t.unit = 0
	}
	t.sums = make([]uint64, maxSums/64+1)
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
