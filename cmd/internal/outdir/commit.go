package outdir

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Commit puts the folder in its place, in one step, for good. What stands there
// is judged once more before that, since a build takes a while, and a last time
// when it is out of the way; a folder that somebody changed in between is kept
// beside the new one. On an error the
// folder is as it was before Create and nothing is left beside it; only with
// ErrOldLeft and ErrKept the new folder is in place, and what it replaced is left
// beside it.
// A stage whose WriteFile failed is not committed; Commit gives that error.
func (s *Stage) Commit() error {
	s.running.Lock()
	defer s.running.Unlock()
	if s.ended {
		return finished("finish", s.t.name)
	}
	err := s.failed
	if err == nil {
		err = s.publish()
	}
	if err != nil {
		return errors.Join(err, s.end())
	}
	if err := s.end(); err != nil {
		return fault(ErrOldLeft, s.t.name, err,
			shown(s.t.name)+" is finished; the working folder "+shown(s.claim.dir)+" beside it could not be removed",
			"delete that one by hand")
	}
	return nil
}

// publish is Commit without the clearing up.
func (s *Stage) publish() error {
	if err := s.sys.write(s.claim.root, s.at(ManifestName), allOf(s.Manifest())); err != nil {
		return s.unwritten(ManifestName, err)
	}
	if err := s.sys.flush(s.newDir(), filepath.Join(s.newDir(), ManifestName)); err != nil {
		return s.unwritten("", err)
	}
	old, err := s.t.inspect()
	if err != nil {
		return err
	}
	if old != nil {
		// Somebody may have said who can read the folder; that holds for the new one.
		if err := s.sys.chmod(s.claim.root, newName, old.Mode()&(fs.ModePerm|fs.ModeSetgid)); err != nil {
			return s.unwritten("", err)
		}
	}
	undo, out, err := s.swap(old != nil)
	if err != nil {
		return s.notSwapped(err)
	}
	for _, dir := range []string{s.claim.dir, s.t.parent} {
		if err := s.sys.flushDir(dir); err != nil {
			err = errors.Join(err, undo())
			// For a moment the new folder stood in its place, and somebody may
			// have put a file there.
			return s.notSwapped(errors.Join(err, s.keep(s.newDir())))
		}
	}
	if old == nil {
		return nil
	}
	// Once more, where nobody finds it any longer: what came in during the last
	// look is not to be cleared away.
	return s.keep(out)
}

// keep sets a folder that holds more than this package wrote beside the target,
// and says so. Of any other folder, or none, it does nothing.
func (s *Stage) keep(dir string) error {
	if _, err := os.Lstat(dir); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	why := s.t.judge(dir)
	if why == nil {
		return nil
	}
	aside := s.t.path() + keptSuffix
	for n := 2; ; n++ {
		err := s.sys.place(dir, aside)
		if err == nil {
			break
		}
		if !errors.Is(err, fs.ErrExist) || n > keptMost {
			return errors.Join(why, err)
		}
		aside = fmt.Sprintf("%s%s-%d", s.t.path(), keptSuffix, n)
	}
	e := fault(ErrKept, s.t.name, nil,
		shown(s.t.name)+" was changed by somebody else at the last moment; that folder is kept as "+shown(aside),
		"take from it what you want, then delete it")
	var found *Error
	if errors.As(why, &found) && found.Rule == ErrForeign {
		e.Foreign = found.Foreign
	} else {
		e.Cause = why
	}
	return e
}

// keptSuffix ends the name of a folder that is kept beside the target, and
// keptMost is how many of them are numbered.
const (
	keptSuffix = ".kept"
	keptMost   = 1000
)

// swap puts the new folder in its place and the one that was there, if any, in
// the stage folder, under the name out. Undo puts both back.
func (s *Stage) swap(replace bool) (undo func() error, out string, err error) {
	at := s.t.path()
	if !replace {
		return func() error { return s.sys.place(at, s.newDir()) }, "", s.sys.place(s.newDir(), at)
	}
	err = s.sys.exchange(s.newDir(), at)
	if !errors.Is(err, errors.ErrUnsupported) {
		return func() error { return s.sys.exchange(s.newDir(), at) }, s.newDir(), err
	}
	if err := s.sys.rename(at, s.oldDir()); err != nil {
		return nil, "", err
	}
	if err := s.sys.place(s.newDir(), at); err != nil {
		return nil, "", err // and the end of the stage puts the old folder back
	}
	return func() error {
		return errors.Join(s.sys.rename(at, s.newDir()), s.sys.place(s.oldDir(), at))
	}, s.oldDir(), nil
}

func (s *Stage) notSwapped(err error) error {
	return fault(ErrSwap, s.t.name, err, "cannot put the new folder in the place of "+shown(s.t.name),
		"close programs that use the folder and run again, or name another folder")
}
