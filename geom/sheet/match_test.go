package sheet_test

import (
	"reflect"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/sheet"
)

// TestPieces: two drawers in an opening, the lower one second, a third in none; front and side of
// each. Sides are one piece; of three fronts and a spare the spare matches nothing.
func TestPieces(t *testing.T) {
	front := func(n, spares, opening, row int) sheet.Wanted {
		return sheet.Wanted{Role: joinery.Front, Count: n, Spares: spares, Opening: opening, Row: row}
	}
	side := sheet.Wanted{Role: joinery.Side, Count: 2}
	share := func(list ...sheet.Share) []sheet.Share { return list }
	sides := sheet.Piece{Parts: share(sheet.Share{Group: 0, Count: 2}, sheet.Share{Group: 0, Place: 1, Count: 2})}
	groups := [][]sheet.Wanted{{side, side}, {front(2, 1, 1, 0), front(1, 0, 1, 1)}, {front(1, 0, 0, 0)}}
	lone := sheet.Share{Group: 2, Count: 1}
	upper, lower := sheet.Share{Group: 1, Place: 0, Count: 1}, sheet.Share{Group: 1, Place: 1, Count: 1}
	spare := sheet.Piece{Parts: share(upper)}
	for name, c := range map[string]struct {
		by   sheet.Matching
		want []sheet.Piece
	}{
		"unmatched": {sheet.Unmatched, []sheet.Piece{sides,
			{Parts: share(sheet.Share{Group: 1, Count: 2}, lower)}, {Parts: share(lone)}}},
		"one batch": {sheet.OneBatch, []sheet.Piece{sides, spare, {Parts: share(lone), Match: 1},
			{Parts: share(lower), Match: 2}, {Parts: share(upper), Match: 2}}},
		// A front in no opening runs on to nothing.
		"in sequence": {sheet.InSequence, []sheet.Piece{sides, spare, {Parts: share(lone), Match: 1},
			{Parts: share(lower), Match: 2, Set: 2}, {Parts: share(upper), Match: 2, Set: 2}}},
	} {
		if got := sheet.Pieces(groups, c.by); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
	// Two of the upper front and one of the lower make no sequence.
	groups[1][0].Spares = 0
	for _, p := range sheet.Pieces(groups, sheet.InSequence) {
		if p.Set > 0 {
			t.Errorf("a sequence of fronts of different counts: %+v", p)
		}
	}
}
