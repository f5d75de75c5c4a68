package prove

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// rings is a region between closed rings: a point is in it that an odd number of them
// goes round.
type rings struct {
	list []geom.Ring
	box  geom.Rect
}

// ringChord is how far, in millimeters, chords keep to the arcs of regions: half of what
// sizes may differ by.
const ringChord = sameSize / 2

func ringsOf(loops ...geom.Loop) rings {
	var r rings
	for _, l := range loops {
		r = r.with(l.Flatten(ringChord))
	}
	return r
}

// with adds a ring.
func (r rings) with(ring geom.Ring) rings {
	if len(ring) < 3 {
		return r
	}
	box := ring.Bounds()
	if len(r.list) > 0 {
		box = box.Union(r.box)
	}
	return rings{append(r.list, ring), box}
}

// mapped is the region with every point moved.
func (r rings) mapped(f func(geom.Point) geom.Point) rings {
	var out rings
	for _, ring := range r.list {
		moved := make(geom.Ring, len(ring))
		for i, p := range ring {
			moved[i] = f(p)
		}
		out = out.with(moved)
	}
	return out
}

// spans appends where a level line is in the region, from and to, in order.
func (r rings) spans(list []float64, y float64) []float64 {
	if len(r.list) == 0 || y < r.box.Min.Y || y > r.box.Max.Y {
		return list
	}
	first := len(list)
	for _, ring := range r.list {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if (p.Y > y) != (q.Y > y) {
				list = append(list, p.X+float64((y-p.Y)/(q.Y-p.Y)*(q.X-p.X)))
			}
		}
	}
	slices.Sort(list[first:])
	return list
}

// along appends which parts of the way from p to q are in the region, as shares of it.
func (r rings) along(list []float64, p, q geom.Point) []float64 {
	if len(r.list) == 0 || r.box.Apart(geom.Around(p, q)) {
		return list
	}
	first := len(list)
	way := q.Sub(p)
	for _, ring := range r.list {
		for i, u := range ring {
			v := ring[(i+1)%len(ring)]
			su, sv := way.Cross(u.Sub(p)), way.Cross(v.Sub(p))
			if (su > 0) != (sv > 0) {
				tu, tv := geom.Foot(u, p, q), geom.Foot(v, p, q)
				list = append(list, tu+float64(su/(su-sv)*(tv-tu)))
			}
		}
	}
	slices.Sort(list[first:])
	for i := first; i < len(list); i++ {
		list[i] = math.Max(0, math.Min(1, list[i]))
	}
	return list
}

// inside reports whether a point is in the region.
func (r rings) inside(p geom.Point) bool {
	list := r.spans(nil, p.Y)
	for i := 0; i+1 < len(list); i += 2 {
		if p.X > list[i] && p.X < list[i+1] {
			return true
		}
	}
	return false
}

// layer is a region that is taken away to a depth, by its place in a list.
type layer struct {
	rings
	depth float64
	which int
}

// stretch is a piece of a line on which one layer is the deepest; which is -1 where there
// is none.
type stretch struct {
	from, to, depth float64
	which           int
}

// deepest takes the stretches of a line between two places from what each layer covers
// of it.
func deepest(layers []layer, cover func(list []float64, r rings) []float64, from, to float64) []stretch {
	type edge struct {
		at   float64
		of   int
		into bool
	}
	var edges []edge
	var list []float64
	for i, l := range layers {
		list = cover(list[:0], l.rings)
		for k := 0; k+1 < len(list); k += 2 {
			if list[k+1] > list[k] {
				edges = append(edges, edge{list[k], i, true}, edge{list[k+1], i, false})
			}
		}
	}
	slices.SortStableFunc(edges, func(a, b edge) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	var out []stretch
	open := make(map[int]int, 4)
	at := from
	add := func(to float64) {
		if to <= at {
			return
		}
		s := stretch{at, to, 0, -1}
		for i := range open {
			if l := layers[i]; l.depth > s.depth || l.depth == s.depth && (s.which < 0 || l.which < s.which) {
				s.depth, s.which = l.depth, l.which
			}
		}
		if n := len(out); n > 0 && out[n-1].which == s.which && out[n-1].depth == s.depth {
			out[n-1].to = to
		} else {
			out = append(out, s)
		}
		at = to
	}
	for _, e := range edges {
		add(math.Min(e.at, to))
		if e.into {
			open[e.of]++
		} else if open[e.of]--; open[e.of] == 0 {
			delete(open, e.of)
		}
	}
	add(to)
	return out
}
