package outdir

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// TestFullDisk: a build over an old folder, and one to where none is, with the
// disk full at each step in turn, the step half done where it can be. The old
// folder stays and nothing is left beside it. Where the step was to remove
// something, something is left: the error says so, the folder is whole, and the
// next build clears up.
func TestFullDisk(t *testing.T) {
	for _, exchange := range []bool{true, false} {
		for _, old := range []int{1, 0} {
			t.Run(fmt.Sprintf("exchange=%v/old=%d", exchange, old), func(t *testing.T) {
				steps := 0
				for fullDiskAt(t, exchange, old, steps) {
					steps++
				}
				if steps < 20 {
					t.Errorf("only %d steps were tried", steps)
				}
			})
		}
	}
}

// fullDiskAt reports whether a build has a step of that number, and fails it there.
func fullDiskAt(t *testing.T, exchange bool, old, at int) bool {
	t.Helper()
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	if old > 0 {
		mustBuild(t, dir, old)
	}
	step, failed := 0, ""
	err := build(dir, version(2), watched(exchange, func(op string, do, half func() error) error {
		step++
		if step-1 != at {
			return do()
		}
		failed = op
		return errors.Join(half(), &os.PathError{Op: op, Path: "hidden", Err: syscall.ENOSPC})
	}))
	if failed == "" {
		if err != nil {
			t.Fatal(err)
		}
		expectWhole(t, dir, 2)
		return false
	}
	what := fmt.Sprintf("step %d (%s)", at, failed)
	var e *Error
	if !errors.Is(err, syscall.ENOSPC) || !errors.As(err, &e) {
		t.Fatalf("%s: %v", what, err)
	}
	n, bad := whole(dir, 1, 2)
	if bad != nil {
		t.Fatalf("%s: %v", what, bad)
	}
	if inPlace := errors.Is(err, ErrOldLeft); inPlace != (n == 2) {
		t.Errorf("%s: version %d with %v", what, n, err)
	}
	if errors.Is(err, ErrLeftover) {
		if failed != "clear" && failed != "remove" {
			t.Errorf("%s: %v", what, err)
		}
		s, err := Create(dir)
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		if err := s.Abort(); err != nil {
			t.Fatalf("%s: %v", what, err)
		}
	} else if n != old {
		t.Errorf("%s: the folder is of version %d, want %d, after %v", what, n, old, err)
	}
	if n == 0 {
		expectAlone(t, parent)
	} else {
		expectAlone(t, parent, "out")
	}
	return true
}

// TestCannotPutBack: where the second of two renames fails and the first cannot
// be undone, the old folder is kept, the error says where, and the next build
// puts it back.
func TestCannotPutBack(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	mustBuild(t, dir, 1)
	err := build(dir, version(2), watched(false, func(op string, do, _ func() error) error {
		if op == "place" {
			return syscall.EIO
		}
		return do()
	}))
	expectRule(t, err, ErrSwap,
		"cannot put the old folder back; it is "+filepath.Join(parent, ".out"+stageSuffix, oldName))
	s, err := Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	expectWhole(t, dir, 1)
	if err := s.Abort(); err != nil {
		t.Fatal(err)
	}
	expectWhole(t, dir, 1)
	expectAlone(t, parent, "out")
}
