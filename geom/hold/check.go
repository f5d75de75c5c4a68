package hold

import (
	"cmp"
	"fmt"
	"slices"
)

// Check says what is wrong with the slots of a sheet, or nil. It shares nothing with the
// planner. Slots are simple, enter no part and no band that a skin lies in, and keep apart
// from each other and from the sheet's edge; then all that is left of the sheet hangs
// together, for discs that are apart do not cut a rectangle in two. Of the band round each
// part with tabs nothing is left but bridges, each just as wide as a tab, and as many as its
// size asks for.
func Check(s Sheet, slots [][]Point) error {
	var all []edge
	for n, l := range slots {
		if area(l) <= 0 {
			return fmt.Errorf("slot %d runs clockwise", n+1)
		}
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if a.X != b.X && a.Y != b.Y || a == b {
				return fmt.Errorf("slot %d has a side that is neither upright nor level", n+1)
			}
			e := Box{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}
			if e.X0 <= s.Size.X0 || e.Y0 <= s.Size.Y0 || e.X1 >= s.Size.X1 || e.Y1 >= s.Size.Y1 {
				return fmt.Errorf("slot %d reaches the sheet's edge", n+1)
			}
			all = append(all, edge{e, n, i, len(l)})
		}
	}
	if a, b, found := crossing(all); found {
		return fmt.Errorf("slots %d and %d meet at %d, %d", a.slot+1, b.slot+1, max(a.box.X0, b.box.X0),
			max(a.box.Y0, b.box.Y0))
	}
	for i, p := range s.Parts {
		grown := p.Box
		if p.Kind == OnionSkin {
			grown = p.Box.grown(p.Slot)
		}
		for n, l := range slots {
			if enters(l, grown) {
				return fmt.Errorf("slot %d enters part %d", n+1, i+1)
			}
		}
		if p.Kind != Tabs {
			continue
		}
		bridges := 0
		for _, left := range around(p, slots) {
			if left != s.Tab {
				return fmt.Errorf("part %d has a bridge of %d, tabs are %d", i+1, left, s.Tab)
			}
			bridges++
		}
		if bridges < s.MinTabs(i) {
			return fmt.Errorf("part %d has %d bridges of %d", i+1, bridges, s.MinTabs(i))
		}
	}
	return nil
}

// edge is a side of a slot, the i-th of so many.
type edge struct {
	box        Box
	slot, i, n int
}

// crossing finds two sides that have a point in common and do not follow each other. A
// line sweeps along x.
func crossing(all []edge) (a, b edge, found bool) {
	slices.SortFunc(all, func(a, b edge) int { return cmp.Compare(a.box.X0, b.box.X0) })
	var open []edge
	for _, e := range all {
		open = slices.DeleteFunc(open, func(o edge) bool { return o.box.X1 < e.box.X0 })
		for _, o := range open {
			follow := o.slot == e.slot && ((o.i+1)%o.n == e.i || (e.i+1)%e.n == o.i)
			if !follow && o.box.Y0 <= e.box.Y1 && e.box.Y0 <= o.box.Y1 {
				return o, e, true
			}
		}
		open = append(open, e)
	}
	return a, b, false
}

// area is twice that of an outline.
func area(l []Point) (sum int64) {
	for i, a := range l {
		b := l[(i+1)%len(l)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum
}

// enters reports whether a slot and a box have any area in common: a side of the slot runs
// through the box, or the middle of the box lies in the slot.
func enters(l []Point, b Box) bool {
	for i, p := range l {
		q := l[(i+1)%len(l)]
		if max(p.X, q.X) > b.X0 && min(p.X, q.X) < b.X1 && max(p.Y, q.Y) > b.Y0 && min(p.Y, q.Y) < b.Y1 {
			return true
		}
	}
	return contains(l, (b.X0+b.X1)/2, (b.Y0+b.Y1)/2)
}

// contains reports whether a point that lies on no side is in a slot.
func contains(l []Point, x, y int64) (in bool) {
	for i, p := range l {
		q := l[(i+1)%len(l)]
		if p.X == q.X && p.X > x && (p.Y > y) != (q.Y > y) {
			in = !in
		}
	}
	return in
}

// around walks the middle of the band round a part, as its bit does, and gives the lengths
// that no slot takes.
func around(p Part, slots [][]Point) (left []int64) {
	b := p.Box.grown(p.Slot / 2)
	// Four lines, laid end to end, with where they pass in and out of slots.
	type line struct {
		level    bool
		at       int64
		from, to int64
		back     bool
	}
	lines := []line{{true, b.Y0, b.X0, b.X1, false}, {false, b.X1, b.Y0, b.Y1, false}, {true, b.Y1, b.X0, b.X1, true}, {false, b.X0, b.Y0, b.Y1, true}}
	var start int64
	var cuts []Stretch
	for _, w := range lines {
		for _, l := range slots {
			var at []int64
			for i, p := range l {
				q := l[(i+1)%len(l)]
				px, py, qx, qy := p.X, p.Y, q.X, q.Y
				if !w.level {
					px, py, qx, qy = py, px, qy, qx
				}
				if px == qx && (py > w.at) != (qy > w.at) {
					at = append(at, px)
				}
			}
			slices.Sort(at)
			for i := 0; i+1 < len(at); i += 2 {
				c := Stretch{Min: at[i], Max: at[i+1]}.Intersect(Stretch{Min: w.from, Max: w.to})
				if c.Len() <= 0 {
					continue
				}
				if c = c.Shift(-w.from); w.back {
					c = Stretch{Min: w.to - w.from - c.Max, Max: w.to - w.from - c.Min}
				}
				cuts = append(cuts, c.Shift(start))
			}
		}
		start += w.to - w.from
	}
	slices.SortFunc(cuts, func(a, b Stretch) int { return cmp.Compare(a.Min, b.Min) })
	if len(cuts) == 0 {
		return []int64{start}
	}
	for i, c := range cuts {
		next := cuts[0].Min + start
		if i+1 < len(cuts) {
			next = cuts[i+1].Min
		}
		if next > c.Max {
			left = append(left, next-c.Max)
		}
	}
	return left
}
