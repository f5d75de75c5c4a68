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
	// ErrUnsettled is about a loop with places that rounding makes contradict
	// each other for every radius that was tried. No such loop is known.
	ErrUnsettled = errors.New("result is not settled")
)

// trials are the shares of fit by which a radius is changed, one after another
// until the result is settled. The first gives fillets of just the radius, where
// nothing is in doubt; with the second, what fits exactly has room; each of the
// rest is for sizes that happen to differ from the radius by the share before it.
var trials = [...]float64{0, 0.5, 0.37, 0.71, 0.23, 0.89}

func settled(sides []curve, try func(share float64) ([]geom.Loop, error)) (loops []geom.Loop, err error) {
	for k, share := range trials {
		trialCount[k]++
		if loops, err = try(share); !errors.Is(err, ErrUnsettled) {
			return loops, err
		}
	}
	if at, ok := crossed(sides); ok {
		return nil, fmt.Errorf("%w: near x %g, y %g", ErrRing, at.X, at.Y)
	}
	return nil, err
}

var trialCount [10]int
