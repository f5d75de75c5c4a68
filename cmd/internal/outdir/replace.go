package outdir

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
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

// ReplaceFileIf is ReplaceIn of a path; a link stays one.
func ReplaceFileIf(path string, data []byte, still func() (bool, error)) (done bool, err error) {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		path = to
	}
	in, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return false, err
	}
	defer in.Close()
	return ReplaceIn(in, filepath.Base(path), data, still)
}

// ReplaceFileWas is ReplaceFileIf of a file that is still what was read of it; one that was not there is empty.
func ReplaceFileWas(path string, was, data []byte) (done bool, err error) {
	return ReplaceFileIf(path, data, func() (bool, error) {
		now, err := os.ReadFile(path)
		if errors.Is(err, fs.ErrNotExist) {
			err = nil
		}
		return bytes.Equal(now, was), err
	})
}

// ReplaceIn writes a file of a folder whole or not at all: into a new one beside it, which then
// takes its name, if something still holds when it is ready, such as that the old one is what it
// was. No other process of this program replaces a file of the same folder between that look and
// the change. Its mode stays. What is no plain file, or may not be written, is refused.
func ReplaceIn(in *os.Root, name string, data []byte, still func() (bool, error)) (done bool, err error) {
	mode, err := Replaceable(in, name)
	if err != nil {
		return false, err
	}
	unlock, alone, err := lockFolder(in.Name())
	if err != nil {
		return false, err
	}
	defer unlock()
	begins := "." + name + "-"
	var age time.Duration
	if !alone {
		age = longWrite
	}
	removeLeft(in, begins, age)
	out, err := in.OpenFile(begins+strconv.FormatUint(rand.Uint64(), 10), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return false, err
	}
	made := filepath.Base(out.Name())
	defer func() {
		if !done {
			err = errors.Join(err, in.Remove(made))
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
	err = renameIn(in, made, name)
	return err == nil, err
}

// renameIn gives a file of a folder another name there. A Root does not try again where Windows refuses
// since a scanner holds the file.
func renameIn(in *os.Root, from, to string) error {
	if runtime.GOOS == "windows" {
		return robustio.Rename(filepath.Join(in.Name(), from), filepath.Join(in.Name(), to))
	}
	return in.Rename(from, to)
}

// longWrite is longer than any write of a file takes: what is older was left.
const longWrite = time.Hour

// removeLeft removes what was left of new files by processes that were killed: all of it, or what has an
// age. A file that cannot be removed stays: it is in nobody's way.
func removeLeft(in *os.Root, begins string, age time.Duration) {
	list, _ := fs.ReadDir(in.FS(), ".")
	for _, e := range list {
		number, found := strings.CutPrefix(e.Name(), begins)
		if !found || number == "" || strings.Trim(number, "0123456789") != "" {
			continue
		}
		if info, err := e.Info(); age == 0 || err == nil && time.Since(info.ModTime()) > age {
			in.Remove(e.Name())
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

// Replaceable gives the mode that a file of a folder keeps when it is replaced, or gets when there is
// none. The error says why the file that is there cannot be replaced.
func Replaceable(in *os.Root, name string) (fs.FileMode, error) {
	info, err := in.Lstat(name)
	path := filepath.Join(in.Name(), name)
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
