package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// exchange gives each of two folders the other's name, in one step.
func exchange(a, b string) error { return renamex(a, b, unix.RENAME_SWAP) }

// place moves a folder to where nothing is.
func place(from, to string) error {
	err := renamex(from, to, unix.RENAME_EXCL)
	if errors.Is(err, errors.ErrUnsupported) {
		return placeIfFree(from, to)
	}
	return err
}

// renamex gives errors.ErrUnsupported where the file system does not know the flag.
func renamex(a, b string, flag uint32) error {
	err := unix.RenamexNp(a, b, flag)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, unix.EINVAL):
		err = errors.ErrUnsupported
	}
	return &os.LinkError{Op: "renamex_np", Old: a, New: b, Err: err}
}
