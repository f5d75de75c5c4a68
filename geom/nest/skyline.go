package nest

import "slices"

// ledge is a level stretch of the line up to which a sheet is filled.
type ledge struct{ x, y, w int64 }

// taste is what is preferred in the pieces that are set on a ledge, or in a corner.
type taste struct {
	width, level, noise float64
	cross               float64 // how often the cuts beside a piece run the other way than its sides say
}

// drop fills a rectangle from below without regard to cuts: the lowest ledge gets the
// piece that suits it best (E. K. Burke, G. Kendall, G. Whitwell, 2004, best fit, with
// values of pieces; from memory).
func (f *filler) drop(w, h int64, like taste, chance func() float64) {
	line := append(f.skyline[:0], ledge{0, 0, w})
	for len(line) > 0 {
		low := lowest(line)
		if line[low].y >= h {
			break
		}
		n := nicheAt(line, low, h)
		at := f.suiting(n, like, chance)
		if at < 0 {
			// Nothing fits: the ledge rises to the lower of its neighbors.
			line = rise(line, low, min(n.left, n.right))
			continue
		}
		v := f.ways[0][at]
		x := n.x
		if n.right > n.left && v.along < n.w { // beside the higher wall
			x = n.x + n.w - v.along
		}
		f.left[v.kind]--
		f.placed = append(f.placed, spot{kind: v.kind, x: x, y: n.y, turned: v.turned})
		line = stack(line, low, ledge{x, n.y + v.across, v.along})
	}
	f.skyline = line
}

// lowest is the lowest ledge, the first where several are.
func lowest(line []ledge) int {
	low := 0
	for i := range line {
		if line[i].y < line[low].y {
			low = i
		}
	}
	return low
}

// niche is a ledge between the walls that its neighbors are, all below a top.
type niche struct {
	ledge
	left, right int64 // up to where its walls reach; the sheet's sides reach up to the top
	top         int64
}

func nicheAt(line []ledge, at int, top int64) niche {
	n := niche{line[at], top, top, top}
	if at > 0 {
		n.left = line[at-1].y
	}
	if at+1 < len(line) {
		n.right = line[at+1].y
	}
	return n
}

// suiting is the variant, of those that run along x, that suits a niche best, or -1 where
// none goes into it.
func (f *filler) suiting(n niche, like taste, chance func() float64) int {
	best, at := -1.0, -1
	for i, v := range f.ways[0] {
		if v.along > n.w || f.left[v.kind] == 0 {
			continue
		}
		f.work++
		if n.y+v.across > n.top {
			break // they are in the order of their height
		}
		s := f.value[v.kind]
		if v.along == n.w {
			s *= 1 + like.width
		}
		if top := n.y + v.across; top == n.left || top == n.right {
			s *= 1 + like.level
		}
		s *= 1 + float64(like.noise*chance())
		if s > best {
			best, at = s, i
		}
	}
	return at
}

// stack puts the top of a piece in the place of the ledge that it stands on, at an end of
// it, and leaves the rest of the ledge beside it.
func stack(line []ledge, at int, top ledge) []ledge {
	under := line[at]
	switch {
	case top.w == under.w:
		line[at] = top
	case top.x > under.x:
		line[at].w -= top.w
		line = slices.Insert(line, at+1, top)
	default:
		line[at] = top
		line = slices.Insert(line, at+1, ledge{under.x + top.w, under.y, under.w - top.w})
	}
	return level(line)
}

// rise lifts a ledge to a height.
func rise(line []ledge, at int, y int64) []ledge {
	line[at].y = y
	return level(line)
}

// level joins neighbors of one height.
func level(line []ledge) []ledge {
	out := line[:1]
	for _, l := range line[1:] {
		if n := len(out) - 1; out[n].y == l.y {
			out[n].w += l.w
		} else {
			out = append(out, l)
		}
	}
	return out
}
