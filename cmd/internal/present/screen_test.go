package present

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// TestWrap: lines go on set in by two, and what colors a text takes no room.
func TestWrap(t *testing.T) {
	for _, c := range []struct {
		width int
		in    string
		want  []string
	}{
		{0, "as wide as it comes", []string{"as wide as it comes"}},
		{10, "ten signs.", []string{"ten signs."}},
		{10, "eleven sign", []string{"eleven", "  sign"}},
		{12, "  set in by two", []string{"  set in by", "    two"}},
		{6, "a/path/that/is/longer", []string{"a/path/that/is/longer"}},
		{10, "\x1b[31mten\x1b[0m signs.", []string{"\x1b[31mten\x1b[0m signs."}},
		{4, "", []string{""}},
	} {
		if got := wrap(c.width, c.in); strings.Join(got, "|") != strings.Join(c.want, "|") {
			t.Errorf("%q at %d: %q, want %q", c.in, c.width, got, c.want)
		}
	}
}

// screenTable is a table that is too wide for a narrow screen.
func screenTable() Table {
	t := NewTable(Words("measure"), In("likely", "mm"), Words("verdict"))
	t.Add("front tongue clearance in its dado", "0.19 to 0.31", "goes together")
	t.Add("outside depth", "499.73 to 500.37", "deep")
	t.Rows[0][2].Level, t.Rows[1][2].Level = Good, Bad
	return t
}

// TestTableWidths: titles and words are wrapped, numbers are not; bad cells have a mark; where
// first cells get too tall they stand above their rows, and at last each row is a list.
func TestTableWidths(t *testing.T) {
	for width, want := range map[int]string{
		80: "measure                                    likely mm  verdict\n" +
			"front tongue clearance in its dado      0.19 to 0.31  goes together\n" +
			"outside depth                       499.73 to 500.37  ! deep\n",
		60: "measure                             likely mm  verdict\n" +
			"front tongue clearance in        0.19 to 0.31  goes together\nits dado\n" +
			"outside depth                499.73 to 500.37  ! deep\n",
		45: "measure\n         likely mm  verdict\nfront tongue clearance in its dado\n      0.19 to 0.31  goes together\n" +
			"outside depth\n  499.73 to 500.37  ! deep\n",
		20: "front tongue clearance in its dado\n  likely mm: 0.19 to\n    0.31\n  verdict: goes\n    together\n" +
			"outside depth\n  likely mm: 499.73\n    to 500.37\n  verdict: ! deep\n",
	} {
		out := Printed{Width: width}
		screenTable().Print(&out, "")
		if out.String() != want {
			t.Errorf("at %d:\n%s, want\n%s", width, out.String(), want)
		}
	}
	var plain Printed
	screenTable().Print(&plain, "")
	if strings.Contains(plain.String(), badMark) {
		t.Errorf("what programs read has marks:\n%s", plain.String())
	}
}

// TestAnyTableFits: no line of a table is wider than its screen, unless one word is, and no
// word of a cell is lost.
func TestAnyTableFits(t *testing.T) {
	word := rapid.StringMatching(`[a-z]{1,9}|[0-9]{1,3}\.[0-9]{2}`)
	cell := rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(word, 0, 5).Draw(t, "words"), " ")
	})
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "columns")
		var table Table
		for range n {
			table.Columns = append(table.Columns, Column{Heading: cell.Draw(t, "heading"), Right: rapid.Bool().Draw(t, "right")})
		}
		for range rapid.IntRange(0, 4).Draw(t, "rows") {
			table.Add(rapid.SliceOfN(cell, n, n).Draw(t, "row")...)
		}
		out := Printed{Width: rapid.IntRange(30, 100).Draw(t, "width")}
		table.Print(&out, "  ")
		text := string(out.Wrapped())
		for _, line := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(line) > out.Width {
				t.Fatalf("%d columns of %d: %q\n%s", utf8.RuneCountInString(line), out.Width, line, text)
			}
		}
		for _, row := range table.Rows {
			for _, c := range row {
				for _, w := range strings.Fields(c.Text) {
					if !strings.Contains(text, w) {
						t.Fatalf("%q is lost:\n%s", w, text)
					}
				}
			}
		}
	})
}

// TestScreen: the answer stands first, a screen is not exceeded, and what is left out is said
// to be there; with all nothing is cut off.
func TestScreen(t *testing.T) {
	lines := func(n int) func(*Printed) {
		return func(out *Printed) {
			for i := range n {
				fmt.Fprintf(out, "line %d\n", i+1)
			}
		}
	}
	for _, c := range []struct {
		brief, whole int
		all          bool
		last         string
		lines        int
	}{
		{0, 3, false, "line 3", 5}, {0, 50, false, "more: it --all", 21}, {0, 50, true, "line 50", 52}, {2, 50, false, "more: it --all", 6},
	} {
		s := Screen{Head: []Line{{Bad, "It does not fit."}}, Whole: lines(c.whole), More: "it --all", All: c.all}
		if c.brief > 0 {
			s.Brief = lines(c.brief)
		}
		text := string(s.Text(Size{80, 22}, nil))
		got := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
		if got[0] != "! It does not fit." || got[1] != "" || got[len(got)-1] != c.last || len(got) != c.lines {
			t.Errorf("%+v: %d lines, the last %q:\n%s", c, len(got), got[len(got)-1], text)
		}
	}
	paint := func(l Level, text string) string { return "<" + string(l) + ">" + text }
	if got := string(Screen{Head: []Line{{Good, "It fits."}}}.Text(UsualSize, paint)); got != "<good>It fits.\n" {
		t.Errorf("in color: %q", got)
	}
}

// TestUntorn: a screen does not end with the heading of a table of which nothing is to be seen.
func TestUntorn(t *testing.T) {
	body := []string{"a", "b", "c", "", "birch", "sheet  parts", "1      47 %", "2      40 %"}
	whole := func(out *Printed) { out.WriteString(strings.Join(body, "\n") + "\n") }
	for height, last := range map[int]string{9: "c", 10: "c", 11: "c", 12: "2      40 %"} {
		text := string(Screen{Whole: whole, More: "it --all"}.Text(Size{80, height}, nil))
		shown, _, _ := strings.Cut(strings.TrimSuffix(text, "\n"), "\n\nmore: ")
		lines := strings.Split(shown, "\n")
		if lines[len(lines)-1] != last {
			t.Errorf("%d lines high it ends with %q:\n%s", height, lines[len(lines)-1], text)
		}
	}
}
