package nest

import (
	"math/bits"
	"slices"
)

// maxTogether is how many pieces are proven to go on a sheet together, or not to; of more, a part of them is.
const maxTogether = 8

// maxOfGroups is how many kinds there may be in groups.
const maxOfGroups = 255

// group are up to maxTogether kinds in order, the first in the lowest byte, each one more than its index.
type group uint64

func (g group) size() int { return (bits.Len64(uint64(g)) + 7) / 8 }

// kind is one of its members.
func (g group) kind(i int) int { return int(g>>(8*i)&255) - 1 }

// with is the group and one more of a kind.
func (g group) with(kind int) group {
	one, at := group(kind+1), 0
	for at < 64 && g>>at&255 != 0 && g>>at&255 <= one {
		at += 8
	}
	low := group(1)<<at - 1
	return g&low | one<<at | g&^low<<8
}

// only are those of its members whose bits are set.
func (g group) only(members uint) (part group) {
	for at := 0; members != 0; members &= members - 1 {
		part |= g >> (8 * bits.TrailingZeros(members)) & 255 << at
		at += 8
	}
	return part
}

// groupOf are some kinds.
func groupOf(kinds ...int) (g group) {
	for _, k := range kinds {
		g = g.with(k)
	}
	return g
}

// answer is whether a group goes on a sheet.
type answer uint8

const (
	unknown answer = iota
	fits
	never
)

// extent is a rectangle's.
type extent struct{ w, h int64 }

// packing answers which groups of pieces go on a sheet of a size together. It keeps what it has found.
type packing struct {
	*task
	z      size
	apart  map[group][]extent // the least rectangles that come apart into a group
	found  map[group]answer
	coarse int   // bits that areas leave out of lengths, so that they do not overflow
	most   int   // pieces that are placed to find out whether a group goes on
	spent  int64 // steps so far
}

func newPacking(t *task, z size) *packing {
	return &packing{task: t, z: z, apart: make(map[group][]extent), found: make(map[group]answer), most: maxPlaced,
		coarse: max(0, bits.Len64(uint64(max(z.w, z.h)))-28)}
}

// leastOf are the least rectangles that come apart into a group by cuts from edge to edge, none larger than
// the sheet: of every two parts of the group, beside and above each other.
func (p *packing) leastOf(g group) []extent {
	if list, known := p.apart[g]; known {
		return list
	}
	list := make([]extent, 0, 4)
	if g.size() == 1 {
		for _, e := range p.kinds[g.kind(0)].ways() {
			list = p.keep(list, e)
		}
	}
	p.parts(g, func(a, b extent) bool {
		list = p.keep(list, extent{a.w + b.w, max(a.h, b.h)})
		list = p.keep(list, extent{max(a.w, b.w), a.h + b.h})
		return true
	})
	p.apart[g] = list
	return list
}

// parts goes through the rectangles of every two parts of a group for as long as it is told to; it is false where
// one of them goes on no sheet.
func (p *packing) parts(g group, each func(a, b extent) bool) bool {
	n := g.size()
	all := uint(1)<<n - 1
	for part := uint(1); part < all; part += 2 { // the one with the first member
		one, other := p.leastOf(g.only(part)), p.leastOf(g.only(all&^part))
		p.spent += 20 + 4*int64(len(one)*len(other))
		if (len(one) == 0 || len(other) == 0) && p.alwaysApart(n-1) {
			return false
		}
		for _, a := range one {
			for _, b := range other {
				if !each(a, b) {
					return true
				}
			}
		}
	}
	return true
}

// alwaysApart reports whether so many pieces on a sheet come apart by cuts from edge to edge: fewer than
// four always do, which can lie round a hole.
func (p *packing) alwaysApart(n int) bool { return n < 4 || p.rules.Method == Guillotine }

// keep adds a rectangle that goes on the sheet if no other is within it, in place of those it is within.
func (p *packing) keep(list []extent, e extent) []extent {
	if e.w > p.z.w || e.h > p.z.h {
		return list
	}
	for _, o := range list {
		if o.w <= e.w && o.h <= e.h {
			return list
		}
	}
	list = slices.DeleteFunc(list, func(o extent) bool { return e.w <= o.w && e.h <= o.h })
	return append(list, e)
}

// together answers whether a group goes on the sheet.
func (p *packing) together(g group) answer {
	n := g.size()
	if n == 1 {
		return fits // or the piece would be no kind
	}
	a, known := p.found[g]
	if known {
		return a
	}
	possible := p.parts(g, func(x, y extent) bool {
		if x.w+y.w <= p.z.w || x.h+y.h <= p.z.h {
			a = fits
		}
		return a != fits
	})
	switch {
	case a == fits:
	case !possible || p.alwaysApart(n):
		a = never
	default:
		a = p.aroundHoles(g)
	}
	if n > 3 { // of three it is found out as soon as it is looked up
		p.found[g] = a
	}
	return a
}

// aroundHoles answers whether a group that does not come apart goes on the sheet.
func (p *packing) aroundHoles(g group) answer {
	n := g.size()
	all := uint(1)<<n - 1
	for i := range n {
		if p.together(g.only(all&^(1<<i))) == never {
			return never
		}
	}
	return p.cornered(g)
}
