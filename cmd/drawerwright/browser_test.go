package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestByPerson: what a double click on a desktop starts, which has no terminal, no pipe and no file,
// is started by a person; what a script starts is not.
func TestByPerson(t *testing.T) {
	nothing, err := os.OpenFile(os.DevNull, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer nothing.Close()
	file, err := os.Create(filepath.Join(t.TempDir(), "out.txt"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	from, to, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	defer to.Close()
	t.Setenv("WAYLAND_DISPLAY", "")
	t.Setenv("DISPLAY", ":0")
	for name, c := range map[string]struct {
		s    streams
		want bool
	}{
		"a double click":       {streams{nothing, nothing, nothing}, true},
		"into a pipe":          {streams{nothing, to, nothing}, false},
		"out of a pipe":        {streams{from, nothing, nothing}, false},
		"into a file":          {streams{nothing, file, nothing}, false},
		"another program's":    {streams{strings.NewReader(""), &bytes.Buffer{}, nothing}, false},
		"watched, as run does": {streams{nothing, &watched{Writer: nothing}, nothing}, true},
	} {
		if got := byPerson(c.s); got != c.want {
			t.Errorf("%s: %t", name, got)
		}
	}
	t.Setenv("DISPLAY", "")
	if runtime.GOOS == "linux" && byPerson(streams{nothing, nothing, nothing}) {
		t.Error("a server has a desktop")
	}
}
