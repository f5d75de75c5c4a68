// Package sweep works out what a round cutter cuts: what it covers of a pocket,
// of a groove, and what it leaves of a panel that it is led around.
//
// [Pocket] is the opening of a loop by a disc and [Outside] its closing (J. Serra,
// Image Analysis and Mathematical Morphology, Academic Press 1982: opening is
// erosion, then dilation); [Line] is a dilation.
//
// Lines and arcs are computed as what they are, not as chords. A place is as
// near to a loop as the radius on curves that are lines and arcs again: the
// loop's sides moved inward, and arcs about the corners that point inward.
// Cut where they cross, those parts of them stay to which nothing else is
// nearer (course.go). The disc on that course touches parts of the loop and
// leaves an arc of its own at each corner of the course (rim.go). What is
// usual, a rectangle first of all, has a closed form (closed.go).
package sweep
