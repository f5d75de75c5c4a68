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

import "errors"

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
