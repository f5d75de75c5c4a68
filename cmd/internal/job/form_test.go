package job

import (
	"bytes"
	"strings"
	"testing"
)

const formFile = `# the shop's
units: mm
stock:
  birch: {thickness: [12.21, 12.16], sheet: 1525 x 1525}   # measured on Monday
  ply: {thickness: 6}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: one   # the first
    outside: 400 x 100 x 450
    sides: birch
    bottom: ply
`

// What is typed into fields is written where it belongs, and every comment stays.
func TestEnter(t *testing.T) {
	for _, c := range []struct{ path, typed, was, is string }{
		{"stock/birch/thickness", "12.2, 12.3", "[12.21, 12.16]", "[12.2, 12.3]"},
		{"stock/birch/thickness", "[12.2,12.3]", "[12.21, 12.16]", "[12.2, 12.3]"},
		{"stock/birch/thickness", "15/32 in", "[12.21, 12.16]", "15/32 in"},
		{"stock/birch/sheet", "", ", sheet: 1525 x 1525", ""},
		{"drawers/0/outside", `17 5/8" x 4" x 18"`, "400 x 100 x 450", `17 5/8" x 4" x 18"`},
		{"drawers/0/name", "a, b: #c", "name: one", `name: "a, b: #c"`},
		{"drawers/0/name", `<img src=x onerror="p()">`, "name: one", `name: "<img src=x onerror=\"p()\">"`},
		{"drawers/0/count", "3", "    bottom: ply\n", "    bottom: ply\n    count: 3\n"},
		{"drawers/0/joinery/fence-distance", "5.5", "    bottom: ply\n", "    bottom: ply\n    joinery: {fence-distance: 5.5}\n"},
		{"spacers", "5", "drawers:", "spacers: [5]\ndrawers:"},
		{"drawers/0/graduation", "equal", "    bottom: ply\n", "    bottom: ply\n    graduation: equal\n"},
		{"job", "null", "drawers:", "job: null\ndrawers:"},
	} {
		want := strings.Replace(formFile, c.was, c.is, 1)
		got, err := Enter([]byte(formFile), c.typed, strings.Split(c.path, "/")...)
		if err != nil || string(got) != want {
			t.Errorf("%q into %s: %v\n%s\nwant\n%s", c.typed, c.path, err, got, want)
		}
	}
	got, err := Enter([]byte(formFile), "equal", "drawers", "0", "graduation")
	if err == nil {
		got, err = Enter(got, "20", "drawers", "0", "graduation", "arithmetic")
	}
	if err != nil || !strings.Contains(string(got), "graduation: {arithmetic: 20}") {
		t.Errorf("a field of a section where a word stands: %v\n%s", err, got)
	}
}

func TestEnterRefuses(t *testing.T) {
	for _, c := range []struct{ path, typed, says string }{
		{"stock", "x", "fields of its own"},
		{"drawers", " ", "fields of its own"},
		{"stock/birch", "x", "has no entry"},
		{"stok", "x", "has no entry"},
		{"drawers/7/name", "x", "counted from 0"},
		{"stock/birch/thickness", "[12, 13", "not closed"},
		{"job", "a\nb", "on one line"},
	} {
		got, err := Enter([]byte(formFile), c.typed, strings.Split(c.path, "/")...)
		if got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q into %s: %q, %v; want an error that says %q", c.typed, c.path, got, err, c.says)
		}
	}
}

// Every section that can be begun is read without a mistake in its layout or its kinds,
// and every key has a kind that forms know.
func TestStarts(t *testing.T) {
	keys := Keys()
	beginAll(t, keys)
	for _, k := range keys {
		if k.Name == "drawers" {
			beginAll(t, k.Keys, "drawers", "0")
		}
	}
}

// beginAll begins each section among the entries at a path.
func beginAll(t *testing.T, keys []Key, path ...string) {
	t.Helper()
	for _, k := range keys {
		if k.Kind == "" {
			t.Errorf("%v %s has no kind", path, k.Name)
		}
		if len(k.Keys) == 0 || len(path) == 0 && (k.Name == "stock" || k.Name == "drawers") { // they are there
			continue
		}
		way := append(path[:len(path):len(path)], k.Name)
		file := formFile
		if len(path) == 0 { // what is there is not begun
			file = strings.Replace(file, "cutter: {kind: saw, width: 6.35}\n", "", 1)
		}
		all, err := Starts([]byte(file), Files(nil), "new", way...)
		if err != nil || len(all) == 0 {
			t.Errorf("%v: %v", way, err)
			continue
		}
		for _, got := range all {
			_, problems := Read("job.yaml", bytes.NewReader(got))
			for _, p := range problems {
				if p.Key != "" || p.Code == CodeWrongKind || p.Code == CodeNoValue || p.Code == CodeTooMany {
					t.Errorf("%v: %s\n%s", way, p, got)
				}
			}
		}
	}
}

// What is there is not begun again: all that it says would be lost.
func TestStartsRefuseWhatIsThere(t *testing.T) {
	router := strings.Replace(formFile, "{kind: saw, width: 6.35}",
		"{kind: router, bits: {six: {diameter: 6, reach: 20}}}", 1)
	for _, c := range []struct{ file, name, path string }{
		{formFile, "birch", "stock"}, {formFile, " birch ", "stock"}, {formFile, "", "cutter"}, {formFile, "one", "drawers"},
		{router, "six", "cutter/bits"},
	} {
		texts, err := Starts([]byte(c.file), Files(nil), c.name, strings.Split(c.path, "/")...)
		if err == nil || !strings.Contains(err.Error(), "already") {
			t.Errorf("%q at %s: %v, %d texts", c.name, c.path, err, len(texts))
		}
	}
	empty := strings.Replace(formFile, "  birch: {thickness: [12.21, 12.16], sheet: 1525 x 1525}   #",
		"  birch: {} #", 1)
	if texts, err := Starts([]byte(empty), Files(nil), "birch", "stock"); err != nil || len(texts) == 0 {
		t.Errorf("an empty stock is not begun: %v", err)
	}
}

// A problem is shown at the field that it is about.
func TestPathOf(t *testing.T) {
	for _, c := range []struct{ was, is, code, path string }{
		{"12.21, 12.16", "12.21, 12,16", "", "stock/birch/thickness"},
		{"[12.21, 12.16]", "twelve", "not-a-length", "stock/birch/thickness"},
		{"thickness: 6", "sheet: 6 x 6", string(CodeMissingKey), "stock/ply/thickness"},
		{"sides: birch", "sides: brich", "", "drawers/0/sides"},
		{"    sides: birch\n", "", string(CodeMissingKey), "drawers/0/sides"},
		{"width: 6.35", "widht: 6.35", string(CodeUnknownKey), "cutter/widht"},
		{"name: one", "name: \"\"", "", "drawers/0/name"},
		{"units: mm\n", "", string(CodeMissingKey), "units"},
	} {
		file := []byte(strings.Replace(formFile, c.was, c.is, 1))
		_, problems := Read("job.yaml", bytes.NewReader(file))
		o := Outlined(file)
		found := false
		for _, p := range problems {
			if (c.code == "" || string(p.Code) == c.code) && strings.Join(o.PathOf(p), "/") == c.path {
				found = true
			}
		}
		if !found {
			t.Errorf("%s: no problem at %s:", c.is, c.path)
			for _, p := range problems {
				t.Errorf("  %q %s %s", o.PathOf(p), p.Code, p)
			}
		}
	}
	if o := Outlined([]byte("a: \xff")); o.Sound || o.Root == nil || o.PathOf(Problem{Line: 3, Column: 1}) != nil {
		t.Error("a file that is no text has an outline")
	}
}

// What is begun or entered where nothing is yet stands below the comments.
func TestBeginWithNothing(t *testing.T) {
	for file, before := range map[string]string{"": "", "\n \n": "\n \n", "# the shop's\n": "# the shop's\n", "# mine": "# mine\n",
		"\ufeff": "\ufeff", "\ufeff# a\r\n": "\ufeff# a\r\n", "---\n": "---\n"} {
		newline := "\n"
		if strings.Contains(file, "\r") {
			newline = "\r\n"
		}
		for key, want := range map[string]string{"drawers": "drawers: [{name: one, outside:", "stock": "stock: {one: {thickness:",
			"cutter": "cutter: {kind: saw, width: 6.35}"} {
			all, err := Starts([]byte(file), Files(nil), "one", key)
			if err != nil {
				t.Fatal(err)
			}
			got := all[0]
			lines := strings.Count(string(got), newline) - strings.Count(before, newline)
			if !strings.HasPrefix(string(got), before+want) || lines != 1 {
				t.Errorf("%s in %q: %q %v", key, file, got, err)
			}
		}
		if got, err := Enter([]byte(file), "in", "units"); err != nil || string(got) != before+"units: in"+newline {
			t.Errorf("units in %q: %q %v", file, got, err)
		}
		if _, err := Remove([]byte(file), "units"); err == nil {
			t.Errorf("what is not in %q can be removed", file)
		}
		if _, err := Patch([]byte(file), Edit{Path: []string{"drawers", "0", "joinery", "fence-distance"}, Value: "6"}); err == nil {
			t.Errorf("a drawer that is not in %q can be changed", file)
		}
	}
}
