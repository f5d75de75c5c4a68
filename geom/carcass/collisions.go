package carcass

import (
	"slices"

	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// body is what has room for nothing else: a piece, a slide, a handle.
type body struct {
	name   string
	drawer int // or [Stands]
	moves  bool
	about  Block
	blocks []Block
	role   joinery.Role // of a piece; none of an outline
}

// bodies are all, closed.
func (m *maker) bodies() (list []body) {
	for i, d := range m.Drawers {
		for _, p := range d.Pieces {
			b := body{name: p.Name + " of " + d.Name, drawer: i, moves: true, role: p.Role}
			for k, one := range p.Blocks {
				one = one.moved(d.At)
				if k == 0 {
					b.about = one
				}
				b.about, b.blocks = b.about.Over(one), append(b.blocks, one)
			}
			list = append(list, b)
		}
	}
	for _, o := range m.out.Outlines {
		list = append(list, body{name: o.Name, drawer: o.Drawer, moves: o.Motion == Moves,
			about: o.Block, blocks: []Block{o.Block}})
	}
	return list
}

// collisions finds what stands out of the opening, slides that stand out above the side that they
// are screwed to, and what meets another while it is pulled out, or even closed.
func (m *maker) collisions() {
	all := m.bodies()
	for i, a := range all {
		m.within(a)
		m.onSide(a, all)
		for _, b := range all[i+1:] {
			m.meet(a, b)
		}
	}
}

// collide adds a collision, or makes one that is known larger.
func (m *maker) collide(c Collision) {
	i := slices.IndexFunc(m.out.Collisions, func(d Collision) bool { return d.Name == c.Name })
	if i < 0 {
		m.out.Collisions = append(m.out.Collisions, c)
		return
	}
	known := &m.out.Collisions[i]
	known.By, known.Block, known.Pulled = max(known.By, c.By), known.Over(c.Block), known.Pulled && c.Pulled
}

// within finds what of a body behind the cabinet's front edge stands out of the opening. What stands
// in the cabinet may be behind a frame.
func (m *maker) within(a body) {
	o := m.out.Opening
	if !a.moves && a.about.High[0] <= o.Low[0]+settle || !a.moves && a.about.Low[0] >= o.High[0]-settle {
		return
	}
	for _, w := range []struct {
		name  string
		axis  int
		least bool
	}{
		{"left side of the opening", 0, true}, {"right side of the opening", 0, false},
		{"lower edge of the opening", 2, true}, {"upper edge of the opening", 2, false},
		{"back of the opening", 1, false},
	} {
		if w.axis != 1 && m.behindFrame(a) {
			continue
		}
		for _, b := range a.blocks {
			b.Low[1] = max(b.Low[1], o.Low[1])
			by := b.High[w.axis] - o.High[w.axis]
			if w.least {
				by = o.Low[w.axis] - b.Low[w.axis]
				b.High[w.axis] = min(b.High[w.axis], o.Low[w.axis])
			} else {
				b.Low[w.axis] = max(b.Low[w.axis], o.High[w.axis])
			}
			if by > settle && b.Least() > settle {
				m.collide(Collision{Name: a.name + " and the " + w.name, By: by, Block: b})
			}
		}
	}
}

// behindFrame reports whether a body stands in the cabinet, behind its frame.
func (m *maker) behindFrame(a body) bool {
	return m.Opening.FaceFrame && !a.moves && a.about.Low[1] >= m.face+opening.UsualFrame(m.Unit)-settle
}

// onSide finds a slide beside the box that is higher than the side it is screwed to.
func (m *maker) onSide(slide body, all []body) {
	if m.Plan.Slide.Kind != opening.SideMount || slide.role != "" || slide.moves || slide.drawer == Stands ||
		slide.about.High[0] <= m.out.Opening.Low[0]+settle || slide.about.Low[0] >= m.out.Opening.High[0]-settle {
		return
	}
	left := slide.about.Low[0] < m.out.Opening.middle()[0]
	for _, b := range all {
		if b.role != joinery.Side || b.drawer != slide.drawer || left != (b.about.Low[0] < m.out.Opening.middle()[0]) {
			continue
		}
		if by := slide.about.High[2] - b.about.High[2]; by > settle {
			c := slide.about
			c.Low[2] = max(c.Low[2], b.about.High[2])
			m.collide(Collision{Name: slide.name + ", higher than the " + b.name, By: by, Block: c})
		}
	}
}

// meet finds where two bodies would both be: closed, or while the drawer of one is pulled out. What
// goes together meets only what it would meet closed.
func (m *maker) meet(a, b body) {
	same := a.drawer == b.drawer && a.moves == b.moves
	if same && (a.role == "") == (b.role == "") || !a.moves && !b.moves && a.drawer == b.drawer {
		return // parts of one box are judged as such
	}
	if m.overlap(a, b, 0, 0) || same {
		return
	}
	if a.moves {
		m.overlap(a, b, m.out.Travel[a.drawer], 0)
	}
	if b.moves {
		m.overlap(a, b, 0, m.out.Travel[b.drawer])
	}
}

// overlap adds what two bodies have in common while they are pulled out by travels.
func (m *maker) overlap(a, b body, pullA, pullB float64) (found bool) {
	whole := b.about.pulled(pullB)
	if a.about.pulled(pullA).And(whole).Least() <= settle {
		return false
	}
	for _, p := range a.blocks {
		p = p.pulled(pullA)
		if p.And(whole).Least() <= settle {
			continue
		}
		for _, q := range b.blocks {
			q = q.pulled(pullB)
			if c := p.And(q); c.Least() > settle {
				found = true
				m.collide(Collision{Name: a.name + " and " + b.name, By: p.into(q), Block: c, Pulled: pullA+pullB > 0})
			}
		}
	}
	return found
}
