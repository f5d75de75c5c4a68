package outdir

import (
	"crypto/sha256"
	"fmt"
	"path/filepath"
)

// WriteFile writes a file of the folder. The name is relative, with slashes;
// folders on the way are made. Two names that differ only in case clash, as they
// would on some file systems. After an error the folder will not be committed.
// It may be called from many goroutines at a time, and keeps no hold of data.
func (s *Stage) WriteFile(name string, data []byte) error {
	s.running.RLock()
	defer s.running.RUnlock()
	if s.ended {
		return &Error{Rule: ErrFinished, Path: name, Fact: "cannot write " + shown(name) + ": " + ErrFinished.Error()}
	}
	err := s.enter(name)
	if err == nil {
		err = s.write(name, data)
	}
	if err != nil {
		s.mu.Lock()
		if s.failed == nil {
			s.failed = err
		}
		s.mu.Unlock()
	}
	return err
}

// enter notes the name and makes its folders.
func (s *Stage) enter(name string) error {
	if !validName(name) {
		return &Error{Rule: ErrFileName, Path: name, Fact: fmt.Sprintf("%q cannot be the name of a file in the output folder", name)}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	folders, clash := s.names.add(name)
	if clash != "" {
		return &Error{Rule: ErrDuplicate, Path: name, Fact: fmt.Sprintf("%s and %s in the output folder would be one on some disks", shown(clash), shown(name))}
	}
	for _, folder := range folders {
		if err := s.sys.mkdir(filepath.Join(s.newDir(), filepath.FromSlash(folder)), 0o777); err != nil {
			return s.unwritten(folder, err)
		}
	}
	return nil
}

func (s *Stage) write(name string, data []byte) error {
	if err := s.sys.write(filepath.Join(s.newDir(), filepath.FromSlash(name)), data); err != nil {
		return s.unwritten(name, err)
	}
	e := entry{name, int64(len(data)), sha256.Sum256(data)}
	s.mu.Lock()
	s.written = append(s.written, e)
	s.mu.Unlock()
	return nil
}

func (s *Stage) unwritten(name string, err error) error {
	name = s.t.name + "/" + name
	return &Error{Rule: ErrWrite, Path: name, Cause: err, Fact: "cannot write " + shown(name), Hint: advice(err)}
}
