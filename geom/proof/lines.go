package proof

import "slices"

// run is a stretch of a board along a line on which the same cuts lie, by the
// index of their set. It does not know how deep they are: that is asked for at
// one thickness after another.
type run struct {
	from, to float64
	set      int
}

// lines cuts boards along lines; it keeps all runs until it is reset.
type lines struct {
	runs  []run
	sets  []uint64 // of cuts, a bit each, in as many words as the board needs
	marks []float64
	spans []span
}

type span struct {
	from, to float64
	cut      int // -1 for the outline
}

// stretchOf is a range of runs.
type stretchOf struct{ first, end int }

func words(b *Board) int { return (len(b.Cuts) + 63) / 64 }

// along finds the runs of a board on a line, in order: at x for along 0, at y for
// 1. Only what lies between two places along the line is asked for.
func (s *lines) along(b *Board, along int, at, low, high float64) stretchOf {
	s.spans, s.marks = s.spans[:0], s.marks[:0]
	add := func(shape Shape, cut int) {
		lo, hi, from, to := shape.box.Min.X, shape.box.Max.X, shape.box.Min.Y, shape.box.Max.Y
		if along == 1 {
			lo, hi, from, to = from, to, lo, hi
		}
		if at < lo || at > hi || to < low || from > high {
			return
		}
		first := len(s.marks)
		s.marks = shape.crossings(s.marks, along, at)
		slices.Sort(s.marks[first:])
		for i := first; i+1 < len(s.marks); i += 2 {
			s.spans = append(s.spans, span{s.marks[i], s.marks[i+1], cut})
		}
	}
	add(b.Outline, -1)
	for i := range b.Cuts {
		add(b.Cuts[i].Shape, i)
	}
	slices.Sort(s.marks)
	out := stretchOf{len(s.runs), len(s.runs)}
	n := words(b)
	for i := 0; i+1 < len(s.marks); i++ {
		from, to := s.marks[i], s.marks[i+1]
		if to-from < sliver || to < low || from > high {
			continue
		}
		set := len(s.sets)
		for range n {
			s.sets = append(s.sets, 0)
		}
		there := false
		for _, p := range s.spans {
			switch {
			case p.from > from+sliver/2 || p.to < to-sliver/2:
			case p.cut < 0:
				there = true
			default:
				s.sets[set+p.cut/64] |= 1 << (p.cut % 64)
			}
		}
		if !there {
			s.sets = s.sets[:set]
			continue
		}
		s.runs = append(s.runs, run{from, to, set})
		out.end++
	}
	return out
}

// alike reports whether two stretches of one board hold the same runs.
func (s *lines) alike(b *Board, p, q stretchOf) bool {
	n := words(b)
	for _, r := range s.runs[p.first:p.end] {
		for i := range b.Cuts {
			if b.Cuts[i].Lean != 0 && s.sets[r.set+i/64]&(1<<(i%64)) != 0 {
				return false
			}
		}
	}
	return slices.EqualFunc(s.runs[p.first:p.end], s.runs[q.first:q.end], func(x, y run) bool {
		return x.from-y.from < sliver && y.from-x.from < sliver && x.to-y.to < sliver && y.to-x.to < sliver &&
			slices.Equal(s.sets[x.set:x.set+n], s.sets[y.set:y.set+n])
	})
}

// reset gives all runs back.
func (s *lines) reset() { s.runs, s.sets = s.runs[:0], s.sets[:0] }
