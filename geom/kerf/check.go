package kerf

import (
	"fmt"

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
			found = append(found, Finding{Code: Outside, Error: true, At: l[0].Point, Opening: i, Other: -1, Message: fmt.Sprintf("opening %d lies beyond the plate", i+1), Hint: "move it onto the plate"})
		case d < LeastBridge-touching:
			found = append(found, p.bridge(i, -1, at, d))
		}
		for k := range i {
			if len(p.Openings[k]) == 0 || boxes[i].Gap(boxes[k]) >= LeastBridge {
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
				found = append(found, Finding{Code: FallsOut, Error: true, At: p.Openings[small][0].Point, Opening: small, Other: large,
					Message: fmt.Sprintf("opening %d lies in opening %d: what is between them falls out", small+1, large+1), Hint: "leave bridges, or one of them out"})
			case d < LeastBridge-touching:
				found = append(found, p.bridge(i, k, at, d))
			}
		}
	}
	return append(found, p.neck()...)
}

func meets(i, k int, at geom.Point) Finding {
	return Finding{Code: Meets, Error: true, At: at, Opening: i, Other: k, Message: fmt.Sprintf("opening %d meets %s", i+1, nameOf(k)), Hint: "join them to one loop, or move them apart"}
}

func (p Plate) bridge(i, k int, at geom.Point, d float64) Finding {
	return Finding{Code: Bridge, At: at, Opening: i, Other: k, Is: d,
		Message: fmt.Sprintf("%s is left between opening %d and %s; less than %s breaks easily", p.text(d), i+1, nameOf(k), p.text(LeastBridge)), Hint: "move them apart, or cut one of them by hand"}
}

// neck looks for places of the plate through which, or into which, a disc as wide as
// the least bridge does not go.
func (p Plate) neck() []Finding {
	const r = LeastBridge / 2
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
	return []Finding{{Code: Neck, At: at, Opening: -1, Other: -1, Is: LeastBridge, Message: fmt.Sprintf("the plate has a neck or a tongue narrower than %s", p.text(LeastBridge)), Hint: "make it wider there"}}
}

// flat is the chord by which loops are asked what lies in them, in mm.
const flat = 0.001
