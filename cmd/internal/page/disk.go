package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"unicode/utf8"

	"drawerwright/cmd/internal/outdir"
)

// maxFile is more than any job that can be read, so that a file which is too large
// can still be shortened on the page.
const maxFile = 1 << 20

// file is the job file on disk.
type file struct {
	name   string   // as the person gave it
	folder string   // of the file itself, where a link leads to it
	base   string   // its name there
	root   *os.Root // the folder that the person named: nothing beyond it is opened
	saving sync.Mutex
}

// openFile finds a job file and reads it once, so that what is wrong with it is said
// before a browser is opened.
func openFile(path string) (*file, error) {
	full, err := filepath.EvalSymlinks(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the job: %w", err)
	}
	f := &file{name: path, folder: filepath.Dir(full), base: filepath.Base(full)}
	if _, err := f.read(); err != nil {
		return nil, fmt.Errorf("cannot read the job: %w", err)
	}
	if f.root, err = os.OpenRoot(filepath.Dir(path)); err != nil {
		return nil, fmt.Errorf("cannot read the job's folder: %w", err)
	}
	return f, nil
}

// path is where the file is.
func (f *file) path() string { return filepath.Join(f.folder, f.base) }

// read reads the file as it is now.
func (f *file) read() ([]byte, error) {
	info, err := os.Stat(f.path())
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for
		return nil, fmt.Errorf("%s is no regular file", f.name)
	}
	in, err := os.Open(f.path())
	if err != nil {
		return nil, err
	}
	defer in.Close()
	data, err := io.ReadAll(io.LimitReader(in, maxFile+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > maxFile:
		return nil, fmt.Errorf("%s has more than %d KiB", f.name, maxFile>>10)
	case !utf8.Valid(data): // it would not survive the way through a browser
		return nil, fmt.Errorf("%s is not UTF-8 text; save it in that encoding first", f.name)
	}
	return data, nil
}

// state is a file as a tab knows it. The version is empty where there is no file.
type state struct {
	Version string `json:"version"`
	Text    string `json:"text"`
}

// now is the state of the file on disk.
func (f *file) now() (state, error) {
	data, err := f.read()
	if errors.Is(err, fs.ErrNotExist) {
		return state{}, nil
	}
	if err != nil {
		return state{}, err
	}
	return stateOf(data), nil
}

// stateOf is a text with its version; in a browser lines end as they do there.
func stateOf(data []byte) state {
	sum := sha256.Sum256(data)
	return state{hex.EncodeToString(sum[:16]), strings.ReplaceAll(string(data), "\r\n", "\n")}
}

// save writes a text over the file, if that still is what a tab has seen. Else it
// gives what is there now. Lines end as most of them do in the file.
func (f *file) save(text, seen string) (now state, saved bool, err error) {
	f.saving.Lock()
	defer f.saving.Unlock()
	old, err := f.read()
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return state{}, false, err
	}
	if err == nil {
		now = stateOf(old)
	}
	if now.Version != seen {
		return now, false, nil
	}
	if n := bytes.Count(old, []byte("\n")); 2*bytes.Count(old, []byte("\r\n")) > n {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	done, err := outdir.ReplaceFileIf(f.path(), []byte(text), func() (bool, error) {
		now, err = f.now() // another program may have written meanwhile
		return now.Version == seen, err
	})
	if err != nil || !done {
		return now, false, err
	}
	return stateOf([]byte(text)), true, nil
}

// beside opens a file that the job names, within its folder.
func (f *file) beside(name string) (io.ReadCloser, error) {
	local := filepath.FromSlash(name)
	if !filepath.IsLocal(local) {
		return nil, fmt.Errorf("%s leads out of the job's folder, and the page reads nothing there", name)
	}
	info, err := f.root.Stat(local)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for
		return nil, fmt.Errorf("%s is no regular file", name)
	}
	return f.root.Open(local)
}

// job gives a new tab what it begins with.
func (p *Page) job(w http.ResponseWriter, _ *http.Request) {
	now, err := p.file.now()
	if err != nil {
		refuse(w, http.StatusConflict, err.Error())
		return
	}
	reply(w, http.StatusOK, struct {
		state
		Name string `json:"name"`
		Keys any    `json:"keys"`
	}{now, filepath.Base(p.file.name), keys})
}

// disk tells a tab whether the file is still what it has seen.
func (p *Page) disk(w http.ResponseWriter, r *http.Request) {
	now, err := p.file.now()
	switch {
	case err != nil:
		refuse(w, http.StatusConflict, err.Error())
	case now.Version == r.URL.Query().Get("seen"):
		w.WriteHeader(http.StatusNoContent)
	default:
		reply(w, http.StatusOK, now)
	}
}

// save writes the file. Where it is no more what the tab has seen, the answer is a
// conflict with what is there.
func (p *Page) save(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Version string  `json:"version"`
		Text    *string `json:"text"`
	}
	if !read(w, r, &asked) {
		return
	}
	if asked.Text == nil {
		refuse(w, http.StatusBadRequest, "there is no text to save")
		return
	}
	if len(*asked.Text) > maxFile {
		refuse(w, http.StatusRequestEntityTooLarge, "the job is too large for a file")
		return
	}
	now, saved, err := p.file.save(*asked.Text, asked.Version)
	switch {
	case err != nil:
		refuse(w, http.StatusInternalServerError, "nothing was saved: "+err.Error())
	case !saved:
		reply(w, http.StatusConflict, now)
	default:
		reply(w, http.StatusOK, state{Version: now.Version})
	}
}
