package outside

import "testing"

// TestPageStart: a job begins on the page with what was measured or with a file of the folder, gets
// its name at the first save, and nothing beyond the folder is read or written.
func TestPageStart(t *testing.T) {
	tried := persons(t, "page_start.mjs")
	for _, must := range []string{"three cards", "I have an opening", "I know the box", "drawers above each other", "what does not go together",
		"the name at the first save", "a file of the folder", "unsaved changes come back with their tab",
		"an empty file and a new one", "a phone", "dark", "nothing beyond the folder"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
}

// persons runs a script that works on the page as a person does, and gives what it has tried.
func persons(t *testing.T, script string) map[string]bool {
	t.Helper()
	tried := map[string]bool{}
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", script, command, t.TempDir()) {
		tried[r.Tried] = true
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	return tried
}
