package outside

import "testing"

// TestPageArrange: a job is converted on the page, its things are renamed and its drawers moved,
// each in one step that can be undone.
func TestPageArrange(t *testing.T) {
	persons(t, "page_arrange.mjs", "convert", "rename", "order", "a load", "a cabinet of rows")
}
