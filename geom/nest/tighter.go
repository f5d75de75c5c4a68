package nest

import (
	"context"
	"slices"
)

// laid lays pieces out. Where the best is not proven, they are laid out under tighter rules too, with the same effort:
// so a free layout costs no more than one for cuts from edge to edge, and one with turned pieces no more than one with
// all as they lie. Very many kinds are laid out once.
func (m *matching) laid(ctx context.Context, only []sizeSet, o Options) Layout {
	w := begin(m.pieces, m.sheets, only, m.rules)
	best := w.lay(ctx, o)
	if len(w.kinds) > manyKinds {
		return best
	}
	least := w.least() // of what it did not lay whole, the bound is not kept
	fewest := max(best.MinSheets, w.fewest(least))
	cost := max(best.LowerBound, least*w.price)
	o.Progress = nil
	for _, t := range tighter(m.pieces, m.rules) {
		if ctx.Err() != nil || best.Missing() == 0 && best.Optimal() {
			break
		}
		w := begin(t.pieces, m.sheets, only, t.rules)
		if best.Missing() == 0 && w.least()*w.price >= best.Cost*(1-1e-9) {
			continue
		}
		l := w.lay(ctx, o)
		l.Completed = l.Completed && best.Completed
		if better(l, best) {
			if best = l; best.Missing() == 0 {
				best.LowerBound, best.MinSheets = cost, fewest
			}
		}
	}
	return best
}

// stricter are rules, and pieces, with which any layout keeps the others too.
type stricter struct {
	pieces []Piece
	rules  Rules
}

// tighter are all of them.
func tighter(pieces []Piece, r Rules) (list []stricter) {
	lie := slices.Clone(pieces)
	for i := range lie {
		lie[i].MayRotate = false
	}
	cut := r
	cut.Method = Guillotine
	turns, free := !slices.Equal(lie, pieces), r.Method == Free
	if free {
		list = append(list, stricter{pieces, cut})
	}
	if turns {
		list = append(list, stricter{lie, r})
	}
	if turns && free {
		list = append(list, stricter{lie, cut})
	}
	return list
}
