package outside

import "testing"

// TestPageSoon: of many drawers a key has its numbers first, and what is said of them after; the next key gives
// that up.
func TestPageSoon(t *testing.T) {
	persons(t, "page_soon.mjs", "numbers first", "typing goes on", "a mistake", "all at once", "sheets last")
}
