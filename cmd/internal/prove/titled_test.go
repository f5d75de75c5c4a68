package prove

import "testing"

// TestTitled: a title is found in one text, in the lines that it was broken into, and not in parts of other words.
func TestTitled(t *testing.T) {
	const title = "a-long-name-1-side, inside face"
	for _, c := range []struct {
		texts []string
		want  bool
	}{
		{[]string{"100 mm x 100 mm", title, "Print without scaling"}, true},
		{[]string{"x", "a-long-name-1-side,", "inside face", "Print without scaling"}, true},
		{[]string{"a-long-na", "me-1-side, inside", "face"}, true},
		{[]string{"a-long-name-1-side,", "Print without scaling", "inside face"}, false},
		{[]string{title + " of another"}, false},
		{[]string{"sheet A1 of " + title}, false},
		{[]string{"a-long-name-1-side, inside"}, false},
		{nil, false},
	} {
		if got := titled(c.texts, title); got != c.want {
			t.Errorf("%q: %v", c.texts, got)
		}
	}
}
