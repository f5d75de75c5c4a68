package outdir

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"
)

// TestReadFile: what was written can be read back until the folder is done, and
// nothing else.
func TestReadFile(t *testing.T) {
	s, err := Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.WriteFile("router/a.dxf", []byte("drawn")); err != nil {
		t.Fatal(err)
	}
	if data, err := s.ReadFile("router/a.dxf"); err != nil || string(data) != "drawn" {
		t.Errorf("%q, %v", data, err)
	}
	if _, err := s.ReadFile("router/b.dxf"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
	if _, err := s.ReadFile("../a"); !errors.Is(err, ErrFileName) {
		t.Errorf("a file elsewhere: %v", err)
	}
	if err := s.Abort(); err != nil {
		t.Fatal(err)
	}
	if _, err := s.ReadFile("router/a.dxf"); !errors.Is(err, ErrFinished) {
		t.Errorf("after the end: %v", err)
	}
}
