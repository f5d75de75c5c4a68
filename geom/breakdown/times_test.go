package breakdown

import (
	"testing"

	"pgregory.net/rapid"
)

// TestSeconds: what a plan takes is what a person spends who goes through its lines with a watch, whatever is on them.
func TestSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := make([]Cut, rapid.IntRange(1, 20).Draw(t, "cuts"))
		for i := range cuts {
			cuts[i] = Cut{Kind: Kind(rapid.IntRange(0, 2).Draw(t, "kind")), Stage: rapid.IntRange(1, 3).Draw(t, "stage"),
				Count: rapid.IntRange(1, 3).Draw(t, "count"), NeedsHelper: rapid.Bool().Draw(t, "heavy"),
				SettingChanged: rapid.Bool().Draw(t, "set"),
				Workpiece:      Workpiece{Name: rapid.SampledFrom([]string{"1A", "1B"}).Draw(t, "board")}}
		}
		watch, held, turned := 0, "", 0 // what is at the fence, and which way
		for _, c := range cuts {
			if c.SettingChanged {
				watch += 90
			}
			for range c.Count {
				if c.Workpiece.Name != held || c.Stage != turned || c.Count > 1 {
					watch += 15
				}
				held, turned = c.Workpiece.Name, c.Stage
				if watch += 20; c.Kind == HandHeld {
					watch += 120
				}
				if c.NeedsHelper {
					watch += 60
				}
			}
		}
		if got := Seconds(cuts); got != watch {
			t.Fatalf("%d seconds, the watch says %d: %+v", got, watch, cuts)
		}
	})
}
