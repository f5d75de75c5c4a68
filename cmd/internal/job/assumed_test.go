package job

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// What an opening leaves open is said as a note: where the frame stands before the sides, and
// that a count is of openings. What is written ends it.
func TestAssumptionsAreSaid(t *testing.T) {
	const file = `units: mm
stock: {ply: {thickness: [12.1, 12.2]}, thin: {thickness: [6, 6.1]}}
cutter: {kind: saw, width: 6.3}
openings:
  hole: {width: 560, height: 150, depth: 545, cabinet: face-frame, fronts: none}
drawers:
  - {name: a, opening: hole, slide: side-mount, sides: ply, bottom: thin, count: 2}
`
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"both":       {file, []string{"5:56 assumed", "7:82 assumed"}},
		"no count":   {strings.Replace(file, ", count: 2", "", 1), []string{"5:56 assumed"}},
		"level":      {strings.Replace(file, "face-frame", "face-frame, frame-overhang: 0", 1), []string{"7:82 assumed"}},
		"frameless":  {strings.Replace(file, "face-frame", "frameless ", 1), []string{"7:82 assumed"}},
		"rows":       {strings.Replace(file, "count: 2", "count: 2, rows: 1", 1), []string{"5:56 assumed"}},
		"no opening": {strings.Replace(file, "opening: hole", "opening: whole", 1), []string{"5:56 assumed", "7:24 unknown-name"}},
	} {
		_, problems := Read("job.yaml", strings.NewReader(c.text))
		if got := places(problems); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
		for _, p := range problems {
			if p.Code == CodeAssumed && p.Level != geom.LevelNote {
				t.Errorf("%s: %v is no note", name, p)
			}
		}
	}
}
