package outside

import "testing"

// TestPageArrange: a job is converted on the page, its things are renamed and its drawers moved,
// each in one step that can be undone.
func TestPageArrange(t *testing.T) {
	tried := persons(t, "page_arrange.mjs")
	for _, must := range []string{"convert", "rename", "order", "a load", "a cabinet of rows"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
}
