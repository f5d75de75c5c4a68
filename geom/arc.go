package geom

import "math"

// Arc is the piece of a circle from A to B with a bulge: the tangent of a quarter of
// the angle swept, positive counter-clockwise (DXF Reference, LWPOLYLINE, group code
// 42). The bulge is not 0.
type Arc struct {
	A, B  Point
	Bulge float64
}

// BulgeOf is the bulge of an arc that sweeps an angle in radians, positive
// counter-clockwise, of less than a full turn.
func BulgeOf(sweep float64) float64 { return math.Tan(sweep / 4) }

// QuarterTurn is the bulge of a quarter of a circle, counter-clockwise: tan(pi/8).
const QuarterTurn = math.Sqrt2 - 1

// ArcAbout is the counter-clockwise arc from a to b about a center from which both are
// as far away.
func ArcAbout(center, a, b Point) Arc {
	sweep := b.Sub(center).Angle() - a.Sub(center).Angle()
	if sweep <= 0 {
		sweep += 2 * math.Pi
	}
	return Arc{a, b, BulgeOf(sweep)}
}

// straight reports whether the arc is too flat to tell from its chord: the sagitta
// is |B| c / 2.
func (s Arc) straight() bool { return math.Abs(s.Bulge)*s.A.To(s.B)/2 <= coincident }

// Sweep is the angle turned through, in radians, positive counter-clockwise.
func (s Arc) Sweep() float64 { return 4 * math.Atan(s.Bulge) }

// Radius follows from the chord c: c (1 + B²) / (4 |B|).
func (s Arc) Radius() float64 {
	return s.A.To(s.B) * (1 + float64(s.Bulge*s.Bulge)) / (4 * math.Abs(s.Bulge))
}

// Center lies on the chord's perpendicular through its middle, to its left for
// a counter-clockwise arc below a half turn.
func (s Arc) Center() Point {
	k := (1 - float64(s.Bulge*s.Bulge)) / (4 * s.Bulge)
	return s.A.Middle(s.B).Along(s.B.Sub(s.A).Left(), k)
}

// Length along the arc, in millimeters.
func (s Arc) Length() float64 {
	if s.straight() {
		return s.A.To(s.B)
	}
	return float64(s.Radius() * math.Abs(s.Sweep()))
}

// At is the place a share t of the way along the arc, from A at 0 to B at 1: the ends
// themselves at both.
func (s Arc) At(t float64) Point {
	switch t {
	case 0:
		return s.A
	case 1:
		return s.B
	}
	c := s.Center()
	return c.Add(s.A.Sub(c).Rotate(s.Sweep() * t))
}

// Part is the bulge of a share of the arc.
func (s Arc) Part(share float64) float64 { return math.Tan(float64(math.Atan(s.Bulge) * share)) }

// SegmentArea is the area between arc and chord, positive where it adds to a
// counter-clockwise loop.
func (s Arc) SegmentArea() float64 {
	if s.straight() { // two thirds of chord and sagitta; the radius may be beyond float64
		c := s.A.To(s.B)
		return float64(float64(c*c) * s.Bulge / 3)
	}
	return SegmentArea(s.Radius(), s.Sweep())
}

// SegmentArea is that of an arc of a radius that sweeps an angle, in radians.
func SegmentArea(radius, sweep float64) float64 {
	return float64(float64(radius*radius/2) * (sweep - math.Sin(sweep)))
}

// Bounds is the box about the arc: its ends and the quarter points that it passes.
func (s Arc) Bounds() Rect {
	box := Around(s.A, s.B)
	if s.straight() {
		return box
	}
	c, r, sweep := s.Center(), s.Radius(), s.Sweep()
	from := s.A.Sub(c).Angle()
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
			box = box.Include(Point{c.X + r*dx, c.Y + r*dy})
		}
	}
	return box
}

// maxChords bounds how finely one arc is divided, whatever the tolerance: a half
// turn in 4096 chords is off by 7 parts in 100 million of its radius.
const maxChords = 4096

// chords appends points along the arc after A, B excluded, so that no chord is
// further than tolerance from the arc, as far as [maxChords] go.
func (s Arc) chords(points Ring, tolerance float64) Ring {
	if s.straight() {
		return points
	}
	c, r, sweep := s.Center(), s.Radius(), s.Sweep()
	from := s.A.Sub(c).Angle()
	step := math.Pi / 2 // never coarser: a circle stays recognizable
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

// CornerArea is what a disc of a radius leaves in a corner that turns by an angle in
// radians, in square millimeters, r^2 (tan(t/2) - t/2): the kite between the corner,
// the center and the two places that it touches, less the sector.
func CornerArea(radius, turn float64) float64 {
	return float64(radius * radius * (math.Tan(turn/2) - turn/2))
}
