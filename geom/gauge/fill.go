package gauge

import (
	"slices"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

const (
	// furthest is how many times the shop's accuracy a limit is from the target at most:
	// a reading beyond shows that something is loose, though the box may be right still;
	// common practice, no source.
	furthest = 3.0
	// nudge is a step, in mm, that shows whether a reading has met a limit.
	nudge = 1e-6
	// halvings of an interval: a few mm to far under a nudge.
	halvings = 50
	// free is the part of the shop's accuracy that boards have to leave to the readings.
	free = 0.5
)

// by is every reading off by so many times the shop's accuracy.
func (p *problem) by(times float64) []float64 {
	ext := p.none()
	for i := range ext {
		ext[i] = float64(times * p.vars[i/2].error)
	}
	return ext
}

// halve finds the most, from 0 to high, at which something still holds that holds at 0.
func halve(high float64, holds func(float64) bool) float64 {
	if holds(high) {
		return high
	}
	low := 0.0
	for range halvings {
		if middle := (low + high) / 2; holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// sort narrows the ranges of boards that leave the readings too little room under a
// bound: less than half of the shop's accuracy, and less than half of what boards that
// are all alike would leave.
func (p *problem) sort(s *Limits) {
	parts := make(map[string]float64) // of the ranges, by stock
	for _, b := range p.bounds {
		room := halve(2*free, func(k float64) bool { return b.gap(p.by(k), 0) >= -settle }) / 2
		wanted := p.by(room)
		if b.gap(wanted, 1) >= -settle {
			continue
		}
		s.Why = append(s.Why, b.measure)
		part := halve(1, func(part float64) bool { return b.gap(wanted, part) >= -settle })
		for _, o := range b.boards {
			if was, known := parts[o.stock.Name]; !known || part < was {
				parts[o.stock.Name] = part
			}
		}
	}
	at := make(map[string]int)
	for _, b := range p.bounds {
		for i := range b.boards {
			o := &b.boards[i]
			part, known := parts[o.stock.Name]
			if !known {
				continue
			}
			o.off = float64(o.off * part)
			t := o.stock.Thickness.Mean
			n, listed := at[o.stock.Name]
			if !listed {
				n = len(s.SortBoards)
				at[o.stock.Name] = n
				s.SortBoards = append(s.SortBoards, Range{o.stock.Name, t, t})
			}
			r := &s.SortBoards[n]
			r.Min, r.Max = min(r.Min, t+o.off), max(r.Max, t+o.off)
		}
	}
	s.Lengths = len(s.Why) > 0 && !slices.ContainsFunc(s.Why, func(m Measure) bool {
		return m.Code != joinery.CheckOutsideWidth && m.Code != fit.SlideClearance && m.Code != fit.Diagonal
	})
}

// fill moves all limits out from their targets together, each in proportion to the
// shop's accuracy, until a bound is met; those that it concerns stay there, and the
// others go on.
func (p *problem) fill() []float64 {
	ext := p.none()
	fixed := make([]bool, len(ext))
	trial := p.none()
	for slices.Contains(fixed, false) {
		grown := func(times float64) []float64 {
			for i := range ext {
				trial[i] = ext[i]
				if !fixed[i] {
					trial[i] = min(p.most(i), ext[i]+float64(times*p.vars[i/2].error))
				}
			}
			return trial
		}
		// The first bound that is met: each of the others is asked only whether it is
		// met before.
		times := furthest
		for _, b := range p.bounds {
			times = halve(times, func(k float64) bool { return b.gap(grown(k), 1) >= -settle })
		}
		copy(ext, grown(times))
		p.fix(ext, fixed)
	}
	return ext
}

// most is how far a side goes at most.
func (p *problem) most(s side) float64 { return float64(furthest * p.vars[s/2].error) }

// fix stops the sides that cannot move out alone; where only several together meet a
// bound, as a deeper dado and a longer tongue do, the last of those that do not.
func (p *problem) fix(ext []float64, fixed []bool) {
	met := func(sides ...side) bool {
		return slices.ContainsFunc(p.bounds,
			func(b *bound) bool { return b.concerns(sides...) && b.gap(ext, 1) < -settle })
	}
	any := false
	for i := range ext {
		if fixed[i] {
			continue
		}
		if ext[i] >= p.most(i)-nudge {
			fixed[i], any = true, true
			continue
		}
		was := ext[i]
		ext[i] += nudge
		fixed[i] = met(i)
		any = any || fixed[i]
		ext[i] = was
	}
	if any {
		return
	}
	was, last := slices.Clone(ext), 0
	for i := range ext {
		if fixed[i] {
			continue
		}
		last = i
		if ext[i] += nudge; met(i) {
			break
		}
	}
	fixed[last] = true // the one that meets a bound, or the last of all: there is an end, whatever rounding does
	copy(ext, was)
}

// meets are the measures that hold the limits of a reading where they are: those that
// do on both sides, or where there are none, on either.
func (p *problem) meets(ext []float64, low, high side) []Measure {
	var both []Measure
	either := append(p.holding(ext, low), p.holding(ext, high)...)
	for i, m := range either {
		if slices.ContainsFunc(either[:i], func(o Measure) bool { return o.sameCheck(m) }) {
			both = append(both, m)
		}
	}
	if len(both) > 0 {
		return both
	}
	return either
}

// holding are the measures that hold one side where it is.
func (p *problem) holding(ext []float64, s side) (list []Measure) {
	was := ext[s]
	ext[s] += nudge
	for _, b := range p.bounds {
		if b.concerns(s) && b.gap(ext, 1) < -settle {
			list = append(list, b.measure)
		}
	}
	ext[s] = was
	return list
}
