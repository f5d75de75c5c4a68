package outside

import (
	"os"
	"testing"
)

// TestPageTake: packet, labels, sheets, the page for a phone and all files are taken along from the
// page, which says how far they have come, can give them up, and says what is wrong; its lists are
// whole on paper. Pictures stay in the folder that DRAWERWRIGHT_PICTURES names, if it names one.
func TestPageTake(t *testing.T) {
	t.Parallel()
	folder := os.Getenv("DRAWERWRIGHT_PICTURES")
	if folder == "" {
		folder = t.TempDir()
	}
	tried := 0
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", "page_take.mjs", command, folder) {
		tried++
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	if tried != 10 {
		t.Errorf("%d things were tried", tried)
	}
}
