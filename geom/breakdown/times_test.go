package breakdown

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// TestSeconds: what a plan takes is what a person spends who goes through its lines with a watch, whatever is on them
// and whatever the shop takes for each; the boards that are turned are those that were cut the other way before.
func TestSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := make([]Cut, rapid.IntRange(1, 20).Draw(t, "cuts"))
		for i := range cuts {
			cuts[i] = Cut{Kind: Kind(rapid.IntRange(0, 2).Draw(t, "kind")), Stage: rapid.IntRange(1, 3).Draw(t, "stage"),
				Count: rapid.IntRange(1, 3).Draw(t, "count"), NeedsHelper: rapid.Bool().Draw(t, "heavy"),
				SettingChanged: rapid.Bool().Draw(t, "set"),
				Workpiece:      Workpiece{Name: rapid.SampledFrom([]string{"1A", "1B"}).Draw(t, "board")}}
		}
		var times [5]int
		for i := range times {
			times[i] = rapid.IntRange(0, 300).Draw(t, "seconds")
		}
		setting, guide, cut, turn, helper := times[0], times[1], times[2], times[3], times[4]
		watch, held, turned := 0, "", 0 // what is at the fence, and which way
		ways, turns := make(map[string][]int), 0
		for _, c := range cuts {
			if c.SettingChanged {
				watch += setting
			}
			for range c.Count {
				if c.Workpiece.Name != held || c.Stage != turned || c.Count > 1 {
					watch += turn
				}
				held, turned = c.Workpiece.Name, c.Stage
			}
			if c.Stage > 1 && !slices.Contains(ways[held], c.Stage) {
				ways[held] = append(ways[held], c.Stage)
				turns += c.Count
			}
			for range c.Count {
				if watch += cut; c.Kind == HandHeld {
					watch += guide
				}
				if c.NeedsHelper {
					watch += helper
				}
			}
		}
		if got := (Times{setting, guide, cut, turn, helper}).Seconds(cuts); got != watch {
			t.Fatalf("%d seconds, the watch says %d: %+v", got, watch, cuts)
		}
		if got := Turns(cuts); got != turns {
			t.Fatalf("%d turns, %d are made: %+v", got, turns, cuts)
		}
	})
}
