package outdir

import (
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"
)

// TestNewFile: a file that is there stays; a new one is whole, and takes away what a process that was
// killed has left of it, and nothing else.
func TestNewFile(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{".next.yaml-123", ".next.yaml-12a", ".next.yaml-", ".other.yaml-123", "next.yaml-1"} {
		write(t, filepath.Join(dir, name), "")
	}
	if runtime.GOOS == "windows" { // where folders have no locks, what is new may be another process's
		before := time.Now().Add(-2 * longWrite)
		if err := os.Chtimes(filepath.Join(dir, ".next.yaml-123"), before, before); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(dir, "next.yaml")
	for i, want := range []bool{true, false} {
		if done, err := NewFile(path, []byte{byte('a' + i)}); done != want || err != nil {
			t.Errorf("time %d: %v, %v", i, done, err)
		}
	}
	if data, err := os.ReadFile(path); string(data) != "a" {
		t.Errorf("it has %q, %v", data, err)
	}
	var names []string
	list, err := os.ReadDir(dir)
	for _, e := range list {
		names = append(names, e.Name())
	}
	if want := []string{".next.yaml-", ".next.yaml-12a", ".other.yaml-123", "next.yaml", "next.yaml-1"}; !slices.Equal(names, want) {
		t.Errorf("%q, %v, want %q", names, err, want)
	}
	if done, err := NewFile(filepath.Join(dir, "nowhere", "next.yaml"), nil); done || err == nil {
		t.Errorf("a folder that is not there: %v, %v", done, err)
	}
}

// TestLeftByAge: what may be of a process that still writes stays, where that is not known.
func TestLeftByAge(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{".a-1", ".a-2"} {
		write(t, filepath.Join(dir, name), "")
	}
	before := time.Now().Add(-2 * longWrite)
	if err := os.Chtimes(filepath.Join(dir, ".a-1"), before, before); err != nil {
		t.Fatal(err)
	}
	in, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	removeLeft(in, ".a-", longWrite)
	expectAlone(t, dir, ".a-2")
	removeLeft(in, ".a-", 0)
	expectAlone(t, dir)
}
