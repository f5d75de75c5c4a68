package geom

import "math"

// arc is the piece of a circle from a to b with a bulge: the tangent of a
// quarter of the angle swept, positive counter-clockwise, as DXF defines it.
// The bulge is not 0.
type arc struct {
	a, b  Point
	bulge float64
}

// straight tells whether the arc is too flat to tell from its chord: the sagitta
// is |B| c / 2.
func (s arc) straight() bool { return math.Abs(s.bulge)*s.a.To(s.b)/2 <= coincident }

// sweep is the angle turned through, in radians, positive counter-clockwise.
func (s arc) sweep() float64 { return 4 * math.Atan(s.bulge) }

// radius follows from the chord c: c (1 + B²) / (4 |B|).
func (s arc) radius() float64 {
	return s.a.To(s.b) * (1 + float64(s.bulge*s.bulge)) / (4 * math.Abs(s.bulge))
}

// centre lies on the chord's perpendicular through its middle, to its left for
// a counter-clockwise arc below a half turn.
func (s arc) centre() Point {
	k := (1 - float64(s.bulge*s.bulge)) / (4 * s.bulge)
	return Point{
		(s.a.X+s.b.X)/2 - float64(k*(s.b.Y-s.a.Y)),
		(s.a.Y+s.b.Y)/2 + float64(k*(s.b.X-s.a.X)),
	}
}

// start is the direction from the centre to a, in radians.
func (s arc) start() float64 {
	c := s.centre()
	return math.Atan2(s.a.Y-c.Y, s.a.X-c.X)
}

// segmentArea is the area between arc and chord, positive where it adds to a
// counter-clockwise loop.
func (s arc) segmentArea() float64 {
	r, t := s.radius(), s.sweep()
	return float64(r*r/2) * (t - math.Sin(t))
}

// bounds is the box about the arc: its ends and the quarter points that it passes.
func (s arc) bounds() Rect {
	box := Rect{s.a, s.a}.include(s.b)
	if s.straight() {
		return box
	}
	c, r, from, sweep := s.centre(), s.radius(), s.start(), s.sweep()
	for k := range 4 {
		angle := float64(k) * math.Pi / 2
		turn := math.Mod(angle-from, 2*math.Pi)
		if sweep > 0 && turn < 0 {
			turn += 2 * math.Pi
		} else if sweep < 0 && turn > 0 {
			turn -= 2 * math.Pi
		}
		if math.Abs(turn) <= math.Abs(sweep) {
			dx, dy := [4]float64{1, 0, -1, 0}[k], [4]float64{0, 1, 0, -1}[k]
			box = box.include(Point{c.X + r*dx, c.Y + r*dy})
		}
	}
	return box
}

// maxChords bounds how finely one arc is divided, whatever the tolerance: a half
// turn in 4096 chords is off by 7 parts in 100 million of its radius.
const maxChords = 4096

// chords appends points along the arc after a, b excluded, so that no chord is
// further than tolerance from the arc, as far as [maxChords] go.
func (s arc) chords(points []Point, tolerance float64) []Point {
	if s.straight() {
		return points
	}
	c, r, from, sweep := s.centre(), s.radius(), s.start(), s.sweep()
	step := math.Pi / 2 // never coarser: a circle stays recognisable
	if tolerance < r && tolerance > 0 {
		step = math.Min(step, 2*math.Acos(1-tolerance/r))
	} else if !(tolerance > 0) {
		step = 0
	}
	n := maxChords
	if pieces := math.Ceil(math.Abs(sweep) / step); pieces < maxChords { // not so for a tolerance of 0
		n = int(pieces)
	}
	for i := 1; i < n; i++ {
		sin, cos := math.Sincos(from + float64(sweep*float64(i))/float64(n))
		points = append(points, Point{c.X + float64(r*cos), c.Y + float64(r*sin)})
	}
	return points
}
