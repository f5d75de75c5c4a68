package job

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom/joinery"
)

// set is an edit whose path is written with slashes.
func set(path, value string) Edit {
	return Edit{Path: strings.Split(path, "/"), Value: value}
}

var patches = []struct {
	name, file string
	edits      []Edit
	want       string
}{
	{"nothing yet", "# nothing\n", []Edit{set("a", "3"), set("b/c", "4")}, "# nothing\na: 3\nb: {c: 4}\n"},
	{"comment and spaces", "a:\n  b:   5 mm   # c: 7\n  d: 6\n", []Edit{set("a/b", "6.35 mm")},
		"a:\n  b:   6.35 mm   # c: 7\n  d: 6\n"},
	{"CRLF and byte order mark", "\ufeffa: 5 # x\r\n\r\nb: 6\r\n", []Edit{set("a", "7"), set("b", "8"), set("c", "9")},
		"\ufeffa: 7 # x\r\n\r\nb: 8\r\nc: 9\r\n"},
	{"Unicode before the value", "hölzer: {ﬁchte 𝟏: {dicke: \"ä\", maß: 5}, 木: 6} # ü\n", []Edit{set("hölzer/ﬁchte 𝟏/maß", "12"), set("hölzer/木", "ß")},
		"hölzer: {ﬁchte 𝟏: {dicke: \"ä\", maß: 12}, 木: ß} # ü\n"},
	{"quotes", `{"a: b": 'it''s', 'c': "\\ \"d\" #", e: f}` + "\n", []Edit{set("a: b", `"x, y"`), set("c", "''"), set("e", `"\""`)},
		`{"a: b": "x, y", 'c': '', e: "\""}` + "\n"},
	{"tabs along the line", "a:\t5\t# x\nb: {c:\t\"d\te\",\tf: 6}\n", []Edit{set("a", "7"), set("b/c", "8"), set("b/f", "9")},
		"a:\t7\t# x\nb: {c:\t8,\tf: 9}\n"},
	{"items", "a: [1, [2, 3], {b: 4}]\nc:\n  - d # one\n  -   e: 5\n      f: 6\n  - - 7\n    - 8\n", []Edit{set("a/1/0", "20"), set("a/2/b", "40"), set("c/0", "D"), set("c/1/f", "60"), set("c/2/1", "80")},
		"a: [1, [20, 3], {b: 40}]\nc:\n  - D # one\n  -   e: 5\n      f: 60\n  - - 7\n    - 80\n"},
	{"brackets over lines", "a: [1, # one\n  2,\n  3] # three\nb: [1,\n  2] # two\nc: {d: [1, # one\n    2], e: 3}\n", []Edit{set("a", "9"), set("b", "8"), set("c/d", "7")},
		"a: 9 # one\n  # three\nb: 8 # two\nc: {d: 7 # one\n    , e: 3}\n"},
	{"a value below its key", "a:\n  5 # x\nb: {c:\n  6}\n", []Edit{set("a", "7"), set("b/c", "8")},
		"a:\n  7 # x\nb: {c:\n  8}\n"},
	{"block list", "a: # x\n  # above\n  - b: 1 # gone\n\n  # gone\n    c: 2\n  - 3\n  # below\nd: 4\n", []Edit{set("a", "none")},
		"a: none # x\n  # above\n  # below\nd: 4\n"},
	{"block list in its key's column", "a:\n- 1\n- 2\nb: 3\n", []Edit{set("a", "[4]")}, "a: [4]\nb: 3\n"},
	{"block at a dash", "a:\n  - b: 1 # x\n    c: 2\n  - d: 3\n", []Edit{set("a/0", "5"), set("a/1", "{e: 6}")}, "a:\n  - 5 # x\n  - {e: 6}\n"},
	{"block at the end of the file", "a: # x\n  b: 1\n  c: 2", []Edit{set("a", "3")}, "a: 3 # x\n"},
	{"no value", "a:\nb: # x\nc:\n  -\n  - 1\nd: {e, f: , g:}\n", []Edit{set("a", "1"), set("b", "2"), set("c/0", "3"), set("d/e", "4"), set("d/f", "5"), set("d/g", "6")},
		"a: 1\nb: 2 # x\nc:\n  - 3\n  - 1\nd: {e: 4, f: 5 , g: 6}\n"},
	{"a key in a block", "a:\n  b:\n    - 1\n    - {c: 2,\n       d: 3} # end\n  # below\n\ne: 5\n", []Edit{set("a/f", "6"), set("a/b/1/g", "7")},
		"a:\n  b:\n    - 1\n    - {c: 2,\n       d: 3, g: 7} # end\n  f: 6\n  # below\n\ne: 5\n"},
	{"a key at a dash, without a newline", "a:\n  -   b: 1", []Edit{set("a/0/c", "2")}, "a:\n  -   b: 1\n      c: 2"},
	{"a key without a newline, CRLF", "a: 1\r\nb: 2", []Edit{set("c", "3")}, "a: 1\r\nb: 2\r\nc: 3"},
	{"a key in braces", "a: {}\nb: { c: 1 } # x\nd: {e: 1, }\nf: {\n  g: 1 # y\n}\n", []Edit{set("a/x", "1"), set("b/x", "2"), set("d/x", "3"), set("f/x", "4")},
		"a: {x: 1}\nb: { c: 1, x: 2 } # x\nd: {e: 1, x: 3 }\nf: {\n  g: 1, x: 4 # y\n}\n"},
	{"keys that need quotes", "a: {b: 1}\n", []Edit{set("a/c: d", "2"), set(`a/"e`, "3"), set("a/- f", "4")},
		`a: {b: 1, "c: d": 2, "\"e": 3, "- f": 4}` + "\n"},
	{"a section at the root", "# file\nunits: mm\n\n# all\n# of them\ndrawers:\n  - a: 1\n", []Edit{set("joinery/b", "2"), set("joinery/c", "3"), set("job", "x")},
		"# file\nunits: mm\n\njoinery: {b: 2, c: 3}\njob: x\n# all\n# of them\ndrawers:\n  - a: 1\n"},
	{"a section of a drawer", "drawers:\n  - a: 1\n    b: 2\n  - a: 3\n", []Edit{set("drawers/0/joinery/c", "4"), set("drawers/0/joinery/d", "5")},
		"drawers:\n  - a: 1\n    b: 2\n    joinery: {c: 4, d: 5}\n  - a: 3\n"},
	{"drawers first", "# file\ndrawers:\n  - a: 1\n", []Edit{set("b/c", "2")}, "# file\nb: {c: 2}\ndrawers:\n  - a: 1\n"},
	{"a section without entries", "a: # x\nb: 1\n", []Edit{set("a/c", "2"), set("a/d", "3")}, "a: {c: 2, d: 3} # x\nb: 1\n"},
	{"a file in braces", "{a: 1, drawers: [{}]}", []Edit{set("b/c", "2"), set("drawers/0/d", "3")}, "{a: 1, drawers: [{d: 3}], b: {c: 2}}"},
	{"after a document sign", "--- # x\na: 1\n", []Edit{set("a", "2")}, "--- # x\na: 2\n"},
	{"the same key elsewhere twice", "a: {b: 1, b: 2}\nc: 3\n", []Edit{set("c", "4")}, "a: {b: 1, b: 2}\nc: 4\n"},
	{"no edit", "a: [", nil, "a: ["},
}

func TestPatch(t *testing.T) {
	for _, p := range patches {
		got, err := Patch([]byte(p.file), p.edits...)
		if err != nil || string(got) != p.want {
			t.Errorf("%s: got %v\n%q, want\n%q", p.name, err, got, p.want)
			continue
		}
		if again, err := Patch(got, p.edits...); err != nil || !bytes.Equal(again, got) {
			t.Errorf("%s: written again, got %v\n%q, want\n%q", p.name, err, again, got)
		}
		file := []byte(p.file)
		got, _ = Patch(file, p.edits...)
		got[0]++
		if string(file) != p.file {
			t.Errorf("%s: the result is the file itself", p.name)
		}
	}
}

func TestPatchRefuses(t *testing.T) {
	for _, c := range []struct{ file, path, value, says string }{
		{"a: 1\na: 2\n", "a", "3", "line 1 and again on line 2"},
		{"a: {b: 1}\n", "a/b/c", "2", "line 1 stands a single value"},
		{"a:\n  - 1\n  - 2\n", "a/2", "3", "2 entries, counted from 0"},
		{"a: [1]\n", "a/-1", "3", "none with the number"},
		{"a: [1]\n", "a/00", "3", "none with the number"},
		{"a: [1]\n", "a/b", "3", "none with the number"},
		{"a: 1\n", "b/c/d", "3", `no "b" in the file`},
		{"# nothing\n", "a/b/c", "3", "there is no"},
		{"a: [1\n", "a", "3", "must be read first: 1:4"},
		{"a: \xff\n", "a", "3", "not UTF-8"},
		{"a: &x 1\n", "a", "3", "does without"},
		{"a: 1\n", "a", "", "on one line"},
		{"a: 1\n", "a", " \t", "on one line"},
		{"a: 1\n", "a", "2\nb: 3", "on one line"},
		{"a: 1\n", "a", "2 # x", "without a comment"},
		{"a: 1\n", "a", "# x", "without a comment"},
		{"a: 1\n", "a", "[2", "no YAML"},
		{"a: 1\n", "a", "b: 2", "no YAML"},
		{"a: 1\n", "a", "- 2", "no YAML"},
		{"a: 1\n", "a", "*b", "no YAML"},
		{"a: {b: 1}\n", "a/b", "2, c: 3", "no YAML"},
		{"a: [1]\n", "a/0", "2, 3", "something else"},
		{"a: {b: 1}\n", "a/b", "2}", "read afterward"},
		{"a: 1\n", "b\nc", "2", "read afterward"},
	} {
		got, err := Patch([]byte(c.file), set(c.path, c.value))
		if got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q to %s of %q: got %q, %v; want an error that says %q", c.value, c.path, c.file,
				got, err, c.says)
		}
	}
	if got, err := Patch([]byte("a: 1\n"), set("a", "2"), set("a/b", "3")); got != nil || err == nil {
		t.Errorf("of two edits one was written: %q", got)
	}
	if _, err := Patch([]byte("a: 1\n"), Edit{Value: "2"}); err == nil {
		t.Error("an empty path was written")
	}
}

// samples are the job files of the folder samples.
func samples(t *testing.T) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(names) < 5 {
		t.Fatalf("%d samples: %v", len(names), err)
	}
	all := map[string][]byte{}
	for _, name := range names {
		if all[name], err = os.ReadFile(name); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// paths lists the way to every value below a node.
func (n *node) paths(to []string) (all [][]string) {
	for _, e := range n.entries {
		way := append(slices.Clip(to), e.key)
		all = append(append(all, way), e.value.paths(way)...)
	}
	for i, item := range n.items {
		way := append(slices.Clip(to), strconv.Itoa(i))
		all = append(append(all, way), item.paths(way)...)
	}
	return all
}

// ofAnyValue tries a property of the samples: of each, at the path of any value.
func ofAnyValue(t *testing.T, holds func(t *rapid.T, name string, file []byte, l *layout, path []string)) {
	t.Helper()
	for name, file := range samples(t) {
		l, err := readLayout(file)
		if err != nil {
			t.Fatal(name, err)
		}
		all := l.root.paths(nil)
		rapid.Check(t, func(t *rapid.T) { holds(t, name, file, l, rapid.SampledFrom(all).Draw(t, "path")) })
	}
}

// A value on one line that is written over and then written back leaves the
// bytes of the file; any other value leaves the lines outside of it.
func TestPatchThereAndBack(t *testing.T) {
	ofAnyValue(t, func(t *rapid.T, name string, file []byte, l *layout, path []string) {
		value := rapid.SampledFrom([]string{"6.35 mm", "[11.96, 12.02]", `"a, b: #"`, "{x: [], y: 'z'}", "ä"}).Draw(t, "value")
		n, _, _ := l.follow(path)
		first, last := n.first, n.last
		written := string(file[l.begins[first]:l.ends[last]])
		there, err := Patch(file, Edit{path, value})
		if err != nil {
			t.Fatal(name, err)
		}
		if n.kind == scalar || l.inBrackets(n) && !strings.Contains(written, "\n") {
			if back, err := Patch(there, Edit{path, written}); err != nil || !bytes.Equal(back, file) {
				t.Fatalf("%s: %q and back gives %v\n%s", name, path, err, back)
			}
		}
		end := l.starts[l.marks[last].at.Line]
		if !bytes.HasSuffix(there, file[end:]) {
			t.Fatalf("%s: the lines below %q have changed:\n%s", name, path, there)
		}
		if again, err := Patch(there, Edit{path, value}); err != nil || !bytes.Equal(again, there) {
			t.Fatalf("%s: %q again gives %v\n%s", name, path, err, again)
		}
	})
}

// The reader finds what was written: in each sample a thickness for the readings
// that are there, and a number of spares and a fence distance for every drawer,
// of which some have the key and some do not.
func TestPatchedJobIsRead(t *testing.T) {
	for name, file := range samples(t) {
		before, problems := Read("job.yaml", bytes.NewReader(file), Files(openTest))
		if problems.Failed() {
			t.Fatal(name, problems)
		}
		l, err := readLayout(file)
		if err != nil {
			t.Fatal(name, err)
		}
		at := slices.IndexFunc(before.Stocks, func(s joinery.Stock) bool { // so many readings of each sheet are others
			sorted, err := has(file, "stock", s.Name, "readings-per-sheet")
			return err == nil && !sorted
		})
		stock := before.Stocks[at]
		edits := []Edit{{[]string{"stock", stock.Name, "thickness"}, "[12.25 mm, 12.75 mm]"}}
		for _, e := range l.root.entries {
			if e.key != "drawers" {
				continue
			}
			for i := range e.value.items {
				edits = append(edits, Edit{[]string{e.key, strconv.Itoa(i), "spares"}, "7"},
					Edit{[]string{e.key, strconv.Itoa(i), "joinery", "fence-distance"}, "5.5 mm"})
			}
		}
		patched, err := Patch(file, edits...)
		if err != nil {
			t.Fatal(name, err)
		}
		after, problems := Read("job.yaml", bytes.NewReader(patched), Files(openTest))
		if problems.Failed() || len(after.Drawers) != len(before.Drawers) {
			t.Fatalf("%s: %v\n%s", name, problems, patched)
		}
		if got := after.Stocks[at].Thickness; got.Min != 12.25 || got.Max != 12.75 || math.Abs(got.Mean-12.5) > 1e-9 {
			t.Errorf("%s: the thickness is read as %+v", name, got)
		}
		for _, d := range after.Drawers {
			if d.Spares != 7 || d.FenceDistance != 5.5 {
				t.Errorf("%s: %s has %d spares and a fence distance of %g\n%s", name, d.Name, d.Spares,
					d.FenceDistance, patched)
			}
		}
	}
}

// Whatever is written holds the value, and the same edit again changes nothing.
func FuzzPatch(f *testing.F) {
	for _, p := range patches {
		for _, e := range p.edits {
			f.Add([]byte(p.file), strings.Join(e.Path, "/"), e.Value)
		}
	}
	for _, text := range goodFiles {
		f.Add([]byte(text), "drawers/0/joinery/fence-distance", "5 mm")
	}
	for _, text := range hostile {
		f.Add([]byte(text[:min(len(text), 300)]), "a/0", "[1, 2]")
	}
	f.Fuzz(func(t *testing.T, file []byte, path, value string) {
		once, err := Patch(file, set(path, value))
		if err != nil {
			return
		}
		l, err := readLayout(once)
		if err != nil {
			t.Fatal(err)
		}
		if n, missing, err := l.follow(set(path, value).Path); n == nil || missing != nil || err != nil {
			t.Fatalf("%q has no %q: %v", once, path, err)
		}
		if twice, err := Patch(once, set(path, value)); err != nil || !bytes.Equal(once, twice) {
			t.Fatalf("%q becomes %v %q when %q is written to %q again", once, err, twice, value, path)
		}
	})
}
