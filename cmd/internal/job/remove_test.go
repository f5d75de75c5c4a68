package job

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRemove(t *testing.T) {
	for _, c := range []struct{ file, path, want string }{
		{"a: 1 # x\n# y\nb: 2\n", "a", "# y\nb: 2\n"},
		{"a:\n  b: [1,\n   2] # x\n  # y\n  c: 3\n", "a/b", "a:\n  # y\n  c: 3\n"},
		{"a: 1\nb: 2", "b", "a: 1\n"},
		{"a: {b: 1, c: 2, d: 3}\n", "a/b", "a: {c: 2, d: 3}\n"},
		{"a: {b: 1, c: 2, d: 3}\n", "a/c", "a: {b: 1, d: 3}\n"},
		{"a: {b: 1, c: 2, d: 3}\n", "a/d", "a: {b: 1, c: 2}\n"},
		{"a: {b: 1, # x\n  c: 2}\n", "a/c", "a: {b: 1, # x\n  }\n"},
		{"a: {b: 1, # x\n  c: 2}\n", "a/b", "a: { # x\n  c: 2}\n"},
		{"a: {b, c: 2}\n", "a/b", "a: {c: 2}\n"},
		{"a: {b: 1, c: 2,\n  d: 3}\n", "a/c", "a: {b: 1,\n  d: 3}\n"},
		{"a: {b: 1} # x\n", "a/b", "a: {} # x\n"},
		{"a: # x\n  b: 1\nc: 2\n", "a/b", "a: {} # x\nc: 2\n"},
		{"- a: 1 # x\n  b: 2\n", "0/a", "- b: 2\n"},
		{"- a: 1\n  b: 2 # x\n  c: 3\n", "0/b", "- a: 1\n  c: 3\n"},
		{"- a: 1\n- b: 2\n  c: 3\n# x\n- d: 4\n", "1", "- a: 1\n# x\n- d: 4\n"},
		{"a: [1, 2, 3]\n", "a/0", "a: [2, 3]\n"},
		{"a: [1, 2, 3]\n", "a/2", "a: [1, 2]\n"},
		{"a:\n  - 1\nb: 2\n", "a/0", "b: 2\n"},
		{"a:\r\n  b:\r\n  c: 1\r\n", "a/b", "a:\r\n  c: 1\r\n"},
	} {
		got, err := Remove([]byte(c.file), strings.Split(c.path, "/")...)
		if err != nil || string(got) != c.want {
			t.Errorf("%q without %s: %v\n%q, want\n%q", c.file, c.path, err, got, c.want)
		}
	}
}

func TestCopy(t *testing.T) {
	for _, c := range []struct{ file, path, want string }{
		{"a: 1 # x\nb: 2\n", "a", "a: 1 # x\nn: 1 # x\nb: 2\n"},
		{"a:\n  b: {c: 1} # x", "a/b", "a:\n  b: {c: 1} # x\n  n: {c: 1} # x"},
		{"a: {b: {c: 1}, d: 2}\n", "a/b", "a: {b: {c: 1}, n: {c: 1}, d: 2}\n"},
		{"a: [{name: p, b: 1}]\n", "a/0", "a: [{name: p, b: 1}, {name: n, b: 1}]\n"},
		{"d:\n  - name: p # x\n    # y\n    b: 1\n  - name: q\n", "d/0", "d:\n  - name: p # x\n    # y\n    b: 1\n  - name: n # x\n    # y\n    b: 1\n  - name: q\n"},
		{"d:\r\n  - 1\r\n", "d/0", "d:\r\n  - 1\r\n  - 1\r\n"},
	} {
		got, err := Copy([]byte(c.file), "n", strings.Split(c.path, "/")...)
		if err != nil || string(got) != c.want {
			t.Errorf("%q with %s twice: %v\n%q, want\n%q", c.file, c.path, err, got, c.want)
		}
	}
}

func TestRemoveAndCopyRefuse(t *testing.T) {
	for _, c := range []struct{ file, path, says string }{
		{"a: 1\n", "a", "all that the file holds"},
		{"a: 1\nb: 2\n", "c", "not in the file"},
		{"a: [1\n", "a", "must be read first"},
		{"- - 1\n  - 2\n- 3\n", "0/0", "shares its line"},
	} {
		if got, err := Remove([]byte(c.file), strings.Split(c.path, "/")...); got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q without %s: %q, %v; want an error that says %q", c.file, c.path, got, err, c.says)
		}
	}
	for _, c := range []struct{ file, path, says string }{
		{"a: {b: [1,\n  2]}\n", "a/b", "shares its line"},
		{"- a: 1\n", "0/a", "shares its line"},
		{"a: 1\n", "b", "not in the file"},
	} {
		if got, err := Copy([]byte(c.file), "n", strings.Split(c.path, "/")...); got != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q with %s twice: %q, %v; want an error that says %q", c.file, c.path, got, err, c.says)
		}
	}
}

// A value that is copied and whose copy is removed leaves the bytes of the file.
func TestCopiedAndRemoved(t *testing.T) {
	ofAnyValue(t, func(t *rapid.T, name string, file []byte, _ *layout, path []string) {
		_, parent, at, err := openAt(file, path)
		if err != nil {
			t.Fatal(err)
		}
		twice, err := Copy(file, "copy of it", path...)
		if err != nil {
			if strings.Contains(err.Error(), errLine.Error()) {
				return
			}
			t.Fatal(name, path, err)
		}
		second := append(slices.Clone(path[:len(path)-1]), "copy of it")
		if parent.kind == list {
			second[len(second)-1] = string(rune('0' + at + 1))
			if at > 8 {
				return
			}
		}
		if back, err := Remove(twice, second...); err != nil || !bytes.Equal(back, file) {
			t.Fatalf("%s: %q twice and back: %v\n%s", name, path, err, back)
		}
	})
}
