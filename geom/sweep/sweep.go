// Package sweep works out what a round cutter cuts: what it covers of a pocket,
// of a groove, and what it leaves of a panel that it is led around.
//
// [Pocket] is the opening of a loop by a disc and [Outside] its closing (J. Serra,
// Image Analysis and Mathematical Morphology, Academic Press 1982: opening is
// erosion, then dilation); [Line] is a dilation.
//
// Lines and arcs are computed as what they are, not as chords. A place is as
// near to a loop as the radius on curves that are lines and arcs again: the
// loop's sides moved inwards, and arcs about the corners that point inwards.
// Cut where they cross, those parts of them stay to which nothing else is
// nearer (course.go). The disc on that course touches parts of the loop and
// leaves an arc of its own at each corner of the course (rim.go). What is
// usual, a rectangle first of all, has a closed form (closed.go).
package sweep

import (
	"errors"
	"fmt"

	"drawerwright/geom"
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
	// side by less than a thousandth of a millimetre, so that a loop is simple on
	// the grid and is not.
	ErrUnsettled = errors.New("result is not settled")
)

// trial is a share of fit by which a radius is changed. A strict one must leave
// no doubt about what fits.
type trial struct {
	share  float64
	strict bool
}

// trials are made one after another until the result is settled. The first
// gives fillets of just the radius; with the second, what fits exactly has room;
// most of the rest are for sizes that happen to differ from the radius by the
// shares before them. The last is as the first and puts up with doubt.
var trials = [...]trial{{0, true}, {0.5, false}, {0.6, false}, {0.71, false}, {0.37, false}, {0.23, false}, {0, false}}

// settled tries radii until a result is settled. Where none is, sides that cross
// are to blame.
func settled(sides []curve, try func(trial) ([]geom.Loop, error)) (loops []geom.Loop, err error) {
	for _, t := range trials {
		if loops, err = try(t); !errors.Is(err, ErrUnsettled) {
			return loops, err
		}
	}
	if at, ok := crossed(sides); ok {
		return nil, fmt.Errorf("%w: near x %g, y %g", ErrRing, at.X, at.Y)
	}
	return nil, err
}
