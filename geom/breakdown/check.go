package breakdown

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// Check makes cuts one after the other on boards of real sizes, at one saw whose blade takes so much more than the
// kerf, and says what is wrong: a board that is not in hand, a cut at which fence or stop stand elsewhere, wood that is
// not there, a piece that is not made or has another size. What is left of a board, or shaved, may be off by what its
// cuts took more; all else has its size.
func Check(sheets []Sheet, cuts []Cut, laid []Laid, r Rules, more int64) error {
	c := checker{hand: make(map[string]piled), kerf: r.Kerf + more, more: max(more, -more)}
	for _, s := range sheets {
		c.hand["sheet "+s.Name] = piled{size: [2]int64{s.Size.Length, s.Size.Width}}
	}
	for i, k := range cuts {
		err := c.person.make(k)
		if err == nil {
			err = c.cut(k)
		}
		if err != nil {
			return fmt.Errorf("cut %d: %w", i+1, err)
		}
	}
	for i, s := range sheets {
		if err := c.pieces(s, laid[i]); err != nil {
			return fmt.Errorf("sheet %s: %w", s.Name, err)
		}
	}
	return nil
}

// atSaw is a person at one saw: what its fence and the stop on the sled stand at, 0 where nothing is set.
type atSaw struct{ fence, stop int64 }

// make does a cut as it is told: it sets what is told to be set, and takes the fence out of the sled's way. It says
// what is wrong: a cut at another setting than that of the cut, or a setting for nothing.
func (p *atSaw) make(c Cut) error {
	at := &p.fence
	switch {
	case c.Kind == HandHeld:
		return nil
	case c.Kind == SledCut:
		p.fence = 0
		if c.Trim { // without a stop
			return nil
		}
		at = &p.stop
	}
	if c.SettingChanged && *at == c.Setting {
		return fmt.Errorf("it is set for nothing: %+v", c)
	}
	if c.SettingChanged {
		*at = c.Setting
	}
	if *at != c.Setting {
		return fmt.Errorf("it is made at %d: %+v", *at, c)
	}
	return nil
}

// piled is a board by its real size, and how many cuts can have made it smaller along each side.
type piled struct{ size, cuts [2]int64 }

type checker struct {
	person     atSaw
	hand       map[string]piled
	kerf, more int64
}

// cut makes one.
func (c *checker) cut(k Cut) error {
	b, known := c.hand[k.Workpiece.Name]
	if !known {
		return fmt.Errorf("%s is not in hand", k.Workpiece.Name)
	}
	delete(c.hand, k.Workpiece.Name)
	part, axis := k.Yields, geom.AlongX
	if k.Trim {
		part = k.Remainder
	}
	if part.Length == k.Workpiece.Length {
		axis = geom.AlongY
	}
	gives, left := b, b
	gives.size[axis], gives.cuts[axis] = min(k.Setting, b.size[axis]), 0
	if k.Setting > b.size[axis] { // too little is there to be cut
		gives.cuts[axis] = b.cuts[axis]
	}
	left.size[axis], left.cuts[axis] = b.size[axis]-k.Setting-c.kerf, b.cuts[axis]+1
	switch {
	case k.Trim && k.Kind == FenceCut:
		left = gives
	case k.Trim:
		left.size[axis], left.cuts[axis] = b.size[axis]-k.Setting, b.cuts[axis]
	case k.Setting-b.size[axis] > c.more*b.cuts[axis]:
		return fmt.Errorf("%s is %d long there, too short for %d", k.Workpiece.Name, b.size[axis], k.Setting)
	}
	if !k.Trim {
		c.hand[k.Yields.Name] = gives
	}
	if k.Remainder.Name != "" && !k.Remainder.Offcut {
		c.hand[k.Remainder.Name] = left
	}
	return nil
}

// pieces checks that all pieces of a sheet are made.
func (c *checker) pieces(s Sheet, laid Laid) error {
	sizes := make(map[int][2]int64)
	var walk func(b nest.CutTree)
	walk = func(b nest.CutTree) {
		if b.Piece >= 0 {
			sizes[b.Piece] = [2]int64{b.Length, b.Width}
		}
		for _, part := range b.Sections {
			walk(part)
		}
	}
	walk(s.Board)
	for i, called := range laid.Called {
		name, _ := s.Names([]int{i})
		b, known := c.hand[called+" "+name]
		if called == s.Name { // nothing is cut off it
			b, known = c.hand["sheet "+s.Name]
		}
		if !known {
			return fmt.Errorf("piece %s is not made", called)
		}
		for axis, want := range sizes[i] {
			if off := b.size[axis] - want; max(off, -off) > c.more*b.cuts[axis] {
				return fmt.Errorf("piece %s is %d, not %d", called, b.size[axis], want)
			}
		}
	}
	return nil
}
