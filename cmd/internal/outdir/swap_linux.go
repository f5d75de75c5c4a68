package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// exchange gives each of two folders the other's name, in one step.
func exchange(a, b string) error { return renameat2(a, b, unix.RENAME_EXCHANGE) }

// place moves a folder to where nothing is.
func place(from, to string) error {
	err := renameat2(from, to, unix.RENAME_NOREPLACE)
	if errors.Is(err, errors.ErrUnsupported) {
		return placeIfFree(from, to)
	}
	return err
}

// renameat2 gives errors.ErrUnsupported where the kernel, or the file system,
// does not know the flag.
func renameat2(a, b string, flag uint) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, flag)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, unix.EINVAL): // the words of the manual for a file system without the flag
		err = errors.ErrUnsupported
	}
	return &os.LinkError{Op: "renameat2", Old: a, New: b, Err: err}
}
