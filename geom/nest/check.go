package nest

import (
	"errors"
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
		if err := sawn(s, boxes, pieces, z, r); err != nil {
			return fmt.Errorf("sheet %d: %w", n+1, err)
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

// sawn says why no saw takes a sheet apart by the rules.
func sawn(s LaidSheet, boxes []box, pieces []Piece, z Sheet, r Rules) error {
	if r.Method != Guillotine {
		return nil
	}
	stages, ok := parts(boxes, r.Kerf)
	inSet := func(p Placement) bool { return pieces[p.Piece].Set > 0 } // that may be as wide as the sheet
	switch {
	case !ok:
		return errors.New("no cut from edge to edge takes its pieces apart")
	case r.Stages > 0 && stages > r.Stages:
		return fmt.Errorf("its cuts take %d stages", stages)
	case !begins(boxes, z, r) && !slices.ContainsFunc(s.Placements, inSet):
		return errors.New("its first cuts do not run as the rules say")
	}
	return nil
}

// begins reports whether the first cuts of a sheet can run as the rules say: they take its pieces apart, or waste off
// them all, or a piece is as wide as the sheet, and there is nothing to cut that way.
func begins(boxes []box, z Sheet, r Rules) bool {
	if r.First == FirstAny {
		return true
	}
	turned, begin, end := slices.Clone(boxes), z.Trim.Bottom, z.Width-z.Trim.Top
	if r.First == FirstAlongY {
		begin, end = z.Trim.Left, z.Length-z.Trim.Right
		for i, b := range boxes {
			turned[i] = box{b.y0, b.x0, b.y1, b.x1}
		}
	}
	if _, apart := partsAlong(turned, r.Kerf, 1); apart {
		return true
	}
	reach := begin
	for _, b := range turned {
		if reach = max(reach, b.y1); b.y1-b.y0 >= end-begin-r.Kerf {
			return true
		}
	}
	return end-reach > r.Kerf
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
