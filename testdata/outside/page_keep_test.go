package outside

import "testing"

// TestPageKeep: what a person typed on the page is neither lost unasked nor called saved.
func TestPageKeep(t *testing.T) {
	tried := persons(t, "page_keep.mjs")
	for _, must := range []string{"an edit under way", "a first save that fails",
		"another job in the same tab, and back", "a new job, and stay", "the program ends"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
}
