package sweep

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
)

// Union gives the outlines of what simple counter-clockwise loops cover together. Loops
// that share no more than points with the others come as they are, in their order;
// behind them come the outlines of what was united, and then, clockwise, the islands that
// several loops leave free between them. Sides stay lines and arcs.
//
// Errors are those of [Pocket] but for [ErrRadius].
func Union(list []geom.Loop) ([]geom.Loop, error) {
	shapes := make([]shape, len(list))
	total := 0
	for i, l := range list {
		if _, err := sound(l); err != nil {
			return nil, err
		}
		sides, err := sidesOf(l, true)
		if err != nil {
			return nil, err
		}
		if total += len(sides); total > MaxSides*len(list) {
			return nil, ErrTooMany
		}
		shapes[i] = shape{sides, l.Bounds()}
	}
	var alone, united []geom.Loop
	for _, group := range together(shapes) {
		if len(group) == 1 {
			alone = append(alone, list[group[0]])
			continue
		}
		loops, err := unite(shapes, group)
		if err != nil {
			return nil, err
		}
		united = append(united, loops...)
	}
	return append(alone, islandsLast(united)...), nil
}

// shape is a loop with its sides.
type shape struct {
	sides []curve
	box   geom.Rect
}

// together groups shapes that meet, directly or by others, by their numbers.
func together(shapes []shape) [][]int {
	group := make([]int, len(shapes))
	for i := range group {
		group[i] = i
	}
	find := func(i int) int {
		for group[i] != i {
			i = group[i]
		}
		return i
	}
	order := make([]int, len(shapes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(shapes[a].box.Min.X, shapes[b].box.Min.X), cmp.Compare(a, b))
	})
	for n, i := range order {
		for _, j := range order[n+1:] {
			if shapes[j].box.Min.X > shapes[i].box.Max.X+reach {
				break
			}
			if !shapes[i].box.Grow(reach).Apart(shapes[j].box) && touches(shapes[i], shapes[j]) {
				a, b := find(i), find(j)
				group[max(a, b)] = min(a, b)
			}
		}
	}
	members := make(map[int][]int, len(shapes))
	var first []int
	for i := range shapes {
		g := find(i)
		if len(members[g]) == 0 {
			first = append(first, g)
		}
		members[g] = append(members[g], i)
	}
	groups := make([][]int, len(first))
	for k, g := range first {
		groups[k] = members[g]
	}
	return groups
}

// touches reports whether two shapes share more than single points: a corner of one lies
// within the other, or their sides meet.
func touches(a, b shape) bool {
	if a.place(b.sides[0].a) > 0 || b.place(a.sides[0].a) > 0 {
		return true
	}
	var met []meeting
	for i := range a.sides {
		for j := range b.sides {
			if met = meet(&a.sides[i], &b.sides[j], met[:0]); len(met) > 0 {
				return true
			}
		}
	}
	return false
}

// place is 1 within a shape, 0 on its outline, and -1 outside.
func (s shape) place(p geom.Point) int {
	if p.X < s.box.Min.X-reach || p.X > s.box.Max.X+reach || p.Y < s.box.Min.Y-reach || p.Y > s.box.Max.Y+reach {
		return -1
	}
	in := false
	for i := range s.sides {
		c := &s.sides[i]
		if c.distance(p) <= onOutline {
			return 0
		}
		if c.crosses(p) {
			in = !in
		}
	}
	if in {
		return 1
	}
	return -1
}

// crosses reports whether a curve crosses the ray from a point to the right an odd number
// of times. The pieces of an arc between its highest and its lowest place have one height
// each, as a line has, of which the upper end alone belongs to it.
func (c *curve) crosses(p geom.Point) bool {
	if c.straight() {
		return (c.a.Y > p.Y) != (c.b.Y > p.Y) && p.X < c.a.X+float64((p.Y-c.a.Y)/(c.b.Y-c.a.Y)*(c.b.X-c.a.X))
	}
	odd := false
	from, s := c.a, 0.0
	until := func(to geom.Point, t float64) {
		if (from.Y > p.Y) != (to.Y > p.Y) {
			up := p.Y - c.center.Y
			aside := math.Sqrt(max(0, float64(c.radius*c.radius)-float64(up*up)))
			if p.X < c.center.X+math.Copysign(aside, c.out((s+t)/2).X) {
				odd = !odd
			}
		}
		from, s = to, t
	}
	var turns []float64 // places of the highest and the lowest point
	for _, d := range [...]geom.Point{{Y: 1}, {Y: -1}} {
		angle := c.unit.Turn(d)
		if c.sweep < 0 {
			angle = -angle
		}
		if angle < 0 {
			angle += 2 * math.Pi
		}
		if at := float64(angle * c.radius); at > 0 && at < c.length {
			turns = append(turns, at)
		}
	}
	slices.Sort(turns)
	for _, at := range turns {
		until(c.at(at), at)
	}
	until(c.b, c.length)
	return odd
}

// onOutline is how far from an outline a point counts as on it: some way over [reach], so
// that pieces between joined nodes do.
const onOutline = 4 * reach

// unite gives the outlines of what a group of shapes covers.
func unite(shapes []shape, group []int) ([]geom.Loop, error) {
	w, owner := newWeb(4*len(group)), []int{} // of each source
	for _, g := range group {
		sides := shapes[g].sides
		first := int32(len(w.nodes))
		for i := range sides {
			w.node(sides[i].a)
		}
		for i := range sides {
			w.add(sides[i], int32(len(owner)), first+int32(i), first+int32((i+1)%len(sides)))
			owner = append(owner, g)
		}
	}
	if !w.cross() {
		return nil, ErrTooMany
	}
	var kept []piece
	for _, p := range w.pieces() {
		if outermostPiece(shapes, group, owner[p.source], &p) {
			kept = append(kept, p)
		}
	}
	kept, ok := prune(kept, len(w.nodes))
	if !ok {
		return nil, ErrUnsettled
	}
	links, ok := leftmost(kept, len(w.nodes))
	if !ok {
		return nil, ErrUnsettled
	}
	loops := outlines(kept, links, scrap)
	for i := range loops {
		loops[i] = withoutFlat(loops[i])
	}
	return loops, nil
}

// outermostPiece reports whether a piece of one shape's outline is of the union's: it lies
// in no other shape, and of equal pieces that run the same way it is the first. Those that
// run against each other have something on both sides.
func outermostPiece(shapes []shape, group []int, own int, p *piece) bool {
	at := p.at(p.length / 2)
	for _, g := range group {
		if g == own {
			continue
		}
		switch shapes[g].place(at) {
		case 1:
			return false
		case 0:
			along := p.direction(p.length / 2)
			for i := range shapes[g].sides {
				c := &shapes[g].sides[i]
				if s, on := c.along(at); on && c.distance(at) <= onOutline && (c.direction(s).Dot(along) < 0 || g < own) {
					return false
				}
			}
		}
	}
	return true
}

// withoutFlat leaves out corners between straight sides that go on as each other.
func withoutFlat(l geom.Loop) geom.Loop {
	out := make(geom.Loop, 0, len(l))
	for i, v := range l {
		before, after := l[l.Before(i)], l.Next(i)
		in, leave := v.Sub(before.Point), after.Sub(v.Point)
		if before.Bulge == 0 && v.Bulge == 0 && in.Dot(leave) > 0 && math.Abs(in.Cross(leave)) <= float64(reach*max(in.Norm(), leave.Norm())) {
			continue
		}
		out = append(out, v)
	}
	return out
}
