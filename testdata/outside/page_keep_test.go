package outside

import "testing"

// TestPageKeep: what a person typed on the page is neither lost unasked nor called saved.
func TestPageKeep(t *testing.T) {
	persons(t, "page_keep.mjs", "an edit under way", "a first save that fails",
		"another job in the same tab, and back", "a new job, and stay", "the program ends")
}
