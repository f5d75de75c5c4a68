package outdir

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
)

// Stage is a folder being built. WriteFile may be called from many goroutines;
// Commit and Abort wait for the calls that are under way.
type Stage struct {
	t     target
	sys   system
	claim *claim

	running sync.RWMutex // read-held by WriteFile and ReadFile, held by Commit and Abort
	ended   bool         // guarded by running

	mu      sync.Mutex // guards what follows
	names   names
	written []entry
	failed  error // the first failure of WriteFile
}

// Create checks the folder that a build is to make or replace, and claims it
// until Commit or Abort. What an interrupted build left beside it is cleared
// first. Nothing in the folder is changed. Errors are *Error.
func Create(dir string) (*Stage, error) { return create(dir, realSystem()) }

func create(dir string, sys system) (*Stage, error) {
	t, err := resolve(dir)
	if err != nil {
		return nil, err
	}
	if _, err := t.look(); err != nil {
		return nil, err
	}
	c, err := sys.takeClaim(t)
	if err != nil {
		return nil, err
	}
	s := &Stage{t: t, sys: sys, claim: c, names: names{}}
	if err := s.tidy(); err != nil {
		return nil, errors.Join(err, c.giveUp())
	}
	if _, err := t.inspect(); err != nil {
		return nil, errors.Join(err, s.end())
	}
	if err := sys.mkdir(s.newDir(), 0o777); err != nil {
		return nil, errors.Join(cannotMake(t, t.parent, err), s.end())
	}
	return s, nil
}

// The two folders in the stage folder; the package comment says what is in them.
const (
	newName = "new"
	oldName = "old"
)

func (s *Stage) newDir() string { return filepath.Join(s.claim.dir, newName) }
func (s *Stage) oldDir() string { return filepath.Join(s.claim.dir, oldName) }

// at is where a file of the folder is while it is built, in the stage folder.
func (s *Stage) at(name string) string { return filepath.Join(newName, filepath.FromSlash(name)) }

// WriteFile writes a file of the folder. The name is relative, with slashes;
// folders on the way are made. Two names that differ only in case clash, as they
// would on some file systems. After an error the folder will not be committed.
// It may be called from many goroutines at a time, and keeps no hold of data.
func (s *Stage) WriteFile(name string, data []byte) error { return s.Stream(name, allOf(data)) }

// allOf writes a file's bytes at once.
func allOf(data []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	}
}

// Stream writes a file of the folder as it comes: fill writes it, and its error is that of the file.
// Names are those of [Stage.WriteFile].
func (s *Stage) Stream(name string, fill func(io.Writer) error) error {
	s.running.RLock()
	defer s.running.RUnlock()
	if s.ended {
		return finished("write", name)
	}
	e := summed{entry: entry{path: name}, sum: sha256.New()}
	err := s.enter(name)
	if err == nil {
		err = s.sys.write(s.claim.root, s.at(name), func(w io.Writer) error {
			e.to = w
			return fill(&e)
		})
		if err != nil {
			err = s.unwritten(name, err)
		}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if err == nil {
		s.written = append(s.written, e.done())
	} else if s.failed == nil {
		s.failed = err
	}
	return err
}

// summed is a file on its way to the disk, which is what the list of files has of it.
type summed struct {
	entry
	to  io.Writer
	sum hash.Hash
}

func (f *summed) Write(data []byte) (int, error) {
	n, err := f.to.Write(data)
	f.size += int64(n)
	f.sum.Write(data[:n]) // which cannot fail
	return n, err
}

func (f *summed) done() entry {
	f.entry.sum = [sha256.Size]byte(f.sum.Sum(nil))
	return f.entry
}

// Manifest lists what is written so far, as the folder will have it under [ManifestName].
func (s *Stage) Manifest() []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	return formatManifest(s.written)
}

// enter notes the name and makes its folders.
func (s *Stage) enter(name string) error {
	if !validName(name) {
		return fault(ErrFileName, name, nil,
			fmt.Sprintf("%q cannot be the name of a file in the output folder", name), "")
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	folders, clash := s.names.add(name)
	if clash != "" {
		return fault(ErrDuplicate, name, nil,
			fmt.Sprintf("%s and %s in the output folder would be one on some disks", shown(clash), shown(name)), "")
	}
	for _, folder := range folders {
		if err := s.sys.folder(s.claim.root, s.at(folder)); err != nil {
			return s.unwritten(folder, err)
		}
	}
	return nil
}

func (s *Stage) unwritten(name string, err error) error {
	name = s.t.name + "/" + name
	return fault(ErrWrite, name, err, "cannot write "+shown(name), advice(err))
}

// ReadFile reads a file back that WriteFile wrote, as it is on disk now. It may be
// called from many goroutines at a time.
func (s *Stage) ReadFile(name string) ([]byte, error) {
	f, err := s.open(name)
	if err != nil {
		return nil, err
	}
	var data bytes.Buffer
	if info, err := f.Stat(); err == nil { // in one piece, and with the room that reading looks for after the end
		data.Grow(int(info.Size()) + bytes.MinRead)
	}
	_, err = data.ReadFrom(f)
	return data.Bytes(), errors.Join(err, f.Close())
}

// Open is ReadFile, read as it is wanted; it is to be closed before Commit or Abort.
func (s *Stage) Open(name string) (io.ReadCloser, error) {
	f, err := s.open(name)
	if err != nil {
		return nil, err
	}
	return f, nil
}

func (s *Stage) open(name string) (*os.File, error) {
	s.running.RLock()
	defer s.running.RUnlock()
	if s.ended {
		return nil, finished("read", name)
	}
	if !validName(name) {
		return nil, fault(ErrFileName, name, nil, "no such name can be in the output folder: "+shown(name), "")
	}
	return s.claim.root.Open(s.at(name))
}

// finished is the error for a step that comes after Commit or Abort.
func finished(step, name string) error {
	return fault(ErrFinished, name, nil, fmt.Sprintf("cannot %s %s: %v", step, shown(name), ErrFinished), "")
}

// Abort takes the unfinished folder away. After Commit or Abort it does
// nothing, so that it can be deferred.
func (s *Stage) Abort() error {
	s.running.Lock()
	defer s.running.Unlock()
	if s.ended {
		return nil
	}
	return s.end()
}

// end clears the stage folder and gives up the claim.
func (s *Stage) end() error {
	s.ended = true
	if err := s.tidy(); err != nil {
		return errors.Join(err, s.claim.giveUp())
	}
	if err := errors.Join(s.claim.root.Close(), s.sys.dropClaim(s.claim)); err != nil {
		return s.leftover(err)
	}
	return nil
}

// tidy empties the stage folder of everything but the lock. An old folder whose
// place is empty was caught between two renames and goes back to its place.
func (s *Stage) tidy() error {
	_, old := os.Lstat(s.oldDir())
	_, there := os.Lstat(s.t.path())
	if old == nil && errors.Is(there, fs.ErrNotExist) {
		if err := s.sys.place(s.oldDir(), s.t.path()); err != nil {
			return fault(ErrSwap, s.t.name, err, "cannot put the old folder back; it is "+shown(s.oldDir()),
				"rename it to "+shown(s.t.path()))
		}
	}
	for _, name := range []string{newName, oldName} {
		if err := s.sys.clear(s.claim.root, name); err != nil {
			return s.leftover(err)
		}
	}
	return nil
}

func (s *Stage) leftover(err error) error {
	return fault(ErrLeftover, s.claim.dir, err, "cannot remove the working folder "+shown(s.claim.dir),
		"delete it by hand")
}
