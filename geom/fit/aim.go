package fit

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Aim is by how much more than a measure is set for now it should be set, so that as
// many boxes as can be come out within a window, given by its distances from
// what the measure is set for now. Where the window's middle, less what the errors move
// the measure in the mean, is as good as any place by what the draws can tell, it is
// that: it leaves as much room on either side.
func Aim(s Stack, window geom.Interval) float64 {
	off := deviations(s, Samples, Seed)
	width := window.Max - window.Min + 2*settle // in which a box is judged right
	mean := 0.0
	for _, v := range off {
		mean += v
	}
	mean /= float64(len(off))
	slices.Sort(off)
	middle := (window.Min+window.Max)/2 - mean
	kept := func(aim float64) int {
		from, _ := slices.BinarySearch(off, window.Min-aim-settle)
		to, _ := slices.BinarySearch(off, window.Max-aim+settle)
		return to - from
	}
	best, aim, to := kept(middle), middle, 0
	// A better place has to be better by more than chance: two standard errors.
	part := float64(best) / float64(len(off))
	best += int(2 * math.Sqrt(float64(part*(1-part))*float64(len(off))))
	for from, v := range off { // the lowest one that is kept
		for to < len(off) && off[to] <= v+width {
			to++
		}
		if n := to - from; n > best {
			// Midway between where the lowest one and where the highest one drop out.
			best, aim = n, (window.Min-v+window.Max-off[to-1])/2
		}
	}
	return aim
}

// deviations are what random boxes are off what they are set for.
func deviations(s Stack, n int, seed uint64) []float64 {
	off, used := make([]float64, len(s.Sources)), usedBy([]Stack{s})
	random := deviates(s.Sources, used, n, seed, 0)
	nominal := s.Value(off)
	spreads := make([]spread, len(used))
	for j, k := range used {
		spreads[j] = s.Sources[k].spread()
	}
	list := make([]float64, n)
	for i := range list {
		for j, k := range used {
			off[k] = float64(spreads[j].times*random[j][i]) + spreads[j].plus
		}
		list[i] = s.Value(off) - nominal
	}
	return list
}
