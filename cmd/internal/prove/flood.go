package prove

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// floodStep is how far apart the lines are, in millimeters, on which it is followed what
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

// throughOne lists for each line the cuts that go through by themselves.
func (r *sheetReader) throughOne(thickness float64, lines int) [][]int {
	list := make([][]int, lines)
	for i := range r.cuts {
		c := &r.cuts[i]
		if !r.through(c, thickness) {
			continue
		}
		low, high := int(math.Floor(c.region.box.Min.Y/floodStep))-1, int(math.Ceil(c.region.box.Max.Y/floodStep))
		for k := max(0, low); k <= min(lines-1, high); k++ {
			list[k] = append(list[k], i)
		}
	}
	return list
}

// flooded is the wood that is left of a sheet, line by line, and what of it hangs together.
type flooded struct {
	length float64     // mm, of the sheet
	parts  []geom.Rect // their wood at the sheet's edge is no waste
	runs   []run
	starts []int // of each line among the runs, and the end of the last
	parent []int // of what hangs together; 0 is the waste at the sheet's edges
}

// flood finds which parts of a sheet of a thickness hang together when all is cut.
func (r *sheetReader) flood(thickness float64) *flooded {
	n := int(math.Ceil(r.width/floodStep - 1e-9))
	f := &flooded{length: r.length, starts: make([]int, 1, n+1), parent: []int{0}}
	for i := range r.parts {
		f.parts = append(f.parts, r.boxOf(&r.parts[i]))
	}
	one, both := r.throughOne(thickness, n), r.throughBoth(thickness, n)
	var gone []span
	var list []float64
	for k := range n {
		y := lineAt(k)
		gone = gone[:0]
		for _, i := range one[k] {
			list = r.cuts[i].region.spans(list[:0], y)
			for j := 0; j+1 < len(list); j += 2 {
				gone = append(gone, span{list[j], list[j+1]})
			}
		}
		for _, p := range both[k] {
			gone = r.common(gone, p, y)
		}
		f.line(k, k == n-1, gone)
		f.starts = append(f.starts, len(f.runs))
	}
	return f
}

// lineAt is the place, in millimeters, of a line across the sheet.
func lineAt(k int) float64 { return float64((float64(k) + 0.5) * floodStep) }

// line adds the wood between what is gone of a line, which is the last or not.
func (f *flooded) line(k int, last bool, gone []span) {
	slices.SortFunc(gone, func(a, b span) int {
		if a.from < b.from {
			return -1
		}
		return 1
	})
	at := 0.0
	for _, g := range gone {
		if g.from > at {
			f.wood(k, last, at, math.Min(g.from, f.length))
		}
		at = math.Max(at, g.to)
	}
	if at < f.length {
		f.wood(k, last, at, f.length)
	}
}

// wood adds some to a line, and joins it with what it touches on the line before, and with
// the waste where it is that of the sheet's edges.
func (f *flooded) wood(k int, last bool, from, to float64) {
	if to-from < floodStep/2 {
		return
	}
	w := run{from, to, len(f.parent)}
	f.parent = append(f.parent, w.of)
	y := lineAt(k)
	if from == 0 && f.waste(geom.Point{X: from + floodStep/4, Y: y}) ||
		to == f.length && f.waste(geom.Point{X: to - floodStep/4, Y: y}) ||
		(k == 0 || last) && f.waste(geom.Point{X: (from + to) / 2, Y: y}) {
		f.join(0, w.of)
	}
	if k > 0 {
		for _, v := range f.on(k - 1) {
			if math.Min(v.to, w.to)-math.Max(v.from, w.from) > floodStep/2 {
				f.join(v.of, w.of)
			}
		}
	}
	f.runs = append(f.runs, w)
}

// on are the runs of a line that is done.
func (f *flooded) on(k int) []run { return f.runs[f.starts[k]:f.starts[k+1]] }

// waste reports whether a place is in no part.
func (f *flooded) waste(p geom.Point) bool {
	return !slices.ContainsFunc(f.parts, func(b geom.Rect) bool {
		return p.X > b.Min.X && p.X < b.Max.X && p.Y > b.Min.Y && p.Y < b.Max.Y
	})
}

func (f *flooded) find(i int) int {
	for f.parent[i] != i {
		f.parent[i] = f.parent[f.parent[i]]
		i = f.parent[i]
	}
	return i
}

func (f *flooded) join(a, b int) {
	a, b = f.find(a), f.find(b)
	f.parent[max(a, b)] = min(a, b)
}

// withWaste reports whether there is wood at a place that hangs together with the waste
// about the parts.
func (f *flooded) withWaste(p geom.Point) bool {
	k := int(p.Y / floodStep)
	if k < 0 || k >= len(f.starts)-1 {
		return false
	}
	for _, w := range f.on(k) {
		if p.X >= w.from && p.X <= w.to {
			return f.find(w.of) == 0
		}
	}
	return false
}
