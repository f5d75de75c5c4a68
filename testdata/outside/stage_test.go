package outside

import "testing"

// TestPageStage: in Chromium the page's layout, its picture with dimensions that can be changed,
// paper and a phone are as a person expects them.
func TestPageStage(t *testing.T) {
	tried := map[string]bool{}
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", "page_stage.mjs", command, t.TempDir()) {
		tried[r.Tried] = true
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	for _, must := range []string{"half the screen is the box", "one scroller a pane", "a dimension in the picture",
		"a dimension that an opening governs",
		"numbers of parts", "a divider in the picture", "the camera follows a size",
		"a joint is left", "on paper", "skip links",
		"a phone", "a finger on the picture", "for everybody, light", "for everybody, dark", "twice as large"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
}
