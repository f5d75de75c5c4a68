package geom

// Rect is an axis-parallel box in a plane, Min at its lower left. The zero Rect
// is a single point at the origin.
type Rect struct{ Min, Max Point }

// Around is the box about points; the zero Rect of none.
func Around(points ...Point) Rect {
	if len(points) == 0 {
		return Rect{}
	}
	box := Rect{points[0], points[0]}
	for _, p := range points[1:] {
		box = box.Include(p)
	}
	return box
}

// Width and Height of the box.
func (r Rect) Width() float64  { return r.Max.X - r.Min.X }
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Across and Upright are the box's extents along x and y.
func (r Rect) Across() Interval  { return Interval{r.Min.X, r.Max.X} }
func (r Rect) Upright() Interval { return Interval{r.Min.Y, r.Max.Y} }

// Center is the middle of the box.
func (r Rect) Center() Point { return r.Min.Middle(r.Max) }

// Corners of the box, counter-clockwise from Min.
func (r Rect) Corners() Ring {
	return Ring{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}
}

// Loop is the box's outline, counter-clockwise from Min.
func (r Rect) Loop() Loop { return Polygon(r.Corners()...) }

// Union is the smallest box about both.
func (r Rect) Union(s Rect) Rect {
	return Rect{
		Point{min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)},
		Point{max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)},
	}
}

// Intersect is what two boxes have in common; Max is below Min where that is nothing.
func (r Rect) Intersect(s Rect) Rect {
	return Rect{
		Point{max(r.Min.X, s.Min.X), max(r.Min.Y, s.Min.Y)},
		Point{min(r.Max.X, s.Max.X), min(r.Max.Y, s.Max.Y)},
	}
}

// Include is the smallest box about the box and a point.
func (r Rect) Include(p Point) Rect { return r.Union(Rect{p, p}) }

// Grow makes the box larger by k on every side.
func (r Rect) Grow(k float64) Rect {
	return Rect{Point{r.Min.X - k, r.Min.Y - k}, Point{r.Max.X + k, r.Max.Y + k}}
}

// Translate moves the box.
func (r Rect) Translate(by Point) Rect { return Rect{r.Min.Add(by), r.Max.Add(by)} }

// TurnOver is the box as seen on a panel of a length that was turned over end for end.
func (r Rect) TurnOver(length float64) Rect {
	return Rect{Point{length - r.Max.X, r.Min.Y}, Point{length - r.Min.X, r.Max.Y}}
}

// Contains reports whether another box lies in this one; sides may lie on sides.
func (r Rect) Contains(s Rect) bool {
	return s.Min.X >= r.Min.X && s.Max.X <= r.Max.X && s.Min.Y >= r.Min.Y && s.Max.Y <= r.Max.Y
}

// Overlaps reports whether two boxes have more in common than sides or corners.
func (r Rect) Overlaps(s Rect) bool {
	return r.Min.X < s.Max.X && s.Min.X < r.Max.X && r.Min.Y < s.Max.Y && s.Min.Y < r.Max.Y
}

// Apart reports whether two boxes have nothing in common, no side and no corner.
func (r Rect) Apart(s Rect) bool {
	return r.Max.X < s.Min.X || s.Max.X < r.Min.X || r.Max.Y < s.Min.Y || s.Max.Y < r.Min.Y
}

// Gap is how far two boxes are apart along x or y, whichever is more, in
// millimeters: things in them are no nearer. Below 0 where they overlap.
func (r Rect) Gap(s Rect) float64 {
	return max(r.Min.X-s.Max.X, s.Min.X-r.Max.X, r.Min.Y-s.Max.Y, s.Min.Y-r.Max.Y)
}
