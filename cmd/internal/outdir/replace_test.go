package outdir

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// TestNewFile: a file that is there stays; a new one is whole, and takes away what a process that was
// killed has left of it, and nothing else.
func TestNewFile(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{".next.yaml-123", ".next.yaml-12a", ".next.yaml-", ".other.yaml-123", "next.yaml-1"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
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
