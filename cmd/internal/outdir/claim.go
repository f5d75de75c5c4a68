package outdir

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// claim is a stage folder that this process alone works in, until it ends.
type claim struct {
	dir  string
	lock *os.File
}

// claimTries bounds how often a stage folder is looked for again that another
// build took away between two steps.
const claimTries = 100

// takeClaim makes the stage folder, or takes over one that an interrupted build
// left, and locks it. Two builds never hold it at once, whichever way they got
// there: the lock counts only if the locked file is still the one in the folder.
func (s system) takeClaim(t target) (*claim, error) {
	dir := t.stage()
	for range claimTries {
		if err := s.mkdir(dir, 0o700); err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, cannotMake(t, t.parent, err)
		}
		if info, err := os.Lstat(dir); err == nil && !info.IsDir() {
			return nil, &Error{Rule: ErrNotFolder, Path: t.stage(), Fact: shown(t.stage()) + " is not a folder, and a build needs the name", Hint: "move it away"}
		}
		name := filepath.Join(dir, lockName)
		f, err := s.openLock(name)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			s.remove(dir) // it is empty, or not ours to remove
			return nil, cannotMake(t, dir, err)
		}
		free, err := tryLock(f)
		if err != nil || !free {
			f.Close()
			return nil, busy(t, err)
		}
		if isStill(f, name) {
			return &claim{dir, f}, nil
		}
		f.Close()
	}
	return nil, busy(t, nil)
}

// lockName is the lock file's name in the stage folder.
const lockName = "lock"

func busy(t target, err error) error {
	if err != nil {
		return &Error{Rule: ErrParent, Path: t.name, Cause: err, Fact: "cannot lock a file beside " + shown(t.name), Hint: "name a folder on a disk of this computer"}
	}
	return &Error{Rule: ErrBusy, Path: t.name, Fact: "another build into " + shown(t.name) + " is running", Hint: "wait for it to end, or name another folder"}
}

// isStill reports whether an open file is the one of that name.
func isStill(f *os.File, name string) bool {
	opened, err := f.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(name)
	return err == nil && os.SameFile(opened, there)
}
