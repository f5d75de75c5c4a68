package breakdown

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// tight is how many allowances a board has to be larger along an axis so that none of its parts is what is left of a
// board: the last part of each board that is used up gets a cut of its own then.
func (r Rules) tight(b nest.CutTree, axis geom.Axis) (n int64) {
	list := parts(b)
	if r.Allowance == 0 || len(list) == 0 {
		return 0
	}
	if b.Axis != axis {
		for _, s := range list {
			n = max(n, r.tight(s, axis))
		}
		return n
	}
	for _, s := range list {
		n += r.tight(s, axis)
	}
	rest := unused(b, list)
	if len(list) > 1 && (rest == 0 || n > 0) {
		n++
	}
	return max(0, n-rest/r.Allowance)
}

// parts are the sections of a board that are no waste.
func parts(b nest.CutTree) []nest.CutTree {
	return slices.DeleteFunc(slices.Clone(b.Sections), nest.CutTree.Waste)
}

// unused is how much of a board is beyond the last of its parts.
func unused(b nest.CutTree, list []nest.CutTree) int64 {
	last := list[len(list)-1]
	return b.From(b.Axis) + b.Size(b.Axis) - last.From(b.Axis) - last.Size(b.Axis)
}

// moved is a board that lies further along an axis.
func moved(b nest.CutTree, axis geom.Axis, by int64) nest.CutTree {
	if by == 0 {
		return b
	}
	if axis == geom.AlongY {
		b.Y += by
	} else {
		b.X += by
	}
	b.Sections = slices.Clone(b.Sections)
	for i, s := range b.Sections {
		b.Sections[i] = moved(s, axis, by)
	}
	return b
}

// larger is a board that is longer by so much than what it is to give: what is to be as long as it was gets a cut.
func (r Rules) larger(b nest.CutTree, axis geom.Axis, by int64) nest.CutTree {
	wants := func(s nest.CutTree) bool { return r.tight(s, axis) > 0 }
	if by == 0 {
		return b
	}
	if !b.Waste() && b.Axis != axis && slices.ContainsFunc(b.Sections, wants) {
		b.Sections = slices.Clone(b.Sections)
		for i, s := range b.Sections {
			b.Sections[i] = r.larger(s, axis, by)
		}
		return grown(b, axis, by)
	}
	if b.Waste() || len(b.Sections) > 0 && b.Axis == axis {
		return grown(b, axis, by)
	}
	return oversize(b, axis, by)
}

// grown is the rectangle of a board with so much more at its end.
func grown(b nest.CutTree, axis geom.Axis, by int64) nest.CutTree {
	if axis == geom.AlongY {
		b.Width += by
	} else {
		b.Length += by
	}
	return b
}

// oversize is a board of which one cut makes another.
func oversize(b nest.CutTree, axis geom.Axis, by int64) nest.CutTree {
	out := grown(b, axis, by)
	out.Piece, out.Axis, out.Sections = -1, axis, []nest.CutTree{b}
	return out
}

// room is what the parts of a board can have beyond their size along an axis.
type room struct {
	allowance int64
	free      int64 // beyond the last of them, in the layout
	over      int64 // beyond that, which only the last one can have
	shift     int64 // how far those that come lie from where they lay
	own       int64 // what the last one's own cut takes
	kept      int64 // what those that come need, which no rough cut takes
}

func (c *cutter) roomOf(b board, axis geom.Axis, list []nest.CutTree) room {
	r := room{allowance: c.rules.Allowance, over: b.over[axis]}
	last := list[len(list)-1]
	r.free = max(0, b.From(axis)+b.Size(axis)-last.From(axis)-last.Size(axis))
	if len(list) > 1 && r.over == 0 {
		r.own = r.allowance
	}
	return r
}

// take gives so many allowances to the next part, or none.
func (r *room) take(n int64, last bool) (by int64, ok bool) {
	by = n * r.allowance
	free := r.free - r.shift - r.own - r.kept
	if last && r.over > 0 { // one can be in the trim: no piece is moved by it; something has to be left to cut off
		free += min(r.over-1, r.allowance)
	}
	if by == 0 || by > free {
		return 0, false
	}
	r.shift += by
	return by, true
}
