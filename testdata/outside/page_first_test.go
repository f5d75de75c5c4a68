package outside

import "testing"

// TestPageFirst: the form for the first box is filled in on the page, judged there, and goes into the log once;
// a log that another program has changed is noticed.
func TestPageFirst(t *testing.T) {
	t.Parallel()
	tried := 0
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", "page_first.mjs", command, t.TempDir()) {
		tried++
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	if tried != 5 {
		t.Errorf("%d things were tried", tried)
	}
}
