package nest

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestSetsAndMatches: sets stay together in their order and what matches comes from one
// batch, whatever else is laid out; planted faults are found.
func TestSetsAndMatches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces, sheets, r := fewPieces(t)
		for i := range pieces {
			if i < 4 {
				pieces[i].Match = rapid.IntRange(0, 2).Draw(t, "match")
			}
			if i%3 == 0 && i+1 < len(pieces) {
				pieces[i].Set, pieces[i+1].Set = i+1, i+1
				pieces[i+1].Count, pieces[i+1].Match = pieces[i].Count, pieces[i].Match
				if i+1 < 4 {
					pieces[i+1].Match = pieces[i].Match
				}
			}
		}
		for i := range pieces {
			if i > 0 && pieces[i].Set > 0 && pieces[i].Set == pieces[i-1].Set {
				pieces[i].Match = pieces[i-1].Match
			}
		}
		other := sheets[0]
		sheets[0].Batch, other.Batch, other.Count = "one", "two", rapid.IntRange(0, 4).Draw(t, "stock")
		sheets = append(sheets, other)
		if r.Method == Free {
			r.Stages = 0
		}
		sets := false
		for _, p := range pieces {
			sets = sets || p.Set > 0
		}
		if sets && r.Stages == 2 {
			r.Stages = 3
		}
		l := lay(t, pieces, sheets, r, 2)
		if err := Check(l, pieces, sheets, r); err != nil {
			t.Fatalf("%v\n%+v\n%+v\n%+v", err, l, pieces, sheets)
		}
		if l.Cost < l.LowerBound*(1-1e-9) || l.Count < l.MinSheets {
			t.Fatalf("cost %g and %d sheets, at least %g and %d", l.Cost, l.Count, l.LowerBound, l.MinSheets)
		}
	})
}

func TestSetFaults(t *testing.T) {
	pieces := []Piece{{Name: "lower", Length: 40, Width: 20, Count: 1, Set: 1, Match: 1}, {Name: "upper", Length: 40, Width: 15, Count: 1, Set: 1, Match: 1}}
	sheets := []Sheet{{Length: 50, Width: 50, Batch: "a"}, {Length: 50, Width: 50, Batch: "b"}}
	r := Rules{Kerf: 3}
	good := Layout{Sheets: []LaidSheet{{0, []Placement{{0, 0, 0, false}, {1, 0, 23, false}}}}, Remaining: []int{0, 0}}
	if err := Check(good, pieces, sheets, r); err != nil {
		t.Error(err)
	}
	order := Layout{Sheets: []LaidSheet{{0, []Placement{{0, 0, 18, false}, {1, 0, 0, false}}}}, Remaining: []int{0, 0}}
	if err := Check(order, pieces, sheets, r); err == nil || !strings.Contains(err.Error(), "beside the next of its set") {
		t.Errorf("another order: %v", err)
	}
	pieces[0].Set, pieces[1].Set = 0, 0
	two := Layout{Sheets: []LaidSheet{{0, []Placement{{0, 0, 0, false}}}, {1, []Placement{{1, 0, 0, false}}}}, Remaining: []int{0, 0}}
	if err := Check(two, pieces, sheets, r); err == nil || !strings.Contains(err.Error(), "another batch") {
		t.Errorf("two batches: %v", err)
	}
}

// TestBatchChosen: the batch that holds all that matches is taken, not the cheaper one.
func TestBatchChosen(t *testing.T) {
	pieces := []Piece{{Name: "front", Length: 90, Width: 90, Count: 3, Match: 1}, {Name: "side", Length: 90, Width: 90, Count: 2}}
	sheets := []Sheet{{Length: 100, Width: 100, Batch: "few", Count: 2, Price: 1}, {Length: 100, Width: 100, Batch: "many", Price: 2}}
	l := lay(t, pieces, sheets, Rules{}, 5)
	if err := Check(l, pieces, sheets, Rules{}); err != nil {
		t.Fatal(err)
	}
	if l.Cost != 8 || fmt.Sprint(l.Remaining) != "[0 0]" {
		t.Errorf("cost %g, left %v", l.Cost, l.Remaining)
	}
}
