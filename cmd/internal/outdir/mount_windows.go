package outdir

import "io/fs"

// isMountPoint is false: a disk mounted in a folder is a reparse point, which
// is no folder to begin with, and the top of a disk is known by its name.
func isMountPoint(string, fs.FileInfo) (bool, error) { return false, nil }
