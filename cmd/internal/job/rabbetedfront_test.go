package job

import (
	"strings"
	"testing"

	"drawerwright/geom/joinery"
)

// frontedJob is one whose box fronts are those of the drawers too, in an opening.
const frontedJob = `units: mm
stock:
  ply 12: {thickness: 12}
  oak 20: {thickness: 20}
  ply 6: {thickness: 6}
cutter: {kind: router, diameter: 4}
openings:
  hole: {width: 420, height: 160, depth: 420, cabinet: frameless, fronts: FRONTS}
drawers:
  - {name: a, opening: hole, slide: none, sides: ply 12, box-front: oak 20, bottom: ply 6, joint: rabbeted-front}
`

// TestRabbetedFrontInOpening: it stands within its opening, and is refused where fronts are to
// cover the cabinet; its back is of the sides' stock.
func TestRabbetedFrontInOpening(t *testing.T) {
	j, problems := Read("job.yaml", strings.NewReader(strings.Replace(frontedJob, "FRONTS", "none", 1)))
	if len(problems) != 0 {
		t.Fatal(problems)
	}
	if d := j.Drawers[0]; d.Joint != joinery.RabbetedFront || d.Back.Name != "ply 12" || d.Front.Name != "oak 20" {
		t.Errorf("front of %s, back of %s", d.Front.Name, d.Back.Name)
	}
	_, problems = Read("job.yaml", strings.NewReader(strings.Replace(frontedJob, "FRONTS", "overlay", 1)))
	if len(problems) != 1 || problems[0].Code != CodeMissingKey || problems[0].Line != 10 ||
		!strings.Contains(problems[0].Message, "a rabbeted-front stands within the opening") {
		t.Errorf("%v", problems)
	}
}
