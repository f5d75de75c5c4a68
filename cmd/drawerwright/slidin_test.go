package main

import (
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// slidInJob has a bottom of solid cherry, open behind. From 45 % to 65 % of humidity at
// 20 C wood goes from 8.5 to 12.0 % of moisture (Wood Handbook, equation 4-5), and flatsawn
// cherry moves 0.00248 of its width a point (table 13-5): 0.0088 of 453 or so is 4.0.
const slidInJob = `units: mm
climate: {now: 45 %, driest: 35 %, dampest: 65 %}
stock:
  side: {thickness: 15, sheet: 2400 x 210, grain: length, material: cherry}
  bottom: {thickness: 8, sheet: 2400 x 600, grain: length, material: cherry}
cutter: {kind: router, bits: {six: {diameter: 6}, three: {diameter: 3}}}
openings: {o: {width: 500, height: 200, depth: 510, cabinet: frameless, fronts: none}}
drawers:
  - {name: a, opening: o, slide: side-mount, sides: side, bottom: bottom, load: 5 kg, joinery: {bottom-fit: slide-in, bottom-clearance: 1, bottom-clearance-depth: 0.5}}
`

// TestSolidBottomIsOpenBehind: a job with one is built and proven without a word, and says
// in report, list and packet how it is held and what it does; captured it is refused, and
// in a cabinet without room behind the drawer that is reported.
func TestSolidBottomIsOpenBehind(t *testing.T) {
	inTemp(t)
	if err := os.WriteFile("job.yaml", []byte(slidInJob), 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, errs := call(t, "", "build", "job.yaml", "-o", "out")
	if code != exitDone || strings.Contains(errs, "warning") {
		t.Fatal(out, errs)
	}
	data, err := os.ReadFile("out/report.json")
	if err != nil {
		t.Fatal(err)
	}
	r, err := record.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	bottom := partOf(t, r, "a-bottom")
	if want := 0.00248 * (12.0 - 8.5) * bottom.Width; r.Drawers[0].BottomOut < want-0.1 || r.Drawers[0].BottomOut > want+0.1 {
		t.Errorf("it stands out by %g, by hand %g", r.Drawers[0].BottomOut, want)
	}
	text, err := os.ReadFile("out/parts.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"a spot of glue in the middle of the box front's groove", "washers through the slots",
		"stands out behind the back by up to " + geom.LengthOf(r.Drawers[0].BottomOut.MM()).Text(geom.Millimeter)} {
		if !strings.Contains(jobtest.Unfolded(text), want) {
			t.Errorf("parts.txt does not say %q", want)
		}
	}
	for change, want := range map[string]string{
		"bottom-fit: grooved-in": "would push the box apart", "bottom-fit: auto": "would push the box apart",
	} {
		code, _, errs := call(t, strings.Replace(slidInJob, "bottom-fit: slide-in", change, 1), "check", "-")
		if code == exitDone || !strings.Contains(errs, want) ||
			!strings.Contains(errs, "write `joinery: {bottom-fit: slide-in}`") {
			t.Errorf("%s: %s", change, errs)
		}
	}
	// 453 deep with its slide of 450: of 453.5 there is half a millimeter left, and so on.
	code, _, errs = call(t, strings.Replace(slidInJob, "depth: 510", "depth: 453", 1), "check", "-")
	if code != exitDone || !strings.Contains(errs, "the drawer no longer closes") {
		t.Errorf("no room behind: %s", errs)
	}
}
