package breakdown

import (
	"math"

	"drawerwright/geom"
)

func (c *cutter) heavy(b board) bool {
	w := float64(b.whole(geom.AlongX)) * float64(b.whole(geom.AlongY)) * c.rules.Weight
	return c.rules.MaxWeight > 0 && w > c.rules.MaxWeight
}

// long reports whether a board is too long for the sled and would be cut on it else: along a guide each length of it
// would be set, and differ from its like.
func (c *cutter) long(b board) bool {
	axis, _ := b.next()
	return c.begins(b, b.whole(axis)) == HandHeld && c.begins(b, c.rules.SledCapacity) == SledCut
}

// begins is how the first section of a board is cut off if the board reaches so far; on the sled where it has none.
func (c *cutter) begins(b board, extent int64) Kind {
	axis, sections := b.next()
	if len(sections) == 0 {
		return SledCut
	}
	size := sections[0].Size(axis)
	return c.kind(size, size, b.whole(1-axis), extent)
}

// inHalves makes the cuts of a board that is too long for the sled along its next axis, in two or more; false where it
// is not, or stays whole.
func (c *cutter) inHalves(b board, stage int) (parts []board, done bool) {
	before := len(c.jobs)
	list := c.halves(b, stage, c.long)
	if len(c.jobs) == before {
		return nil, false
	}
	axis, _ := b.next()
	for _, half := range list {
		if way, more := half.next(); len(more) > 0 && way != axis { // its length is done
			parts = append(parts, half)
		} else {
			parts = append(parts, c.along(half, stage)...)
		}
	}
	return parts, true
}

// halves cuts a board that is too much for a machine, or for one person, in two between its sections, near the middle,
// as often as it takes and the sections allow.
func (c *cutter) halves(b board, stage int, tooMuch func(board) bool) []board {
	axis, sections := b.next()
	if !tooMuch(b) || len(sections) == 0 {
		return []board{b}
	}
	end := b.From(axis) + b.Size(axis) + b.over[axis]
	at, best := -1, int64(math.MaxInt64)
	for i, s := range sections {
		cut := s.From(axis) + s.Size(axis)
		if rest := end - cut - c.rules.Kerf; rest > 0 && !(b.halved[axis] && i == len(sections)-1) {
			if most := max(cut-b.From(axis)+b.edge[axis], rest); most < best {
				at, best = i, most
			}
		}
	}
	if at < 0 { // one section is nearly all of it
		return []board{b}
	}
	cut := sections[at].From(axis) + sections[at].Size(axis)
	first, second := b, b
	first.CutTree = b.Part(axis, b.From(axis), cut)
	first.Axis, first.Sections = axis, sections[:at+1]
	first.over[axis], first.halved[axis], second.edge[axis] = 0, true, 0
	by, rough, enough := c.halfAllowance(b, first, at, tooMuch)
	cut += by
	for i, s := range sections[at+1:] {
		sections[at+1+i] = moved(s, axis, by)
	}
	first.CutTree = grown(first.CutTree, axis, by)
	second.CutTree = b.Part(axis, cut+c.rules.Kerf, max(cut+c.rules.Kerf, b.From(axis)+b.Size(axis)))
	second.Axis, second.Sections = axis, sections[at+1:]
	if over := end - cut - c.rules.Kerf - second.Size(axis); over < second.over[axis] {
		second.over[axis] = over
	}
	if heavy := stage == 0; !heavy && (!enough || c.rules.tight(second.CutTree, axis) > 0) {
		return []board{b} // a guide for each is better than a part that is what is left
	}
	first, second = first.settled(), second.settled()
	rough = rough && (stage == 0 || c.begins(first, first.whole(axis)) != HandHeld)
	first.strip()
	gives, left := first.given(), second.hand()
	if left.Offcut = second.Waste(); left.Offcut {
		left.Clean = second.offcut(axis, cut+c.rules.Kerf, second.whole(axis))
	} else {
		second.strip()
		left = second.given()
	}
	c.jobs = append(c.jobs, job{Cut{Stage: stage, Kind: HandHeld, Rough: rough,
		Setting: cut - b.From(axis) + b.edge[axis], Count: b.count, Workpiece: b.hand(), Yields: gives, Remainder: left,
		NeedsHelper: c.heavy(b)}, b.after})
	first.after = len(c.jobs) - 1
	second.after = first.after
	list := c.halves(first, stage, tooMuch)
	if !left.Offcut {
		list = append(list, c.halves(second, stage, tooMuch)...)
	}
	return list
}

// halfAllowance is how much the first half of a board that is cut in two after a section gets beyond its size, for cuts
// of its own that its parts need, whether that is to be cut off again on a machine, and whether it is enough.
func (c *cutter) halfAllowance(b, first board, at int, tooMuch func(board) bool) (by int64, rough, enough bool) {
	axis, sections := b.next()
	room, wanted := c.roomOf(b, axis, sections), c.rules.tight(first.CutTree, axis)
	last := at == len(sections)-1
	most := first
	most.CutTree = grown(first.CutTree, axis, (wanted+int64(at))*c.rules.Allowance)
	if tooMuch(most) { // each time that it is cut in two, one more of its sections is the last
		wanted += int64(at)
	}
	rough = c.onMachine(sections[at].Size(axis), b.whole(1-axis))
	if rough && at == 0 {
		wanted++
	}
	by, got := room.take(wanted, last)
	rough, enough = rough && got, wanted == 0 || got
	for ; !got && wanted > 1; wanted-- { // fewer are better than none
		by, got = room.take(wanted-1, last)
	}
	return by, rough, enough
}
