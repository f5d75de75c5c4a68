package job

import (
	"math"
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

// TestRabbetedFrontInOpening: it stands within its opening; its back is of the sides' stock.
func TestRabbetedFrontInOpening(t *testing.T) {
	j, problems := Read("job.yaml", strings.NewReader(strings.Replace(frontedJob, "FRONTS", "none", 1)))
	if len(problems) != 0 {
		t.Fatal(problems)
	}
	if d := j.Drawers[0]; d.Joint != joinery.RabbetedFront || d.Back.Name != "ply 12" || d.Front.Name != "oak 20" {
		t.Errorf("front of %s, back of %s", d.Front.Name, d.Back.Name)
	}
	if j.Drawers[0].Lip != (joinery.Lip{}) {
		t.Errorf("lips %v", j.Drawers[0].Lip)
	}
}

// TestLipsInOpening: a front that covers the cabinet has lips as wide as that takes, by hand: over what is free
// beside the box and 12 of overlay. The box is deeper than the opening lets it by the 20 - 6 of the lip before
// the opening. A drawer front that is screwed on leaves the box front without.
func TestLipsInOpening(t *testing.T) {
	text := strings.Replace(frontedJob, "FRONTS", "overlay", 1)
	j, problems := Read("job.yaml", strings.NewReader(text))
	if len(problems) != 0 {
		t.Fatal(problems)
	}
	d, row := j.Drawers[0], j.Banks[0].Plan.Rows[0]
	side := 12 + (420-d.Width)/2
	want := joinery.Lip{Left: side, Right: side, Top: 12 + row.Above, Bottom: 12 + row.Below}
	for what, off := range map[string]float64{"left": d.Lip.Left - want.Left, "right": d.Lip.Right - want.Right,
		"top": d.Lip.Top - want.Top, "bottom": d.Lip.Bottom - want.Bottom, "depth": d.Depth - 415 - 14} {
		if math.Abs(off) > 1e-9 {
			t.Errorf("%s is off by %g: %+v, %g deep", what, off, d.Lip, d.Depth)
		}
	}
	text = strings.Replace(text, "joint:", "drawer-front: {stock: oak 20}, joint:", 1)
	_, slid := Read("job.yaml", strings.NewReader(text))
	if len(slid) != 0 {
		t.Fatal(slid)
	}
}

// TestLipHasNoEffect: a lip is refused, with a way out, where something else says how large the front is or
// where there is none.
func TestLipHasNoEffect(t *testing.T) {
	for what, c := range map[string][2]string{
		"in an opening":  {"opening: hole, slide: none, joint: rabbeted-front", "`fronts: overlay`"},
		"another corner": {"outside: 400 x 120 x 400, joint: rabbet", "`joint: rabbeted-front`"},
		"before a front more": {"outside: 400 x 120 x 400, joint: rabbeted-front, drawer-front: {stock: oak 20, " +
			"width: 410, height: 130, overhang-left: 5, overhang-below: 5}", "or the drawer front"},
	} {
		text := strings.Replace(frontedJob, "FRONTS", "overlay", 1)
		text = text[:strings.Index(text, "opening: hole")] + c[0] + ", sides: ply 12, box-front: oak 20, " +
			"bottom: ply 6, lip: 10}\n"
		if from := strings.Index(text, "openings:"); strings.HasPrefix(c[0], "outside") {
			text = text[:from] + text[strings.Index(text, "drawers:"):]
		}
		_, problems := Read("job.yaml", strings.NewReader(text))
		if len(problems) == 0 || problems[0].Code != CodeNoEffect || !strings.Contains(problems[0].Hint, c[1]) {
			t.Errorf("%s: %v", what, problems)
		}
	}
}
