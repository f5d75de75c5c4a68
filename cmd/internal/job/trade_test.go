package job

import (
	"strings"
	"testing"
)

// What a shop calls a tool or a unit is answered with the word of the file; a board may be
// named by its fraction, and its files leave the sign out.
func TestTradeWords(t *testing.T) {
	const head = "units: in\nstock:\n  birch 1/2: {thickness: [0.472, 0.468]}\n  ply: {thickness: [0.205, 0.201]}\n"
	const rest = "drawers: [{name: a, outside: 16 x 5 x 18, sides: birch 1/2, bottom: ply}]\n"
	for said, want := range map[string]string{"dado stack": "saw", "Table saw": "saw", "cnc": "router",
		"hand tools": "hand"} {
		_, problems := Read("", strings.NewReader(head+"cutter: {kind: "+said+", width: 0.246}\n"+rest))
		if len(problems) == 0 || problems[0].Code != CodeUnknownWord || !strings.Contains(problems[0].Hint, "`"+want+"`") {
			t.Errorf("%s: %v", said, problems)
		}
	}
	j, problems := Read("", strings.NewReader(head+"cutter: {kind: saw, width: 0.246}\n"+rest))
	if problems.Failed() {
		t.Fatal(problems)
	}
	if name := j.Drawers[0].Sides.Name; name != "birch 1/2" || FileName(name) != "birch-1-2" {
		t.Errorf("%q with files %q", name, FileName(name))
	}
	spoilt := strings.Replace(head, "birch 1/2", "birch\\\\", 1) + rest
	if _, problems := Read("", strings.NewReader(spoilt)); !strings.Contains(problems[0].Hint, "( ) / may") {
		t.Errorf("the signs that a stock's name may hold are not said: %v", problems[0])
	}
	for called, want := range map[string]string{"Inches": "in", "millimeters": "mm", "mm": "mm", "yard": "yard"} {
		if got := UnitWord(called); got != want {
			t.Errorf("%s is %s", called, got)
		}
	}
}
