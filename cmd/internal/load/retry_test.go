package load

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
)

// offMiddle is a job whose play spreads wider than its limits, and is set off their middle.
const offMiddle = `units: mm
stock:
  ply 12: {thickness: [12, 12.02]}
  ply 6: {thickness: 6}
cutter: {kind: router, diameter: 6, reach: 22, flutes: 2}
accuracy: {cutter: 0.25mm}
joinery: {dado-clearance: 0.15}
drawers:
  - name: tray
    outside: 380 x 80 x 420
    sides: ply 12
    bottom: ply 6
`

// rattling is a job whose one reading of a bottom leaves it to a standard how far it is off,
// in the slot of a stack that is too wide for it anyway.
const rattling = `units: in
stock:
  half: {thickness: [0.470, 0.472]}
  quarter: {thickness: 0.205}
cutter: {kind: saw, width: 0.243}
drawers:
  - {name: tray, outside: 16 x 5 x 18, sides: half, bottom: quarter}
`

// TestHintsOfOddsInJobs: a setting that a hint names with the odds it brings, written
// into the job file, brings those odds, and nothing new is said of any drawer.
func TestHintsOfOddsInJobs(t *testing.T) {
	followed := 0
	for seed := uint64(0); seed < 24; seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		switch seed {
		case 0:
			text = offMiddle
		case 1:
			text = rattling
		}
		j, found, before, _ := said(t, text)
		if j == nil {
			continue
		}
		done := make(map[string]bool) // the rows of an entry say the same
		for _, p := range found {
			ways := append(slices.Clone(p.Remedies), p.Eases...)
			if len(ways) != 1 || ways[0].Result.IsEmpty() || done[p.Shown(j).Hint] {
				continue
			}
			done[p.Shown(j).Hint] = true
			then := ways[0].Result.In(j.Units)
			if !strings.HasSuffix(p.Shown(j).Hint, ": then "+then) {
				t.Errorf("seed %d: %q does not say %q", seed, p.Shown(j).Hint, then)
			}
			changed, ok := written(t, text, j, p.Drawer, ways[0], ways[0].Ends()[0])
			if !ok {
				continue
			}
			followed++
			after, _ := job.Read("job.yaml", strings.NewReader(changed))
			b, problems := batch.Make(t.Context(), after)
			for _, now := range b.Drawers[p.Drawer].Outcome.Measures {
				if now.CheckID == p.Subject.Check && now.Right.String() != then {
					t.Errorf("seed %d: %s\n%s\nfollowed: %s", seed, p.Shown(j).Message, p.Shown(j).Hint, now.Right)
				}
			}
			for _, q := range problems {
				if a := (about{q.Drawer, q.Code, q.Subject.Part}); before[a] == 0 {
					t.Errorf("seed %d: %s\n%s\nleads into %v %s", seed, p.Shown(j).Message,
						p.Shown(j).Hint, a, q.Shown(after).Message)
				}
			}
		}
	}
	if followed < 2 {
		t.Errorf("%d hints were followed", followed)
	}
}
