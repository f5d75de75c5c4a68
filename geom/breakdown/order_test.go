package breakdown

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestOrder: every cut is made once, after the one that it follows; and of 5,000 lists of a few cuts on which much lies
// on much, fence and stop are set more often than in the best of all orders in 1 of 100 at most.
func TestOrder(t *testing.T) {
	rnd, more := rand.New(rand.NewPCG(1, 9)), 0
	for range 5000 {
		jobs := make([]job, 1+rnd.IntN(9))
		for i := range jobs {
			jobs[i] = job{Cut: Cut{Stage: i, Kind: Kind(rnd.IntN(3)), Trim: rnd.IntN(5) == 0, Setting: 1 + rnd.Int64N(3)},
				after: rnd.IntN(i+1) - 1}
		}
		cuts := inOrder(jobs)
		at := slices.Repeat([]int{-1}, len(jobs))
		for n, c := range cuts {
			if at[c.Stage] >= 0 {
				t.Fatalf("cut %d is made twice: %+v", c.Stage, cuts)
			}
			at[c.Stage] = n
		}
		for i, j := range jobs {
			if at[i] < 0 || j.after >= 0 && at[j.after] > at[i] {
				t.Fatalf("cut %d is made before cut %d, or not at all: %+v", i, j.after, cuts)
			}
		}
		if setDevices(cuts); Moves(cuts) > fewest(jobs) {
			more++
		}
	}
	if more > 50 {
		t.Errorf("%d lists are set more often than in the best order", more)
	}
}

// TestStays: the sled stays on the saw as long as there is anything to cut on it, and what the stop is set for comes
// first when it is on again.
func TestStays(t *testing.T) {
	cut := func(k Kind, setting int64, stage, after int) job {
		return job{Cut: Cut{Kind: k, Setting: setting, Stage: stage}, after: after}
	}
	for name, k := range map[string]struct {
		jobs []job
		want []int64 // settings
	}{
		"on the sled": {[]job{cut(SledCut, 5, 1, -1), cut(FenceCut, 9, 2, 0), cut(SledCut, 4, 2, -1)}, []int64{5, 4, 9}},
		"at the stop": {[]job{cut(SledCut, 5, 2, -1), cut(FenceCut, 9, 2, 0), cut(SledCut, 5, 2, 1),
			cut(SledCut, 4, 1, 1)}, []int64{5, 9, 5, 4}},
	} {
		var got []int64
		for _, c := range inOrder(k.jobs) {
			got = append(got, c.Setting)
		}
		if !slices.Equal(got, k.want) {
			t.Errorf("%s: settings are %d, want %d", name, got, k.want)
		}
	}
}

// fewest is how often fence and stop are set at least, of all orders.
func fewest(jobs []job) int {
	type state struct {
		done        int
		fence, stop int64
	}
	known := make(map[state]int)
	var best func(s state) int
	best = func(s state) int {
		if s.done == 1<<len(jobs)-1 {
			return 0
		}
		if n, ok := known[s]; ok {
			return n
		}
		least := 1 << 20
		for i, j := range jobs {
			if s.done>>i&1 > 0 || j.after >= 0 && s.done>>j.after&1 == 0 {
				continue
			}
			next, set := s, 0
			next.done |= 1 << i
			switch {
			case j.Kind == FenceCut:
				if next.fence = j.Setting; s.fence != j.Setting {
					set = 1
				}
			case j.Kind == SledCut:
				if next.fence = 0; !j.Trim {
					if next.stop = j.Setting; s.stop != j.Setting {
						set = 1
					}
				}
			}
			least = min(least, set+best(next))
		}
		known[s] = least
		return least
	}
	return best(state{})
}
