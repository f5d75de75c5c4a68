//go:build darwin || freebsd || linux

package outdir

import (
	"errors"
	"os"
	"path/filepath"

	"golang.org/x/sys/unix"
)

// tryLock locks a file until it is closed or the process ends; false if another has it.
func tryLock(f *os.File) (bool, error) {
	for {
		err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
		if errors.Is(err, unix.EWOULDBLOCK) {
			return false, nil
		}
		if !errors.Is(err, unix.EINTR) {
			return err == nil, err
		}
	}
}

// dropClaim removes the lock file while it is held, then the empty stage
// folder. A build that opened the file before that finds it gone, and tries
// again; one that has already made a new lock keeps the folder.
func (s system) dropClaim(c *claim) error {
	err := s.remove(filepath.Join(c.dir, lockName))
	if rmdir := s.remove(c.dir); err == nil && rmdir != nil && !errors.Is(rmdir, unix.ENOTEMPTY) && !errors.Is(rmdir, unix.ENOENT) {
		err = rmdir
	}
	return errors.Join(err, c.lock.Close())
}
