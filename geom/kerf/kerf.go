// Package kerf moves the outlines of a flat plate so that it comes out as it was
// drawn when a laser or a bit takes away some of it: outlines outwards and openings
// inwards by half of what is taken away. It finds what cannot be cut so.
package kerf

import (
	"errors"
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// Plate is what should come out, in mm: simple loops that run counter-clockwise.
type Plate struct {
	Outline  geom.Loop
	Openings []geom.Loop
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
	OpenMouth Code = "open-mouth" // a bay of the outline is narrower than the kerf
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
	Is             float64 // what was measured, in mm or, of what is lost, in mm2
	Message, Hint  string
}

// lost is how much of an opening may stay uncut in sharp corners, as a part of half the
// kerf squared and for each corner: of a right angle it is 1 - pi/4 = 0.21, of a corner
// of 30 degrees 2.4.
const lost = 2.5

// Compensate moves the loops of a plate by half a kerf, in mm. Without a kerf the
// paths are the plate's own lines. Paths are of use only where no finding is an
// error.
func Compensate(p Plate, kerf float64) (Paths, []Finding) {
	found := p.check()
	if kerf <= 0 {
		return Paths(p), found
	}
	half := kerf / 2
	var out Paths
	wrong := func(opening int, l geom.Loop, err error) {
		f := Finding{Code: Shape, Error: true, Opening: opening, Other: opening, Message: fmt.Sprintf("%s cannot be moved by half the kerf: %v", nameOf(opening), err), Hint: "draw it with fewer and simpler sides"}
		if len(l) > 0 {
			f.At = l[0].Point
		}
		found = append(found, f)
	}
	grown, err := sweep.Outset(p.Outline, half)
	switch {
	case err != nil:
		wrong(-1, p.Outline, err)
	case len(grown) == 0:
		wrong(-1, p.Outline, errors.New("nothing is left"))
	default:
		out.Outline = grown[0]
		if len(grown) > 1 {
			found = append(found, Finding{Code: OpenMouth, Error: true, At: grown[1][0].Point, Opening: -1, Other: -1, Is: kerf,
				Message: fmt.Sprintf("the outline has a bay whose mouth is narrower than the kerf, %.2f mm", kerf), Hint: "make the mouth wider, or an opening of the bay"})
		}
	}
	for i, l := range p.Openings {
		paths, err := sweep.Inset(l, half)
		if err != nil {
			wrong(i, l, err)
			continue
		}
		out.Openings = append(out.Openings, paths...)
		covered, err := sweep.Pocket(l, half)
		if err != nil {
			wrong(i, l, err)
			continue
		}
		area := l.Area()
		for _, c := range covered {
			area -= c.Area()
		}
		if most := float64(lost * half * half * float64(len(l))); len(paths) == 0 || len(paths) > 1 || area > most {
			f := Finding{Code: Narrow, Error: true, At: l[0].Point, Opening: i, Other: i, Is: area, Hint: "make it wider, or cut it with a finer beam or bit"}
			f.Message = fmt.Sprintf("%s is no wider than the kerf, %.2f mm", nameOf(i), kerf)
			if len(paths) > 0 {
				f.Message = fmt.Sprintf("parts of %s are narrower than the kerf, %.2f mm: %.2f mm2 of it cannot be cut", nameOf(i), kerf, area)
			}
			found = append(found, f)
		}
	}
	return out, found
}

func nameOf(opening int) string {
	if opening < 0 {
		return "the outline"
	}
	return fmt.Sprintf("opening %d", opening+1)
}
