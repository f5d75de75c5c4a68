package outdir

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// The rules by which renameFlag renames.
const (
	exchanging = unix.RENAME_EXCHANGE
	placing    = unix.RENAME_NOREPLACE
)

func renameFlag(from, to string, flag uint) error {
	return unix.Renameat2(unix.AT_FDCWD, from, unix.AT_FDCWD, to, flag)
}

// flushDisk waits for all files of the file system that a folder is on, and
// gives the error of any of them.
func flushDisk(dir string) error {
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

// mountRoot reports whether something is mounted at path, a folder of the same
// file system among them, and whether the kernel knows (5.8 and later).
func mountRoot(path string) (is, known bool) {
	var st unix.Statx_t
	err := unix.Statx(unix.AT_FDCWD, path, unix.AT_SYMLINK_NOFOLLOW, unix.STATX_BASIC_STATS, &st)
	known = err == nil && st.Attributes_mask&unix.STATX_ATTR_MOUNT_ROOT != 0
	return st.Attributes&unix.STATX_ATTR_MOUNT_ROOT != 0, known
}
