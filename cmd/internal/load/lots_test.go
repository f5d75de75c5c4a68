package load

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// measuredJob is a job of two drawers from sheets of which each was measured once.
func measuredJob(thickness []float64, wide, deep int) string {
	return fmt.Sprintf(`units: mm
stock:
  birch: {thickness: [%s], readings-per-sheet: 1, sheet: 1525 x 1525, grain: length}
  hardboard: {thickness: [5.92, 5.86, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, count: %d, outside: 460 x 140 x 500, sides: birch, bottom: hardboard}
  - {name: deep, count: %d, outside: 460 x 240 x 500, sides: birch, bottom: hardboard, spares: 1}
`, strings.Trim(strings.Join(strings.Fields(fmt.Sprintf("%.2f", thickness)), ", "), "[]"), wide, deep)
}

// asCome reads a job as it is written, its sheets as they come.
func asCome(t *testing.T, text string) (*job.Job, []foreseen) {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	boxes, sound := foresee(j)
	if !sound {
		t.Fatal("its boxes cannot be made")
	}
	return j, boxes
}

// TestLotsOfSheets: seven sheets, four about 12.05 and three about 12.4 mm thick, of which the boxes take six. A front
// flush in the middle of 0.43 mm is off by 0.21, near the limit of 0.25: two lots, each with its own fence distance,
// half of its mean. Sheets of 12.05 and 12.06 have one setting as it is printed: six by themselves have five.
func TestLotsOfSheets(t *testing.T) {
	text := measuredJob([]float64{12.05, 12.41, 12.39, 12.08, 12.45, 12.06, 12.02}, 12, 16)
	l := Read("job.yaml", strings.NewReader(text), nil)
	if l.Failed() || len(l.Saved) != 1 {
		t.Fatal(l.Problems, l.Saved)
	}
	var got []string
	for _, d := range l.Batch.Drawers {
		got = append(got, fmt.Sprintf("%s: %d of %s, fence %.4g", d.Spec.Name, d.Spec.Count, d.Spec.Sides.Name,
			d.Setup.FenceDistance))
	}
	if want := []string{"wide A: 12 of birch A, fence 6.026", "deep A: 10 of birch A, fence 6.026",
		"deep B: 6 of birch B, fence 6.2"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	numbers := map[string][]int{}
	for stock, of := range l.Job.Sheets.Of {
		for _, one := range of.Measured {
			numbers[stock] = append(numbers[stock], one.Number)
		}
	}
	a, b := numbers["birch A"], numbers["birch B"]
	if !slices.Equal(a, []int{7, 1, 6, 4}) || !slices.Equal(b, []int{3, 2}) {
		t.Errorf("%v", numbers)
	}
	const saved = "birch is cut in 2 lots at 2 settings, where each sheet by itself would take 5; 998 of 1,000 "
	if !strings.HasPrefix(l.Saved[0], saved) {
		t.Error(l.Saved[0])
	}
	note := l.Problems[slices.IndexFunc(l.Problems, func(p job.Problem) bool { return geom.Code(p.Code) == codeLots })]
	if note.Line != 3 ||
		!strings.Contains(note.Message, "no. 7, 1, 6 and 4 as birch A, 12.02 to 12.08 mm; no. 3 and 2 as birch B, ") {
		t.Error(note)
	}
}

// TestLotsOfAnySheets: however thick sheets are, every box is made once, of sheets of one lot, which hold it; no sheet
// is in two lots; no fewer boxes come out right than from sheets as they come; and where lots do not do, the job is as
// it is written.
func TestLotsOfAnySheets(t *testing.T) {
	parted := 0
	for seed := range uint64(geomtest.Cases(6, 300)) {
		r := rand.New(rand.NewPCG(seed, 26))
		thickness := make([]float64, 3+r.IntN(5))
		for i := range thickness {
			thickness[i] = 12 + 0.35*float64(r.IntN(2)) + 0.1*r.Float64() // of two deliveries
		}
		text := measuredJob(thickness, 4+r.IntN(9), 4+r.IntN(9))
		before, come := asCome(t, text)
		l := Read("job.yaml", strings.NewReader(text), nil)
		l.Lay(context.Background(), nil, sheets.Search{})
		if len(l.Saved) == 0 {
			if len(l.Job.Drawers) != len(before.Drawers) || !slices.ContainsFunc(l.Problems, func(p job.Problem) bool {
				return strings.Contains(p.Message, "as they come")
			}) {
				t.Fatalf("seed %d: %v", seed, l.Problems)
			}
			continue
		}
		if l.Failed() {
			t.Fatalf("seed %d: %v\n%s", seed, l.Problems, text)
		}
		parted += len(l.Plan.Stocks) - 2
		everyBox(t, l, before)
		now, _ := foresee(l.Job)
		if right(now).Fraction < right(come).Fraction {
			t.Fatalf("seed %d: %v, but %v from sheets as they come\n%s", seed, right(now), right(come), text)
		}
	}
	if parted == 0 {
		t.Error("no job has two lots")
	}
}

// everyBox holds the boxes and sheets of a job in lots against the job as it is written.
func everyBox(t *testing.T, l Loaded, before *job.Job) {
	t.Helper()
	boxes, used := map[string]int{}, map[int]bool{}
	for _, d := range l.Job.Drawers {
		name, letter, _ := strings.Cut(d.Name, " ")
		boxes[name] += d.Count
		if d.Sides.Name != strings.TrimSpace("birch "+letter) || d.Front.Name != d.Sides.Name {
			t.Fatalf("%s is of %s and %s", d.Name, d.Sides.Name, d.Front.Name)
		}
	}
	for _, d := range before.Drawers {
		if boxes[d.Name] != d.Count {
			t.Fatalf("%d of %s, not %d", boxes[d.Name], d.Name, d.Count)
		}
	}
	for i := range l.Plan.Stocks {
		s := &l.Plan.Stocks[i]
		placed := 0
		for _, one := range s.Laid {
			placed += one.Count * len(one.Placements)
		}
		wanted := 0
		for _, p := range s.Pieces {
			wanted += p.Count
		}
		if placed != wanted || s.LotOf != "" && s.Layout.Count > len(s.Measured) {
			t.Fatalf("%s: %d of %d parts, %d sheets of %d", s.Name, placed, wanted, s.Layout.Count, len(s.Measured))
		}
		for _, one := range s.Measured {
			if used[one.Number] {
				t.Fatalf("sheet %d is in two lots", one.Number)
			}
			used[one.Number] = true
			if one.Thickness.Mean < s.Stock.Thickness.Min || one.Thickness.Mean > s.Stock.Thickness.Max {
				t.Fatalf("sheet %d of %g is not in %+v", one.Number, one.Thickness.Mean, s.Stock.Thickness)
			}
		}
	}
}

// stopsAfter is a context that ends once it was asked so often whether it has.
type stopsAfter struct {
	context.Context
	left atomic.Int64
}

func (s *stopsAfter) Err() error {
	if s.left.Add(-1) >= 0 {
		return nil
	}
	return context.Canceled
}

// TestSortingStops: where nobody waits any more, at whatever place of the search, no boxes are worked out for lots that
// were not yet, sheets stay as they come, and nothing is said of them.
func TestSortingStops(t *testing.T) {
	text := measuredJob([]float64{12.05, 12.41, 12.39, 12.08, 12.45, 12.06, 12.02}, 12, 16)
	for _, left := range []int64{0, 1, 5, 10} {
		ctx := &stopsAfter{Context: t.Context()}
		ctx.left.Store(left)
		l := Parse(ctx, "job.yaml", strings.NewReader(text), nil)
		if len(l.Saved) > 0 || len(l.Problems) > 0 || len(l.Job.Sheets.Of["birch"].Measured) != 7 {
			t.Errorf("asked %d times: %v, %v", left, l.Saved, l.Problems)
		}
	}
}
