package outdir

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"golang.org/x/sys/windows"
)

// tryLock locks a file until it is closed or the process ends; false if another has it.
func tryLock(f *os.File) (bool, error) {
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, new(windows.Overlapped))
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) || errors.Is(err, windows.ERROR_IO_PENDING) {
		return false, nil
	}
	return err == nil, err
}

// dropClaim closes the lock file, which Windows does not remove while it is
// open, then removes it and the stage folder. A build that took the lock in
// between has the file open, so that both stay, or has removed both.
func (s system) dropClaim(c *claim) error {
	if err := c.lock.Close(); err != nil {
		return err
	}
	err := s.remove(filepath.Join(c.dir, lockName))
	if err == nil {
		err = s.remove(c.dir)
	}
	for _, taken := range []error{windows.ERROR_SHARING_VIOLATION, windows.ERROR_DIR_NOT_EMPTY, fs.ErrNotExist} {
		if errors.Is(err, taken) {
			return nil
		}
	}
	return err
}
