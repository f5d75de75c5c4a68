package outdir

import (
	"crypto/sha256"
	"errors"
	"io"
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
	s := survey{t: t, dir: dir, replacing: true}
	if err := s.look(); err != nil {
		return err
	}
	if len(s.found) > 0 {
		return t.refuse(s.found, s.recorded)
	}
	return nil
}

// Compare finds where a folder is no longer what was written: what was changed, added or lost since, by the paths in it
// and in their order, at most so many. Listed is false where nothing says what was written there.
func Compare(dir string) (found []Foreign, listed bool, err error) {
	s := survey{t: target{name: filepath.ToSlash(dir)}, dir: dir}
	if err := s.look(); err != nil {
		return nil, false, err
	}
	if !s.recorded {
		return nil, false, nil
	}
	if s.unlisted != nil {
		why := Unreadable
		if errors.Is(s.unlisted, errManifest) {
			why = Why(s.unlisted.Error())
		}
		return []Foreign{{ManifestName, why}}, true, nil
	}
	for i := range s.found {
		s.found[i].Path = strings.TrimPrefix(s.found[i].Path, s.t.name+"/")
	}
	return s.found, true, nil
}

// look finds what is foreign, in the order of the paths.
func (s *survey) look() error {
	if err := s.readManifest(); err != nil {
		return err
	}
	walked := s.walk("")
	if walked != nil && !errors.Is(walked, errEnough) {
		return walked
	}
	if err := s.hash(); err != nil {
		return err
	}
	if !s.replacing && walked == nil {
		s.missing()
	}
	slices.SortFunc(s.found, func(a, b Foreign) int { return strings.Compare(a.Path, b.Path) })
	s.found = s.found[:min(len(s.found), foreignLimit)]
	return nil
}

// survey is a walk through a folder that is to be replaced.
type survey struct {
	t        target
	dir      string // where the contents stand
	m        manifest
	recorded bool    // there is a manifest
	unlisted error   // why that lists nothing
	listed   []entry // files that the manifest lists and that are there
	found    []Foreign
	// replacing is set where all of it has to go.
	replacing bool
}

// missing finds the files that the manifest lists and that are not there.
func (s *survey) missing() {
	there := make(map[string]bool)
	for _, e := range s.listed {
		there[e.path] = true
	}
	closed := func(name string) bool { // it lies in a folder that cannot be read
		return slices.ContainsFunc(s.found, func(f Foreign) bool {
			return f.Why == Unreadable && strings.HasPrefix(s.t.name+"/"+name, f.Path+"/")
		})
	}
	for name := range s.m.files {
		if !there[name] && !closed(name) {
			s.found = append(s.found, Foreign{s.t.name + "/" + name, Missing})
		}
	}
}

// readManifest reads the folder's list of what was written there, if there is
// one. What has its name and is no plain file is for the walk to find.
func (s *survey) readManifest() error {
	name := filepath.Join(s.dir, ManifestName)
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
		s.unlisted = err
		return s.unreadable(ManifestName, err)
	}
	if s.m, err = parseManifest(string(text)); err != nil {
		s.unlisted = err
		s.found = append(s.found, Foreign{s.t.name + "/" + ManifestName, Why(err.Error())})
	}
	return nil
}

// errEnough ends a walk that found foreignLimit foreign files.
var errEnough = errors.New("enough foreign files")

// walk sorts what is in one folder, given by its path in the target.
func (s *survey) walk(folder string) error {
	dir := filepath.Join(s.dir, filepath.FromSlash(folder))
	list, err := os.ReadDir(dir)
	if err == nil && s.replacing {
		err = checkWritable(dir)
	}
	if err != nil {
		return s.unreadable(folder, err)
	}
	for _, d := range list {
		name := path.Join(folder, d.Name())
		why := Unknown
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
			why = Link
		case !d.Type().IsRegular():
			why = Special
		case name == ManifestName || s.dropping(folder, d.Name()):
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
	return file || s.m.folders[of] || s.recorded && of == ManifestName
}

// unreadable is the error for a part of the folder that this process may not
// read or replace. Where nothing is to be replaced it is found so.
func (s *survey) unreadable(name string, err error) error {
	name = path.Join(s.t.name, name)
	if !s.replacing {
		s.found = append(s.found, Foreign{name, Unreadable})
		return nil
	}
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
			if err := s.unreadable(e.path, errs[i]); err != nil {
				return err
			}
		} else if differs[i] {
			s.found = append(s.found, Foreign{s.t.name + "/" + e.path, Changed})
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
	sum := sha256.New()
	if err == nil {
		err = sumOf(name, sum)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	return [sha256.Size]byte(sum.Sum(nil)) != e.sum, err
}

// sumOf adds a file to a sum, as large as it may be.
func sumOf(name string, to io.Writer) error {
	f, err := os.Open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(to, f)
	return err
}
