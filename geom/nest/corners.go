package nest

// maxPlaced is how many pieces are placed to find out whether a group goes on a sheet.
const maxPlaced = 3000

// corners looks for a place for each of some pieces, one after the other in a corner above and beside what
// lies already: any layout can be made so (S. Martello, D. Pisinger, D. Vigo, 2000).
type corners struct {
	*packing
	members []kind
	area    int64 // of those that have no place yet
	ration  int
}

// cornered answers whether a group goes on the sheet, if it finds out soon.
func (p *packing) cornered(g group) answer {
	c := corners{packing: p, ration: p.most}
	for i := range g.size() {
		k := p.kinds[g.kind(i)]
		c.members = append(c.members, k)
		c.area += p.low(k)
	}
	found := c.place(uint(1)<<g.size()-1, staircase{})
	p.spent += 30 * int64(p.most-c.ration)
	switch {
	case found:
		return fits
	case c.ration > 0:
		return never
	}
	return unknown
}

// low is the area of a kind, or less.
func (p *packing) low(k kind) int64 { return (k.w >> p.coarse) * (k.h >> p.coarse) }

// high is the area of a rectangle, or more.
func (p *packing) high(w, h int64) int64 {
	up := int64(1)<<p.coarse - 1
	return ((w + up) >> p.coarse) * ((h + up) >> p.coarse)
}

// staircase is the edge of what lies already, and of what is below and left of it: steps from the top down,
// each with its right end and its top.
type staircase struct {
	step [maxTogether]extent
	n    int
}

// with is the staircase with one more rectangle, that ends beyond it.
func (s staircase) with(end extent) (out staircase) {
	put := false
	for _, e := range s.step[:s.n] {
		if e.w <= end.w && e.h <= end.h {
			continue
		}
		if !put && e.h < end.h {
			out.step[out.n], out.n, put = end, out.n+1, true
		}
		out.step[out.n] = e
		out.n++
	}
	if !put {
		out.step[out.n] = end
		out.n++
	}
	return out
}

// corner is where a rectangle can lie: beside the step above and on the one below.
func (s *staircase) corner(i int) (at extent) {
	if i > 0 {
		at.w = s.step[i-1].w
	}
	if i < s.n {
		at.h = s.step[i].h
	}
	return at
}

// room is the area that is left, or more.
func (c *corners) room(s *staircase) (area int64) {
	for i := range s.n + 1 {
		at, end := s.corner(i), c.z.w
		if i < s.n {
			end = s.step[i].w
		}
		area += c.high(end-at.w, c.z.h-at.h)
	}
	return area
}

// place finds places for those whose bits are set; it is false too where the ration is spent.
func (c *corners) place(left uint, s staircase) bool {
	if left == 0 {
		return true
	}
	if c.ration--; c.ration <= 0 || c.room(&s) < c.area {
		return false
	}
	for i, k := range c.members {
		if left>>i&1 == 0 || i > 0 && left>>(i-1)&1 == 1 && k == c.members[i-1] {
			continue
		}
		c.area -= c.low(k)
		anywhere := false
		for _, e := range k.ways() {
			for n := range s.n + 1 {
				at := s.corner(n)
				if at.w+e.w > c.z.w || at.h+e.h > c.z.h {
					continue
				}
				anywhere = true
				if c.place(left&^(1<<i), s.with(extent{at.w + e.w, at.h + e.h})) {
					return true
				}
			}
		}
		c.area += c.low(k)
		if !anywhere { // nor when more lies there
			return false
		}
	}
	return false
}
