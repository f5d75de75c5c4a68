package nest

import "slices"

// ledge is a level stretch of the line up to which a sheet is filled.
type ledge struct{ x, y, w int64 }

// taste is what a free layout prefers in the pieces that it sets on a ledge.
type taste struct {
	width, level, noise float64
}

// drop fills a rectangle from below without regard to cuts: the lowest ledge gets the
// piece that suits it best (E. K. Burke, G. Kendall, G. Whitwell, 2004, best fit, with
// values of pieces; from memory).
func (f *filler) drop(w, h int64, like taste, chance func() float64) {
	line := append(f.skyline[:0], ledge{0, 0, w})
	for len(line) > 0 {
		low := 0
		for i := range line {
			if line[i].y < line[low].y {
				low = i
			}
		}
		l := line[low]
		if l.y >= h {
			break
		}
		left, right := h, h
		if low > 0 {
			left = line[low-1].y
		}
		if low+1 < len(line) {
			right = line[low+1].y
		}
		best, at := -1.0, -1
		for i, v := range f.ways[0] {
			if v.along > l.w || f.left[v.kind] == 0 {
				continue
			}
			f.work++
			if l.y+v.across > h {
				break // they are in the order of their height
			}
			s := f.value[v.kind]
			if v.along == l.w {
				s *= 1 + like.width
			}
			if top := l.y + v.across; top == left || top == right {
				s *= 1 + like.level
			}
			s *= 1 + float64(like.noise*chance())
			if s > best {
				best, at = s, i
			}
		}
		if at < 0 {
			// Nothing fits: the ledge rises to the lower of its neighbours.
			line = rise(line, low, min(left, right))
			continue
		}
		v := f.ways[0][at]
		x := l.x
		rightwards := right > left && v.along < l.w // beside the higher wall
		if rightwards {
			x = l.x + l.w - v.along
		}
		f.left[v.kind]--
		f.placed = append(f.placed, spot{kind: v.kind, x: x, y: l.y, turned: v.turned})
		top := ledge{x, l.y + v.across, v.along}
		rest := ledge{l.x + v.along, l.y, l.w - v.along}
		if rightwards {
			rest.x = l.x
		}
		switch {
		case rest.w == 0:
			line[low] = top
		case rightwards:
			line[low] = rest
			line = slices.Insert(line, low+1, top)
		default:
			line[low] = top
			line = slices.Insert(line, low+1, rest)
		}
		line = level(line)
	}
	f.skyline = line
}

// rise lifts a ledge to a height.
func rise(line []ledge, at int, y int64) []ledge {
	line[at].y = y
	return level(line)
}

// level joins neighbours of one height.
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
