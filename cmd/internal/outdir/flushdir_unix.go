//go:build darwin || freebsd || linux

package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// flushFolder hands the names in a folder to the disk. File systems that have
// nothing to do for that (network and memory ones) say EINVAL or "not supported".
func flushFolder(dir string) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, unix.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		err = nil
	}
	return errors.Join(err, f.Close())
}
