package kerf

import (
	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// touching is the distance, in mm, below which loops meet.
const touching = 1e-6

// check finds what is wrong with a plate whatever the kerf.
func (p Plate) check() (found []Finding) {
	outline := p.Outline.Flatten(flat)
	boxes := make([]geom.Rect, len(p.Openings))
	for i, l := range p.Openings {
		boxes[i] = l.Bounds()
	}
	for i, l := range p.Openings {
		if len(l) == 0 {
			continue
		}
		d, at := Distance(l, p.Outline)
		switch {
		case d <= touching:
			found = append(found, meets(i, -1, at))
		case !outline.Contains(l[0].Point):
			found = append(found, refused(Outside, l[0].Point, geom.Sentencef("opening %d lies beyond the plate", i+1),
				"move it onto the plate").between(i, -1))
		case d < MinBridge-touching:
			found = append(found, bridge(i, -1, at, d))
		}
		for k := range i {
			if len(p.Openings[k]) == 0 || boxes[i].Gap(boxes[k]) >= MinBridge {
				continue
			}
			other := p.Openings[k]
			d, at := Distance(l, other)
			switch in, around := other.Flatten(flat).Contains(l[0].Point), l.Flatten(flat).Contains(other[0].Point); {
			case d <= touching:
				found = append(found, meets(i, k, at))
			case in || around:
				small, large := i, k
				if around {
					small, large = k, i
				}
				found = append(found, refused(FallsOut, p.Openings[small][0].Point,
					geom.Sentencef("opening %d lies in opening %d: what is between them falls out", small+1, large+1),
					"leave bridges, or one of them out").between(small, large))
			case d < MinBridge-touching:
				found = append(found, bridge(i, k, at, d))
			}
		}
	}
	return append(found, p.neck()...)
}

func meets(i, k int, at geom.Point) Finding {
	return refused(Meets, at, geom.Sentencef("opening %d meets %s", i+1, nameOf(k)),
		"join them to one loop, or move them apart").between(i, k)
}

func bridge(i, k int, at geom.Point, d float64) Finding {
	left, least := geom.Millimeters(d), geom.Millimeters(MinBridge)
	return weak(Bridge, at, left, geom.Sentencef("%s is left between opening %d and %s; less than %s breaks easily",
		left, i+1, nameOf(k), least), "move them apart, or cut one of them by hand").between(i, k)
}

// weak is the finding of a place where a plate may break, with what is left there.
func weak(code geom.Code, at geom.Point, left geom.Millimeters, fact geom.Sentence, ask string) Finding {
	f := refused(code, at, fact, ask)
	f.Level, f.Measured, f.Limit = geom.LevelWarning, left, geom.Millimeters(MinBridge)
	return f
}

// neck looks for places of the plate through which, or into which, a disc as wide as
// the least bridge does not go.
func (p Plate) neck() []Finding {
	const r = MinBridge / 2
	in, err := sweep.Inset(p.Outline, r)
	if err != nil {
		return nil
	}
	covered, err := sweep.Pocket(p.Outline, r)
	if err != nil || len(in) == 1 && leaves(p.Outline, covered, r, 1) == 0 {
		return nil
	}
	at := p.Outline[0].Point
	if len(in) > 1 {
		at = in[1][0].Point
	} else if len(covered) > 0 {
		at = furthest(p.Outline, covered[0])
	}
	return []Finding{weak(Neck, at, MinBridge, geom.Sentencef("the plate has a neck or a tongue narrower than %s",
		geom.Millimeters(MinBridge)), "make it wider there")}
}

// flat is the chord by which loops are asked what lies in them, in mm.
const flat = 0.001
