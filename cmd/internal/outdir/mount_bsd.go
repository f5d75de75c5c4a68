//go:build darwin || freebsd

package outdir

import "io/fs"

// isMountPoint reports whether another file system is mounted at path.
func isMountPoint(path string, info fs.FileInfo) (bool, error) { return otherDevice(path, info) }
