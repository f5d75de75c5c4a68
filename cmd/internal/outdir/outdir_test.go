package outdir

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"testing"
)

// TestRoundTrip: a new folder, the same over it, another over that, over an
// empty one; what is read back from the disk is what was written.
func TestRoundTrip(t *testing.T) {
	for _, exchange := range []bool{true, false} {
		t.Run(fmt.Sprintf("exchange=%v", exchange), func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "out")
			sys := watched(exchange, func(_ string, do, _ func() error) error { return do() })
			for _, n := range []int{1, 1, 2, 3} {
				if err := build(dir, version(n), sys); err != nil {
					t.Fatal(err)
				}
				expectWhole(t, dir, n)
				expectAlone(t, parent, "out")
			}
			if err := os.RemoveAll(dir); err != nil {
				t.Fatal(err)
			}
			if err := os.Mkdir(dir, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := build(dir, version(4), sys); err != nil {
				t.Fatal(err)
			}
			expectWhole(t, dir, 4)
			expectAlone(t, parent, "out")
		})
	}
}

// TestSameBytes: files written in any order, by one or by many goroutines, give
// the same folder to the byte, the manifest included. Its bytes are spelled out
// here, with the hashes from sha256sum.
func TestSameBytes(t *testing.T) {
	files := map[string]string{"b/c": "two", "a": "one", "b-": "", "B2": "zwei"}
	want := maps.Clone(files)
	want[ManifestName] = "drawerwright manifest 1\n" +
		"9dbe3cfc5af797f3516eb7c92f37fe507b83c13017aa9ddb57b9afe25a75a3a6  4  B2\n" +
		"7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed  3  a\n" +
		"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  0  b-\n" +
		"3fc4ccfe745870e2c0d99f71f30ff0656c8dedd41cc1d7d3d376b0dbe685e2f3  3  b/c\n"
	for range 20 {
		dir := filepath.Join(t.TempDir(), "out")
		s, err := Create(dir)
		if err != nil {
			t.Fatal(err)
		}
		order := slices.Sorted(maps.Keys(files))
		rand.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
		var wg sync.WaitGroup
		for _, name := range order {
			wg.Go(func() {
				if err := s.WriteFile(name, []byte(files[name])); err != nil {
					t.Error(err)
				}
			})
		}
		wg.Wait()
		if err := s.Commit(); err != nil {
			t.Fatal(err)
		}
		got, err := contents(dir)
		if err != nil {
			t.Fatal(err)
		}
		if !maps.Equal(got, want) {
			t.Fatalf("got %q, want %q", got, want)
		}
	}
}

// TestWriteFileRefuses: names that are none, and names that would be one file on
// some disks; a stage with a refused file is not committed.
func TestWriteFileRefuses(t *testing.T) {
	for _, c := range []struct {
		first, second string
		rule          error
	}{
		{"", "", ErrFileName},
		{"", ".", ErrFileName},
		{"", "../x", ErrFileName},
		{"", "a/../../x", ErrFileName},
		{"", "/etc/x", ErrFileName},
		{"", "a//b", ErrFileName},
		{"", "a/", ErrFileName},
		{"", `a\b`, ErrFileName},
		{"", "a\nb", ErrFileName},
		{"", "a\xff", ErrFileName},
		{"", ".drawerwright-manifest", ErrFileName},
		{"", ".Drawerwright-Manifest", ErrFileName},
		{"a/x", "a/x", ErrDuplicate},
		{"a/x", "a/X", ErrDuplicate},
		{"a/x", "A/y", ErrDuplicate},
		{"a/x", "a", ErrDuplicate},
		{"a", "a/x", ErrDuplicate},
		{"\u00e4", "\u00c4", ErrDuplicate},
	} {
		parent := t.TempDir()
		s, err := Create(filepath.Join(parent, "out"))
		if err != nil {
			t.Fatal(err)
		}
		if c.first != "" {
			if err := s.WriteFile(c.first, nil); err != nil {
				t.Fatal(err)
			}
		}
		expectRule(t, s.WriteFile(c.second, nil), c.rule)
		expectRule(t, s.Commit(), c.rule)
		expectAlone(t, parent)
	}
}

// TestEnded: after Commit or Abort a stage does nothing more.
func TestEnded(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	for _, end := range []func(*Stage) error{(*Stage).Commit, (*Stage).Abort} {
		s, err := Create(dir)
		if err != nil {
			t.Fatal(err)
		}
		if err := end(s); err != nil {
			t.Fatal(err)
		}
		expectRule(t, s.WriteFile("x", nil), ErrFinished)
		expectRule(t, s.Commit(), ErrFinished)
		if err := s.Abort(); err != nil {
			t.Error(err)
		}
		expectAlone(t, parent, "out")
	}
}

// TestModes: files and folders have the usual modes less the umask, and a
// folder that somebody closed to others stays closed.
func TestModes(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no modes but read-only")
	}
	dir := filepath.Join(t.TempDir(), "out")
	mustBuild(t, dir, 1)
	probe := filepath.Join(t.TempDir(), "probe")
	if err := os.Mkdir(probe, 0o777); err != nil {
		t.Fatal(err)
	}
	folder, err := os.Stat(probe)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]fs.FileMode{"": folder.Mode(), "router": folder.Mode(), "a": folder.Mode() & 0o644, ManifestName: folder.Mode() & 0o644} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if info.Mode() != want {
			t.Errorf("%q has mode %v, want %v", name, info.Mode(), want)
		}
	}
	if err := os.Chmod(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	mustBuild(t, dir, 2)
	if info, err := os.Stat(dir); err != nil || info.Mode().Perm() != 0o700 {
		t.Errorf("mode %v, error %v, want 0700", info.Mode(), err)
	}
}

// TestAppears: a folder made by somebody else during a build is not overwritten.
func TestAppears(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	for name, at := range map[string]string{"before the look": "flush", "after the look": "place"} {
		sys := watched(true, func(op string, do, _ func() error) error {
			if op == at {
				write(t, filepath.Join(dir, "mine"), "")
			}
			return do()
		})
		err := build(dir, version(1), sys)
		if at == "place" {
			expectRule(t, err, ErrSwap)
			if !errors.Is(err, fs.ErrExist) {
				t.Errorf("%s: %v", name, err)
			}
		} else {
			expectRule(t, err, ErrForeign, "mine was not written by this tool")
		}
		if got, err := contents(dir); err != nil || len(got) != 1 {
			t.Errorf("%s: %q %v", name, got, err)
		}
		expectAlone(t, parent, "out")
		if err := os.RemoveAll(dir); err != nil {
			t.Fatal(err)
		}
	}
}
