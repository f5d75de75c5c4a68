//go:build darwin || freebsd || linux

package outdir

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// otherDevice reports whether a folder is on another device than its parent.
func otherDevice(path string, info fs.FileInfo) (bool, error) {
	up, err := os.Lstat(filepath.Dir(path))
	if err != nil {
		return false, err
	}
	a, ok1 := info.Sys().(*syscall.Stat_t)
	b, ok2 := up.Sys().(*syscall.Stat_t)
	return ok1 && ok2 && a.Dev != b.Dev, nil
}
