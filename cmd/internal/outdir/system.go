package outdir

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"

	"github.com/gofrs/flock"
	"github.com/rogpeppe/go-internal/robustio"
	"golang.org/x/sync/errgroup"
)

// system is what a build does to the disk, one field a kind of step, so that a
// test can make any step fail, or be the last of the process. What only one
// system can do is in system_linux.go, system_darwin.go and system_windows.go.
type system struct {
	mkdir    func(dir string, mode fs.FileMode) error
	lock     func(name string) (lock *flock.Flock, free bool, err error)
	folder   func(in *os.Root, name string) error                             // a folder below it
	write    func(in *os.Root, name string, fill func(io.Writer) error) error // a file that was not there
	chmod    func(in *os.Root, name string, mode fs.FileMode) error
	flush    func(dir, last string) error // all below dir, its newest file being last
	flushDir func(dir string) error       // the names in one folder
	exchange func(a, b string) error      // two folders; errors.ErrUnsupported where that cannot be done
	place    func(from, to string) error  // a folder to where nothing is
	rename   func(from, to string) error
	remove   func(name string) error              // a file or an empty folder
	clear    func(in *os.Root, name string) error // a folder and all in it
}

func realSystem() system {
	return system{
		mkdir:    os.Mkdir,
		folder:   func(in *os.Root, name string) error { return in.Mkdir(name, 0o777) },
		lock:     tryLock,
		write:    writeNew,
		chmod:    (*os.Root).Chmod,
		flush:    flushTree,
		flushDir: flushFolder,
		exchange: exchange,
		place:    place,
		rename:   robustio.Rename,
		remove:   os.Remove,
		clear:    clearFolder,
	}
}

// tryLock makes a file, or opens it, and locks it unless another process has.
func tryLock(name string) (lock *flock.Flock, free bool, err error) {
	lock = flock.New(name)
	free, err = lock.TryLock()
	return lock, free, err
}

// writeNew makes a file. It is not synced: one flush of all files is far
// quicker than one each.
func writeNew(in *os.Root, name string, fill func(io.Writer) error) error {
	f, err := in.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	return errors.Join(fill(f), f.Close())
}

// flushTree hands all files below a folder to the disk, as far as the system
// does that in one call, and waits for the newest file.
func flushTree(dir, last string) error {
	if err := flushDisk(dir); err != nil {
		return err
	}
	f, err := os.OpenFile(last, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close(), flushFolder(dir))
}

// flushFolder hands the names in a folder to the disk. File systems that have
// nothing to do for that (network and memory ones) say EINVAL or "not
// supported"; Windows flushes no folder.
func flushFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// exchange gives each of two folders the other's name, in one step.
func exchange(a, b string) error { return renameBy(exchanging, a, b) }

// place moves a folder to where nothing is.
func place(from, to string) error {
	err := renameBy(placing, from, to)
	if errors.Is(err, errors.ErrUnsupported) {
		return placeIfFree(from, to)
	}
	return err
}

// renameBy renames by a rule of the system's own; errors.ErrUnsupported where
// the system, or the disk's file system, does not know it.
func renameBy(rule uint, from, to string) error {
	err := renameFlag(from, to, rule)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, syscall.EINVAL): // the words of the manuals for a file system without the flag
		err = errors.ErrUnsupported
	}
	return &os.LinkError{Op: "rename", Old: from, New: to, Err: err}
}

// placeIfFree is place where the system has no such call: something that comes
// into being between the look and the rename is replaced if it is an empty
// folder, and an error otherwise.
func placeIfFree(from, to string) error {
	if _, err := os.Lstat(to); !errors.Is(err, fs.ErrNotExist) {
		return &os.LinkError{Op: "rename", Old: from, New: to, Err: fs.ErrExist}
	}
	return robustio.Rename(from, to)
}

// clearFolder removes a folder with all in it, if it is there. Its files go
// first, several at a time, which takes a tenth of the time on a slow disk. A
// link is removed, and nothing that it leads to.
func clearFolder(in *os.Root, name string) error {
	var files []string
	// What this walk does not see, or a worker does not remove, is for RemoveAll
	// to remove or to complain of.
	fs.WalkDir(in.FS(), name, func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			files = append(files, name)
		}
		return nil
	})
	each(len(files), func(i int) { in.Remove(files[i]) })
	return robustio.RemoveAll(filepath.Join(in.Name(), name))
}

// workers is how many files are read or removed at a time. Each mostly waits
// for the disk, so that more than one a processor pays; many more make a
// turning disk seek.
const workers = 4

// each calls do for 0 to n-1, from several goroutines, and waits for all.
func each(n int, do func(i int)) {
	var g errgroup.Group
	g.SetLimit(workers)
	for i := range n {
		g.Go(func() error {
			do(i)
			return nil
		})
	}
	_ = g.Wait() // no call gives an error
}
