package hold

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// option is a stretch of a part's side from which a bridge can go straight to an end.
type option struct {
	to int // a part, or Frame or less for waste
	Stretch
}

// planner places the bridges of a sheet.
type planner struct {
	Sheet
	grid    *grid
	options [][4][]option
	used    [][4][]Stretch // of each part's sides: bridges, with the room that slots need
	of      [][]int        // the bridges of each part
	bridges []Bridge
	group   []int // of parts and then of pieces of waste: which others they hang together with
}

func newPlanner(s Sheet, g *grid) *planner {
	n := len(s.Parts)
	p := &planner{Sheet: s, grid: g, options: make([][4][]option, n), used: make([][4][]Stretch, n), of: make([][]int, n)}
	for i := range n + g.pieces {
		p.group = append(p.group, i)
	}
	for i, q := range s.Parts {
		for side := range 4 {
			switch q.Kind {
			case Tabs:
				p.options[i][side] = p.reach(i, side)
			case OnionSkin:
				p.rest(i, side)
			}
		}
	}
	return p
}

// node is the place of an end of a bridge among the groups.
func (p *planner) node(end int) int {
	if end <= Frame {
		return len(p.Parts) + Frame - end
	}
	return end
}

func (p *planner) find(end int) int {
	n := p.node(end)
	for p.group[n] != n {
		p.group[n] = p.group[p.group[n]]
		n = p.group[n]
	}
	return n
}

func (p *planner) join(a, b int) { p.group[p.find(a)] = p.find(b) }

// tied reports whether a part, or a piece of waste, hangs together with the frame.
func (p *planner) tied(end int) bool { return p.find(end) == p.find(Frame) }

// outward visits the cells straight out from a side, one line after the other: those over
// the same stretch of the side, until the visitor has seen enough.
func (p *planner) outward(part, side int, line func(over Stretch), visit func(c int) bool) {
	g, b := p.grid, p.Parts[part].Box
	x0, x1 := span(g.xs, b.X0, b.X1)
	y0, y1 := span(g.ys, b.Y0, b.Y1)
	switch side {
	case Bottom, Top:
		for x := x0; x < x1; x++ {
			line(Stretch{Min: g.xs[x], Max: g.xs[x+1]})
			if side == Top {
				for y := y1; y < g.height() && visit(g.cell(x, y)); y++ {
				}
			} else {
				for y := y0 - 1; y >= 0 && visit(g.cell(x, y)); y-- {
				}
			}
		}
	default:
		for y := y0; y < y1; y++ {
			line(Stretch{Min: g.ys[y], Max: g.ys[y+1]})
			if side == Right {
				for x := x1; x < g.width() && visit(g.cell(x, y)); x++ {
				}
			} else {
				for x := x0 - 1; x >= 0 && visit(g.cell(x, y)); x-- {
				}
			}
		}
	}
}

// opposite is the side of a neighbor that faces a side.
func opposite(side int) int { return (side + 2) % 4 }

// reach finds what bridges from a side of a part can end at. On its way a bridge meets no
// band but those of its two ends.
func (p *planner) reach(part, side int) []option {
	var list []option
	var over Stretch
	g := p.grid
	var bands []int32 // met so far, other than its own
	found := func(to int) {
		if last := len(list) - 1; last >= 0 && list[last].to == to && list[last].Max == over.Min {
			list[last].Max = over.Max
			return
		}
		list = append(list, option{to, over})
	}
	p.outward(part, side, func(s Stretch) { over, bands = s, bands[:0] }, func(c int) bool {
		if w := g.waste[c]; w != none {
			if len(bands) == 0 {
				found(Frame - int(w))
			}
			return false
		}
		if q := g.part[c]; q != none {
			if p.Parts[q].Kind == Tabs && !slices.ContainsFunc(bands, func(b int32) bool { return b != q }) {
				found(int(q))
			}
			return false
		}
		if g.more[c] {
			return false
		}
		for _, b := range g.band[c] {
			if b != none && int(b) != part && !slices.Contains(bands, b) {
				bands = append(bands, b)
			}
		}
		return len(bands) < 2
	})
	var free []option
	for _, o := range list {
		for _, s := range p.Parts[part].Free[side] {
			if c := o.Intersect(s); o.to <= Frame {
				free = append(free, option{o.to, c})
			} else {
				for _, t := range p.Parts[o.to].Free[opposite(side)] {
					free = append(free, option{o.to, c.Intersect(t)})
				}
			}
		}
	}
	return slices.DeleteFunc(free, func(o option) bool { return o.Len() < p.Tab })
}

// rest joins a part with an onion skin to what its skin reaches: waste, and other parts with skins.
func (p *planner) rest(part, side int) {
	g := p.grid
	p.outward(part, side, func(Stretch) {}, func(c int) bool {
		if w := g.waste[c]; w != none {
			p.join(part, Frame-int(w))
			return false
		}
		if q := g.part[c]; q != none {
			if p.Parts[q].Kind == OnionSkin {
				p.join(part, int(q))
			}
			return false
		}
		for _, b := range g.band[c] { // another part's slot takes the skin away
			if b != none && p.Parts[b].Kind != OnionSkin {
				return false
			}
		}
		return !g.more[c]
	})
}

// room is how far bridges on one side keep from each other: the bit passes between them,
// with as much again for its way in.
func (p *planner) room(part int) int64 { return 2 * p.Parts[part].Slot }

// place puts the bridge from a side nearest to a wanted middle, of those that an end is
// chosen for, and reports whether there is one.
func (p *planner) place(part, side int, wanted int64, choose func(to int) bool) bool {
	half := p.Tab / 2
	best, at, to := int64(math.MaxInt64), int64(0), 0
	for _, o := range p.options[part][side] {
		if !choose(o.to) {
			continue
		}
		free := []Stretch{o.Stretch}
		for _, u := range p.used[part][side] {
			free = geom.Subtract(free, u)
		}
		if o.to > Frame {
			for _, u := range p.used[o.to][opposite(side)] {
				free = geom.Subtract(free, u)
			}
		}
		for _, f := range free {
			if f.Len() < p.Tab {
				continue
			}
			c := min(max(wanted, f.Min+half), f.Max-p.Tab+half)
			if off := max(c-wanted, wanted-c); off < best {
				best, at, to = off, c, o.to
			}
		}
	}
	if best == math.MaxInt64 {
		return false
	}
	p.put(part, side, Stretch{Min: at - half, Max: at - half + p.Tab}, to)
	return true
}

// put makes a bridge.
func (p *planner) put(part, side int, on Stretch, to int) {
	b := p.Parts[part].Box
	far := p.Parts[part].Slot + p.Web/2 // into the waste, where no slot is
	use := func(part, side int) {
		room := p.room(part)
		p.used[part][side] = append(p.used[part][side], on.Grow(room))
		p.of[part] = append(p.of[part], len(p.bridges))
	}
	use(part, side)
	until := Box{b.X0 - far, b.Y0 - far, b.X1 + far, b.Y1 + far}
	if to > Frame {
		use(to, opposite(side))
		q := p.Parts[to].Box
		until = Box{q.X1, q.Y1, q.X0, q.Y0}
	}
	var box Box
	switch side {
	case Bottom:
		box = Box{on.Min, until.Y0, on.Max, b.Y0}
	case Top:
		box = Box{on.Min, b.Y1, on.Max, until.Y1}
	case Right:
		box = Box{b.X1, on.Min, until.X1, on.Max}
	case Left:
		box = Box{until.X0, on.Min, b.X0, on.Max}
	}
	p.bridges = append(p.bridges, Bridge{box, part, to})
	p.join(part, to)
}
