package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"drawerwright/cmd/internal/job"
)

// unread says why a file cannot be read: of one that is not there, in plain words, with what to do about it.
func unread(what, path string, err error, instead string) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot read the %s: %w", what, err)
	}
	hint := "look at its name and its folder"
	if near := nearFile(path); near != "" {
		hint = "did you mean " + near + "?"
	} else if instead != "" {
		hint += "; " + instead
	}
	where := "here"
	if dir := filepath.Dir(path); dir != "." {
		where = "in " + plain(dir)
	}
	return hinted{fmt.Sprintf("there is no file %s %s", plain(filepath.Base(path)), where), hint}
}

// nearFile is the file beside a path that is meant by it; empty where none is.
func nearFile(path string) string {
	list, _ := os.ReadDir(filepath.Dir(path)) // without a folder nothing is near
	var names []string
	for _, f := range list {
		if !f.IsDir() && filepath.Ext(f.Name()) == filepath.Ext(path) {
			names = append(names, f.Name())
		}
	}
	if near := job.Nearest(filepath.Base(path), names); near != "" {
		return plain(filepath.Join(filepath.Dir(path), near))
	}
	return ""
}

// hinted is an error with what to do about it.
type hinted struct{ fact, hint string }

func (h hinted) Error() string { return h.fact + "\n  hint: " + h.hint }
