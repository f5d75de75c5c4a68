package job

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"drawerwright/geom"
)

func TestFormat(t *testing.T) {
	_, problems := Read("bench\x1b.yaml", strings.NewReader(strings.Replace(base, "sides: birch", "sides: brich", 1)))
	want := `bench·.yaml:12:12: error: sides: the file has no stock "brich"
      sides: brich
             ^
  hint: did you mean ` + "`birch`? the stocks of the file are `birch` or `hardboard`\n"
	if got := problems[0].String(); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	painted := problems[0].Format(func(part Part, text string) string { return fmt.Sprintf("<%d %s>", part, text) })
	for _, piece := range []string{"<0 bench·.yaml:12:12:>", "<1 error>", "<3 ^>", "<4 hint: did"} {
		if !strings.Contains(painted, piece) {
			t.Errorf("%q lacks %q", painted, piece)
		}
	}
	for level, word := range map[geom.Level]string{geom.LevelNote: "note", geom.LevelWarning: "warning", geom.LevelError: "error"} {
		if got := (Problem{File: "a", Message: "m", Level: level}).String(); got != "a:0:0: "+word+": m\n" {
			t.Errorf("got %q", got)
		}
	}
}

func TestQuote(t *testing.T) {
	for text, want := range map[string]string{
		"a": `"a"`, "a\n\u202e": `"a\n\u202e"`, strings.Repeat("é", maxQuote): `"` + strings.Repeat("é", maxQuote) + `"`,
		strings.Repeat("é", maxQuote+1): `"` + strings.Repeat("é", maxQuote) + `…"`,
	} {
		if got := quote(text); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func TestExcerpt(t *testing.T) {
	long := strings.Repeat("é", 300)
	for _, c := range []struct {
		line   string
		column int
		want   string
		caret  int
	}{
		{"abc", 2, "abc", 1},
		{"abc", 4, "abc", 3},
		{"abc", 9, "abc", 3},
		{"\ta\x1bb", 4, " a·b", 3},
		{"抽屉: a", 5, "抽屉: a", 6},                 // two columns for each ideograph
		{"cafe\u0301: a", 8, "cafe\u0301: a", 6}, // none for the accent
		{long, 1, long[:2*74] + "…", 0},
		{long, 300, "…" + long[:2*50], 50},
		{long, 150, "…" + long[:2*74] + "…", 50},
	} {
		src := source{file: "a", lines: []string{c.line}}
		if p := src.place(Problem{}, Position{1, c.column}); p.Excerpt != c.want || p.Caret != c.caret {
			t.Errorf("%q at %d gives %q with %d, want %q with %d", c.line, c.column, p.Excerpt, p.Caret,
				c.want, c.caret)
		}
	}
}

func TestPrintEnds(t *testing.T) {
	for _, c := range []struct {
		problems int
		want     string
	}{{maxPrinted, ""}, {maxPrinted + 1, "and 1 more\n"}, {maxPrinted + 123, "and 123 more\n"}, {10 * MaxProblems, "and at least 450 more\n"}} {
		text := strings.Builder{}
		text.WriteString(base)
		for i := range c.problems {
			fmt.Fprintf(&text, "key%d: 1\n", i)
		}
		_, problems := Read("job.yaml", strings.NewReader(text.String()))
		var b strings.Builder
		if err := problems.Print(&b, nil); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(b.String(), "error:"); n != maxPrinted {
			t.Errorf("%d of %d problems are printed", n, c.problems)
		}
		if _, end, _ := strings.Cut(b.String(), fmt.Sprintf("key%d", maxPrinted-1)); !strings.HasSuffix(end, "slides-file`\n"+c.want) {
			t.Errorf("%d problems end with %q", c.problems, end)
		}
	}
}

func TestPlaceStaysInTheFile(t *testing.T) {
	src := source{file: "a", lines: []string{"abc", "de"}}
	for at, want := range map[Position]Position{{1, 2}: {1, 2}, {0, 0}: {1, 1}, {9, 9}: {2, 3}, {1, 9}: {1, 4}} {
		if p := src.place(Problem{}, at); p.Line != want.Line || p.Column != want.Column {
			t.Errorf("%v becomes %d:%d, want %v", at, p.Line, p.Column, want)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

func TestPrintReportsErrors(t *testing.T) {
	_, problems := Read("job.yaml", strings.NewReader(""))
	if problems.Print(full{}, nil) == nil {
		t.Error("a full disk is no error")
	}
}
