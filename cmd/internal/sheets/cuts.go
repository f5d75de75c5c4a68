package sheets

import (
	"fmt"
	"slices"
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
	"drawerwright/geom/weight"
)

// chalked is the number that is written on a sheet: where each was measured, that of its readings.
func (s *Stock) chalked(number int) string {
	if number <= len(s.Measured) {
		number = s.Measured[number-1].Number
	}
	return fmt.Sprint(number)
}

// cuts are those that take all sheets apart, in order.
func (s *Stock) cuts() []breakdown.Cut {
	list := make([]breakdown.Sheet, len(s.Laid))
	var wait sync.WaitGroup
	for i := range s.Laid {
		wait.Go(func() {
			one := &s.Laid[i]
			size := s.Sheets[one.Sheet]
			b, _ := nest.Cuts(one.LaidSheet, s.Pieces, size, s.begun())
			list[i] = breakdown.Sheet{Name: s.chalked(one.Number), Count: one.Count, Size: size, Board: b,
				Names: func(placed []int) (name, short string) { return s.holds(*one, placed) }}
		})
	}
	wait.Wait()
	r := breakdown.Rules{Kerf: s.Rules.Kerf, Weight: s.heft(), MaxWeight: s.MaxWeight,
		MinGuided: int64(geom.LengthOf(sheet.GuidedEdge)), RipCapacity: int64(s.Capacity.Rip),
		CrosscutCapacity: int64(s.Capacity.Crosscut), SledCapacity: int64(s.Capacity.MaxOnSled),
		MaxStop: int64(s.Capacity.MaxStop),
		Squared: s.squared, Before: s.before}
	cuts, laid := s.withAllowance(list, r)
	s.named = s.before
	for i := range s.Laid {
		one := &s.Laid[i]
		one.Called, one.Offcuts = laid[i].Called, nest.Kept(laid[i].Offcuts, s.kept())
		s.named = s.named.Most(laid[i].Named)
		one.Placements = slices.Clone(one.Placements) // those of the layout stay as they were searched
		for n, at := range laid[i].Places {
			one.Placements[n].X, one.Placements[n].Y = at[0], at[1]
		}
	}
	return cuts
}

// withAllowance makes the cuts with the larger allowance, unless there are more pieces whose size no fence and no stop
// gives than with the smaller one.
func (s *Stock) withAllowance(list []breakdown.Sheet, r breakdown.Rules) (cuts []breakdown.Cut, laid []breakdown.Laid) {
	if s.Routed { // its parts lie where their slots and tabs are
		return breakdown.Cuts(list, r)
	}
	for i, by := range sheet.UsualAllowances(s.Units, geom.Length(r.Kerf).MM()) {
		r.Allowance = int64(geom.LengthOf(by))
		k, l := breakdown.Cuts(list, r)
		if i == 0 || breakdown.Unset(k) < breakdown.Unset(cuts) {
			cuts, laid = k, l
		}
	}
	return cuts, laid
}

// kept are the sides of the least offcut that is kept.
func (s *Stock) kept() [2]int64 { return [2]int64{int64(s.MinOffcut[0]), int64(s.MinOffcut[1])} }

// heft is the weight of a square nanometer, where that is not known of boards of which the largest that one person
// puts onto a saw is as heavy as that person lifts.
func (s *Stock) heft() float64 {
	if w := s.weight(); w > 0 || s.Routed {
		return w
	}
	const nm = 1e-6 // in mm
	return s.MaxWeight / sheet.MaxAlone * nm * nm
}

// weight is that of a square nanometer of the stock, in kg; 0 where it is not known.
func (s *Stock) weight() float64 {
	const nm = 1e-9
	return weight.Board(s.Stock) * nm * nm
}
