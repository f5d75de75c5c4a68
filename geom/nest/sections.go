package nest

import (
	"cmp"
	"slices"

	"drawerwright/geom"
)

// CutTree is a rectangle of a sheet, in its coordinates, and how saws take it apart: into
// Sections side by side along an axis, a kerf apart, what is waste last. One without
// sections is a piece, or waste.
type CutTree struct {
	X, Y, Length, Width int64     // along x and y
	Piece               int       // index into the sheet's placed pieces; -1 for none
	Axis                geom.Axis // along which its sections lie side by side
	Sections            []CutTree
}

// Waste reports whether nothing is cut from it.
func (b CutTree) Waste() bool { return b.Piece < 0 && len(b.Sections) == 0 }

// Placed are the pieces of a board, in the order of its sections.
func (b CutTree) Placed() (list []int) {
	if b.Piece >= 0 {
		return []int{b.Piece}
	}
	for _, s := range b.Sections {
		list = append(list, s.Placed()...)
	}
	return list
}

// Area of a board.
func (b CutTree) Area() float64 { return float64(b.Length) * float64(b.Width) }

// From is where a board begins along an axis.
func (b CutTree) From(axis geom.Axis) int64 {
	if axis == geom.AlongY {
		return b.Y
	}
	return b.X
}

// Size of a board along an axis.
func (b CutTree) Size(axis geom.Axis) int64 {
	if axis == geom.AlongY {
		return b.Width
	}
	return b.Length
}

// ShorterSide is the axis along which a board is shorter, y where both sides are equal.
func (b CutTree) ShorterSide() geom.Axis {
	if b.Width <= b.Length {
		return geom.AlongY
	}
	return geom.AlongX
}

// Part is a stretch of the board along an axis.
func (b CutTree) Part(axis geom.Axis, from, to int64) CutTree {
	out := CutTree{X: b.X, Y: b.Y, Length: b.Length, Width: b.Width, Piece: -1}
	if axis == geom.AlongY {
		out.Y, out.Width = from, to-from
	} else {
		out.X, out.Length = from, to-from
	}
	return out
}

// Cuts is how saws take a sheet of a guillotine layout apart, its trims off; false where
// no cuts from edge to edge do. Of the two directions to begin with, it takes the one
// that keeps the larger rectangle of waste whole, as far as the stages allow that, then
// the one with fewer stages, then the one with the longer cuts first: small pieces get
// their width while they are part of a long board.
func Cuts(l LaidSheet, pieces []Piece, sheet Sheet, r Rules) (CutTree, bool) {
	t := sheet.Trim
	root := CutTree{X: t.Left, Y: t.Bottom, Length: sheet.Length - t.Left - t.Right, Width: sheet.Width - t.Bottom - t.Top, Piece: -1}
	boxes := make([]box, len(l.Placements))
	for i, p := range l.Placements {
		x, y := p.Size(pieces)
		boxes[i] = box{p.X, p.Y, p.X + x, p.Y + y}
	}
	b, ok := takeApart(root, boxes, r)
	if !ok && r.First != FirstAny { // a set may be as wide as the sheet, its pieces are not
		r.First = FirstAny
		b, ok = takeApart(root, boxes, r)
	}
	return b, ok
}

func takeApart(root CutTree, boxes []box, r Rules) (best CutTree, found bool) {
	s := saw{boxes: boxes, kerf: r.Kerf}
	all := make([]int, len(boxes))
	for i := range all {
		all[i] = i
	}
	bestStages := 0
	for _, axis := range s.first(root, r.First) {
		if r.First != FirstAny && found {
			break
		}
		for _, off := range []bool{false, true} {
			b, stages, ok := s.apart(root, all, axis, off)
			if !ok || r.Stages > 0 && stages > r.Stages {
				continue
			}
			if found && cmp.Or(cmp.Compare(largest(b), largest(best)), cmp.Compare(bestStages, stages)) <= 0 {
				continue
			}
			best, bestStages, found = b, stages, true
		}
	}
	return best, found
}

// first are the axes along which the sections of a sheet may lie side by side: of strips that run along x, y. Where a
// piece is as wide as the sheet there is nothing to cut that way.
func (s saw) first(root CutTree, f First) []geom.Axis {
	axis := map[First]geom.Axis{FirstAny: root.ShorterSide(), FirstAlongX: geom.AlongY, FirstAlongY: geom.AlongX}[f]
	spans := func(i int) bool {
		from, to := s.span(i, axis)
		return root.Size(axis)-(to-from) <= s.kerf
	}
	both := f == FirstAny
	for i := range s.boxes {
		both = both || spans(i)
	}
	if !both {
		return []geom.Axis{axis}
	}
	return []geom.Axis{axis, 1 - axis}
}

// largest is the area of the largest rectangle of waste.
func largest(b CutTree) float64 {
	if b.Waste() {
		return b.Area()
	}
	most := 0.0
	for _, s := range b.Sections {
		most = max(most, largest(s))
	}
	return most
}

// saw takes boards apart.
type saw struct {
	boxes []box
	kerf  int64
}

func (s saw) span(i int, axis geom.Axis) (from, to int64) {
	if b := s.boxes[i]; axis == geom.AlongY {
		return b.y0, b.y1
	} else {
		return b.x0, b.x1
	}
}

// apart takes a board with some pieces apart, beginning along an axis. With off, waste at
// its end may be cut off there where that is all that can be done along it.
func (s saw) apart(b CutTree, list []int, axis geom.Axis, off bool) (CutTree, int, bool) {
	if len(list) == 1 {
		return s.single(b, list[0], axis), 0, true
	}
	slices.SortFunc(list, func(i, j int) int {
		a, _ := s.span(i, axis)
		b, _ := s.span(j, axis)
		return cmp.Or(cmp.Compare(a, b), cmp.Compare(i, j))
	})
	end := b.From(axis) + b.Size(axis)
	at := b.From(axis)
	stages := 0
	ok := true
	b.Axis = axis
	section := func(from, to int64, members []int) {
		if from-s.kerf > at {
			b.Sections = append(b.Sections, b.Part(axis, at, from-s.kerf))
		}
		one, n, apart := s.apart(b.Part(axis, from, to), slices.Clone(members), 1-axis, false)
		b.Sections, stages, ok = append(b.Sections, one), max(stages, n), ok && apart
		at = to + s.kerf
	}
	begin := 0
	first, reach := s.span(list[0], axis)
	for n, i := range list {
		from, to := s.span(i, axis)
		if n > begin && from >= reach+s.kerf {
			section(first, reach, list[begin:n])
			begin, first = n, from
		}
		reach = max(reach, to)
	}
	if begin == 0 && (!off || end-reach <= s.kerf) {
		return b, 0, false
	}
	section(first, reach, list[begin:])
	if end > at {
		b.Sections = append(b.Sections, b.Part(axis, at, end))
	}
	return b, stages + 1, ok
}

// single cuts what is waste off a board of one piece: along the axis first.
func (s saw) single(b CutTree, i int, axis geom.Axis) CutTree {
	for _, way := range [...]geom.Axis{axis, 1 - axis} {
		from, to := s.span(i, way)
		if b.From(way) == from && b.From(way)+b.Size(way) == to {
			continue
		}
		b.Axis = way
		if from-s.kerf > b.From(way) {
			b.Sections = append(b.Sections, b.Part(way, b.From(way), from-s.kerf))
		}
		b.Sections = append(b.Sections, s.single(b.Part(way, from, to), i, 1-way))
		if end := b.From(way) + b.Size(way); to+s.kerf < end {
			b.Sections = append(b.Sections, b.Part(way, to+s.kerf, end))
		}
		return b
	}
	b.Piece = i
	return b
}

// tidy moves the pieces of a guillotine layout so that on every board equal sections lie
// together and the waste comes last, in one. Of a sheet, and of boards that run along a fence,
// the wide sections are cut off first, so that what is in hand is soon light and narrow ones come
// off a narrow board; of boards longer than the cut, which lie on a sled, the short ones, for the
// rest of a long board is held more safely than a short piece.
func tidy(l *LaidSheet, pieces []Piece, sheet Sheet, r Rules) {
	if r.Method != Guillotine {
		return
	}
	// What lies together may come apart better in the other direction, so once more.
	for range 8 {
		b, ok := Cuts(*l, pieces, sheet, r)
		before := slices.Clone(l.Placements)
		if ok {
			settling{l, r.Kerf}.put(b, b.X, b.Y, true)
		}
		if slices.Equal(before, l.Placements) {
			return
		}
	}
}

// settling moves the pieces of a sheet that is sawn with a kerf.
type settling struct {
	laid *LaidSheet
	kerf int64
}

// put puts a board's pieces where it is to lie.
func (s settling) put(b CutTree, x, y int64, whole bool) {
	if b.Piece >= 0 {
		s.laid.Placements[b.Piece].X, s.laid.Placements[b.Piece].Y = x, y
		return
	}
	list := slices.DeleteFunc(slices.Clone(b.Sections), CutTree.Waste)
	size := func(c, d CutTree) int { return cmp.Compare(c.Size(b.Axis), d.Size(b.Axis)) }
	slices.SortStableFunc(list, size)
	if alongFence := b.Size(b.Axis) <= b.Size(1-b.Axis); alongFence || whole {
		slices.SortStableFunc(list, func(c, d CutTree) int { return size(d, c) })
	}
	for _, c := range list {
		s.put(c, x, y, false)
		if step := c.Size(b.Axis) + s.kerf; b.Axis == geom.AlongY {
			y += step
		} else {
			x += step
		}
	}
}

// Offcut is a rectangle of a sheet that is worth keeping.
type Offcut struct{ X, Y, Length, Width int64 }

// Offcuts are those that are left of a sheet, the largest first, none with sides of less
// than a longer and a shorter one, kept in this order: of guillotine layouts what their cuts leave whole, of
// free ones what is beyond all pieces at an end and at a side.
func Offcuts(l LaidSheet, pieces []Piece, sheet Sheet, r Rules, kept [2]int64) []Offcut {
	var list []Offcut
	keep := func(b CutTree) { list = append(list, Offcut{b.X, b.Y, b.Length, b.Width}) }
	if b, ok := Cuts(l, pieces, sheet, r); r.Method == Guillotine && ok {
		var walk func(CutTree)
		walk = func(b CutTree) {
			if b.Waste() {
				keep(b)
			}
			for _, s := range b.Sections {
				walk(s)
			}
		}
		walk(b)
	} else {
		t := sheet.Trim
		x, y := int64(0), int64(0)
		for _, p := range l.Placements {
			w, h := p.Size(pieces)
			x, y = max(x, p.X+w+r.Kerf), max(y, p.Y+h+r.Kerf)
		}
		right, top := sheet.Length-t.Right, sheet.Width-t.Top
		end := CutTree{X: x, Y: t.Bottom, Length: right - x, Width: top - t.Bottom, Piece: -1}
		side := CutTree{X: t.Left, Y: y, Length: right - t.Left, Width: top - y, Piece: -1}
		if end.Length > 0 && side.Width > 0 { // one of them has the corner
			if end.Area() >= side.Area() {
				side.Length = x - r.Kerf - t.Left
			} else {
				end.Width = y - r.Kerf - t.Bottom
			}
		}
		keep(end)
		keep(side)
	}
	return Kept(list, kept)
}

// Kept are offcuts, the largest first, without those whose sides are less than a longer and a shorter one.
func Kept(list []Offcut, sides [2]int64) []Offcut {
	list = slices.DeleteFunc(list, func(o Offcut) bool {
		return max(o.Length, o.Width) < sides[0] || min(o.Length, o.Width) < sides[1]
	})
	slices.SortStableFunc(list, func(a, b Offcut) int {
		return cmp.Compare(float64(b.Length)*float64(b.Width), float64(a.Length)*float64(a.Width))
	})
	return list
}
