package outside

import "testing"

// TestPageStart: a job begins on the page with what was measured or with a file of the folder, gets
// its name at the first save, and nothing beyond the folder is read or written.
func TestPageStart(t *testing.T) {
	persons(t, "page_start.mjs", "three cards", "I have an opening", "I know the box", "drawers above each other",
		"what does not go together", "the name at the first save", "a file of the folder",
		"unsaved changes come back with their tab", "an empty file and a new one", "a phone", "dark",
		"nothing beyond the folder")
}
