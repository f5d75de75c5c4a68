// Package kerf moves the outlines of a flat plate so that it comes out as it was
// drawn when a laser or a bit takes away some of it: outlines outwards and openings
// inwards by half of what is taken away. It finds what cannot be cut so.
package kerf

import (
	"fmt"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// Plate is what should come out, in mm: simple loops that run counter-clockwise.
type Plate struct {
	Outline  geom.Loop
	Openings []geom.Loop
	Unit     geom.Unit // of what is found
}

// text is a length in the plate's unit.
func (p Plate) text(mm float64) string { return geom.LengthOf(mm).Text(p.Unit) }

// area is one in the plate's unit.
func (p Plate) area(mm2 float64) string {
	if p.Unit == geom.Inch {
		return fmt.Sprintf("%.4f sq in", mm2/(geom.InchMM*geom.InchMM))
	}
	return fmt.Sprintf("%.2f mm2", mm2)
}

// Paths are the centre lines that the beam or bit is led along. An opening of the
// plate can have several paths, or none.
type Paths struct {
	Outline  geom.Loop
	Openings []geom.Loop
}

// Code names what is wrong.
type Code string

const (
	Narrow    Code = "narrow"     // an opening, or a part of one, is narrower than the kerf
	FallsOut  Code = "falls-out"  // an opening lies in another one and falls out with it
	Meets     Code = "meets"      // openings cross or touch each other or the outline
	Outside   Code = "outside"    // an opening lies beyond the outline
	Bridge    Code = "bridge"     // little is left between two cuts
	Neck      Code = "neck"       // little is left of the plate itself
	Shape     Code = "shape"      // a loop that cannot be cut at all
	OpenMouth Code = "open-mouth" // a slot or bay of the outline is no wider than the kerf
)

// LeastBridge is how much should stay between two cuts, in mm: less breaks or burns
// through (common practice, no source).
const LeastBridge = 2.0

// Finding is one thing that is wrong with a plate.
type Finding struct {
	Code  Code
	Error bool       // it cannot be cut as drawn
	At    geom.Point // where
	// Opening is the number of the opening, from 0, or -1 of the outline; Other that of
	// what it comes near to, -1 for the outline.
	Opening, Other int
	Is             float64 // what was measured, in mm; of a slot too narrow what stays uncut, in mm2
	Message, Hint  string
}

// Compensate moves the loops of a plate by half a kerf, in mm. Without a kerf the
// paths are the plate's own lines. Paths are of use only where no finding is an
// error.
func Compensate(p Plate, kerf float64) (out Paths, found []Finding) {
	half := max(kerf, 0) / 2
	grown, err := sweep.Outset(p.Outline, half)
	if err != nil || len(grown) == 0 {
		return out, []Finding{shape(-1, p.Outline, err)}
	}
	out.Outline = grown[0]
	if closed, err := sweep.Outside(p.Outline, half); err == nil {
		if off := leaves(p.Outline, []geom.Loop{closed}, half, -1); off > 0 {
			found = append(found, Finding{Code: OpenMouth, Error: true, At: furthest(closed, p.Outline), Opening: -1, Other: -1, Is: off,
				Message: fmt.Sprintf("the outline has a slot or a bay no wider than the kerf, %s: %s of it cannot be cut", p.text(kerf), p.area(off)), Hint: "make it wider, or cut it with a finer beam or bit"})
		}
	}
	for i, l := range p.Openings {
		paths, err := sweep.Inset(l, half)
		if err != nil {
			return out, append(found, shape(i, l, err))
		}
		out.Openings = append(out.Openings, paths...)
		covered, err := sweep.Pocket(l, half)
		if err != nil {
			return out, append(found, shape(i, l, err))
		}
		if off := leaves(l, covered, half, 1); off > 0 || len(paths) != 1 {
			f := Finding{Code: Narrow, Error: true, At: l[0].Point, Opening: i, Other: i, Is: off, Hint: "make it wider, or cut it with a finer beam or bit"}
			f.Message = fmt.Sprintf("%s is no wider than the kerf, %s", nameOf(i), p.text(kerf))
			if len(paths) > 0 {
				f.Message = fmt.Sprintf("parts of %s are narrower than the kerf, %s: %s of it cannot be cut", nameOf(i), p.text(kerf), p.area(off))
			}
			found = append(found, f)
		}
	}
	return out, append(p.check(), found...)
}

func shape(opening int, l geom.Loop, err error) Finding {
	f := Finding{Code: Shape, Error: true, Opening: opening, Other: opening, Message: fmt.Sprintf("%s cannot be moved by half the kerf: %v", nameOf(opening), err), Hint: "draw it with fewer and simpler sides"}
	if len(l) > 0 {
		f.At = l[0].Point
	}
	return f
}

// furthest is the corner of a loop that is furthest from another loop.
func furthest(l, from geom.Loop) (at geom.Point) {
	most := -1.0
	for _, v := range l {
		least := math.Inf(1)
		for i := range from {
			s := sideOf(from, i)
			least = min(least, s.nearest(v.Point).To(v.Point))
		}
		if least > most {
			most, at = least, v.Point
		}
	}
	return at
}

func nameOf(opening int) string {
	if opening < 0 {
		return "the outline"
	}
	return fmt.Sprintf("opening %d", opening+1)
}
