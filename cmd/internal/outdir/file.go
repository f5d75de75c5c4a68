package outdir

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// ReplaceFile writes a file whole or not at all: into a new one beside it, which then
// takes its name. Its mode stays; a link stays one. What is no plain file is refused.
func ReplaceFile(path string, data []byte) (err error) {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		path = to
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		if mode = info.Mode().Perm(); !info.Mode().IsRegular() {
			return fmt.Errorf("%s is no plain file", path)
		}
	}
	out, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(out.Name()))
		}
	}()
	_, err = out.Write(data)
	if err == nil {
		err = out.Chmod(mode)
	}
	if err == nil {
		err = out.Sync()
	}
	if err = errors.Join(err, out.Close()); err != nil {
		return err
	}
	return os.Rename(out.Name(), path)
}
