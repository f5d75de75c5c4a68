package main

import (
	"os"
	"strings"
	"testing"
)

// flatJob is a wide drawer on a saw: its front is 900 - 2 x 12 + 12 = 888 long and the flush
// bottom, in grooves 6 deep, 886, more than the 600 that are stood on end.
const flatJob = `units: mm
stock:
  birch: {thickness: [11.9, 12.1]}
cutter: {kind: saw, width: 6.25}
drawers:
  - {name: wide, outside: 900 x 120 x 450, sides: birch, bottom: birch, joinery: {bottom-fit: flush}}
`

// TestPartsThatLieFlat: every output of such a drawer says that front and bottom lie flat,
// and adjust moves the two settings that a fence and a height make else.
func TestPartsThatLieFlat(t *testing.T) {
	inTemp(t)
	if err := os.WriteFile("job.yaml", []byte(flatJob), 0o644); err != nil {
		t.Fatal(err)
	}
	said := func(want string, args ...string) {
		t.Helper()
		code, out, errs := call(t, "", args...)
		if words := strings.Join(strings.Fields(out), " "); code != exitDone || !strings.Contains(words, want) {
			t.Errorf("%v do not say %q:\n%s%s", args, want, out, errs)
		}
	}
	said("1, lying flat", "parts", "job.yaml", "--all")
	said("lies flat, cutter 6.00 high", "parts", "job.yaml", "--all")
	said("nothing higher than 600 mm is stood on end: so it lies flat. The cutter's height is the depth of the rabbet", "setup", "job.yaml", "--all")
	said("depth of a rabbet for a tongue 6.00", "setup", "job.yaml", "--all")
	said("depth of the bottom's rabbet 6.00", "setup", "job.yaml", "--all")
	// The rabbets 6.4 deep leave 12 - 6.4 = 5.6 of the front; they end 6.4 before the fence.
	cut := []string{"adjust", "job.yaml", "slot=6.25", "edge=6.0", "tongue=5.6", "rabbet-depth=6.4", "tongue-length=6.4", "depth=6.0", "front-thickness=12", "sides-thickness=12", "clearance=0.65", "recess=-0.4"}
	said("for the rabbets of box front and back, which lie flat, move the cutter down by 0.4 mm, so that they get 6 mm deep and not 6.4 mm.", cut...)
	said("for the rabbets of box front and back, which lie flat, move the fence toward the cutter by 0.4 mm, so that tongues get 6 mm long and not 6.4 mm.", cut...)
	said("leave the fence.", cut...)
	// Not deep enough, they are cut again with the cutter higher.
	said("cut the rabbets 0.3 mm deeper: the cutter up by as much", "adjust", "job.yaml", "slot=6.25", "edge=6.0", "tongue=6.3", "rabbet-depth=5.7", "tongue-length=6", "depth=6.0", "front-thickness=12", "sides-thickness=12", "clearance=-0.05", "recess=0.3")
}
