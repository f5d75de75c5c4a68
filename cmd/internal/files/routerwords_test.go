package files_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
)

// TestRouterHasNoFence: what a router cuts lies so far from the edge and is so deep, and parts
// that are not cut have no setting; a bit of the job that no cut takes is named, and
// report.json, read back, prints all of it.
func TestRouterHasNoFence(t *testing.T) {
	job := strings.NewReplacer("tool: 1, ", "", "bits: {", "bits: {spare: {diameter: 3 mm, reach: 8 mm, tool: 7}, ",
		"drawers:\n", "drawers:\n  - {name: low, outside: 400 mm x 90 mm x 400 mm, sides: birch, bottom: thin, "+
			"joinery: {cutter-height: 7 mm}}\n",
		"thin: {thickness: 6 mm}", "thin: {thickness: 6 mm, sheet: 1525 mm x 1525 mm}",
		"tabs: {}", "tabs: {}, onion-skin: 0.3 mm").Replace(turned("mm", "top", ""))
	made, _ := written(t, job)
	text := string(made["parts.txt"])
	for _, wrong := range []string{"fence", "cutter height", "cutter mm"} {
		if strings.Contains(text, wrong) {
			t.Errorf("parts.txt of a router says %q", wrong)
		}
	}
	for _, want := range []string{"slots from edge mm  slots deep mm", "slots from edge / deep mm",
		"bits that cut nothing in this job: 3 mm bit spare, tool 7\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("parts.txt does not say %q", want)
		}
	}
	var again bytes.Buffer
	r, err := record.Read(made["report.json"])
	if present.PartsText(&again, record.Keep(r)); err != nil || again.String() != text { // into memory: it cannot fail
		t.Errorf("report.json does not print parts.txt: %v", err)
	}
	bottoms := regexp.MustCompile(`(?m)^(?:box|low)-bottom.* none  +(\S.*)$`).FindAllStringSubmatch(text, -1)
	for _, m := range bottoms {
		if m[1] != "-" {
			t.Errorf("a bottom that is not cut is set to %s", m[1])
		}
	}
	for _, line := range strings.Split(string(made["tables/cut-list.csv"]), "\n") {
		if strings.Contains(line, "-bottom") && !strings.HasPrefix(line, "thin,-,") {
			t.Errorf("cut-list.csv sets a bottom that is not cut: %s", line)
		}
	}
}
