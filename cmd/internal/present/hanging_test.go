package present

import (
	"bytes"
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
		folded := hung(text)
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
	long := strings.Repeat("a", 115)
	if got := string(hung(long + " 17 5/8 in\n")); got != long+"\n        17 5/8 in\n" {
		t.Errorf("a mixed number is broken: %q", got)
	}
}

func hung(text string) []byte {
	var out bytes.Buffer
	hanging(&out, []byte(text)) // into memory: it cannot fail
	return out.Bytes()
}
