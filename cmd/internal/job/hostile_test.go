package job

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
)

// fill repeats a piece of text up to the largest file that is read.
func fill(piece string) string { return strings.Repeat(piece, maxFile/len(piece)) }

// numbered repeats a format with a running number up to the largest file.
func numbered(format string) string {
	var b strings.Builder
	for i := 0; ; i++ {
		piece := fmt.Sprintf(format, i)
		if b.Len()+len(piece) > maxFile {
			return b.String()
		}
		b.WriteString(piece)
	}
}

// staircase indents every line further than the one before.
func staircase() string {
	var b strings.Builder
	for i := 0; b.Len()+i+3 < maxFile; i++ {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// hostile are files made to cost time or memory, or to upset the reader.
var hostile = map[string]string{
	"text":              fill("a"),
	"words":             fill("a "),
	"lines":             fill("a\n"),
	"folded lines":      "a: " + fill("b\n  "),
	"folded dashes":     "a: b\n" + fill("  -c\n"),
	"keys":              numbered("k%d: 1\n"),
	"same keys":         fill("a: 1\n"),
	"keys in brackets":  "{" + numbered("k%d: 1, "),
	"bare keys":         "{" + fill("a,"),
	"values":            "[" + fill("1,"),
	"empty entries":     fill("-\n"),
	"entries":           fill("- 1\n"),
	"dashes":            fill("- "),
	"square brackets":   fill("["),
	"curly brackets":    fill("{"),
	"pairs in brackets": fill("[a: "),
	"closing brackets":  fill("]"),
	"colons":            fill(": "),
	"commas":            fill(","),
	"deep keys":         staircase(),
	"explicit keys":     fill("? a\n"),
	"question marks":    fill("? "),
	"merge keys":        fill("<<: "),
	"less-than signs":   fill("<"),
	"anchors":           fill("&a "),
	"aliases":           fill("*a "),
	"tags":              fill("!a "),
	"directives":        fill("%a\n"),
	"documents":         fill("---\n"),
	"block texts":       fill("|\n"),
	"block blanks":      "a: |\n" + fill("\n"),
	"folded blanks":     "a: >\n  b\n" + fill("\n"),
	"kept blanks":       "a: |+\n" + fill(" \n"),
	"block lines":       "a: |\n" + fill("  b\n"),
	"double quote":      `"` + fill("a"),
	"double quotes":     fill(`"" `),
	"escapes":           `a: "` + fill(`\n`),
	"quoted tabs":       `a: "` + fill("\t"),
	"single quotes":     fill("'' "),
	"open quotes":       fill("'\n"),
	"quoted lines":      `a: "` + fill("\n  b"),
	"comments":          fill("# a\n"),
	"comment ends":      fill("a #b\n"),
	"long comment":      "#" + fill(" a"),
	"spaces":            fill(" "),
	"newlines":          fill("\n"),
	"tabs":              fill("\t"),
	"tab lines":         fill("\ta\n"),
	"digits":            "units: mm\nstock: {a: {thickness: " + fill("1"),
	"fractions":         "units: mm\nstock: {a: {thickness: " + fill("1/"),
	"times":             "units: mm\nstock: {a: {sheet: " + fill("x"),
	"long key":          fill("a") + ": {" + "}",
	"long keys":         fill(strings.Repeat("a", 1000) + ": 1\n"),
	"readings":          "units: mm\nstock:\n  a:\n    thickness: [" + fill("1, "),
	"unknown stocks":    "units: mm\nstock: {" + stockNames() + "}\ndrawers:\n" + fill("  - {sides: a00x, box-front: b00x, back: c00x, bottom: d00x}\n"),
	"drawers":           "units: mm\nstock: {}\ndrawers:\n" + fill("- name: a\n"),
	"a bomb of aliases": "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: &d [*c, *c]\ne: [*d, *d]\n",
	"drawers in a line": "units: mm\nstock: {}\ndrawers: [" + strings.Repeat(`{name: a, outside: "1 x 1 x 1", sides: a, bottom: a}, `, maxDrawers) + "]",
	"rows":              rowsOfHoles(),
	"dividers": "units: mm\nstock: {a: {thickness: 12}}\ncutter: {kind: saw, width: 6}\ndrawers:\n- dividers: [" +
		strings.Repeat("{direction: along, at: 9, stock: a},", 15_000) + "{}]",
	"values below":     strings.Repeat(" ", maxFile/2) + "a: [\n" + strings.Repeat("1,\n", maxFile/6),
	"zero bytes":       fill("\x00"),
	"bad encoding":     fill("\xff"),
	"UTF-16":           "\xff\xfeu\x00n\x00i\x00t\x00s\x00",
	"high letters":     fill("\U0010ffff"),
	"marks":            "a" + fill("\u0301"),
	"carriage returns": fill("\r"),
	"directions":       "job: \u202eabc\nunits: mm\n",
	"null key":         "null: 1\n~: 2\n: 3\n",
	"number keys":      "1: 2\n.nan: 3\n-.inf: 4\n0x10: 5\ntrue: 6\n2020-01-01: 7\n",
	"surrogates":       `a: "\ud800\udc00\ud800"`,
	"short escapes":    `a: "\x`,
}

// rowsOfHoles fills openings with as many slides and holes for them as can be.
func rowsOfHoles() string {
	var b strings.Builder
	b.WriteString("units: mm\nstock: {a: {thickness: 12}}\ncutter: {kind: saw, width: 6}\n" +
		"openings: {o: {width: 400, height: 4000, depth: 4000, cabinet: frameless, fronts: none}}\nslides: {s: {kind: wooden-runner, hole-pitch: 10}}\ndrawers:\n")
	for i := range maxDrawers {
		fmt.Fprintf(&b, "- {name: d%d, opening: o, slide: s, rows: 40, sides: a, bottom: a}\n", i)
	}
	return b.String()
}

func stockNames() string {
	var b strings.Builder
	for i := range maxStocks {
		fmt.Fprintf(&b, "stock with a very long name number %04d: {thickness: 12}, ", i)
	}
	return b.String()
}

// maxMemory is what reading one file may allocate in all, freed or not.
const maxMemory = 200 << 20

func TestReadHostile(t *testing.T) {
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			if len(text) > maxFile {
				text = text[:maxFile]
			}
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, problems := Read("job.yaml", strings.NewReader(text))
			printed := problems.Print(io.Discard, nil)
			runtime.ReadMemStats(&after)
			if !problems.Failed() || printed != nil {
				t.Errorf("read without an error: %v", problems)
			}
			// The race detector makes sync.Pool forget at random, so that package regexp
			// allocates what it would have kept.
			if used := after.TotalAlloc - before.TotalAlloc; used > maxMemory && !mutate.UnderRace {
				t.Errorf("allocated %d MiB", used>>20)
			}
			checkProblems(t, text, problems)
		})
	}
}

// endless is a file without an end that counts what is read of it.
type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'a'
	}
	e.read += len(p)
	return len(p), nil
}

func TestReadStopsAtTheLimit(t *testing.T) {
	var e endless
	job, problems := Read("job.yaml", &e)
	if job != nil || len(problems) != 1 || problems[0].Code != CodeTooLarge {
		t.Errorf("got %v, want %s alone", problems, CodeTooLarge)
	}
	if e.read > 2*maxFile {
		t.Errorf("read %d bytes", e.read)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the disk is\x1b[31m gone") }

func TestReadFails(t *testing.T) {
	job, problems := Read("job.yaml", failing{})
	if job != nil || len(problems) != 1 || problems[0].Code != CodeRead {
		t.Fatalf("got %v, want %s alone", problems, CodeRead)
	}
	if strings.ContainsRune(problems[0].String(), '\x1b') {
		t.Errorf("the message holds a control character: %q", problems[0].String())
	}
}
