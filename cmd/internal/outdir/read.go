package outdir

import (
	"os"
	"path/filepath"
)

// ReadFile reads a file back that WriteFile wrote, as it is on disk now. It may be
// called from many goroutines at a time.
func (s *Stage) ReadFile(name string) ([]byte, error) {
	s.running.RLock()
	defer s.running.RUnlock()
	if s.ended {
		return nil, &Error{Rule: ErrFinished, Path: name, Fact: "cannot read " + shown(name) + ": " + ErrFinished.Error()}
	}
	if !validName(name) {
		return nil, &Error{Rule: ErrFileName, Path: name, Fact: "no such name can be in the output folder: " + shown(name)}
	}
	return os.ReadFile(filepath.Join(s.newDir(), filepath.FromSlash(name)))
}
