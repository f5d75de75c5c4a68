package page

import (
	"net/http"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestEachLineKeepsItsEnd: in a file whose lines end in two ways, a save changes the ends of those
// lines alone that were edited; these end as most do.
func TestEachLineKeepsItsEnd(t *testing.T) {
	for name, c := range map[string]struct{ old, text, want string }{
		"nothing changed":         {"a\r\nb\nc\r\n", "a\nb\nc\n", "a\r\nb\nc\r\n"},
		"one changed":             {"a\r\nb\nc\r\n", "a\nB\nc\n", "a\r\nB\r\nc\r\n"},
		"two places":              {"a\nb\nc\r\nd\ne\r\n", "A\nb\nc\nd\nE\n", "A\nb\nc\r\nd\nE\n"},
		"one more between":        {"a\r\nb\nc\r\n", "x\na\nx\nb\nc\nx\n", "x\r\na\r\nx\r\nb\nc\r\nx\r\n"},
		"one less":                {"a\r\nb\nc\r\nd\n", "a\nc\nd\n", "a\r\nc\r\nd\n"},
		"alike":                   {"a\r\na\na\r\n", "a\na\n", "a\r\na\n"},
		"no end at last":          {"a\r\nb\nc", "a\nb\nc\n", "a\r\nb\nc\n"},
		"no end at last any more": {"a\r\nb\nc\r\n", "a\nb\nc", "a\r\nb\nc"},
		"all with carriage":       {"a\r\nb\r\n", "b\nc\n", "b\r\nc\r\n"},
		"all without":             {"a\nb\n", "b\nc\n", "b\nc\n"},
		"empty":                   {"a\r\nb\n", "", ""},
		"new file":                {"", "a\nb\n", "a\nb\n"},
	} {
		if got := endedAs(c.old, c.text); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	const monday = "# measured on Monday"
	old := strings.Replace(strings.ReplaceAll(jobText, "\n", "\r\n"), monday+"\r\n", monday+"\n", 1)
	p, path := open(t, old)
	first := answer[state](t, p, "/api/job", nil, http.StatusOK)
	text := strings.Replace(strings.Replace(first.Text, "12.21", "12.3", 1), "# the end\n", "", 1)
	answer[state](t, p, "/api/save", state{first.Version, text}, http.StatusOK)
	want := strings.Replace(strings.Replace(old, "12.21", "12.3", 1), "# the end\r\n", "", 1)
	if data, _ := os.ReadFile(path); string(data) != want {
		t.Errorf("%q\nwant\n%q", data, want)
	}
}

// TestLinesOfEdits: after lines were taken out and others put in, which no old line is, all that are
// left have their ends.
func TestLinesOfEdits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var old, text, want strings.Builder
		for i, n := 0, rapid.IntRange(0, 40).Draw(t, "lines"); i < n; i++ {
			line := rapid.StringMatching("[a-z]?").Draw(t, "line") + strings.Repeat("+", i) // no two alike
			end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
			old.WriteString(line + end)
			if rapid.Bool().Draw(t, "stays") {
				text.WriteString(line + "\n")
				want.WriteString(line + end)
			}
			if rapid.IntRange(0, 3).Draw(t, "new") == 0 {
				text.WriteString("# new\n")
				want.WriteString("# new")
				want.WriteString("\x00") // as most
			}
		}
		usual := "\n"
		if 2*strings.Count(old.String(), "\r\n") > strings.Count(old.String(), "\n") {
			usual = "\r\n"
		}
		ended := strings.ReplaceAll(want.String(), "\x00", usual)
		if got := endedAs(old.String(), text.String()); got != ended {
			t.Fatalf("%q, want %q, from %q", got, ended, old.String())
		}
	})
}

// TestManyLinesAreNotCompared: of very many changes only what lies about them keeps its ends.
func TestManyLinesAreNotCompared(t *testing.T) {
	many := func(word string) string { return strings.Repeat(word+"\n", 3000) }
	old := "first\r\n" + many("a") + "middle\r\n" + many("a") + "last\r\n"
	want := "first\r\n" + many("b") + "middle\n" + many("b") + "last\r\n"
	if got := endedAs(old, strings.ReplaceAll(want, "\r", "")); got != want {
		t.Errorf("%d bytes, want %d", len(got), len(want))
	}
}
