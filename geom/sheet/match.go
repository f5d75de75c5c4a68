package sheet

import (
	"cmp"
	"slices"

	"drawerwright/geom/joinery"
)

// Matching is how the fronts of an opening match each other. They come from sheets of one batch,
// whose veneers look alike; in sequence, the grain runs on from one to the next.
type Matching uint8

const (
	Unmatched  Matching = iota
	OneBatch            // the fronts of an opening are of one batch
	InSequence          // and those of one role lie one beside the other, as they stand
)

// Wanted is parts of one drawer among equal ones.
type Wanted struct {
	Role          joinery.Role
	Count, Spares int // spares among Count
	Opening, Row  int // where the drawer is: from 1, 0 for no opening; from above
}

// Piece is parts that are laid as one kind: equal ones, but each drawer's fronts for themselves
// where fronts match. Match is the number of the batch, Set of the sequence; 0 for none.
type Piece struct {
	Parts      []Share
	Match, Set int
}

// Share is how many parts of one drawer a piece stands for, by the place of these in the groups.
type Share struct{ Group, Place, Count int }

// Count is how often a piece is laid.
func (p Piece) Count() (n int) {
	for _, s := range p.Parts {
		n += s.Count
	}
	return n
}

// Pieces are the pieces of groups of equal parts. Spares of fronts match nothing. A sequence needs
// as many of each front, and a drawer that is in an opening.
func Pieces(groups [][]Wanted, by Matching) (list []Piece) {
	var fronts []front
	for g, group := range groups {
		var rest Piece
		for i, w := range group {
			if by == Unmatched || w.Role != joinery.Front && w.Role != joinery.DrawerFrontRole {
				rest.Parts = append(rest.Parts, Share{g, i, w.Count})
				continue
			}
			if w.Spares > 0 {
				rest.Parts = append(rest.Parts, Share{g, i, w.Spares})
			}
			fronts = append(fronts, front{w, Share{g, i, w.Count - w.Spares}})
		}
		if rest.Count() > 0 {
			list = append(list, rest)
		}
	}
	slices.SortStableFunc(fronts, func(a, b front) int { // the lowest first
		return cmp.Or(cmp.Compare(a.Opening, b.Opening), cmp.Compare(a.Role, b.Role), cmp.Compare(b.Row, a.Row))
	})
	for i, f := range fronts {
		p := Piece{Parts: []Share{f.share}, Match: f.Opening + 1}
		same := func(o front) bool { return o.Opening == f.Opening && o.Role == f.Role }
		other := func(o front) bool { return same(o) && o.share.Count != f.share.Count }
		if by == InSequence && f.Opening > 0 && !slices.ContainsFunc(fronts, other) {
			p.Set = 1 + slices.IndexFunc(fronts[:i+1], same)
		}
		if p.Count() > 0 {
			list = append(list, p)
		}
	}
	return list
}

// front is one that matches others.
type front struct {
	Wanted
	share Share
}
