// Package kerf moves the outlines of a flat plate so that it comes out as it was
// drawn when a laser or a bit takes away some of it: outlines outward and openings
// inward by half of what is taken away. It finds what cannot be cut so.
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
}

// Paths are the center lines that the beam or bit is led along. An opening of the
// plate can have several paths, or none.
type Paths struct {
	Outline  geom.Loop
	Openings []geom.Loop
}

// What is wrong with a plate.
const (
	Narrow    geom.Code = "narrow"     // an opening, or a part of one, is narrower than the kerf
	FallsOut  geom.Code = "falls-out"  // an opening lies in another one and falls out with it
	Meets     geom.Code = "meets"      // openings cross or touch each other or the outline
	Outside   geom.Code = "outside"    // an opening lies beyond the outline
	Bridge    geom.Code = "bridge"     // little is left between two cuts
	Neck      geom.Code = "neck"       // little is left of the plate itself
	Shape     geom.Code = "shape"      // a loop that cannot be cut at all
	OpenMouth geom.Code = "open-mouth" // a slot or bay of the outline is no wider than the kerf
)

// MinBridge is how much should stay between two cuts, in mm: less breaks or burns
// through (common practice, no source).
const MinBridge = 2.0

// Finding is one thing that is wrong with a plate. An error cannot be cut as drawn. What
// is measured of a slot that is too narrow is an [Area] that stays uncut.
type Finding struct {
	geom.Diagnosis
	At geom.Point // where
	// Opening is the number of the opening, from 0, or -1 of the outline; Other that of
	// what it comes near to, -1 for the outline.
	Opening, Other int
}

// Area is an area in mm2.
type Area float64

// In prints the area with its unit.
func (a Area) In(u geom.Unit) string {
	if u == geom.Inch {
		return fmt.Sprintf("%.4f sq in", float64(a)/(geom.InchMM*geom.InchMM))
	}
	return fmt.Sprintf("%.2f mm2", float64(a))
}

// refused is the finding of what cannot be cut.
func refused(code geom.Code, at geom.Point, fact geom.Sentence, ask string) Finding {
	return Finding{Diagnosis: geom.Diagnosis{Code: code, Level: geom.LevelError, Fact: fact, Ask: geom.Sentencef("%s", ask)},
		At: at, Opening: -1, Other: -1}
}

// between says which openings a finding is about.
func (f Finding) between(opening, other int) Finding {
	f.Opening, f.Other = opening, other
	return f
}

// finer is what ends that a cut is no wider than the kerf.
const finer = "make it wider, or cut it with a finer beam or bit"

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
			f := refused(OpenMouth, furthest(closed, p.Outline), geom.Sentencef("the outline has a slot or a bay no wider "+
				"than the kerf, %s: %s of it cannot be cut", geom.Millimeters(kerf), Area(off)), finer)
			f.Measured, f.Limit = Area(off), Area(0)
			found = append(found, f)
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
			fact := geom.Sentencef("%s is no wider than the kerf, %s", nameOf(i), geom.Millimeters(kerf))
			if len(paths) > 0 {
				fact = geom.Sentencef("parts of %s are narrower than the kerf, %s: %s of it cannot be cut",
					nameOf(i), geom.Millimeters(kerf), Area(off))
			}
			f := refused(Narrow, l[0].Point, fact, finer).between(i, i)
			f.Measured, f.Limit = Area(off), Area(0)
			found = append(found, f)
		}
	}
	return out, append(p.check(), found...)
}

func shape(opening int, l geom.Loop, err error) Finding {
	at := geom.Point{}
	if len(l) > 0 {
		at = l[0].Point
	}
	return refused(Shape, at, geom.Sentencef("%s cannot be moved by half the kerf: %v", nameOf(opening), err),
		"draw it with fewer and simpler sides").between(opening, opening)
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
