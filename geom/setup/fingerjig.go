package setup

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// sameNotch is what two notches may differ by and still be one setting of a jig, in mm.
const sameNotch = 0.01

// Notches are those at the left end of a wall with fingers, over its lower edge, from below,
// in mm; those at the right are alike.
func Notches(p geom.Panel) (list []geom.Interval) {
	for _, e := range p.EdgeCuts {
		if b := e.Area.Bounds(); e.Kind.Interlocks() && b.Min.X <= p.Outline.Bounds().Min.X {
			list = append(list, geom.Interval{Min: b.Min.Y, Max: b.Max.Y})
		}
	}
	return list
}

// Slope is how far the flanks of a wall's tails run along for 1 aside, 0 of a wall without.
func Slope(p geom.Panel) float64 {
	for _, e := range p.EdgeCuts {
		if b := e.Area.Bounds(); e.Kind == geom.TailCut && e.Area.Area() < b.Width()*b.Height() {
			runs := 2.0 // an edge of the wall has none
			if b.Min.Y <= p.Outline.Bounds().Min.Y || b.Max.Y >= p.Outline.Bounds().Max.Y {
				runs = 1
			}
			return runs * b.Width() * b.Width() / 2 / (b.Width()*b.Height() - e.Area.Area())
		}
	}
	return 0
}

// NotchPasses are how many a cutter of a width takes for a notch.
func NotchPasses(notch geom.Interval, cutter float64) int {
	if cutter <= 0 {
		return 1
	}
	return max(1, int(math.Ceil((notch.Max-notch.Min-sameNotch)/cutter)))
}

// FingerWidths are the widths of fingers between two notches of one pass each, each once:
// what is between a jig's pin and the cutter.
func FingerWidths(walls [][]geom.Interval, cutter float64) (widths []float64) {
	for _, list := range walls {
		for i := 1; i < len(list); i++ {
			if NotchPasses(list[i-1], cutter) > 1 || NotchPasses(list[i], cutter) > 1 {
				continue
			}
			wide := list[i].Min - list[i-1].Max
			if !slices.ContainsFunc(widths, func(w float64) bool { return math.Abs(w-wide) < sameNotch }) {
				widths = append(widths, wide)
			}
		}
	}
	return widths
}

// FirstNotch is how the first notch of a wall is placed in a jig: marked from the wall that
// goes into it, where it begins at the lower edge; else with a spacer of a width in mm
// between the pin and the lower edge, 0 where that lies at the pin.
func FirstNotch(notch geom.Interval, finger float64) (spacer float64, marked bool) {
	switch {
	case notch.Min < sameNotch:
		return 0, true
	case notch.Min-finger > sameNotch:
		return notch.Min - finger, false
	}
	return 0, false
}

// NotchStands are where the lower edge of a wall stands for each pass of a notch, in mm right of the
// near side of the cutter: one that begins at the lower edge may be narrower than the cutter.
func NotchStands(notch geom.Interval, cutter float64) (list []float64) {
	n, last := NotchPasses(notch, cutter), notch.Max-cutter
	if n == 1 && notch.Min < sameNotch {
		return []float64{last}
	}
	for i := range n {
		list = append(list, notch.Min+float64((last-notch.Min)*float64(i)/float64(max(1, n-1))))
	}
	return list
}
