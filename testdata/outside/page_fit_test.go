package outside

import "testing"

// TestPageFit: in Chromium, the fit is drawn as its numbers are, for everybody, and the verdict leads
// to what it is about.
func TestPageFit(t *testing.T) {
	persons(t, "page_fit.mjs", "pictures of the numbers", "for those who do not see it",
		"the verdict leads to what to watch", "nothing is told again", "mistakes", "what would help",
		"light, for everybody", "dark, for everybody", "without colors", "a phone")
}
