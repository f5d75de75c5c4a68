package outside

import "testing"

// TestPageStill: nothing moves under a pointer while a person types, and what is wrong is said where it was typed.
func TestPageStill(t *testing.T) {
	persons(t, "page_still.mjs", "nothing moves while one types", "nothing moves in an opening",
		"the next field stays under the pointer", "a mistake is said where it was typed", "the caliper again",
		"messages by the names of fields", "one size of letters in a table", "a small screen at the beginning",
		"on a phone")
}
