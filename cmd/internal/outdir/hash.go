package outdir

import (
	"crypto/sha256"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

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

// hashBuffer is how much of a file is read at a time, in bytes: all of most.
const hashBuffer = 64 << 10

// differ reports whether a file is not what is known of it.
func differ(name string, e entry) (bool, error) {
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || info.Size() != e.size {
		return true, err
	}
	h := sha256.New()
	buffer := make([]byte, min(e.size+1, hashBuffer))
	if _, err := io.CopyBuffer(h, struct{ io.Reader }{f}, buffer); err != nil {
		return false, err
	}
	return [32]byte(h.Sum(nil)) != e.sum, nil
}
