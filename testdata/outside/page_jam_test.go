package outside

import "testing"

// TestPageJam: in Chromium, a thickness is changed until a joint jams, which is seen in picture and
// section with the word of its message, and back.
func TestPageJam(t *testing.T) {
	persons(t, "page_jam.mjs", "a tongue, step by step", "lists of what cannot be built", "in the section",
		"a bottom", "a cut, and clearance made larger", "what is said of a part, and a slip in a size",
		"the focus after a way out", "begun with a jam, light and dark", "a cabinet, and a phone",
		"nothing is written")
}
