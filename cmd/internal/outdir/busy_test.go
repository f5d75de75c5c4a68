package outdir

import (
	"errors"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
)

// TestTwoBuilds: of builds into one folder, one runs at a time; the others are
// told at once, and disturb nothing.
func TestTwoBuilds(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	s, err := Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	_, err = Create(dir)
	expectRule(t, err, ErrBusy, "another build into ", " is running", "hint: wait")
	other, err := Create(filepath.Join(parent, "other"))
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(other.Abort(), s.WriteFile("a", []byte("1")), s.Commit()); err != nil {
		t.Fatal(err)
	}
	expectAlone(t, parent, "out")
}

// TestManyBuilds: eight builders at one folder, again and again, so that claims
// are taken while others are being given up.
func TestManyBuilds(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	var inside, built atomic.Int32
	var wg sync.WaitGroup
	for n := range 8 {
		wg.Go(func() {
			for range 100 {
				s, err := Create(dir)
				if errors.Is(err, ErrBusy) {
					continue
				}
				if err != nil {
					t.Error(err)
					return
				}
				if inside.Add(1) != 1 {
					t.Error("two builds at once")
				}
				for name, data := range version(n + 1) {
					err = errors.Join(err, s.WriteFile(name, []byte(data)))
				}
				inside.Add(-1)
				if err = errors.Join(err, s.Commit()); err != nil {
					t.Error(err)
					return
				}
				built.Add(1)
			}
		})
	}
	wg.Wait()
	expectWhole(t, dir, 1, 2, 3, 4, 5, 6, 7, 8)
	expectAlone(t, parent, "out")
	t.Logf("%d of 800 builds were not refused", built.Load())
}
