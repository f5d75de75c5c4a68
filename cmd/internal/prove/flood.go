package prove

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// floodStep is how far apart the lines are, in millimetres, on which it is followed what
// hangs together: a fraction of any slot that a bit cuts.
const floodStep = 0.5

// run is wood on one line.
type run struct {
	from, to float64
	of       int // its part of what hangs together
}

// span is what is gone on one line.
type span struct{ from, to float64 }

// throughBoth lists for each line the pairs of cuts, one from each face, that neither goes
// through and leave nothing where both are.
func (r *sheetReader) throughBoth(thickness float64, lines int) [][][2]int {
	list := make([][][2]int, lines)
	for i := range r.cuts {
		a := &r.cuts[i]
		if a.face != geom.Outside || r.through(a, thickness) {
			continue
		}
		for j := range r.cuts {
			b := &r.cuts[j]
			if b.face != geom.Inside || r.through(b, thickness) || a.region.box.Apart(b.region.box) ||
				!proof.NothingLeft(thickness-r.takesOf(a, thickness)-r.takesOf(b, thickness)) {
				continue
			}
			low, high := math.Max(a.region.box.Min.Y, b.region.box.Min.Y), math.Min(a.region.box.Max.Y,
				b.region.box.Max.Y)
			for k := max(0, int(low/floodStep)-1); k <= min(lines-1, int(math.Ceil(high/floodStep))); k++ {
				list[k] = append(list[k], [2]int{i, j})
			}
		}
	}
	return list
}

// common adds where both cuts of a pair are on a line.
func (r *sheetReader) common(gone []span, pair [2]int, y float64) []span {
	a, b := r.cuts[pair[0]].region.spans(nil, y), r.cuts[pair[1]].region.spans(nil, y)
	for i := 0; i+1 < len(a); i += 2 {
		for j := 0; j+1 < len(b); j += 2 {
			if from, to := math.Max(a[i], b[j]), math.Min(a[i+1], b[j+1]); from < to {
				gone = append(gone, span{from, to})
			}
		}
	}
	return gone
}

// flood finds which parts of a sheet of a thickness hang together when all is cut, and gives a
// function that reports whether the wood at a place hangs together with the waste about
// the parts.
func (r *sheetReader) flood(thickness float64) func(geom.Point) bool {
	n := int(math.Ceil(r.width/floodStep - 1e-9))
	lines := make([][]run, n)
	parent := []int{0} // 0 is the waste at the sheet's edges
	find := func(i int) int {
		for parent[i] != i {
			parent[i] = parent[parent[i]]
			i = parent[i]
		}
		return i
	}
	join := func(a, b int) {
		a, b = find(a), find(b)
		parent[max(a, b)] = min(a, b)
	}
	// Which cuts a line meets.
	meets := make([][]int, n)
	for i := range r.cuts {
		c := &r.cuts[i]
		if !r.through(c, thickness) {
			continue
		}
		low, high := int(math.Floor(c.region.box.Min.Y/floodStep))-1, int(math.Ceil(c.region.box.Max.Y/floodStep))
		for k := max(0, low); k <= min(n-1, high); k++ {
			meets[k] = append(meets[k], i)
		}
	}
	var boxes []geom.Rect // of parts: their wood at the sheet's edge is no waste
	for i := range r.parts {
		boxes = append(boxes, r.boxOf(&r.parts[i]))
	}
	wasteAt := func(p geom.Point) bool {
		return !slices.ContainsFunc(boxes, func(b geom.Rect) bool {
			return p.X > b.Min.X && p.X < b.Max.X && p.Y > b.Min.Y && p.Y < b.Max.Y
		})
	}
	both := r.throughBoth(thickness, n)
	var gone []span
	var list []float64
	for k := range lines {
		y := float64((float64(k) + 0.5) * floodStep)
		gone = gone[:0]
		for _, i := range meets[k] {
			list = r.cuts[i].region.spans(list[:0], y)
			for j := 0; j+1 < len(list); j += 2 {
				gone = append(gone, span{list[j], list[j+1]})
			}
		}
		for _, p := range both[k] {
			gone = r.common(gone, p, y)
		}
		slices.SortFunc(gone, func(a, b span) int {
			if a.from < b.from {
				return -1
			}
			return 1
		})
		add := func(from, to float64) {
			if to-from < floodStep/2 {
				return
			}
			w := run{from, to, len(parent)}
			parent = append(parent, w.of)
			middle := geom.Point{X: (from + to) / 2, Y: y}
			switch {
			case from == 0 && wasteAt(geom.Point{X: from + floodStep/4, Y: y}), to == r.length &&
				wasteAt(geom.Point{X: to - floodStep/4, Y: y}), (k == 0 || k == n-1) && wasteAt(middle):
				join(0, w.of)
			}
			if k > 0 {
				for _, v := range lines[k-1] {
					if math.Min(v.to, w.to)-math.Max(v.from, w.from) > floodStep/2 {
						join(v.of, w.of)
					}
				}
			}
			lines[k] = append(lines[k], w)
		}
		at := 0.0
		for _, g := range gone {
			if g.from > at {
				add(at, math.Min(g.from, r.length))
			}
			at = math.Max(at, g.to)
		}
		if at < r.length {
			add(at, r.length)
		}
	}
	return func(p geom.Point) bool {
		k := int(p.Y / floodStep)
		if k < 0 || k >= n {
			return false
		}
		for _, w := range lines[k] {
			if p.X >= w.from && p.X <= w.to {
				return find(w.of) == 0
			}
		}
		return false
	}
}
