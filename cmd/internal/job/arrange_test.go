package job

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func TestMove(t *testing.T) {
	for _, c := range []struct {
		file, path string
		to         int
		want       string
	}{
		{"d:\n  - a: 1 # x\n  - b: 2\n", "d/0", 1, "d:\n  - b: 2\n  - a: 1 # x\n"},
		{"d:\n  - a: 1\n    b: 2\n  - c: 3\n  - d: 4\n", "d/2", 0, "d:\n  - d: 4\n  - a: 1\n    b: 2\n  - c: 3\n"},
		{"d:\n  - a: 1\n    b: 2\n  - c: 3\n  - d: 4\n", "d/0", 2, "d:\n  - c: 3\n  - d: 4\n  - a: 1\n    b: 2\n"},
		{"d:\n  # of a\n  - a: 1\n\n  # of b\n  # too\n  - b: 2\n# the end\n", "d/1", 0,
			"d:\n  # of b\n  # too\n  - b: 2\n\n  # of a\n  - a: 1\n# the end\n"},
		{"d:\n  - a: 1\n    # in a\n  - b: 2\n    # in b\n", "d/0", 1, "d:\n  - b: 2\n    # in b\n  - a: 1\n    # in a\n"},
		{"d:\r\n  - 1\r\n  - 2", "d/0", 1, "d:\r\n  - 2\r\n  - 1"},
		{"# file\n- 1\n- 2\n", "0", 1, "# file\n- 2\n- 1\n"},
		{"d: [1, 2, {a: 3}] # x\n", "d/2", 0, "d: [{a: 3}, 1, 2] # x\n"},
		{"d: [1, # one\n  2]\n", "d/0", 1, "d: [2, # one\n  1]\n"},
		{"s:\n  a: {b: 1} # x\n  # of c\n  c: 2\n", "s/c", 0, "s:\n  # of c\n  c: 2\n  a: {b: 1} # x\n"},
		{"s: {a: 1, b: 2}\n", "s/a", 1, "s: {b: 2, a: 1}\n"},
		{"d: [1, 2]\n", "d/0", 0, "d: [1, 2]\n"},
	} {
		got, err := Move([]byte(c.file), c.to, strings.Split(c.path, "/")...)
		if err != nil || string(got) != c.want {
			t.Errorf("%q, %s to %d: %v\n%q, want\n%q", c.file, c.path, c.to, err, got, c.want)
		}
	}
}

func TestMoveRefuses(t *testing.T) {
	for _, c := range []struct {
		file, path string
		to         int
		says       string
	}{
		{"d: [1, 2]\n", "d/0", 2, "no place"},
		{"d: [1, 2]\n", "d/0", -1, "no place"},
		{"d: [1, 2]\n", "d/2", 0, "counted from 0"},
		{"d: [1\n", "d/0", 0, "must be read first"},
		{"d: [[1,\n  2], 3]\n", "d/1", 0, "shares its line"},
		{"- - 1\n  - 2\n", "0/0", 1, "shares its line"},
		{"a: 1\n", "b", 0, "not in the file"},
	} {
		got, err := Move([]byte(c.file), c.to, strings.Split(c.path, "/")...)
		if got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q, %s to %d: %q, %v; want an error that says %q", c.file, c.path, c.to, got, err, c.says)
		}
	}
}

// What is moved and moved back leaves the bytes of the file.
func TestMovedAndBack(t *testing.T) {
	ofAnyValue(t, func(t *rapid.T, name string, file []byte, _ *layout, path []string) {
		_, parent, at, err := openAt(file, path)
		if err != nil {
			t.Fatal(err)
		}
		to := rapid.IntRange(0, max(len(parent.items), len(parent.entries))-1).Draw(t, "to")
		there, err := Move(file, to, path...)
		if err != nil {
			if strings.Contains(err.Error(), errLine.Error()) {
				return
			}
			t.Fatal(name, path, to, err)
		}
		if parent.kind == list {
			path = append(slices.Clone(path[:len(path)-1]), strconv.Itoa(to))
		}
		if back, err := Move(there, at, path...); err != nil || !bytes.Equal(back, file) {
			t.Fatalf("%s: %q to %d and back: %v\n%s", name, path, to, err, back)
		}
	})
}

const arranged = `units: mm
stock:
  birch: {thickness: 12}   # birch
  "a b/c": {thickness: 5}
cutter: {kind: saw, width: 6.35}
openings: {base: {width: 564, height: 702, depth: 545, cabinet: frameless, fronts: none}}
slides:
  quiet: {kind: side-mount}   # quiet
templates: {stock: a b/c}
drawers:
  - name: birch   # not the stock
    opening: base
    slide: quiet
    sides: birch
    back: "birch"
    bottom: a b/c
    dividers: [{stock: birch, direction: across, at: 2}]
  - {name: base, outside: 400 x 100 x 450, sides: birch, bottom: birch}
`

func TestRename(t *testing.T) {
	for _, c := range []struct {
		path, name string
		turns      []string // pairs of old and new
	}{
		{"stock/birch", "birch 1/2", []string{"  birch: {", "  birch 1/2: {", "sides: birch\n",
			"sides: birch 1/2\n", `back: "birch"`, "back: birch 1/2", "{stock: birch,", "{stock: birch 1/2,",
			"sides: birch, bottom: birch}", "sides: birch 1/2, bottom: birch 1/2}"}},
		{"stock/a b/c", "ply", []string{`"a b/c"`, "ply", "{stock: a b/c}", "{stock: ply}",
			"bottom: a b/c", "bottom: ply"}},
		{"openings/base", "left (top)", []string{"openings: {base:", `openings: {"left (top)":`, "opening: base", `opening: "left (top)"`}},
		{"slides/quiet", "loud", []string{"  quiet: {", "  loud: {", "slide: quiet", "slide: loud"}},
		{"drawers/0", "top", []string{"name: birch ", "name: top "}},
		{"drawers/1", "low", []string{"name: base,", "name: low,"}},
		{"stock/birch", "birch", nil},
	} {
		want := strings.NewReplacer(c.turns...).Replace(arranged)
		path := strings.SplitN(c.path, "/", 2)
		got, err := Rename([]byte(arranged), c.name, path...)
		if err != nil || string(got) != want {
			t.Errorf("%s to %s: %v\n%s\nwant\n%s", c.path, c.name, err, got, want)
		}
		if _, problems := Read("", bytes.NewReader(got)); problems.Failed() {
			t.Errorf("%s to %s: %v", c.path, c.name, problems)
		}
	}
}

func TestRenameRefuses(t *testing.T) {
	for _, c := range []struct{ path, name, says string }{
		{"stock/birch", "", "is empty"},
		{"stock/birch", "A B-C", "already"},
		{"stock/birch", "a: b", "holds"},
		{"stock/oak", "x", "not in the file"},
		{"drawers/0", "Base", "already"},
		{"drawers/0", "a/b", "holds"},
		{"slides/quiet", "undermount", "built-in"},
		{"cutter/kind", "x", "names that other entries"},
		{"stock", "x", "names that other entries"},
		{"drawers/0/name", "x", "names that other entries"},
	} {
		got, err := Rename([]byte(arranged), c.name, strings.SplitN(c.path, "/", 3)...)
		if got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s to %q: %q, %v; want an error that says %q", c.path, c.name, got, err, c.says)
		}
	}
}

// FuzzArrange renames, moves and converts in any text: what comes back can be read, and holds as many
// lines as before where nothing was to be added.
func FuzzArrange(f *testing.F) {
	for _, text := range goodFiles {
		f.Add([]byte(text), "stock/a", "b", 1)
		f.Add([]byte(text), "drawers/0", "c", 0)
	}
	f.Add([]byte(arranged), "stock/birch", "oak", 1)
	f.Add([]byte(arranged), "drawers/1", "oak", 0)
	for _, text := range hostile {
		f.Add([]byte(text[:min(len(text), 300)]), "a/0", "b", 1)
	}
	f.Fuzz(func(t *testing.T, file []byte, path, name string, to int) {
		lines := bytes.Count(file, []byte("\n"))
		check := func(what string, out []byte, err error) {
			if err != nil {
				return
			}
			if _, err := readLayout(out); err != nil || bytes.Count(out, []byte("\n")) != lines {
				t.Fatalf("%s of %q: %q %v", what, file, out, err)
			}
		}
		way := strings.Split(path, "/")
		out, err := Move(file, to, way...)
		check("move", out, err)
		out, err = conversion{from: geom.Millimeter, to: geom.Inch}.of(file)
		check("conversion", out, err)
		if way[0] == "drawers" { // the entry may be new, on a line of its own
			return
		}
		out, err = Rename(file, name, way...)
		check("rename", out, err)
	})
}
