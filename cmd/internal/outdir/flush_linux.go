package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// flushTree hands all files below a folder to the disk, with one call for the
// file system it is on, and gives the error of any of them.
func flushTree(dir, _ string) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	err = unix.Syncfs(int(f.Fd()))
	if errors.Is(err, errors.ErrUnsupported) {
		unix.Sync()
		err = nil
	}
	return errors.Join(err, f.Close())
}
