package outside

import "testing"

// TestPageSoon: of many drawers a key has its numbers first, and what is said of them after; the next key gives
// that up.
func TestPageSoon(t *testing.T) {
	tried := persons(t, "page_soon.mjs")
	for _, must := range []string{"numbers first", "typing goes on", "a mistake", "all at once", "sheets last"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
}
