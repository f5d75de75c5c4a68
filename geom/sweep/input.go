package sweep

import (
	"errors"
	"fmt"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/internal/planar"
)

// What may be wrong with an input; errors wrap one of these or [geom.ErrExtent].
var (
	// ErrRadius is about a radius that is negative, no number, or, where there
	// is no other bound to what it makes, beyond [geom.MaxExtent].
	ErrRadius = errors.New("radius out of range")
	// ErrRing is about a loop that crosses or touches itself or has no area.
	ErrRing = errors.New("loop is not simple")
	// ErrWinding is about a loop that runs clockwise.
	ErrWinding = errors.New("loop runs clockwise")
	// ErrTooMany is about more than [MaxSides] sides, or sides so crowded that
	// the discs about them meet more often than there is memory for.
	ErrTooMany = errors.New("too many sides")
	// ErrUnsettled is about places that rounding makes contradict each other for
	// every radius that is tried: known from arcs that cross or run beside another
	// side by less than a thousandth of a millimeter, so that a loop is simple on
	// the grid and is not.
	ErrUnsettled = errors.New("result is not settled")
)

// extent reports what is wrong with coordinates.
func extent(path []geom.Vertex) error {
	for i, v := range path {
		for _, c := range [...]float64{v.X, v.Y, v.Bulge} {
			if !(math.Abs(c) <= geom.MaxExtent) {
				return fmt.Errorf("%w: vertex %d at %g, %g, bulge %g; the limit is %g mm",
					geom.ErrExtent, i, v.X, v.Y, v.Bulge, geom.MaxExtent)
			}
		}
	}
	return nil
}

// within reports whether a box keeps to what coordinates there are, but for the
// rounding of arcs that just reach the limit.
func within(b geom.Rect) bool {
	const most = geom.MaxExtent + noise
	return b.Min.X >= -most && b.Min.Y >= -most && b.Max.X <= most && b.Max.Y <= most
}

// sound reports what is wrong with a loop and gives the box about it.
func sound(l geom.Loop) (geom.Rect, error) {
	if err := extent(l); err != nil {
		return geom.Rect{}, err
	}
	if len(l) > MaxSides {
		return geom.Rect{}, fmt.Errorf("%w: %d; the limit is %d", ErrTooMany, len(l), MaxSides)
	}
	box := l.Bounds()
	if !within(box) {
		return box, fmt.Errorf("%w: from %g, %g to %g, %g; the limit is %g mm", geom.ErrExtent,
			box.Min.X, box.Min.Y, box.Max.X, box.Max.Y, geom.MaxExtent)
	}
	flat := l.Flatten(ringChord)
	ring := make([]planar.Point, len(flat))
	for i, p := range flat {
		ring[i] = planar.Point{X: int32(math.Round(p.X / geom.CoarseGrid)), Y: int32(math.Round(p.Y / geom.CoarseGrid))}
	}
	if at, ok := planar.Simple(ring); !ok {
		return box, fmt.Errorf("%w: near x %g, y %g", ErrRing, float64(at.X)*geom.CoarseGrid,
			float64(at.Y)*geom.CoarseGrid)
	}
	if l.Area() < 0 {
		return box, fmt.Errorf("%w: its area is %g mm2", ErrWinding, l.Area())
	}
	return box, nil
}

// sidesOf gives the sides of a loop or of an open path, without those that are
// too short to have a direction.
func sidesOf(path []geom.Vertex, closed bool) ([]curve, error) {
	kept := make([]geom.Vertex, 0, len(path))
	for _, v := range path {
		if n := len(kept); n > 0 && kept[n-1].Point.To(v.Point) <= same {
			kept[n-1].Bulge = v.Bulge
			continue
		}
		kept = append(kept, v)
	}
	n := len(kept)
	if closed {
		for n > 1 && kept[n-1].Point.To(kept[0].Point) <= same {
			n--
		}
		kept = kept[:n]
	}
	var sides []curve
	for i, v := range kept {
		if i == n-1 && !closed {
			break
		}
		s := newSide(v.Point, kept[(i+1)%n].Point, v.Bulge)
		if b := s.box(); !within(b) {
			return nil, fmt.Errorf("%w: side %d reaches from %g, %g to %g, %g; the limit is %g mm",
				geom.ErrExtent, i, b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, geom.MaxExtent)
		}
		sides = chords(sides, s)
		if len(sides) > MaxSides {
			return nil, fmt.Errorf("%w: the limit is %d", ErrTooMany, MaxSides)
		}
	}
	if closed {
		if at, ok := folded(sides); ok {
			return nil, fmt.Errorf("%w: near x %g, y %g", ErrRing, at.X, at.Y)
		}
	}
	return sides, nil
}

// areaOf gives the area of the loop that sides make, and the area along them
// that is noise, in square millimeters.
func areaOf(sides []curve) (area, nothing float64) {
	for i := range sides {
		area += sides[i].area(sides[0].a)
		nothing += float64(noise * sides[i].length)
	}
	return area, nothing
}

// folded gives a corner at which a loop runs back over itself: too thin for the
// grid to see that it is not simple.
func folded(sides []curve) (geom.Point, bool) {
	for i := range sides {
		s, next := &sides[i], &sides[(i+1)%len(sides)]
		angle := s.direction(s.length).Turn(next.direction(0))
		if math.Abs(angle) > math.Pi-smooth && math.Abs(s.curvature()+next.curvature()) < 1/flattest {
			return s.b, true
		}
	}
	return geom.Point{}, false
}

// crossed gives a point in which sides cross that are not neighbors, or
// neighbors do away from their corner, as arcs may without that their chords do.
func crossed(sides []curve) (at geom.Point, ok bool) {
	index := newBoxes(sides)
	n := len(sides)
	var met []meeting
	for i := range sides {
		s := &sides[i]
		if !index.each(index[0][i].Grow(reach), i+1, func(j int) bool {
			t := &sides[j]
			met = meet(s, t, met[:0])
			for _, m := range met {
				corner := (i+1)%n == j && cornerOf(s, t, m.s, m.t) || (j+1)%n == i && cornerOf(t, s, m.t, m.s)
				if !corner {
					at, ok = m.at, true
				}
			}
			return !ok
		}) {
			break
		}
	}
	return at, ok
}

// cornerOf reports whether places on two sides are no more than what there is to
// see of the corner between them.
func cornerOf(s, t *curve, at, on float64) bool {
	if angle := math.Abs(s.direction(s.length).Turn(t.direction(0))); angle > smooth && angle < math.Pi-smooth {
		return at >= s.length-scrap && on <= scrap
	}
	return follows(s, t, at, on)
}

// chords appends a side, as chords when it is all but straight.
func chords(sides []curve, s curve) []curve {
	if s.radius <= flattest {
		return append(sides, s)
	}
	// A chord c is off by c²/8R, and the arc by sagitta * 4t(1-t) from its own
	// chord: less than a millionth of the sagitta is left out at these radii.
	n := math.Ceil(s.length / math.Sqrt(8*s.radius*flatChord))
	d := s.b.Sub(s.a)
	aside := d.Right()
	from := s.a
	for i := range int(n) {
		to, t := s.b, float64(i+1)/n
		if i+1 < int(n) {
			to = s.a.Along(d, t).Along(aside, geom.BulgeOf(s.sweep)/2*4*t*(1-t))
		}
		sides = append(sides, newLine(from, to))
		from = to
	}
	return sides
}
