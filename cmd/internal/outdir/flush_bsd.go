//go:build darwin || freebsd

package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// flushTree asks the system to write everything, then waits for the newest file
// and the folder, behind which the drive has most of the rest.
func flushTree(dir, last string) error {
	if err := unix.Sync(); err != nil {
		return err
	}
	f, err := os.Open(last)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close(), flushFolder(dir))
}
