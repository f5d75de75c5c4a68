package present

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"drawerwright/cmd/internal/jobtest"
)

// TestHanging: no line is longer than a file has them, unless it is one word; nothing is lost, and a
// line that goes on is known by how far it is set in.
func TestHanging(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-z0-9µ/]{1,30}( {1,6})?`)
		text := strings.Join(rapid.SliceOfN(word, 0, 60).Draw(t, "words"), " ") + "\n"
		text = "  x" + text + "y " + text
		folded := hanging([]byte(text))
		for l := range strings.Lines(string(folded)) {
			l = strings.TrimSuffix(l, "\n")
			if n := utf8.RuneCountInString(l); n > hangingWidth && strings.Contains(strings.TrimSpace(l), " ") {
				t.Errorf("a line of %d: %q", n, l)
			}
		}
		if again := jobtest.Unfolded(folded); again != text {
			t.Errorf("%q became %q", text, again)
		}
	})
	if got := string(hanging([]byte(strings.Repeat("a", 115) + " 17 5/8 in\n"))); got != strings.Repeat("a", 115)+"\n        17 5/8 in\n" {
		t.Errorf("a mixed number is broken: %q", got)
	}
}
