package outdir

import (
	"errors"
	"io/fs"
	"os"
)

// system is what a build does to the disk, one field a kind of step, so that a
// test can make any step fail, or be the last of the process.
type system struct {
	mkdir    func(dir string, mode fs.FileMode) error
	openLock func(name string) (*os.File, error)
	write    func(name string, data []byte) error // a file that was not there
	chmod    func(name string, mode fs.FileMode) error
	flush    func(dir, last string) error // all below dir, its newest file being last
	flushDir func(dir string) error       // the names in one folder
	exchange func(a, b string) error      // two folders; errors.ErrUnsupported where that cannot be done
	place    func(from, to string) error  // a folder to where nothing is
	rename   func(from, to string) error
	remove   func(name string) error // a file or an empty folder
	clear    func(dir string) error  // a folder and all in it
}

func realSystem() system {
	return system{
		mkdir:    os.Mkdir,
		openLock: func(name string) (*os.File, error) { return os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o600) },
		write:    writeNew,
		chmod:    os.Chmod,
		flush:    flushTree,
		flushDir: flushFolder,
		exchange: exchange,
		place:    place,
		rename:   renameFolder,
		remove:   os.Remove,
		clear:    clearFolder,
	}
}

// writeNew makes a file. It is not synced: one flush of all files is far
// quicker than one each.
func writeNew(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// placeIfFree is place where the system has no such call: something that comes
// into being between the look and the rename is replaced if it is an empty
// folder, and an error otherwise.
func placeIfFree(from, to string) error {
	if _, err := os.Lstat(to); !errors.Is(err, fs.ErrNotExist) {
		return &os.LinkError{Op: "rename", Old: from, New: to, Err: fs.ErrExist}
	}
	return renameFolder(from, to)
}
