package page

import (
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
	"unicode/utf8"

	"drawerwright/cmd/internal/outdir"
)

// maxFile is more than any job that can be read, so that a file which is too large
// can still be shortened on the page.
const maxFile = 2 << 20

// file is a job file on disk, or a job that has none yet, the zero value.
type file struct {
	name string   // as the person gave it
	in   *os.Root // the folder of the file itself, where a link leads to it
	at   string   // its name there
}

// called is how messages call the job.
func (f *file) called() string {
	if f.name == "" {
		return "the job"
	}
	return f.name
}

// base is the file's name in its folder; empty where there is none.
func (f *file) base() string {
	if f.name == "" {
		return ""
	}
	return filepath.Base(f.name)
}

// read reads the file as it is now.
func (f *file) read() ([]byte, error) {
	if f.in == nil {
		return nil, fs.ErrNotExist
	}
	info, err := f.in.Lstat(f.at) // where a link led to it, that was followed at the start
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for, and a link could lead anywhere
		return nil, fmt.Errorf("%s is no regular file", f.name)
	}
	in, err := f.in.Open(f.at) // which leaves the folder by no link that has come since
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

// now is the state of the file on disk; of no file, that of one that is not there.
func (f *file) now() (state, error) {
	if f == nil {
		return state{}, nil
	}
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
// gives what is there now. Lines keep the ends that they have in the file.
func (f *file) save(text, seen string) (now state, saved bool, err error) {
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
	text = endedAs(string(old), text)
	done, err := outdir.ReplaceIn(f.in, f.at, []byte(text), func() (bool, error) {
		now, err = f.now() // another program may have written meanwhile
		return now.Version == seen, err
	})
	if err != nil || !done {
		return now, false, err
	}
	return stateOf([]byte(text)), true, nil
}

// job gives a new tab what it begins with. Where there is no text yet, that is a first job,
// which stands on no disk.
func (p *Page) job(w http.ResponseWriter, r *http.Request) {
	f := fileOf(r.Context())
	now, err := f.now()
	if err != nil {
		refuse(w, http.StatusConflict, err.Error())
		return
	}
	fresh := blank(now.Text)
	if fresh {
		now.Text = firstJob()
	}
	reply(w, http.StatusOK, struct {
		state
		Name  string `json:"name"`
		Fresh bool   `json:"fresh"` // the text is a first job
		Keys  any    `json:"keys"`
	}{now, f.base(), fresh, keys})
}

// disk tells a tab whether the file is still what it has seen.
func (p *Page) disk(w http.ResponseWriter, r *http.Request) {
	now, err := fileOf(r.Context()).now()
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
	f := fileOf(r.Context())
	if f.in == nil {
		refuse(w, http.StatusBadRequest, "the job has no name yet")
		return
	}
	p.folder.busy.RLock()
	defer p.folder.busy.RUnlock()
	p.folder.saving.Lock()
	defer p.folder.saving.Unlock()
	now, saved, err := f.save(*asked.Text, asked.Version)
	switch {
	case err != nil:
		refuse(w, http.StatusInternalServerError, "nothing was saved: "+err.Error())
	case !saved:
		reply(w, http.StatusConflict, now)
	default:
		reply(w, http.StatusOK, state{Version: now.Version})
	}
}
