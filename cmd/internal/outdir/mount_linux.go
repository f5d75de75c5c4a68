package outdir

import (
	"io/fs"

	"golang.org/x/sys/unix"
)

// isMountPoint reports whether something is mounted at path, a folder of the same
// file system among them, where the kernel says so (5.8 and later).
func isMountPoint(path string, info fs.FileInfo) (bool, error) {
	var st unix.Statx_t
	err := unix.Statx(unix.AT_FDCWD, path, unix.AT_SYMLINK_NOFOLLOW, unix.STATX_BASIC_STATS, &st)
	if err == nil && st.Attributes_mask&unix.STATX_ATTR_MOUNT_ROOT != 0 {
		return st.Attributes&unix.STATX_ATTR_MOUNT_ROOT != 0, nil
	}
	return otherDevice(path, info)
}
