package outdir

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// inspect judges all that stands under the target's name, contents and all.
// Info is nil where nothing is there.
func (t target) inspect() (info fs.FileInfo, err error) {
	if info, err = t.look(); info == nil || err != nil {
		return nil, err
	}
	return info, t.judge(t.path())
}

// judge refuses contents that this package did not write. They stand in dir:
// under the target's name, or where a swap has put them.
func (t target) judge(dir string) error {
	s := survey{t: t, dir: dir}
	if err := s.readManifest(); err != nil {
		return err
	}
	if err := s.walk(""); err != nil && !errors.Is(err, errEnough) {
		return err
	}
	if err := s.hash(); err != nil {
		return err
	}
	if len(s.found) > 0 {
		slices.SortFunc(s.found, func(a, b Foreign) int { return strings.Compare(a.Path, b.Path) })
		return t.refuse(s.found[:min(len(s.found), foreignLimit)], s.recorded)
	}
	return nil
}

// survey is a walk through a folder that is to be replaced.
type survey struct {
	t        target
	dir      string // where the contents stand
	m        manifest
	recorded bool    // there is a manifest
	listed   []entry // files that the manifest lists and that are there
	found    []Foreign
}

// readManifest reads the folder's list of what was written there, if there is
// one. What has its name and is no plain file is for the walk to find.
func (s *survey) readManifest() error {
	name := filepath.Join(s.dir, manifestName)
	info, err := os.Lstat(name)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !info.Mode().IsRegular() {
		return nil
	}
	s.recorded = true
	var text []byte // none where the file is too large to be a manifest
	if err == nil && info.Size() <= manifestLimit {
		text, err = os.ReadFile(name)
	}
	if err != nil {
		return s.unreadable(manifestName, err)
	}
	if s.m, err = parseManifest(string(text)); err != nil {
		s.found = append(s.found, Foreign{s.t.name + "/" + manifestName, err.Error()})
	}
	return nil
}

// errEnough ends a walk that found foreignLimit foreign files.
var errEnough = errors.New("enough foreign files")

// walk sorts what is in one folder, given by its path in the target.
func (s *survey) walk(folder string) error {
	dir := filepath.Join(s.dir, filepath.FromSlash(folder))
	list, err := os.ReadDir(dir)
	if err == nil {
		err = checkWritable(dir)
	}
	if err != nil {
		return s.unreadable(folder, err)
	}
	for _, d := range list {
		name := path.Join(folder, d.Name())
		why := whyUnknown
		switch e, ok := s.m.files[name]; {
		case d.IsDir():
			before := len(s.found)
			if err := s.walk(name); err != nil {
				return err
			}
			if s.m.folders[name] || len(s.found) > before {
				continue
			}
		case d.Type()&fs.ModeSymlink != 0:
			why = whyLink
		case !d.Type().IsRegular():
			why = whySpecial
		case name == manifestName || s.dropping(folder, d.Name()):
			continue
		case ok:
			s.listed = append(s.listed, e)
			continue
		}
		s.found = append(s.found, Foreign{s.t.name + "/" + name, why})
		if len(s.found) >= foreignLimit {
			return errEnough
		}
	}
	return nil
}

// dropping reports whether a file is one that operating systems leave behind in
// folders that somebody only looked at: it is no obstacle, and goes with the
// old folder. "._x" is where macOS keeps what it knows of x on a disk of
// another system, a memory stick for one; it goes with x.
func (s *survey) dropping(folder, name string) bool {
	switch name {
	case ".DS_Store", "Thumbs.db", "desktop.ini":
		return true
	}
	of, ok := strings.CutPrefix(name, "._")
	if !ok {
		return false
	}
	of = path.Join(folder, of)
	_, file := s.m.files[of]
	return file || s.m.folders[of] || s.recorded && of == manifestName
}

// unreadable is the error for a part of the folder that this process may not
// read or replace.
func (s *survey) unreadable(name string, err error) error {
	name = path.Join(s.t.name, name)
	return fault(ErrReadOnly, name, err, "cannot replace "+shown(name),
		"name another folder, or change who may read and write this one")
}

// hash finds the listed files whose contents are not what the manifest says. A
// file that has gone meanwhile is not one of them.
func (s *survey) hash() error {
	list := s.listed
	differs := make([]bool, len(list))
	errs := make([]error, len(list))
	each(len(list), func(i int) {
		differs[i], errs[i] = differ(filepath.Join(s.dir, filepath.FromSlash(list[i].path)), list[i])
	})
	for i, e := range list {
		if errs[i] != nil {
			return s.unreadable(e.path, errs[i])
		}
		if differs[i] {
			s.found = append(s.found, Foreign{s.t.name + "/" + e.path, whyChanged})
		}
	}
	return nil
}

// differ reports whether a file is not what is known of it. A file of another
// size, which may be of any, is not read.
func differ(name string, e entry) (bool, error) {
	info, err := os.Stat(name)
	if err == nil && info.Size() != e.size {
		return true, nil
	}
	var data []byte
	if err == nil {
		data, err = os.ReadFile(name)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	return sha256.Sum256(data) != e.sum, err
}
