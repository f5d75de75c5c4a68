package sheet_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom/sheet"
)

// TestLots: sheets of 12.00, 12.05, 12.40, 12.47 and 12.55 mm that hold two boxes each. One setting serves those that
// differ by no more than 0.20 mm: four boxes come from the two that differ the least, six from the three thick ones;
// seven take both lots, the second of the two that differ less; eleven have no sheet.
func TestLots(t *testing.T) {
	for boxes, want := range map[int][]sheet.Lot{4: {{From: 0, To: 2, Boxes: 4}}, 6: {{From: 2, To: 5, Boxes: 6}},
		7: {{From: 0, To: 2, Boxes: 4}, {From: 2, To: 4, Boxes: 3}}, 11: nil} {
		s := sorting([]int{1200, 1205, 1240, 1247, 1255}, 20, slices.Repeat([]int{1}, boxes), 2)
		if got := s.Lots(); !slices.Equal(got, want) {
			t.Errorf("%d boxes: %v, not %v", boxes, got, want)
		}
	}
}

// sorting is of sheets of such thicknesses, each of which holds boxes of so much; one setting serves
// those that do not differ by more.
func sorting(thick []int, differ int, sizes []int, holds int) sheet.Sorting {
	spread := func(from, to int) float64 { return float64(thick[to-1] - thick[from]) }
	return sheet.Sorting{Sheets: len(thick), Boxes: len(sizes), Cost: spread,
		Serves: func(from, to int) bool { return spread(from, to) <= float64(differ) },
		Need:   func(from, to int) int { return inTurn(sizes[from:to], holds) }}
}

// inTurn is how many sheets boxes take that are cut from them in turn.
func inTurn(sizes []int, holds int) int {
	sheets, left := 0, 0
	for _, size := range sizes {
		if size > holds {
			return math.MaxInt
		}
		if size > left {
			sheets, left = sheets+1, holds
		}
		left -= size
	}
	return sheets
}

// fewest is the least number of lots, found by trying all: from sheet and from box are what is left of both.
func fewest(s sheet.Sorting, sheets, box int) int {
	if box == s.Boxes {
		return 0
	}
	best := math.MaxInt
	for from := sheets; from < s.Sheets; from++ {
		for to := from + 1; to <= s.Sheets && s.Serves(from, to); to++ {
			for next := box + 1; next <= s.Boxes && s.Need(box, next) <= to-from; next++ {
				if n := fewest(s, to, next); n < math.MaxInt {
					best = min(best, 1+n)
				}
			}
		}
	}
	return best
}

// whole holds lots against what they are of.
func whole(t *rapid.T, s sheet.Sorting, lots []sheet.Lot) {
	box, last := 0, 0
	for _, l := range lots {
		if l.From < last || l.To > s.Sheets || l.Boxes < 1 || !s.Serves(l.From, l.To) ||
			s.Need(box, box+l.Boxes) != l.To-l.From {
			t.Fatalf("%v: lot %v", lots, l)
		}
		box, last = box+l.Boxes, l.To
	}
	if box != s.Boxes {
		t.Fatalf("%v: %d of %d boxes", lots, box, s.Boxes)
	}
}

// TestLotsAreFewest: of up to seven sheets and boxes, no others do with fewer lots; every box is in one, which
// its sheets hold and one setting serves, and no sheet is in two. A lot by itself has the fewest sheets, and of these
// those that differ the least.
func TestLotsAreFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.SliceOfN(rapid.IntRange(0, 12), 1, 7).Draw(t, "thick")
		slices.Sort(thick)
		s := sorting(thick, rapid.IntRange(0, 6).Draw(t, "differ"),
			rapid.SliceOfN(rapid.IntRange(1, 4), 1, 7).Draw(t, "sizes"), rapid.IntRange(3, 9).Draw(t, "holds"))
		lots := s.Lots()
		want := fewest(s, 0, 0)
		if lots == nil {
			if want < math.MaxInt {
				t.Fatalf("none, though %d would do", want)
			}
			return
		}
		if len(lots) != want {
			t.Fatalf("%v, though %d would do", lots, want)
		}
		whole(t, s, lots)
		if len(lots) == 1 {
			for from := 0; from+lots[0].To-lots[0].From <= s.Sheets; from++ {
				if to := from + lots[0].To - lots[0].From; s.Cost(from, to) < s.Cost(lots[0].From, lots[0].To) {
					t.Fatalf("%v, though %d to %d differ less", lots, from, to)
				}
			}
		}
	})
}

// TestLotsOfManySheets: of up to 30 sheets, each for one box, no others do with fewer lots: so many lots of as many
// sheets as one setting serves hold as many boxes, or fewer of them would.
func TestLotsOfManySheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.SliceOfN(rapid.IntRange(0, 60), 13, 30).Draw(t, "thick")
		slices.Sort(thick)
		boxes := rapid.IntRange(1, len(thick)).Draw(t, "boxes")
		s := sorting(thick, rapid.IntRange(0, 12).Draw(t, "differ"), slices.Repeat([]int{1}, boxes), 1)
		lots := s.Lots()
		whole(t, s, lots)
		held := make([]int, len(thick)+1) // by the best lots of the sheets before each
		want := 0
		for ; held[len(thick)] < boxes; want++ {
			next := make([]int, len(thick)+1)
			for to := 1; to <= len(thick); to++ {
				next[to] = next[to-1]
				for from := range to {
					if s.Serves(from, to) {
						next[to] = max(next[to], held[from]+to-from)
					}
				}
			}
			held = next
		}
		if len(lots) != want {
			t.Fatalf("%v, though %d would do", lots, want)
		}
	})
}
