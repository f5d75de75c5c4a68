package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"drawerwright/cmd/internal/job"
)

// opened opens a file to read. Its error says in plain words why that cannot be, and what to do about it.
func opened(what, path, instead string) (*os.File, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, unread(what, path, err, instead)
	}
	info, err := f.Stat()
	if err == nil && info.IsDir() {
		f.Close()
		return nil, hinted{fmt.Sprintf("cannot read the %s: %s is a folder", what, plain(path)),
			"write the name of the file, with its folder before it"}
	}
	return f, nil
}

// unread is the error of a file that cannot be opened.
func unread(what, path string, err error, instead string) error {
	var of *fs.PathError
	switch {
	case errors.Is(err, fs.ErrPermission):
		return hinted{fmt.Sprintf("cannot read the %s: its rights do not let you read %s", what, plain(path)),
			"change them, or copy the file to where you may read it"}
	case !errors.Is(err, fs.ErrNotExist) && errors.As(err, &of):
		return hinted{fmt.Sprintf("cannot read the %s %s: %s", what, plain(path), of.Err),
			"look at its name and its folder"}
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
