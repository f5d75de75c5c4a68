package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// sides are the stretches on which tabs may stand on a sheet: of sides that no part bears
// on and that lie on the box about the panel, clear of mouths of pockets, with room for
// the slots beside a tab.
func (p *preparation) sides(slot float64) (free [4][]geom.Interval) {
	l, box := p.part.Outline, p.part.Outline.Bounds()
	for i, v := range l {
		w := l[(i+1)%len(l)]
		if v.Bulge != 0 || v.Marks.Has(geom.Mating) {
			continue
		}
		on := func(a, b, edge float64) bool { return math.Abs(a-edge) < touching && math.Abs(b-edge) < touching }
		side, from, back := -1, 0.0, false // back where the outline runs toward the corner
		switch {
		case on(v.Y, w.Y, box.Min.Y):
			side, from = 0, v.X-box.Min.X
		case on(v.X, w.X, box.Max.X):
			side, from = 1, v.Y-box.Min.Y
		case on(v.Y, w.Y, box.Max.Y):
			side, from, back = 2, v.X-box.Min.X, true
		case on(v.X, w.X, box.Min.X):
			side, from, back = 3, v.Y-box.Min.Y, true
		default:
			continue
		}
		for _, c := range p.clear(i, v.To(w.Point), 2*slot) {
			s := c.Shift(from)
			if back {
				s = geom.Interval{Min: from - c.Max, Max: from - c.Min}
			}
			if s.Len() > p.Tabs.Width-touching {
				free[side] = append(free[side], s)
			}
		}
	}
	for i := range free {
		slices.SortFunc(free[i], func(a, b geom.Interval) int { return int(math.Copysign(1, a.Min-b.Min)) })
	}
	return free
}

// Follow brings slots that were drawn along the box about an outline to the outline: where
// a slot runs along a side of the box, it goes into the notches of the outline.
func Follow(slot, outline geom.Loop) geom.Loop {
	if len(slot) == 0 || len(outline) == 4 && convex(outline) {
		return slot
	}
	const near = 2 * touching // sheets are laid out in whole nanometers
	box := outline.Bounds()
	onBox := func(a, b geom.Point) bool {
		in := func(v, from, to float64) bool { return v > from-near && v < to+near }
		both := func(u, v, edge float64) bool { return math.Abs(u-edge) < near && math.Abs(v-edge) < near }
		return in(a.X, box.Min.X, box.Max.X) && in(b.X, box.Min.X, box.Max.X) && in(a.Y, box.Min.Y, box.Max.Y) && in(b.Y, box.Min.Y, box.Max.Y) &&
			(both(a.X, b.X, box.Min.X) || both(a.X, b.X, box.Max.X) || both(a.Y, b.Y, box.Min.Y) || both(a.Y, b.Y, box.Max.Y))
	}
	n := len(slot)
	along := func(i int) bool { return onBox(slot[i%n].Point, slot[(i+1)%n].Point) }
	start := 0 // at a side that does not run along the box
	for start < n && along(start) {
		start++
	}
	if start == n {
		return slot
	}
	var out geom.Loop
	for i := start; i < start+n; i++ {
		if !along(i) {
			out = append(out, slot[i%n])
			continue
		}
		first := slot[i%n].Point
		for along(i + 1) {
			i++
		}
		last := slot[(i+1)%n].Point
		// The slot has the panel on its right, so that it runs along it backward.
		from, to := place(outline, last), place(outline, first)
		if to <= from {
			to += outline.Perimeter()
		}
		back := stretchOf(outline, from, to).Reverse()
		out = append(out, back[:len(back)-1]...)
	}
	return out
}
