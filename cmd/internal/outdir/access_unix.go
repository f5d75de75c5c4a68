//go:build darwin || freebsd || linux

package outdir

import "golang.org/x/sys/unix"

// checkWritable gives the system's error for a folder whose files this process
// may not remove.
func checkWritable(dir string) error { return unix.Access(dir, unix.W_OK|unix.X_OK) }
