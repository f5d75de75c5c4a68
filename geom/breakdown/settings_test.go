package breakdown

import (
	"testing"

	"pgregory.net/rapid"
)

// TestFenceAgain: whoever follows the cuts has fence and stop where each wants it, and sets neither for nothing; a
// setting that comes again names the last cut that had it.
func TestFenceAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := make([]Cut, rapid.IntRange(1, 30).Draw(t, "cuts"))
		for i := range cuts {
			cuts[i] = Cut{Kind: Kind(rapid.IntRange(0, 2).Draw(t, "kind")), Trim: rapid.IntRange(0, 4).Draw(t, "trim") == 0,
				Setting: rapid.Int64Range(1, 3).Draw(t, "setting")}
		}
		setDevices(cuts)
		var person atSaw
		moves := 0
		for i, c := range cuts {
			if err := person.make(c); err != nil {
				t.Fatalf("cut %d: %v\n%+v", i+1, err, cuts)
			}
			if c.SettingChanged {
				moves++
			}
			last := 0
			for n, b := range cuts[:i] {
				sets := b.Kind == FenceCut || b.Kind == SledCut && !b.Trim
				if sets && b.Kind == c.Kind && b.Setting == c.Setting {
					last = n + 1
				}
			}
			if !c.SettingChanged {
				last = 0
			}
			if c.SetAs != last {
				t.Fatalf("cut %d is set as cut %d, the last of its setting is %d\n%+v", i+1, c.SetAs, last, cuts)
			}
		}
		if moves != Moves(cuts) {
			t.Fatalf("%d settings, counted %d", moves, Moves(cuts))
		}
	})
}

// TestSettingsCounted: three rips at one setting, two of them after the sled was on the saw, are three settings; a
// stop stays on the sled while boards are ripped, and the fence while a saw is taken to the board.
func TestSettingsCounted(t *testing.T) {
	rip, across := Cut{Kind: FenceCut, Setting: 90}, Cut{Kind: SledCut, Setting: 500}
	for name, k := range map[string]struct {
		cuts []Cut
		want int
	}{
		"the sled between rips":      {[]Cut{rip, across, rip, across, rip}, 3 + 1},
		"a clean-up on the sled":     {[]Cut{rip, {Kind: SledCut, Trim: true, Setting: 5}, rip}, 2},
		"a guide between rips":       {[]Cut{rip, {Kind: HandHeld, Setting: 700}, rip}, 1},
		"one after the other":        {[]Cut{rip, rip, across, across}, 2},
		"a clean-up along the fence": {[]Cut{{Kind: FenceCut, Trim: true, Setting: 90}, rip}, 1},
	} {
		if setDevices(k.cuts); Moves(k.cuts) != k.want {
			t.Errorf("%s: set %d times, want %d", name, Moves(k.cuts), k.want)
		}
	}
}
