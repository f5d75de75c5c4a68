package outdir

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
)

// TestSwappedForLinks: at each step of a build in turn a folder or a file, of what was there or of what
// is being built, is swapped for a link that leads out. Nothing out there is written, removed or given
// other rights, whatever becomes of the build; and the next one works.
func TestSwappedForLinks(t *testing.T) {
	needLinks(t)
	const stage = ".out" + stageSuffix
	tried := 0
	for _, c := range []struct {
		place, to string // to is below what is outside
		exchange  bool
	}{
		{"out/router", "router", true}, {"out/preview/w", "preview/w", true}, {"out/a", "a", true},
		{"out/" + ManifestName, ManifestName, true},
		{stage + "/new/router", "", true}, {stage + "/new/preview", "preview", true}, {stage + "/new/a", "a", true},
		{stage + "/new", "", true}, {stage + "/new", "", false}, {stage + "/old", "", false},
	} {
		t.Run(fmt.Sprintf("exchange=%v/%s", c.exchange, c.place), func(t *testing.T) {
			parent, outside := t.TempDir(), filepath.Join(t.TempDir(), "out")
			dir, quick := filepath.Join(parent, "out"), realSystem()
			// Handing files to the disk writes nothing new, and takes most of the time.
			quick.flush = func(string, string) error { return nil }
			quick.flushDir = func(string) error { return nil }
			for n, dir := range []string{outside, dir} { // nearly the same names
				if err := build(dir, version(n+1), quick); err != nil {
					t.Fatal(err)
				}
			}
			for at, step := 0, 0; at <= step; at++ {
				step = 0
				links := watched(c.exchange, func(_ string, do, _ func() error) error {
					from, aside := filepath.Join(parent, c.place), filepath.Join(parent, "aside")
					if step == at && os.Rename(from, aside) == nil {
						if err := os.Symlink(filepath.Join(outside, c.to), from); err != nil {
							t.Fatal(err)
						}
					}
					step++
					return do()
				})
				links.flush, links.flushDir = quick.flush, quick.flushDir
				err := build(dir, version(2), links)
				expectWhole(t, outside, 1)
				if info, bad := os.Stat(outside); bad != nil || info.Mode().Perm() != 0o755 {
					t.Fatalf("step %d: outside has %v, %v, after %v", at, info, bad, err)
				}
				for _, left := range []string{dir, filepath.Join(parent, "aside")} {
					if err := os.RemoveAll(left); err != nil {
						t.Fatal(err)
					}
				}
				if err := build(dir, version(2), quick); err != nil {
					t.Fatalf("step %d: the next build: %v", at, err)
				}
				expectWhole(t, dir, 2)
				tried++
			}
		})
	}
	if tried < 200 {
		t.Errorf("%d steps were tried", tried)
	}
}

// TestReadsNoLink: a file that was written and is swapped for a link that leads out is not read back.
func TestReadsNoLink(t *testing.T) {
	needLinks(t)
	parent := t.TempDir()
	outside := filepath.Join(parent, "secret")
	if err := os.WriteFile(outside, []byte("secret"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := Create(filepath.Join(parent, "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer s.Abort()
	if err := s.WriteFile("a", []byte("1")); err != nil {
		t.Fatal(err)
	}
	os.Remove(filepath.Join(s.newDir(), "a"))
	if err := os.Symlink(outside, filepath.Join(s.newDir(), "a")); err != nil {
		t.Fatal(err)
	}
	if f, err := s.Open("a"); err == nil {
		data, _ := io.ReadAll(f)
		f.Close()
		t.Errorf("it is read: %q", data)
	}
	if data, err := s.ReadFile("a"); err == nil {
		t.Errorf("it is read: %q", data)
	}
}

// TestClearsNoLink: a folder that is swapped for a link while it is cleared takes nothing with it of
// where the link leads.
func TestClearsNoLink(t *testing.T) {
	needLinks(t)
	parent, outside := t.TempDir(), filepath.Join(t.TempDir(), "photos")
	folder := filepath.Join(parent, "new", "photos")
	const files = 1000
	for i := range files {
		for _, dir := range []string{outside, folder} {
			write(t, filepath.Join(dir, fmt.Sprint(i)), "x")
		}
	}
	root, err := os.OpenRoot(parent)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	cleared := make(chan struct{})
	go func() {
		defer close(cleared)
		clearFolder(root, "new") // what it says is the system's
	}()
	for list := files; list == files; { // until the first is removed
		left, err := os.ReadDir(folder)
		if err != nil {
			break
		}
		list = len(left)
	}
	if os.Rename(folder, filepath.Join(parent, "aside")) == nil {
		os.Symlink(outside, folder) // its folder may be gone by now
	}
	<-cleared
	if left, err := os.ReadDir(outside); err != nil || len(left) != files {
		t.Errorf("outside are %d files of %d, %v", len(left), files, err)
	}
}
