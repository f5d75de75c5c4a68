package outside

import "testing"

// persons runs a script that works on the page in Chromium as a person does, beside other tests: half of the time a
// browser waits. What must be tried has to be among what it says that it tried.
func persons(t *testing.T, script string, must ...string) {
	t.Helper()
	t.Parallel()
	tried := map[string]bool{}
	for _, r := range lines[struct{ Tried, Fault string }](t, "", "node", script, command, t.TempDir()) {
		tried[r.Tried] = true
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	for _, name := range must {
		if !tried[name] {
			t.Errorf("%s was not tried", name)
		}
	}
}
