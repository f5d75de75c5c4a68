package outside

import (
	"slices"
	"testing"
)

// TestPageFit: in Chromium, the fit is drawn as its numbers are, for everybody, and the verdict leads
// to what it is about.
func TestPageFit(t *testing.T) {
	var tried []string
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", "page_fit.mjs", command, t.TempDir()) {
		tried = append(tried, r.Tried)
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	for _, must := range []string{"pictures of the numbers", "for those who do not see it", "the verdict leads to what to watch",
		"nothing is told again", "mistakes", "what would help", "light, for everybody", "dark, for everybody",
		"without colors", "a phone"} {
		if !slices.Contains(tried, must) {
			t.Errorf("%s was not tried", must)
		}
	}
}
