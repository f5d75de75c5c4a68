package outdir

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// TestRefusedFolders: names of folders that are not to be replaced. Each is
// refused before anything is made.
func TestRefusedFolders(t *testing.T) {
	parent := t.TempDir()
	here := filepath.Join(parent, "jobs", "here")
	if err := os.MkdirAll(filepath.Join(here, "sub"), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(here)
	write(t, filepath.Join(here, "file"), "")
	for _, c := range []struct {
		dir  string
		rule error
		say  string
	}{
		{"", ErrNoName, "empty"},
		{".", ErrCurrent, ". is the current folder"},
		{"./", ErrCurrent, ""},
		{"..", ErrCurrent, ".. is the current folder, or holds it"},
		{"../..", ErrCurrent, ""},
		{"../here", ErrCurrent, "../here is"},
		{"sub/..", ErrCurrent, ""},
		{"sub/../../../jobs/", ErrCurrent, ""},
		{here, ErrCurrent, ""},
		{filepath.Dir(here), ErrCurrent, ""},
		{"/", ErrMountPoint, "top of a disk"},
		{"///", ErrMountPoint, ""},
		{"file", ErrNotFolder, "file is not a folder"},
		{"file/out", ErrParent, "cannot make file/out in file: "},
		{"no/out", ErrParent, "there is no folder no\n"},
		{"no/..", ErrParent, ""},
	} {
		if runtime.GOOS == "windows" {
			if c.dir == "/" || c.dir == "///" {
				continue
			}
			if c.dir == "file/out" { // it has one error for both
				c.say = "there is no folder file\n"
			}
		}
		s, err := Create(c.dir)
		if err == nil {
			s.Abort()
			t.Errorf("%q is not refused", c.dir)
			continue
		}
		expectRule(t, err, c.rule, c.say, "\n  hint: ")
	}
	expectAlone(t, here, "file", "sub")
	expectAlone(t, filepath.Dir(here), "here")
	expectAlone(t, parent, "jobs")
}

// TestSpellings: a folder is the same one however it is named.
func TestSpellings(t *testing.T) {
	parent := t.TempDir()
	t.Chdir(parent)
	if err := os.Mkdir("sub", 0o755); err != nil {
		t.Fatal(err)
	}
	for i, dir := range []string{"out", "./out", "out/", "out/.", "sub/../out", filepath.Join(parent, "out"), "out/router/.."} {
		n := i%2 + 1
		mustBuild(t, dir, n)
		expectWhole(t, "out", n)
	}
	expectAlone(t, parent, "out", "sub")
}

// TestSymlinks: a link as the folder is refused, also a dangling one; a link on
// the way to it is followed, also before a "..".
func TestSymlinks(t *testing.T) {
	needLinks(t)
	parent := t.TempDir()
	far := filepath.Join(parent, "far", "in")
	if err := os.MkdirAll(far, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(parent)
	for name, to := range map[string]string{"link": far, "dangling": "nowhere", "loop": "loop"} {
		if err := os.Symlink(to, name); err != nil {
			t.Fatal(err)
		}
	}
	for _, dir := range []string{"link", "link/", "dangling", "loop"} {
		_, err := Create(dir)
		expectRule(t, err, ErrSymlink, "is a symbolic link to ", "hint: name the folder it leads to")
	}
	expectAlone(t, parent, "dangling", "far", "link", "loop")
	mustBuild(t, "link/out", 1)
	expectWhole(t, filepath.Join(far, "out"), 1)
	mustBuild(t, "link/../out", 2)
	expectWhole(t, filepath.Join(parent, "far", "out"), 2)
	expectAlone(t, far, "out")
	_, err := Create("loop/out")
	expectRule(t, err, ErrParent)
}
