package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/words"
)

// grooveCutterJob cuts its grooves, 4.2 wide and 10 over the edges, with a cutter of 3.2 in
// two passes; the rabbets of its corners with one of 6.2. Two entries share a warning.
const grooveCutterJob = `units: mm
stock:
  birch: {thickness: [12, 12.1]}
  thin: {thickness: [4.0, 4.05]}
cutter: {kind: saw, width: 6.2, groove-cutter: 3.2}
drawers:
  - {name: a, outside: 400 x 120 x 450, sides: birch, bottom: thin, joint: rabbet, joinery: {bottom-height: 10}}
  - {name: b, outside: 420 x 120 x 450, sides: birch, bottom: thin, joint: rabbet, joinery: {bottom-height: 10}, pull: {shape: hole}}
  - {name: c, outside: 420 x 120 x 450, sides: birch, bottom: thin, joint: rabbet, joinery: {bottom-height: 10}, pull: {shape: hole}}
`

// TestGrooveCutterOnTheTestCut: where grooves are all that a test cut has, the coupon and
// adjust are of the cutter that makes them, and of their height over the edge.
func TestGrooveCutterOnTheTestCut(t *testing.T) {
	inTemp(t)
	if err := os.WriteFile("job.yaml", []byte(grooveCutterJob), 0o644); err != nil {
		t.Fatal(err)
	}
	// The comb's pitch is 7.5, its slits 3.2: teeth of 4.3.
	if _, out, errs := call(t, "", "coupon", "job.yaml"); !strings.Contains(out, "Set the cutter, 3.2 mm wide") || !strings.Contains(strings.Join(strings.Fields(out), " "), "It is meant to be 4.30 mm") {
		t.Error(out, errs)
	}
	// A cutter that is 0.1 wider leaves teeth of 4.2; the fence is 0.3 too far away.
	code, out, errs := call(t, "", "adjust", "job.yaml", "tooth=4.2", "edge=10.3", "edge=10.3",
		"depth=6.03", "--write", "next.yaml")
	if code != exitDone || !strings.Contains(out, "The cut is 3.30 mm wide") {
		t.Error(out, errs)
	}
	next, err := os.ReadFile("next.yaml")
	if err != nil || !strings.Contains(string(next), "width: 6.2, groove-cutter: 3.3 mm") || strings.Contains(string(next), "fence-distance") {
		t.Errorf("%v\n%s\n%s", err, next, out)
	}
}

// TestCountedAsListed: check counts the warnings and the notes that it lists, one of several drawers once.
func TestCountedAsListed(t *testing.T) {
	_, out, errs := call(t, grooveCutterJob, "check", "-")
	warned, noted := strings.Count(errs, ": warning: "), strings.Count(errs, ": note: ")
	if noted < 2 || strings.Count(errs, "a saw cannot cut the pull, a hole") != 1 ||
		!strings.Contains(out,
			fmt.Sprintf("no errors, %s, %d notes", words.Count(warned, "warning", "warnings"), noted)) {
		t.Errorf("%d and %d are listed:\n%s%s", warned, noted, errs, out)
	}
}
