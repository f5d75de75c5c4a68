package outdir

import (
	"errors"
	"io/fs"

	"golang.org/x/sys/windows"
)

// The rules by which renameFlag would rename.
const (
	exchanging = iota
	placing
)

func renameFlag(string, string, uint) error { return errors.ErrUnsupported }

// flushDisk does nothing: to flush a whole volume takes an administrator's rights.
func flushDisk(string) error { return nil }

// checkWritable asks nothing: only the attempt tells on Windows, and a swap
// that is refused leaves the old folder.
func checkWritable(string) error { return nil }

// isMountPoint is false: a disk mounted in a folder is a reparse point, which
// is no folder to begin with, and the top of a disk is known by its name.
func isMountPoint(string, fs.FileInfo) (bool, error) { return false, nil }

// dropClaim closes the lock file, which Windows does not remove while it is
// open, then removes it and the stage folder. A build that took the lock in
// between has the file open, so that both stay, or has removed both.
func (s system) dropClaim(c *claim) error {
	if err := c.lock.Close(); err != nil {
		return err
	}
	err := s.remove(c.lock.Path())
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
