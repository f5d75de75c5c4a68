package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
)

// naming is where a job names a thing: what stands before the first of its kind, one with %s for the name, and what
// stands behind the last.
type naming struct{ before, one, after string }

var namings = map[string]naming{
	"title":   {"job: ", "%s", "\n"},
	"stock":   {"stock: {s: {thickness: 12}, ", "%s: {thickness: 12}", "}\n"},
	"drawer":  {"drawers: [", "{name: %s, outside: 400 x 100 x 300, sides: s, bottom: s}", "]\n"},
	"opening": {"openings: {", "%s: {width: 400, height: 400, depth: 560, cabinet: frameless, fronts: none}", "}\n"},
	"slide":   {"slides: {", "%s: {kind: side-mount}", "}\n"},
	"bit":     {"cutter: {kind: router, bits: {", "%s: {diameter: 6}", "}}\n"},
}

// read reads a job in which things of one kind have names.
func (n naming) read(names ...string) load.Loaded {
	var things []string
	for _, name := range names {
		quoted := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(name) + `"`
		things = append(things, fmt.Sprintf(n.one, quoted))
	}
	text := n.before + strings.Join(things, ", ") + n.after
	for _, usual := range []string{"units: mm\n", "stock: {s: {thickness: 12}}\n", "cutter: {kind: saw, width: 6}\n",
		"drawers: [{name: d, outside: 400 x 100 x 300, sides: s, bottom: s}]\n"} {
		if key, _, _ := strings.Cut(usual, ":"); !strings.HasPrefix(text, key) {
			text += usual
		}
	}
	return load.Parse(context.Background(), "job.yaml", strings.NewReader(text), nil)
}

// everything is the kinds that a plain name is for.
const everything = "bit drawer opening slide stock title"

// names are wild names and the kinds of things that can have them.
var names = map[string]struct{ name, taken string }{
	"plain":                       {"Bench 1", everything},
	"markup":                      {"<b id=x7q9>x</b>", "title"},
	"an attribute":                {"\" onload=\"x7q9()", "title"},
	"the end of a script":         {"</script><script>x7q9()</script>", "title"},
	"the end of a comment":        {"-->]]><x7q9/>", "title"},
	"entities":                    {"a &lt;b id=x7q9&gt; &#60;", "title"},
	"the end of a PDF string":     {`a) /x7q9 (\) <</x7q9 1>>`, "title"},
	"a format":                    {"100%s%n {{.x7q9}} ${x7q9}", "title"},
	"a backslash":                 {`a\b`, "title"},
	"a folder":                    {"a/b", "bit stock title"},
	"a folder above":              {"../../x7q9", "title"},
	"a drive":                     {"C:x7q9", "title"},
	"a new group of DXF":          {"a\n0\nSECTION", ""},
	"a new row of CSV":            {"a\r\nb,c", ""},
	"a cell of CSV":               {`a","=x7q9()`, "title"},
	"a formula":                   {"=x7q9()", "title"},
	"a sum":                       {"+1", "title"},
	"a difference":                {"-1", "title"},
	"a call":                      {"@x7q9", "title"},
	"an option":                   {"--json", "title"},
	"written from the right":      {"a\u202eb", ""},
	"set apart":                   {"\u2066a\u2069", ""},
	"a mark of direction":         {"a\u200fb", ""},
	"no width":                    {"a\u200bb", ""},
	"joined without width":        {"a\u200db", ""},
	"a byte order mark":           {"\ufeffa", ""},
	"an escape":                   {"a\x1b[31mb", ""},
	"a zero byte":                 {"a\x00b", ""},
	"a line separator":            {"a\u2028b", ""},
	"a device":                    {"CON", everything},
	"a device in small letters":   {"nul", everything},
	"a device with an ending":     {"aux.txt", everything},
	"a device with a superscript": {"COM\u00b9", "title"},
	"dots alone":                  {"...", "title"},
	"a dot at the end":            {"a.", everything},
	"spaces about it":             {" a ", "title"},
	"nothing":                     {"", ""},
	"a space":                     {" ", ""},
	"composed":                    {"Caf\u00e9", everything},
	"decomposed":                  {"Cafe\u0301", everything},
	"marks alone":                 {"\u0301", "title"},
	"hundreds of marks":           {"a" + strings.Repeat("\u0301", 300), ""},
	"30 marks":                    {"a" + strings.Repeat("\u0301", 30), everything},
	"other scripts":               {"Щука 抽屉 ארון", everything},
	"from the right":              {"ארון", everything},
	"full width":                  {"\uff21\uff11", everything},
	"a ligature":                  {"\ufb01n", everything},
	"beyond two bytes":            {"a\U0001f600", "title"},
	"mathematical":                {"\U0001d518", "title"},
	"private use":                 {"a\ue000", ""},
	"no character":                {"a\ufffe", ""},
	"a replacement":               {"a\ufffd", ""},
	"an unassigned letter":        {"a\u0378", ""},
	"40 letters":                  {strings.Repeat("W", 40), everything},
	"41 letters":                  {strings.Repeat("W", 41), "title"},
	"10,000 letters":              {strings.Repeat("x", 10_000), ""},
	"a quote of an inch":          {`birch 1/2"`, "bit title"},
	"an apostrophe":               {"O'Neil", "bit title"},
}

// badNames are the codes of what is said of names that nothing can have.
var badNames = []job.Code{job.CodeBadName, job.CodeControl, job.CodeLayout, job.CodeNoValue}

// TestNames: each kind of thing takes the names that can be shown, printed and made files of; another is refused with
// its place and a way out.
func TestNames(t *testing.T) {
	for what, c := range names {
		var taken []string
		for kind, n := range namings {
			l := n.read(c.name)
			if !l.Failed() {
				taken = append(taken, kind)
				continue
			}
			for _, p := range l.Problems {
				if !p.IsError() {
					continue
				}
				odd := strings.ContainsFunc(p.String(), func(c rune) bool { return c != '\n' && !unicode.IsPrint(c) })
				if p.Line < 1 || p.Column < 1 || p.Hint == "" || !slices.Contains(badNames, p.Code) || odd {
					t.Errorf("%s as %s: %s %s", what, kind, p.Code, p)
				}
			}
		}
		slices.Sort(taken)
		if got := strings.Join(taken, " "); got != c.taken {
			t.Errorf("%s: taken by %q, not by %q", what, got, c.taken)
		}
	}
}

// same are pairs of names that some file systems and people take for one.
var same = [][2]string{{"Wide", "wide"}, {"Caf\u00e9", "Cafe\u0301"}, {"stra\u00dfe", "STRASSE"}, {"\u0130stanbul", "istanbul"}, {"\u212a", "k"},
	{"a b", "a-b"}, {"a.", "a"}, {"CON", "con"}, {"con", "con-x"}, {"Щука", "抽屉"}, {"\uff21", "ארון"}}

// TestSameNames: two things of a kind whose names are one to a file system are refused, with both lines.
func TestSameNames(t *testing.T) {
	for _, pair := range same {
		for kind, n := range namings {
			if kind == "title" {
				continue
			}
			l := n.read(pair[0], pair[1])
			if !slices.ContainsFunc(l.Problems, func(p job.Problem) bool {
				return p.Code == job.CodeSameName && p.Column > 0 && strings.Contains(p.Message, "on line 1")
			}) {
				t.Errorf("%q as two of %s: %v", pair, kind, l.Problems)
			}
		}
	}
}
