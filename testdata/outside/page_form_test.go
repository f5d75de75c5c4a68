package outside

import "testing"

// TestPageForm: a person works in the form of `drawerwright view`.
func TestPageForm(t *testing.T) {
	persons(t, "page_form.mjs", "trade words and help", "names say whose", "the length of the slide",
		"overlay fronts that are not made", "the form stays under the hand", "a high bank",
		"messages have no lines in the form", "a divider that fits", "opening or size", "made in place",
		"caliper readings", "ways out", "a way out of a box that does not fit")
}
