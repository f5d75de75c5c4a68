package geom

import (
	"math"
	"slices"
)

// Vertex is a corner of a loop and the shape of the side that leaves it.
type Vertex struct {
	Point
	Bulge float64 // of the side to the next vertex; 0 is straight
	Marks Mark    // of the vertex and of the side to the next one
}

// Mark says what others do at a place of a loop. It stays with its place when the loop is
// reversed, moved or turned over, or gets more vertices.
type Mark uint8

const (
	// Mating is of a side that another part bears on: no tab may leave a stub there.
	Mating Mark = 1 << iota
	// Relief is of an inside corner into which another part goes with its square corner:
	// where a round bit leaves wood there, the corner needs relief.
	Relief

	ofSides = Mating
)

// Has reports whether a mark is among others.
func (m Mark) Has(mark Mark) bool { return m&mark != 0 }

// With marks vertices, or the sides that leave them, by their index.
func (l Loop) With(mark Mark, at ...int) Loop {
	m := slices.Clone(l)
	for _, i := range at {
		m[i].Marks |= mark
	}
	return m
}

// Marked are the vertices that have a mark, by their index.
func (l Loop) Marked(mark Mark) (list []int) {
	for i, v := range l {
		if v.Marks.Has(mark) {
			list = append(list, i)
		}
	}
	return list
}

// Loop is a closed chain of straight and arc sides; the last vertex joins the
// first. Counter-clockwise loops have a positive area. The zero Loop is empty.
//
// Bulge is the tangent of a quarter of the angle that an arc sweeps, positive
// counter-clockwise (DXF Reference, LWPOLYLINE, group code 42).
type Loop []Vertex

// Polygon makes a loop of straight sides.
func Polygon(points ...Point) Loop {
	l := make(Loop, len(points))
	for i, p := range points {
		l[i].Point = p
	}
	return l
}

// Rectangle is the counter-clockwise loop from (x0, y0) to (x1, y1), from its
// lower left corner.
func Rectangle(x0, y0, x1, y1 float64) Loop {
	return Polygon(Point{x0, y0}, Point{x1, y0}, Point{x1, y1}, Point{x0, y1})
}

// coincident is the distance, in millimeters, below which two computed points
// are one: far under any cut, far over the rounding of float64 at 4 m.
const coincident = 1e-9

// RoundedRectangle has corners of radius r, at most half the shorter side; a
// slot with round ends where it is just that.
func RoundedRectangle(x0, y0, x1, y1, r float64) Loop {
	r = math.Min(r, math.Min(x1-x0, y1-y0)/2)
	var l Loop
	side := func(a, b Point, bulge float64) {
		l = append(l, Vertex{Point: a})
		if a.To(b) > coincident {
			l = append(l, Vertex{Point: b, Bulge: bulge})
		} else {
			l[len(l)-1].Bulge = bulge
		}
	}
	side(Point{x0 + r, y0}, Point{x1 - r, y0}, QuarterTurn)
	side(Point{x1, y0 + r}, Point{x1, y1 - r}, QuarterTurn)
	side(Point{x1 - r, y1}, Point{x0 + r, y1}, QuarterTurn)
	side(Point{x0, y1 - r}, Point{x0, y0 + r}, QuarterTurn)
	return l
}

// Circle is two half turns, counter-clockwise from its rightmost point.
func Circle(c Point, r float64) Loop {
	return Loop{{Point: Point{c.X + r, c.Y}, Bulge: 1}, {Point: Point{c.X - r, c.Y}, Bulge: 1}}
}

// AsCircle reports whether the loop is a circle as [Circle] makes it.
func (l Loop) AsCircle() (center Point, radius float64, ok bool) {
	if len(l) != 2 || l[0].Bulge != l[1].Bulge || math.Abs(l[0].Bulge) != 1 {
		return Point{}, 0, false
	}
	return l[0].Middle(l[1].Point), l[0].To(l[1].Point) / 2, true
}

// Straight reports whether all sides are straight.
func (l Loop) Straight() bool {
	for i := range l {
		if l[i].Bulge != 0 {
			return false
		}
	}
	return true
}

// AsRect is the box that the loop is the outline of, whichever way it runs, to within a
// distance in millimeters.
func (l Loop) AsRect(within float64) (r Rect, ok bool) {
	if len(l) != 4 || !l.Straight() {
		return Rect{}, false
	}
	// Level and upright sides by turns, neither shorter than that.
	level := math.Abs(l[0].Y-l[1].Y) <= within
	for i := range l {
		to := l[(i+1)%4].Sub(l[i].Point)
		if (math.Abs(to.Y) <= within) != level || (math.Abs(to.X) <= within) == level {
			return Rect{}, false
		}
		level = !level
	}
	return Around(l[0].Point, l[1].Point, l[2].Point, l[3].Point), true
}

// Before and After are the vertices next to vertex i, by their index.
func (l Loop) Before(i int) int { return (i + len(l) - 1) % len(l) }
func (l Loop) After(i int) int  { return (i + 1) % len(l) }

// Next is the end of side i.
func (l Loop) Next(i int) Vertex { return l[l.After(i)] }

// Arc is side i, of which the bulge is not 0.
func (l Loop) Arc(i int) Arc { return Arc{l[i].Point, l.Next(i).Point, l[i].Bulge} }

// directions are those in which side i runs at its ends, as vectors as long as its
// chord: an arc leaves its chord by half of the angle that it sweeps.
func (l Loop) directions(i int) (start, end Point) {
	chord := l.Next(i).Sub(l[i].Point)
	if l[i].Bulge == 0 {
		return chord, chord
	}
	half := 2 * math.Atan(l[i].Bulge)
	return chord.Rotate(-half), chord.Rotate(half)
}

// Turn is by how much the loop turns at vertex i, in radians, above 0 to the left.
func (l Loop) Turn(i int) float64 {
	_, in := l.directions(l.Before(i))
	out, _ := l.directions(i)
	return in.Turn(out)
}

// Fillet are the ends of the arc of a radius that touches both sides at vertex i, which
// are straight, and how much it cuts off each of them, in millimeters. Whether they are
// that long is not asked.
func (l Loop) Fillet(i int, radius float64) (from, to Vertex, cut float64) {
	v := l[i].Point
	in, out := v.Sub(l[l.Before(i)].Point), l.Next(i).Sub(v)
	turn := in.Turn(out)
	cut = float64(radius * math.Tan(math.Abs(turn)/2))
	return Vertex{Point: v.Along(in, -cut/in.Norm()), Bulge: BulgeOf(turn)}, Vertex{Point: v.Along(out, cut/out.Norm())}, cut
}

// Area in square millimeters is signed, positive for a counter-clockwise loop,
// and exact for arcs.
func (l Loop) Area() float64 {
	sum := 0.0
	for i, a := range l {
		b := l.Next(i)
		// Relative to the first vertex, so that a small loop far out keeps its digits.
		sum += a.Sub(l[0].Point).Cross(b.Sub(l[0].Point)) / 2
		if a.Bulge != 0 {
			sum += l.Arc(i).SegmentArea()
		}
	}
	return sum
}

// Perimeter is the length of all sides, in millimeters.
func (l Loop) Perimeter() float64 {
	sum := 0.0
	for i := range l {
		sum += l.SideLength(i)
	}
	return sum
}

// SideLength is the length of side i, in millimeters.
func (l Loop) SideLength(i int) float64 {
	if l[i].Bulge != 0 {
		return l.Arc(i).Length()
	}
	return l[i].To(l.Next(i).Point)
}

// Bounds is the box about the loop, arcs included; the zero Rect when empty.
func (l Loop) Bounds() Rect {
	if len(l) == 0 {
		return Rect{}
	}
	box := Rect{l[0].Point, l[0].Point}
	for i, v := range l {
		box = box.Include(v.Point)
		if v.Bulge != 0 {
			box = box.Union(l.Arc(i).Bounds())
		}
	}
	return box
}

// Flatten replaces arcs by chords that keep within tolerance of them, in
// millimeters, and are never longer than a quarter turn. One arc becomes 4096
// chords at most, and as many for a tolerance that is not above 0.
func (l Loop) Flatten(tolerance float64) Ring {
	points := make(Ring, 0, len(l))
	for i, v := range l {
		points = append(points, v.Point)
		if v.Bulge != 0 {
			points = l.Arc(i).chords(points, tolerance)
		}
	}
	return points
}

// Reverse gives the same loop the other way round.
func (l Loop) Reverse() Loop {
	r := make(Loop, len(l))
	for i := range l {
		at := l[len(l)-1-i]
		side := l[l.Before(len(l)-1-i)] // which now leaves it
		r[i] = Vertex{at.Point, -side.Bulge, at.Marks&^ofSides | side.Marks&ofSides}
	}
	return r
}

// Translate moves the loop.
func (l Loop) Translate(by Point) Loop {
	m := slices.Clone(l)
	for i := range m {
		m[i].Point = m[i].Add(by)
	}
	return m
}

// TurnOver gives the loop as seen on a panel of the given length that was
// turned over end for end: x becomes length - x, y stays. It runs the same way
// round as before.
func (l Loop) TurnOver(length float64) Loop {
	m := make(Loop, len(l))
	for i, v := range l {
		m[i] = Vertex{Point{length - v.X, v.Y}, -v.Bulge, v.Marks}
	}
	return m.Reverse()
}

// MinInsideRadius is the smallest radius, in millimeters, of the arcs that a
// round cutter has to get into inside a counter-clockwise loop; infinite where
// there is none. Sharp corners do not count: what stands in them is for the part
// that goes in to say.
func (l Loop) MinInsideRadius() float64 {
	least := math.Inf(1)
	for i, v := range l {
		if v.Bulge > 0 {
			least = math.Min(least, l.Arc(i).Radius())
		}
	}
	return least
}
