package router

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// TestFewestChanges: no order that keeps the operations' places has fewer changes of bits,
// and every layer is still there.
func TestFewestChanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var faces [2][]Layer
		for i := range faces {
			for _, op := range []string{"drill", "dado", "groove", "rabbet", "cutout", "profile"} {
				for range rapid.IntRange(0, 2).Draw(t, op) {
					faces[i] = append(faces[i], Layer{Operation: op, Bit: rapid.IntRange(0, 2).Draw(t, "bit")})
				}
			}
		}
		changes := func(list []Layer) (n int) {
			for i := range list[min(1, len(list)):] {
				if list[i].Bit != list[i+1].Bit {
					n++
				}
			}
			return n
		}
		all := slices.Concat(faces[:]...)
		if len(all) == 0 {
			return
		}
		// Every order of the bits within each group, by trying them all.
		type state struct{ at, last int }
		least := map[state]int{{0, -1}: 0}
		var groups [][]int // sets of bits
		place := Options{}.rank
		for i := range faces {
			for k, l := range faces[i] {
				if k == 0 || place(l.Operation) != place(faces[i][k-1].Operation) {
					groups = append(groups, nil)
				}
				if g := &groups[len(groups)-1]; !slices.Contains(*g, l.Bit) {
					*g = append(*g, l.Bit)
				}
			}
		}
		for n, g := range groups {
			var try func(left []int, last, cost int)
			try = func(left []int, last, cost int) {
				if len(left) == 0 {
					s := state{n + 1, last}
					if old, known := least[s]; !known || cost < old {
						least[s] = cost
					}
					return
				}
				for i, b := range left {
					more := 0
					if last >= 0 && last != b {
						more = 1
					}
					try(slices.Delete(slices.Clone(left), i, i+1), b, cost+more)
				}
			}
			for last := -1; last < 3; last++ {
				if cost, known := least[state{n, last}]; known {
					try(g, last, cost)
				}
			}
		}
		want := len(all)
		for last := range 3 {
			if cost, known := least[state{len(groups), last}]; known {
				want = min(want, cost)
			}
		}
		before := [2][]Layer{slices.Clone(faces[0]), slices.Clone(faces[1])}
		Options{}.MinToolChanges(faces[:]...)
		if got := changes(slices.Concat(faces[:]...)); got != want {
			t.Fatalf("%d changes, want %d: %v", got, want, faces)
		}
		for i := range faces {
			for k, l := range faces[i] {
				if place(l.Operation) != place(before[i][k].Operation) {
					t.Fatal("operations have changed places")
				}
			}
		}
	})
}
