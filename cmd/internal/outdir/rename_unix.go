//go:build darwin || freebsd || linux

package outdir

import "os"

// renameFolder renames a folder.
func renameFolder(from, to string) error { return os.Rename(from, to) }
