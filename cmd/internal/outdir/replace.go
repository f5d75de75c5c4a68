package outdir

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/gofrs/flock"
	"github.com/rogpeppe/go-internal/robustio"
)

// NewFile writes a file that is not there yet, whole or not at all. It is false where there is one.
func NewFile(path string, data []byte) (done bool, err error) {
	return ReplaceFileIf(path, data, func() (bool, error) {
		_, err := os.Lstat(path)
		return errors.Is(err, fs.ErrNotExist), nil
	})
}

// ReplaceFileIf writes a file whole or not at all: into a new one beside it, which then
// takes its name, if something still holds when it is ready, such as that the old one is what it
// was. No other process of this program replaces a file of the same folder between that look and
// the change. Its mode stays; a link stays one. What is no plain file, or may not be written, is
// refused.
func ReplaceFileIf(path string, data []byte, still func() (bool, error)) (done bool, err error) {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		path = to
	}
	mode, err := Replaceable(path)
	if err != nil {
		return false, err
	}
	unlock, alone, err := lockFolder(filepath.Dir(path))
	if err != nil {
		return false, err
	}
	defer unlock()
	begins := "." + filepath.Base(path) + "-"
	if alone {
		removeLeft(filepath.Dir(path), begins)
	}
	out, err := os.CreateTemp(filepath.Dir(path), begins+"*")
	if err != nil {
		return false, err
	}
	defer func() {
		if !done {
			err = errors.Join(err, os.Remove(out.Name()))
		}
	}()
	_, err = out.Write(data)
	if err == nil {
		err = errors.Join(out.Chmod(mode), out.Sync())
	}
	if err = errors.Join(err, out.Close()); err != nil {
		return false, err
	}
	if ok, err := still(); err != nil || !ok {
		return false, err
	}
	err = robustio.Rename(out.Name(), path)
	return err == nil, err
}

// removeLeft removes what was left of new files by processes that were killed. A file that cannot be
// removed stays: it is in nobody's way.
func removeLeft(dir, begins string) {
	list, _ := os.ReadDir(dir)
	for _, e := range list {
		number, found := strings.CutPrefix(e.Name(), begins)
		if found && number != "" && strings.Trim(number, "0123456789") == "" {
			os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// lockWait is how long a folder is waited for that another process holds, which
// it does for the time of a write, and lockPause how often it is looked for.
const (
	lockWait  = 2 * time.Second
	lockPause = 10 * time.Millisecond
)

// lockFolder keeps other processes of this program from replacing a file of a
// folder. Where folders have no locks, on Windows and some network disks, the
// look before the rename is all, and alone is false.
func lockFolder(dir string) (unlock func() error, alone bool, err error) {
	ctx, cancel := context.WithTimeout(context.Background(), lockWait)
	defer cancel()
	lock := flock.New(dir, flock.SetFlag(os.O_RDONLY))
	alone, err = lock.TryLockContext(ctx, lockPause)
	if errors.Is(err, context.DeadlineExceeded) {
		return nil, false, fmt.Errorf("another drawerwright is writing in %s", dir)
	}
	return lock.Close, alone && err == nil, nil
}

// Replaceable gives the mode that a file at a path keeps when it is replaced, or gets when there is
// none. The error says why the file that is there cannot be replaced.
func Replaceable(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return 0o644, nil
	case !info.Mode().IsRegular():
		return 0, fmt.Errorf("%s is no plain file", path)
	case info.Mode().Perm()&0o200 == 0:
		return 0, fmt.Errorf("%s is read-only", path)
	}
	return info.Mode().Perm(), nil
}
