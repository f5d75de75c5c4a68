package mill

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// Floor is outlines that are cut equally deep, in mm from the face.
type Floor struct {
	Depth    float64
	Outlines []Cut
}

// BeginAt is how deep outlines that are cut before have opened all of some slots, in mm: passes
// and time of the slots are counted from there. It is the shallowest of their floors, 0 where
// they have not been everywhere.
func BeginAt(slots []Cut, before []Floor, bits []Bit) float64 {
	depth, outlines := math.Inf(1), []Cut{}
	for _, f := range before {
		depth = min(depth, f.Depth)
		outlines = append(outlines, f.Outlines...)
	}
	if !opened(slots, outlines, bits) {
		return 0
	}
	return depth
}

// opened reports whether bits that went round outlines have been everywhere where slots are
// cut, so that these begin at the floor of that: not where a slot takes waste away, or the
// middle of a notch wider than two bits. Outlines and slots lie on one sheet, in mm. What
// cannot be judged is not opened.
func opened(slots, outlines []Cut, bits []Bit) bool {
	bands := make([]geom.Loop, 0, len(outlines))
	for _, c := range outlines {
		if c.Bit < 0 {
			return false
		}
		reach := bits[c.Bit].Diameter + SlotRoom + openedWithin
		around, err := sweep.Outset(c.Outline, reach)
		box := c.Outline.Bounds()
		if err != nil || len(around) != 1 || !covers(around, []geom.Loop{rectangleOf(box)}) {
			return false
		}
		bands = append(bands, geom.Rectangle(box.Min.X-reach, box.Min.Y-reach, box.Max.X+reach, box.Max.Y+reach))
	}
	all := make([]geom.Loop, len(slots))
	for i, c := range slots {
		all[i] = c.Outline
	}
	return covers(bands, all)
}

// openedWithin is how far, in mm, slots may reach past the bands of bits: sizes that are
// worked out in two ways, far less than what a bit feels.
const openedWithin = 0.01

// covers reports whether outlines leave nothing of others.
func covers(outlines, others []geom.Loop) bool {
	area := func(list []geom.Loop) (sum float64) {
		united, err := sweep.Union(list)
		if err != nil {
			return math.NaN()
		}
		for _, l := range united {
			sum += l.Area()
		}
		return sum
	}
	const noise = 1e-3 // mm2 of what is summed over a sheet
	more := area(append(outlines[:len(outlines):len(outlines)], others...)) - area(outlines)
	return more < noise // never where one of them is not known
}

func rectangleOf(b geom.Rect) geom.Loop {
	return geom.Rectangle(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
}
