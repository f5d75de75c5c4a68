package sweep

import "drawerwright/geom"

// boxes finds those of many boxes that meet another. Neighbors in the list are
// mostly neighbors in the plane, as sides of a loop are, so that every [fan]
// of them are held by one larger box, and so on upward.
type boxes [][]geom.Rect

const fan = 8

func newBoxes(curves []curve) boxes {
	level := make([]geom.Rect, len(curves))
	for i := range curves {
		level[i] = curves[i].box()
	}
	b := boxes{level}
	for len(level) > fan {
		above := make([]geom.Rect, 0, (len(level)+fan-1)/fan)
		for i := 0; i < len(level); i += fan {
			box := level[i]
			for _, r := range level[i:min(i+fan, len(level))] {
				box = box.Union(r)
			}
			above = append(above, box)
		}
		b = append(b, above)
		level = above
	}
	return b
}

// each calls f with the number of every box from first on that meets r, in
// order, until f gives false; it reports whether f never did.
func (b boxes) each(r geom.Rect, first int, f func(i int) bool) bool {
	q := query{r, first, f}
	return q.descend(b, 0, len(b[len(b)-1]))
}

// query asks boxes for those that meet a rectangle, from a number on.
type query struct {
	meets geom.Rect
	first int
	found func(i int) bool // false ends it
}

// descend looks at the boxes from to upto of the last level. The depth is the number
// of levels, which is the logarithm of the number of boxes.
func (q *query) descend(b boxes, from, upto int) bool {
	level := len(b) - 1
	span := 1
	for range level {
		span *= fan
	}
	for i := max(from, q.first/span); i < upto; i++ {
		if b[level][i].Apart(q.meets) {
			continue
		}
		if level == 0 {
			if !q.found(i) {
				return false
			}
			continue
		}
		if !q.descend(b[:level], i*fan, min((i+1)*fan, len(b[level-1]))) {
			return false
		}
	}
	return true
}
