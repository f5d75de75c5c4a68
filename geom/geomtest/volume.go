package geomtest

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Volume is that of a panel with all of its pockets, in cubic millimeters and in closed
// form. Between all heights at which sides begin, end, are steepest or cross, the sides
// keep their order along every level line; what is between two of them has one depth, and
// its area is the integral of x along both, which is elementary for lines and arcs. Loops
// count by the even-odd rule. It knows no chords, grid or triangles.
func Volume(p geom.Panel) float64 {
	var sides []side
	add := func(l geom.Loop, of int) {
		for i := range l {
			sides = appendSides(sides, l, i, of)
		}
	}
	add(p.Outline, 0)
	for i, h := range p.Holes {
		add(h, 1+i)
	}
	for i, k := range p.Pockets {
		add(k.Outline, 1+len(p.Holes)+i)
	}
	var volume float64
	heights := eventsOf(sides)
	for i := 1; i < len(heights); i++ {
		if low, high := heights[i-1], heights[i]; high-low > 1e-11 {
			volume += slab(p, sides, low, high)
		}
	}
	return volume
}

// side goes up from low to high: straight, or an arc that lies to one side of its center.
type side struct {
	of        int // its loop
	low, high geom.Point
	center    geom.Point
	radius    float64 // 0 for a straight side
	way       float64 // 1 where it lies to the right of its center
}

// appendSides cuts a side of a loop where it is highest and lowest.
func appendSides(list []side, l geom.Loop, i, of int) []side {
	up := func(a, b geom.Point) (geom.Point, geom.Point) {
		if a.Y > b.Y {
			return b, a
		}
		return a, b
	}
	a, b := l[i].Point, l.Next(i).Point
	if l[i].Bulge == 0 {
		if a.Y != b.Y {
			low, high := up(a, b)
			list = append(list, side{of: of, low: low, high: high})
		}
		return list
	}
	arc := l.Arc(i)
	c, r, sweep := arc.Center(), arc.Radius(), arc.Sweep()
	from := a.Sub(c).Angle()
	cuts := []float64{0, sweep}
	for k := -4; k <= 4; k++ { // where it is highest and lowest
		if at := math.Pi*(float64(k)+0.5) - from; at*sweep > 0 && math.Abs(at) < math.Abs(sweep) {
			cuts = append(cuts, at)
		}
	}
	slices.SortFunc(cuts, func(s, t float64) int {
		if math.Abs(s) < math.Abs(t) {
			return -1
		}
		return 1
	})
	place := func(turn float64) geom.Point {
		switch turn {
		case 0:
			return a
		case sweep:
			return b
		}
		return geom.Point{X: c.X + r*math.Cos(from+turn), Y: c.Y + r*math.Sin(from+turn)}
	}
	for k := 1; k < len(cuts); k++ {
		low, high := up(place(cuts[k-1]), place(cuts[k]))
		way := math.Copysign(1, math.Cos(from+(cuts[k-1]+cuts[k])/2))
		list = append(list, side{of, low, high, c, r, way})
	}
	return list
}

// x is where the side is at a height.
func (s side) x(y float64) float64 {
	if s.radius == 0 {
		return s.low.X + (s.high.X-s.low.X)*(y-s.low.Y)/(s.high.Y-s.low.Y)
	}
	dy := y - s.center.Y
	return s.center.X + s.way*math.Sqrt(math.Max(0, s.radius*s.radius-dy*dy))
}

// integral of x between two heights.
func (s side) integral(low, high float64) float64 {
	if s.radius == 0 {
		return (s.x(low) + s.x(high)) / 2 * (high - low)
	}
	under := func(y float64) float64 { // of sqrt(r2 - t2)
		t := math.Max(-s.radius, math.Min(s.radius, y-s.center.Y))
		return (t*math.Sqrt(math.Max(0, s.radius*s.radius-t*t)) + s.radius*s.radius*math.Asin(t/s.radius)) / 2
	}
	return s.center.X*(high-low) + s.way*(under(high)-under(low))
}

// eventsOf are the heights between which sides keep their order.
func eventsOf(sides []side) (list []float64) {
	for i, s := range sides {
		list = append(list, s.low.Y, s.high.Y)
		for _, t := range sides[:i] {
			if s.of != t.of {
				list = crossings(list, s, t)
			}
		}
	}
	slices.Sort(list)
	return list
}

// crossings appends the heights at which two sides cross.
func crossings(list []float64, s, t side) []float64 {
	low, high := math.Max(s.low.Y, t.low.Y), math.Min(s.high.Y, t.high.Y)
	if low >= high {
		return list
	}
	var at []float64
	switch {
	case s.radius == 0 && t.radius == 0:
		a, b := s.x(low)-t.x(low), s.x(high)-t.x(high)
		if a*b < 0 {
			at = append(at, low+(high-low)*a/(a-b))
		}
	case s.radius == 0 || t.radius == 0:
		if s.radius == 0 {
			s, t = t, s
		}
		// The foot of the center on the line, and as far along it as the circle reaches.
		d := t.high.Sub(t.low)
		d = d.Scale(1 / d.Norm())
		foot := t.low.Along(d, s.center.Sub(t.low).Dot(d))
		if h := s.radius*s.radius - foot.Sub(s.center).Dot(foot.Sub(s.center)); h > 0 {
			at = append(at, foot.Y+d.Y*math.Sqrt(h), foot.Y-d.Y*math.Sqrt(h))
		}
	default:
		d := t.center.Sub(s.center)
		n := d.Norm()
		if n < 1e-12 {
			return list
		}
		along := (n*n + s.radius*s.radius - t.radius*t.radius) / (2 * n)
		if h := s.radius*s.radius - along*along; h > 0 {
			mid := s.center.Along(d, along/n)
			at = append(at, mid.Y+d.X/n*math.Sqrt(h), mid.Y-d.X/n*math.Sqrt(h))
		}
	}
	for _, y := range at {
		if y > low && y < high {
			list = append(list, y)
		}
	}
	return list
}

// slab is the volume between two heights.
func slab(p geom.Panel, sides []side, low, high float64) (volume float64) {
	mid := (low + high) / 2
	var here []side
	for _, s := range sides {
		if s.low.Y < mid && s.high.Y > mid {
			here = append(here, s)
		}
	}
	slices.SortStableFunc(here, func(s, t side) int {
		switch a, b := s.x(mid), t.x(mid); {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return 0
	})
	within := make([]bool, 1+len(p.Holes)+len(p.Pockets))
	for i, s := range here {
		within[s.of] = !within[s.of]
		if i+1 == len(here) {
			break
		}
		if web := left(p, within, mid); web > 0 {
			volume += web * (here[i+1].integral(low, high) - s.integral(low, high))
			// Where a floor leans, web and width both change evenly between straight sides.
			slope := left(p, within, high) - left(p, within, low)
			widens := here[i+1].x(high) - s.x(high) - here[i+1].x(low) + s.x(low)
			volume += slope * widens * (high - low) / 12
		}
	}
	return volume
}

// left is the wood within some of a panel's loops at a height.
func left(p geom.Panel, within []bool, y float64) float64 {
	if !within[0] || slices.Contains(within[1:1+len(p.Holes)], true) {
		return 0
	}
	inside, outside := 0.0, 0.0
	for i, k := range p.Pockets {
		if !within[1+len(p.Holes)+i] {
			continue
		}
		if k.Face == geom.Inside {
			inside = math.Max(inside, k.DepthAt(y))
		} else {
			outside = math.Max(outside, k.DepthAt(y))
		}
	}
	return p.Thickness - inside - outside
}
