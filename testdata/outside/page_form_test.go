package outside

import (
	"slices"
	"testing"
)

// TestPageForm: a person works in the form of `drawerwright view`, in Chromium.
func TestPageForm(t *testing.T) {
	var tried []string
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", "page_form.mjs", command, t.TempDir()) {
		tried = append(tried, r.Tried)
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	for _, must := range []string{"trade words and help", "names say whose", "messages have no lines in the form",
		"a divider that fits", "opening or size", "made in place", "caliper readings"} {
		if !slices.Contains(tried, must) {
			t.Errorf("%s was not tried", must)
		}
	}
}
