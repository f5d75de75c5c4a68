// Package gauge finds the limits between which the readings of the parts of drawers
// may be: a set in which every combination of readings, with boards anywhere within
// their range, makes boxes within all limits, those of their slides included. All
// lengths are in millimeters.
package gauge

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Drawer is a drawer with what its box depends on beside its sizes. Boards are between
// which thicknesses they were measured.
type Drawer struct {
	joinery.Drawer
	Boards   fit.Boards
	Accuracy fit.Accuracy
	Slide    *fit.SlideFit // nil without
}

// Row is a reading with its limits, in mm. Where the parts have a size each, Relative says that
// Target is 0 and that Min and Max are how far a part may be off its listed size.
type Row struct {
	Kind             fit.ReadingKind
	Target, Min, Max float64
	Relative         bool
}

// Limits are the limits of the readings of drawers that are cut at one setting. Every
// combination of readings within them is right; none of the limits can be moved out
// while the others stay, but those that are [furthest] from their targets.
type Limits struct {
	Rows []Row // in the order of [fit.ReadingKinds]
	// OutOfLimits are the measures that are out of their limits as drawn, with every board as
	// thick as the mean of its readings: the rows are those of the other measures.
	OutOfLimits []Measure
	// SortBoards are the stocks whose boards differ by more than the limits take: the rows
	// hold for boards within these. Why names the measures; Lengths says that fronts and
	// backs cut to the sides of their own box are another way.
	SortBoards []Range
	Why        []Measure
	Lengths    bool
	// TooNarrow are the measures whose limits leave less than a caliper reads; then there
	// are no rows.
	TooNarrow []Measure
}

// Measure is a measure of a box, with its limits and the first drawer that has it.
type Measure struct {
	joinery.Check
	Drawer string
}

// sameCheck reports whether two measures are the same check of the same part; all
// dividers are one.
func (m Measure) sameCheck(o Measure) bool { return m.Code == o.Code && m.Part == o.Part }

// Range is between which thicknesses the boards of a stock have to be.
type Range struct {
	Stock    string
	Min, Max float64
}

// Find finds the limits for drawers, which are cut at one setting. The shop's accuracy
// shares out what the limits leave: a reading that a shop keeps to half as well gets
// twice as much, until a limit of a box is met; the rest goes to the readings that it
// is of no concern to, and so on, until every reading has met one or is [furthest] off.
func Find(drawers []Drawer) Limits {
	p := gather(drawers)
	var s Limits
	p.bounds = slices.DeleteFunc(p.bounds, func(b *bound) bool {
		if b.gap(p.none(), 0) >= -settle {
			return false
		}
		s.OutOfLimits = append(s.OutOfLimits, b.measure)
		return true
	})
	p.sort(&s)
	ext := p.fill()
	for i, v := range p.vars {
		least, most := ext[2*i], ext[2*i+1]
		if !slices.ContainsFunc(p.bounds, func(b *bound) bool { return b.concerns(2*i, 2*i+1) }) {
			continue // nothing hangs on it
		}
		if least+most < 2*fit.CaliperReads-settle { // no reading is surely between them
			s.TooNarrow = append(s.TooNarrow, p.meets(ext, 2*i, 2*i+1)...)
		}
		s.Rows = append(s.Rows, Row{v.kind, v.target, v.target - least, v.target + most, v.off})
	}
	s.OutOfLimits, s.Why, s.TooNarrow = once(s.OutOfLimits), once(s.Why), once(s.TooNarrow)
	if len(s.TooNarrow) > 0 {
		s.Rows = nil
	}
	return s
}

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle

// once leaves out measures that are the same check of the same part.
func once(list []Measure) (out []Measure) {
	for _, m := range list {
		if !slices.ContainsFunc(out, func(o Measure) bool { return o.sameCheck(m) }) {
			out = append(out, m)
		}
	}
	return out
}

// variable is a reading that is shared by drawers.
type variable struct {
	kind   fit.ReadingKind
	target float64
	off    bool
	error  float64
}

// side of a variable, by its place in a list of how far limits are from the targets:
// 2 i below the target of variable i, 2 i + 1 above it.
type side = int

// problem is what limits have to keep.
type problem struct {
	drawers []Drawer
	vars    []variable
	bounds  []*bound
}

func (p *problem) none() []float64 { return make([]float64, 2*len(p.vars)) }

// sameTarget is how near targets are that are one, in mm: settings that print alike.
const sameTarget = 0.0255

// gather lists the readings of drawers and the limits of their boxes, each different
// one once.
func gather(drawers []Drawer) *problem {
	p := &problem{drawers: drawers}
	listed := make([][]fit.Reading, len(drawers))
	for i, d := range drawers {
		listed[i] = fit.Readings(d.Drawer, d.Accuracy)
		for _, r := range listed[i] {
			if p.nearest(r) < 0 {
				p.vars = append(p.vars, variable{kind: r.Kind, target: r.Target})
			}
		}
	}
	reads := make([][]read, len(drawers)) // once all rows are known, so that none nearer is to come
	for i, list := range listed {
		for _, r := range list {
			reads[i] = append(reads[i], read{r, p.share(r)})
		}
	}
	place := p.order()
	seen := make(map[mark]bool)
	for i, d := range drawers {
		drives := p.drives(reads[i], place)
		for _, m := range fit.Measures(d.Drawer, d.Boards, fit.Accuracy{}, d.Slide) {
			for _, up := range []bool{false, true} {
				b := newBound(d, m, drives, up)
				if k := b.mark(p.none()); !seen[k] {
					seen[k] = true
					p.bounds = append(p.bounds, b)
				}
			}
		}
	}
	return p
}

// read is a reading of a drawer with its variable.
type read struct {
	fit.Reading
	variable int
}

// nearest finds the variable that a reading shares: of those whose target is the same, the
// one whose target is nearest, which is the row that a person looks a reading up in; -1
// without any.
func (p *problem) nearest(r fit.Reading) int {
	n, least := -1, sameTarget
	for i, v := range p.vars {
		if v.kind != r.Kind {
			continue
		}
		if r.Kind.OfSize() || math.IsNaN(r.Target) {
			return i
		}
		if by := math.Abs(r.Target - v.target); by < least {
			n, least = i, by
		}
	}
	return n
}

// share gives a reading its variable, which is as rough as the roughest of its readings.
func (p *problem) share(r fit.Reading) int {
	n := p.nearest(r)
	v := &p.vars[n]
	v.error = max(v.error, r.Error)
	v.off = v.off || math.IsNaN(r.Target) || r.Kind.OfSize() && math.Abs(r.Target-v.target) > settle
	return n
}

// order puts the variables in the order in which they are taken, thin before thick, and
// gives the new place of each.
func (p *problem) order() (place []int) {
	order := make([]int, len(p.vars))
	for i := range order {
		order[i] = i
		if p.vars[i].off {
			p.vars[i].target = 0
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		u, v := p.vars[a], p.vars[b]
		return cmp.Or(cmp.Compare(slices.Index(fit.ReadingKinds, u.kind), slices.Index(fit.ReadingKinds, v.kind)), cmp.Compare(u.target, v.target))
	})
	place, vars := make([]int, len(order)), make([]variable, len(order))
	for to, from := range order {
		place[from], vars[to] = to, p.vars[from]
	}
	p.vars = vars
	return place
}

// drives are what readings do to the sources of a box.
func (p *problem) drives(reads []read, place []int) map[int]drive {
	drives := make(map[int]drive)
	for _, r := range reads {
		n, shift := place[r.variable], 0.0
		if v := p.vars[n]; !v.off {
			shift = v.target - r.Target
		}
		for _, s := range r.Sources {
			drives[s] = drive{n, r.By, shift}
		}
	}
	return drives
}
