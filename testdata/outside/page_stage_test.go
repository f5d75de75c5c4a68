package outside

import "testing"

// TestPageStage: in Chromium the page's layout, its picture with dimensions that can be changed,
// paper and a phone are as a person expects them.
func TestPageStage(t *testing.T) {
	persons(t, "page_stage.mjs", "half the screen is the box", "one scroller a pane", "a dimension in the picture",
		"a dimension that an opening governs", "numbers of parts", "a divider in the picture",
		"a joint that jams is seen", "the camera follows a size", "a joint is left", "on paper", "skip links",
		"a phone", "a finger on the picture", "setups in the picture",
		"for everybody, light", "for everybody, dark", "twice as large")
}
