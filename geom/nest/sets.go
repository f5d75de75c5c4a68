package nest

import "slices"

// sets are pieces of which those of a set are one, that holds them side by side.
type sets struct {
	pieces  []Piece
	rules   Rules
	members [][]int // pieces that each is made of
	all     []Piece // as they were given
}

// take puts a piece of its set beside a piece.
func (p *Piece) take(next Piece, kerf int64) {
	p.Length = max(p.Length, next.Length)
	p.Width += kerf + next.Width
	p.MayRotate = p.MayRotate && next.MayRotate
}

// Whole is a piece of a list with the others of its set, if it is of one, side by side: what a sheet has to hold.
func Whole(pieces []Piece, piece int, kerf int64) Piece {
	set := pieces[piece].Set
	if set <= 0 {
		return pieces[piece]
	}
	first := slices.IndexFunc(pieces, func(p Piece) bool { return p.Set == set })
	whole := pieces[first]
	for _, p := range pieces[first+1:] {
		if p.Set == set {
			whole.take(p, kerf)
		}
	}
	return whole
}

// joinSets makes one piece of each set. Taking it apart is one stage more.
func joinSets(pieces []Piece, r Rules) (sets, error) {
	out := sets{rules: r, all: pieces}
	at := make(map[int]int)
	for i, p := range pieces {
		n, known := at[p.Set]
		if p.Set <= 0 || !known {
			if p.Set > 0 {
				at[p.Set] = len(out.pieces)
			}
			out.pieces, out.members = append(out.pieces, p), append(out.members, []int{i})
			continue
		}
		whole := &out.pieces[n]
		if whole.Count != p.Count {
			return sets{}, refused(CodeSet, SettingPieces, i, "the count of piece %s is %d, that of others of its set %d", p.Name, p.Count, whole.Count)
		}
		if whole.Match != p.Match {
			return sets{}, refused(CodeSet, SettingPieces, i, "piece %s has to match other pieces than those of its set", p.Name)
		}
		whole.take(p, r.Kerf)
		if whole.Width > maxLength {
			return sets{}, refused(CodeSet, SettingPieces, i, "the set of %s is wider than any sheet", p.Name)
		}
		out.members[n] = append(out.members[n], i)
	}
	if len(out.pieces) < len(pieces) && r.Method == Guillotine && r.Stages > 0 {
		if out.rules.Stages--; out.rules.Stages < 2 {
			return sets{}, refused(CodeSet, SettingRules, 0, "sets that keep their order take one stage more than the others: at least 3")
		}
	}
	return out, nil
}

// spread puts the pieces of a set in its place.
func (s sets) spread(l *Layout) {
	for i := range l.Sheets {
		var placed []Placement
		for _, p := range l.Sheets[i].Placements {
			x, y := p.X, p.Y
			for _, m := range s.members[p.Piece] {
				placed = append(placed, Placement{Piece: m, X: x, Y: y, Rotated: p.Rotated})
				if step := s.all[m].Width + s.rules.Kerf; p.Rotated {
					x += step
				} else {
					y += step
				}
			}
		}
		l.Sheets[i].Placements = placed
	}
	left := make([]int, len(s.all))
	for n, members := range s.members {
		for _, m := range members {
			left[m] = l.Remaining[n]
		}
	}
	l.Remaining = left
}

// broken says which piece of a sheet does not lie beside the next of its set, if any.
func broken(l LaidSheet, pieces []Piece, kerf int64) (piece int, found bool) {
	next := make(map[int]int) // piece of a set after each
	last := make(map[int]int)
	for i, p := range pieces {
		if p.Set <= 0 {
			continue
		}
		if before, known := last[p.Set]; known {
			next[before] = i
		}
		last[p.Set] = i
	}
	at := make(map[Placement]bool)
	for _, p := range l.Placements {
		at[p] = true
	}
	for _, p := range l.Placements {
		n, more := next[p.Piece]
		if !more {
			continue
		}
		beside := Placement{Piece: n, X: p.X, Y: p.Y, Rotated: p.Rotated}
		if step := pieces[p.Piece].Width + kerf; p.Rotated {
			beside.X += step
		} else {
			beside.Y += step
		}
		if !at[beside] {
			return p.Piece, true
		}
	}
	return 0, false
}
