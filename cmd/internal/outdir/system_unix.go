//go:build darwin || linux

package outdir

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"golang.org/x/sys/unix"
)

// checkWritable gives the system's error for a folder whose files this process
// may not remove.
func checkWritable(dir string) error { return unix.Access(dir, unix.W_OK|unix.X_OK) }

// isMountPoint reports whether something is mounted at path; at the least, that
// it is on another device than the folder it is in.
func isMountPoint(path string, info fs.FileInfo) (bool, error) {
	if is, known := mountRoot(path); known {
		return is, nil
	}
	up, err := os.Lstat(filepath.Dir(path))
	if err != nil {
		return false, err
	}
	a, ok1 := info.Sys().(*syscall.Stat_t)
	b, ok2 := up.Sys().(*syscall.Stat_t)
	return ok1 && ok2 && a.Dev != b.Dev, nil
}

// dropClaim removes the lock file while it is held, then the empty stage
// folder. A build that opened the file before that finds it gone, and tries
// again; one that has already made a new lock keeps the folder.
func (s system) dropClaim(c *claim) error {
	err := s.remove(c.lock.Path())
	rmdir := s.remove(c.dir)
	if err == nil && rmdir != nil && !errors.Is(rmdir, unix.ENOTEMPTY) && !errors.Is(rmdir, unix.ENOENT) {
		err = rmdir
	}
	return errors.Join(err, c.lock.Close())
}
