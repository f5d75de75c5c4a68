package outdir

import (
	"errors"
	"fmt"
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

	running sync.RWMutex // read-held by WriteFile, held by Commit and Abort
	ended   bool         // guarded by running

	mu      sync.Mutex // guards what follows
	names   names
	written []entry
	failed  error // the first failure of WriteFile
}

// The two folders in the stage folder; the package comment says what is in them.
const (
	newName = "new"
	oldName = "old"
)

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
	s := &Stage{t: t, sys: sys, claim: c, names: names{seen: map[string]known{}}}
	if err := s.tidy(); err != nil {
		return nil, errors.Join(err, c.lock.Close())
	}
	if _, err := t.inspect(); err != nil {
		return nil, errors.Join(err, s.end())
	}
	if err := sys.mkdir(s.newDir(), 0o777); err != nil {
		return nil, errors.Join(cannotMake(t, t.parent, err), s.end())
	}
	return s, nil
}

func (s *Stage) newDir() string { return filepath.Join(s.claim.dir, newName) }
func (s *Stage) oldDir() string { return filepath.Join(s.claim.dir, oldName) }

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
		return errors.Join(err, s.claim.lock.Close())
	}
	if err := s.sys.dropClaim(s.claim); err != nil {
		return s.leftover(err)
	}
	return nil
}

// tidy empties the stage folder of everything but the lock. An old folder whose
// place is empty was caught between two renames and goes back to its place.
func (s *Stage) tidy() error {
	if _, err := os.Lstat(s.oldDir()); err == nil {
		if _, err := os.Lstat(s.t.path()); errors.Is(err, fs.ErrNotExist) {
			if err := s.sys.place(s.oldDir(), s.t.path()); err != nil {
				return &Error{
					Rule: ErrSwap, Path: s.t.name, Cause: err, Fact: fmt.Sprintf("cannot put the old folder back; it is %s", shown(s.oldDir())),
					Hint: fmt.Sprintf("rename it to %s", shown(s.t.path())),
				}
			}
		}
	}
	for _, dir := range []string{s.newDir(), s.oldDir()} {
		if err := s.sys.clear(dir); err != nil {
			return s.leftover(err)
		}
	}
	return nil
}

func (s *Stage) leftover(err error) error {
	return &Error{
		Rule: ErrLeftover, Path: s.claim.dir, Cause: err, Fact: "cannot remove the working folder " + shown(s.claim.dir),
		Hint: "delete it by hand",
	}
}
