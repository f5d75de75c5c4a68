package nest

import (
	"fmt"
	"slices"
)

// Check says what is wrong with a layout, or nil. It shares nothing with the search:
// every piece is on a sheet within its trims, as it may lie, a kerf from every other;
// as many of each as are wanted are laid or said to be left; no more sheets than there
// are; sets in their order and what matches on sheets of one batch; and where saws cut, cuts from
// edge to edge take every sheet apart, in no more
// stages than the rules allow.
func Check(l Layout, pieces []Piece, sheets []Sheet, r Rules) error {
	laid, used := make([]int, len(pieces)), make([]int, len(sheets))
	for n, s := range l.Sheets {
		used[s.Sheet]++
		z := sheets[s.Sheet]
		if len(s.Placements) == 0 {
			return fmt.Errorf("sheet %d has no pieces", n+1)
		}
		var boxes []box
		for _, p := range s.Placements {
			laid[p.Piece]++
			q := pieces[p.Piece]
			if p.Rotated && !q.MayRotate {
				return fmt.Errorf("sheet %d: %s is turned", n+1, q.Name)
			}
			x, y := p.Size(pieces)
			b := box{p.X, p.Y, p.X + x, p.Y + y}
			if b.x0 < z.Trim.Left || b.y0 < z.Trim.Bottom || b.x1 > z.Length-z.Trim.Right || b.y1 > z.Width-z.Trim.Top {
				return fmt.Errorf("sheet %d: %s leaves the sheet, or what its trims leave of it", n+1, q.Name)
			}
			boxes = append(boxes, b)
		}
		if p, found := broken(s, pieces, r.Kerf); found {
			return fmt.Errorf("sheet %d: %s does not lie beside the next of its set", n+1, pieces[p].Name)
		}
		if i, j, near := tooNear(boxes, r.Kerf); near {
			return fmt.Errorf("sheet %d: %s is nearer than the kerf to %s", n+1,
				pieces[s.Placements[i].Piece].Name, pieces[s.Placements[j].Piece].Name)
		}
		if r.Method != Guillotine {
			continue
		}
		stages, ok := parts(boxes, r.Kerf)
		if !ok {
			return fmt.Errorf("sheet %d: no cut from edge to edge takes its pieces apart", n+1)
		}
		if r.Stages > 0 && stages > r.Stages {
			return fmt.Errorf("sheet %d: its cuts take %d stages", n+1, stages)
		}
	}
	for i, p := range pieces {
		if laid[i]+l.Remaining[i] != p.Count || l.Remaining[i] < 0 {
			return fmt.Errorf("%s: %d are laid and %d left of %d", p.Name, laid[i], l.Remaining[i], p.Count)
		}
	}
	if p, found := mixed(l, pieces, sheets); found {
		return fmt.Errorf("%s is on a sheet of another batch than what it has to match", pieces[p].Name)
	}
	for i, s := range sheets {
		most := s.Count
		if s.Offcut && most == 0 {
			most = 1
		}
		if most > 0 && used[i] > most {
			return fmt.Errorf("sheets of %s: %d, of which there are %d", s.Name, used[i], most)
		}
	}
	return nil
}

// box is what a piece covers.
type box struct{ x0, y0, x1, y1 int64 }

// tooNear finds two boxes between which there is less than a kerf, if there are any: a
// line sweeps along x over those that it meets, which are apart along y.
func tooNear(boxes []box, kerf int64) (i, j int, near bool) {
	starts := make([]int, len(boxes))
	for i := range starts {
		starts[i] = i
	}
	ends := slices.Clone(starts)
	slices.SortFunc(starts, func(a, b int) int { return sign(boxes[a].x0 - boxes[b].x0) })
	slices.SortFunc(ends, func(a, b int) int { return sign(boxes[a].x1 - boxes[b].x1) })
	var met []int // by y
	place := func(y int64) int {
		n, _ := slices.BinarySearchFunc(met, y, func(k int, y int64) int { return sign(boxes[k].y0 - y) })
		return n
	}
	for _, k := range starts {
		b := boxes[k]
		for len(ends) > 0 && boxes[ends[0]].x1+kerf <= b.x0 {
			at := place(boxes[ends[0]].y0)
			met = slices.Delete(met, at, at+1)
			ends = ends[1:]
		}
		at := place(b.y0)
		if at > 0 && boxes[met[at-1]].y1+kerf > b.y0 {
			return met[at-1], k, true
		}
		if at < len(met) && b.y1+kerf > boxes[met[at]].y0 {
			return k, met[at], true
		}
		met = slices.Insert(met, at, k)
	}
	return 0, 0, false
}

// parts tells in how few stages cuts from edge to edge take pieces apart. A cut that
// trims a piece that is alone is none: saws make it with the last.
func parts(boxes []box, kerf int64) (stages int, ok bool) {
	best := -1
	for way := range 2 {
		if n, apart := partsAlong(boxes, kerf, way); apart && (best < 0 || n < best) {
			best = n
		}
	}
	return best, best >= 0
}

// partsAlong begins with cuts across one axis: x with 0.
func partsAlong(boxes []box, kerf int64, way int) (stages int, ok bool) {
	if len(boxes) == 1 {
		return 0, true
	}
	from := func(b box) int64 { return [...]int64{b.x0, b.y0}[way] }
	to := func(b box) int64 { return [...]int64{b.x1, b.y1}[way] }
	sorted := slices.Clone(boxes)
	slices.SortFunc(sorted, func(a, b box) int { return sign(from(a) - from(b)) })
	var groups [][]box
	begin, reach := 0, to(sorted[0])
	for i, b := range sorted {
		if i > begin && from(b) >= reach+kerf {
			groups = append(groups, sorted[begin:i])
			begin = i
		}
		reach = max(reach, to(b))
	}
	if groups = append(groups, sorted[begin:]); len(groups) == 1 {
		return 0, false
	}
	for _, g := range groups {
		n, apart := partsAlong(g, kerf, 1-way)
		if !apart {
			return 0, false
		}
		stages = max(stages, n)
	}
	return stages + 1, true
}
