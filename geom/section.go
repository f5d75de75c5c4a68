package geom

import "slices"

// Sections finds what wood is on lines across a panel. Its loops are taken as they
// are, their arcs in chords: nothing is rounded to a grid, as in a [Plan].
type Sections struct {
	panel          Panel
	chord          float64
	outline        Ring
	holes, pockets []Ring
}

// SectionLines prepares a panel for sections; arcs become chords that keep within a
// tolerance in millimeters.
func (p Panel) SectionLines(chord float64) *Sections {
	s := &Sections{panel: p, chord: chord, outline: p.Outline.Flatten(chord)}
	for _, h := range p.Holes {
		s.holes = append(s.holes, h.Flatten(chord))
	}
	for _, k := range p.Pockets {
		s.pockets = append(s.pockets, k.Outline.Flatten(chord))
	}
	return s
}

// Section is a line across a panel, and where the panel's loops cross it.
type Section struct {
	of             *Sections
	axis           Axis
	at             float64
	outline        []float64
	holes, pockets [][]float64
}

// At is the section along an axis, at a distance across it.
func (s *Sections) At(axis Axis, at float64) Section {
	cross := func(rings []Ring) [][]float64 {
		list := make([][]float64, len(rings))
		for i, r := range rings {
			list[i] = r.Crossings(nil, axis, at)
		}
		return list
	}
	return Section{of: s, axis: axis, at: at, outline: s.outline.Crossings(nil, axis, at), holes: cross(s.holes),
		pockets: cross(s.pockets)}
}

// between reports whether a place lies between an odd crossing and the next.
func between(crossings []float64, along float64) bool {
	n, _ := slices.BinarySearch(crossings, along)
	return n%2 == 1
}

// Depths are those of what is cut from both faces at a place of the section; ok is
// false beyond the outline and in holes. A run across a floor that leans has the depth of its middle. On a loop
// itself either may be.
func (s Section) Depths(along float64) (inside, outside float64, ok bool) {
	if !between(s.outline, along) || slices.ContainsFunc(s.holes, func(h []float64) bool { return between(h, along) }) {
		return 0, 0, false
	}
	for i, k := range s.of.panel.Pockets {
		if !between(s.pockets[i], along) {
			continue
		}
		depth := k.DepthAt(s.axis.At(along, s.at).Y)
		if k.Face == Inside {
			inside = max(inside, depth)
		} else {
			outside = max(outside, depth)
		}
	}
	return inside, outside, true
}

// Run is a stretch of a section with what is cut from both faces.
type Run struct {
	Interval
	Inside, Outside float64 // depths
}

// Wood is the run's height over the outside face of a panel of a thickness.
func (r Run) Wood(thickness float64) Interval { return Interval{r.Outside, thickness - r.Inside} }

// Runs are the stretches of one depth each, in order. What is cut through is left
// out, and what is shorter than the chords are true.
func (s Section) Runs() (runs []Run) {
	places := slices.Clone(s.outline)
	for _, list := range [][][]float64{s.holes, s.pockets} {
		for _, l := range list {
			places = append(places, l...)
		}
	}
	slices.Sort(places)
	chord, thickness := s.of.chord, s.of.panel.Thickness
	for i := range len(places) - 1 {
		on := Interval{places[i], places[i+1]}
		inside, outside, ok := s.Depths(on.Mid())
		if on.Len() < chord || !ok || inside+outside >= thickness-chord {
			continue
		}
		if n := len(runs) - 1; n >= 0 && runs[n].Max == on.Min && runs[n].Inside == inside && runs[n].Outside == outside {
			runs[n].Max = on.Max
			continue
		}
		runs = append(runs, Run{on, inside, outside})
	}
	return runs
}
