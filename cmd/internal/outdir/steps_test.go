package outdir

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
)

// watched is the system with a hook around each step: the hook gets the step's
// name, the step, and the step left half done where there is such a thing, and
// gives the step's outcome. Without exchange it is the system
// of a computer that can neither swap nor refuse to overwrite.
func watched(exchange bool, hook func(op string, do, half func() error) error) system {
	sys := realSystem()
	if !exchange {
		sys.exchange, sys.place = swapUnsupported, placeIfFree
	}
	none := func() error { return nil }
	w := sys
	w.mkdir = func(dir string, mode fs.FileMode) error {
		return hook("mkdir", func() error { return sys.mkdir(dir, mode) }, none)
	}
	w.lock = func(name string) (lock *flock.Flock, free bool, err error) {
		err = hook("lock", func() error { lock, free, err = sys.lock(name); return err }, none)
		return lock, free, err
	}
	w.folder = func(in *os.Root, name string) error {
		return hook("folder", func() error { return sys.folder(in, name) }, none)
	}
	w.write = func(in *os.Root, name string, fill func(io.Writer) error) error {
		half := func() error {
			return sys.write(in, name, func(w io.Writer) error {
				var data bytes.Buffer
				err := fill(&data)
				_, cut := w.Write(data.Bytes()[:data.Len()/2])
				return errors.Join(err, cut)
			})
		}
		return hook("write", func() error { return sys.write(in, name, fill) }, half)
	}
	w.chmod = func(in *os.Root, name string, mode fs.FileMode) error {
		return hook("chmod", func() error { return sys.chmod(in, name, mode) }, none)
	}
	w.flush = func(dir, last string) error {
		return hook("flush", func() error { return sys.flush(dir, last) }, none)
	}
	w.flushDir = func(dir string) error {
		return hook("flushDir", func() error { return sys.flushDir(dir) }, none)
	}
	w.exchange = func(a, b string) error {
		return hook("exchange", func() error { return sys.exchange(a, b) }, none)
	}
	w.place = func(from, to string) error {
		return hook("place", func() error { return sys.place(from, to) }, none)
	}
	w.rename = func(from, to string) error {
		return hook("rename", func() error { return sys.rename(from, to) }, none)
	}
	w.remove = func(name string) error {
		return hook("remove", func() error { return sys.remove(name) }, none)
	}
	w.clear = func(in *os.Root, name string) error {
		half := func() error { return clearHalf(filepath.Join(in.Name(), name)) }
		return hook("clear", func() error { return sys.clear(in, name) }, half)
	}
	return w
}

// clearHalf removes the first entry of a folder.
func clearHalf(dir string) error {
	list, err := os.ReadDir(dir)
	if err != nil || len(list) == 0 {
		return err
	}
	return os.RemoveAll(dir + "/" + list[0].Name())
}

// swapUnsupported is exchange on a system without one.
func swapUnsupported(a, b string) error {
	return &os.LinkError{Op: "exchange", Old: a, New: b, Err: errors.ErrUnsupported}
}
