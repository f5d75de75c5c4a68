package outside

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
)

// laidOut is what  reports of a sheet.
type laidOut struct {
	Dir, Sheet                  string
	Parts, Faces, Layers, Holes int
	Slots, Bridges, Shared      int
	Worst, Nearest              float64
	Faults                      []string
}

// heldBoxes are boxes from a router with a bit of a diameter; entries are put into the
// stock, the router and the rules for sheets.
func heldBoxes(bit, stock, router, sheets string) string {
	return `units: mm
stock:
  birch: {thickness: [11.8, 11.9, 11.95], sheet: 1525 x 1525, grain: length` + stock + `}
  poplar: {thickness: [6.1, 6.05, 6.15], sheet: 2500 x 1250}
cutter: {kind: router, diameter: ` + bit + `}
router: {` + router + `}
sheets: {` + sheets + `}
drawers:
  - {name: a, count: 8, outside: 340 x 90 x 320, sides: birch, bottom: poplar, pull: {shape: half-round, width: 60}}
  - {name: b, count: 3, outside: 480 x 160 x 400, sides: birch, bottom: poplar, joint: box-joint}
`
}

// TestHeldSheets: on sheets of any gap, bit and bridges, of which neighbors share some, all
// parts hang together; nothing leaves the sheet, or enters an area to keep out of. What is
// planted is found.
func TestHeldSheets(t *testing.T) {
	t.Parallel()
	const tabs = "tabs: {width: 6, height: 1.5, spacing: 150}, onion-skin: 0.3, small-part: 20"
	const clamps = ", min-sheet: 1523 x 1522, keep-out: [{at: 0 x 600, size: 40 x 90}, {at: 600 x 0, size: 90 x 50}]"
	var dirs []string
	for _, job := range []string{
		heldBoxes("6", "", tabs, ""),
		heldBoxes("6", clamps, tabs, "flip-on: three-pins, pin-distance: 12"),
		heldBoxes("4", clamps, "depth-from: spoilboard, "+tabs+", part-spacing: 30", "method: guillotine, flip-on: stops"),
		heldBoxes("6", "", "tabs: {spacing: 180, as: marks}, onion-skin: 0.4, small-part: 20", ""),
	} {
		dir, _ := build(t, job)
		dirs = append(dirs, dir)
	}
	shared, slots, three, stops := 0, 0, 0, 0
	for _, s := range lines[laidOut](t, "", python, append([]string{"-W", "ignore", "dxf_sheets.py"}, dirs...)...) {
		for _, f := range s.Faults {
			t.Errorf("%s, %s: %s", s.Dir, s.Sheet, f)
		}
		shared, slots = shared+s.Shared, slots+s.Slots
		if s.Holes == 3 {
			three++
		}
		if s.Faces == 2 && s.Holes == 0 {
			stops++
		}
	}
	t.Logf("%d slots, %d bridges that neighbors share", slots, shared)
	if shared < 50 || slots < 100 || three == 0 || stops == 0 {
		t.Errorf("%d slots, %d shared bridges, %d sheets on three pins, %d on stops", slots, shared, three, stops)
	}
	for plant, says := range map[string]string{"--forget": "nothing ties", "--clamp": "area to keep out of", "--less 8": "leaves the shortest sheet", "--shift 0.2": "differ"} {
		found := 0
		for _, s := range lines[laidOut](t, "", python, slices.Concat([]string{"-W", "ignore", "dxf_sheets.py", "--first"}, strings.Fields(plant), dirs[:1])...) {
			for _, f := range s.Faults {
				if strings.Contains(f, says) {
					found++
				}
			}
		}
		if found == 0 {
			t.Errorf("%s: no sheet has a fault that says %q", plant, says)
		}
	}
}

// TestSheetDrawings: what is cut on a sheet is what the drawings of its parts say, in the
// places that the report gives, on the right face, with holes that the sheet can be turned
// over on.
func TestSheetDrawings(t *testing.T) {
	t.Parallel()
	dirs := []string{}
	for _, sample := range []string{"router-boxes", "alcove-cabinets", "no-flip", "print-room", "study-desk"} {
		job, err := os.ReadFile("../../samples/" + sample + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		dir, _ := build(t, string(job))
		dirs = append(dirs, dir)
	}
	sheets, turned := 0, 0
	for _, s := range lines[laidOut](t, "", python, append([]string{"dxf_sheets.py"}, dirs...)...) {
		for _, f := range s.Faults {
			t.Errorf("%s, %s: %s", s.Dir, s.Sheet, f)
		}
		sheets++
		if s.Holes > 0 {
			turned++
		}
	}
	if sheets < 8 || turned < 2 {
		t.Errorf("%d sheets were read, %d with registration holes", sheets, turned)
	}
	// A planted fault is found.
	for _, s := range lines[laidOut](t, "", python, append([]string{"dxf_sheets.py", "--first", "--shift", "0.05"}, dirs[:2]...)...) {
		if len(s.Faults) == 0 {
			t.Errorf("%s: parts that are 0.05 mm off are not found", fmt.Sprint(s.Sheet))
		}
	}
}
