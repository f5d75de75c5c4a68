//go:build freebsd || windows

package outdir

import "errors"

// exchange cannot be done in one step here.
func exchange(string, string) error { return errors.ErrUnsupported }

// place moves a folder to where nothing is.
func place(from, to string) error { return placeIfFree(from, to) }
