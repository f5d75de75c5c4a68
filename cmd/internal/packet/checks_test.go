package packet

import (
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
)

// TestMovesStandBesideReadings: what the record says to move for readings stands in the packet as often.
func TestMovesStandBesideReadings(t *testing.T) {
	found := 0
	for _, k := range packets(t) {
		want, got := make(map[string]int), make(map[string]int)
		for _, c := range present.SetupsOf(record.WorkOf(k.batch)).Machines {
			all := c.Checks
			for _, s := range c.Settings {
				all = append(all, s.Checks...)
			}
			for _, r := range all {
				want[r.IfMore]++
				want[r.IfLess]++
			}
		}
		delete(want, "")
		for _, p := range k.pages {
			for _, w := range p.Texts {
				got[w.String]++
			}
		}
		for move, n := range want {
			if found += n; got[move] != n {
				t.Errorf("%s: %q stands beside %d readings of %d", k.file, move, got[move], n)
			}
		}
	}
	if found < 50 {
		t.Errorf("only %d moves", found)
	}
}
