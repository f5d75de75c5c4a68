package hold

import "math"

// spread gives every part with tabs its bridges: evenly along the sides that may have any,
// where those of neighbors count, then more until there are as many as its size asks for.
func (p *planner) spread() {
	for i, q := range p.Parts {
		if q.Kind != Tabs {
			continue
		}
		for side := range 4 {
			if len(p.options[i][side]) == 0 {
				continue
			}
			from, length := p.side(i, side)
			n := max(1, int64(math.Round(float64(length)/float64(p.Spacing))))
			claimed := make(map[int]bool)
			for k := range n {
				wanted := from + length*(2*k+1)/(2*n)
				if b := p.near(i, side, wanted, length/n/2, claimed); b >= 0 {
					claimed[b] = true
				} else if p.place(i, side, wanted, anywhere) {
					claimed[len(p.bridges)-1] = true
				}
			}
		}
		for more := true; more && len(p.of[i]) < p.MinTabs(i); {
			more = false
			for side := range 4 {
				from, length := p.side(i, side)
				more = len(p.of[i]) < p.MinTabs(i) && p.place(i, side, from+length/2, anywhere) || more
			}
		}
	}
}

func anywhere(int) bool { return true }

// side is where a side begins, and how long it is.
func (p *planner) side(part, side int) (from, length int64) {
	b := p.Parts[part].Box
	if side == Bottom || side == Top {
		return b.X0, b.X1 - b.X0
	}
	return b.Y0, b.Y1 - b.Y0
}

// near is a bridge on a side, not yet claimed, no farther from a wanted middle than that;
// -1 for none.
func (p *planner) near(part, side int, wanted, far int64, claimed map[int]bool) int {
	best, at := far, -1
	for _, n := range p.of[part] {
		if b := p.bridges[n].Box; !claimed[n] && p.on(part, side, b) {
			middle := (b.X0 + b.X1) / 2
			if side == Right || side == Left {
				middle = (b.Y0 + b.Y1) / 2
			}
			if off := max(middle-wanted, wanted-middle); off <= best {
				best, at = off, n
			}
		}
	}
	return at
}

// on reports whether a bridge of a part stands on one of its sides.
func (p *planner) on(part, side int, bridge Box) bool {
	b := p.Parts[part].Box
	return [...]bool{bridge.Y1 == b.Y0, bridge.X0 == b.X1, bridge.Y0 == b.Y1, bridge.X1 == b.X0}[side]
}

// connect adds the bridges that tie to the frame what is not tied yet, parts and waste.
func (p *planner) connect() {
	for more := true; more; {
		more = false
		for i, q := range p.Parts {
			if q.Kind != Tabs {
				continue
			}
			for side := range 4 {
				from, length := p.side(i, side)
				// One end of it is tied, the other one is not.
				more = p.place(i, side, from+length/2, func(to int) bool { return p.tied(to) != p.tied(i) }) || more
			}
		}
	}
}
