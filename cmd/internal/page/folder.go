package page

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
)

// folder is where a page works: that of the job that a person named, else the one in which
// the program was started.
type folder struct {
	path   string   // links followed
	root   *os.Root // nothing beyond it is opened
	given  *file    // the job that a person named; nil where none was
	saving sync.Mutex
	busy   sync.RWMutex // read-held by what writes anything, held by close
}

// openFolder finds the job of a path and its folder; without a path, the folder in which the
// program was started. A job that is there is read once, so that what is wrong with it is said
// before a browser is opened; one that is not there yet is written by the first save.
func openFolder(path string) (*folder, error) {
	var err error
	d := &folder{}
	in := filepath.Dir(path) // the current one of no path
	d.path, err = filepath.EvalSymlinks(in)
	if err == nil {
		d.path, err = filepath.Abs(d.path)
	}
	if err == nil {
		d.root, err = os.OpenRoot(in)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read the job's folder: %w", err)
	}
	if path != "" {
		d.given, err = fileAt(path)
	}
	if err == nil {
		_, err = d.given.now()
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("cannot read the job: %w", err), d.close())
	}
	return d, nil
}

// close closes the folder, and that of the job, once saves have ended and builds are cleared away.
func (d *folder) close() error {
	d.busy.Lock()
	defer d.busy.Unlock()
	err := d.root.Close()
	if d.given != nil {
		err = errors.Join(err, d.given.in.Close())
	}
	return err
}

// fileAt is the file of a path that a person gave. A link leads to it.
func fileAt(path string) (*file, error) {
	full, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		if fault := fileFault(filepath.Base(path)); fault != "" {
			return nil, fmt.Errorf("%s: %w, and this name cannot be given to a new one: it %s", path, err, fault)
		}
		full, err = path, nil
	}
	if err != nil {
		return nil, err
	}
	in, err := os.OpenRoot(filepath.Dir(full))
	return &file{path, in, filepath.Base(full)}, err
}

// file is the job of a name in the folder; the empty name is that of a job without a file.
func (d *folder) file(name string) (*file, error) {
	switch {
	case name == "":
		return &file{}, nil
	case d.given != nil && name == filepath.Base(d.given.name):
		return d.given, nil
	}
	if fault := fileFault(name); fault != "" {
		return nil, fmt.Errorf("the name %q %s", name, fault)
	}
	return &file{name, d.root, name}, nil
}

// maxFileName is the most bytes of a name; file systems take 255, and a new file has a longer
// one for a moment.
const maxFileName = 120

// fileFault says why a job file cannot have a name, on any of the systems that the folder may
// be carried to; empty where it can.
func fileFault(name string) string {
	first, _, _ := strings.Cut(name, ".")
	extension := strings.ToLower(filepath.Ext(name))
	begins, _ := utf8.DecodeRuneInString(name)
	switch at := strings.IndexFunc(name, notInNames); {
	case !unicode.IsLetter(begins) && !unicode.IsDigit(begins):
		return "begins with no letter or digit"
	case at >= 0:
		return fmt.Sprintf("holds %q, which the name of a file cannot", []rune(name[at:])[0])
	case len(name) > maxFileName:
		return fmt.Sprintf("is longer than %d letters", maxFileName)
	case extension != ".yaml" && extension != ".yml":
		return "does not end with .yaml"
	case job.IsDevice(first):
		return "is kept by Windows for a device"
	}
	return ""
}

func notInNames(c rune) bool {
	return words.Unprintable(c) || strings.ContainsRune(`/\:*?"<>|`, c)
}

// beside opens a file that a job names, within the folder.
func (d *folder) beside(name string) (io.ReadCloser, error) {
	local := filepath.FromSlash(name)
	if !filepath.IsLocal(local) {
		return nil, fmt.Errorf("%s leads out of the job's folder, and the page reads nothing there", name)
	}
	info, err := d.root.Stat(local)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for
		return nil, fmt.Errorf("%s is no regular file", name)
	}
	return d.root.Open(local)
}

// fileKey is the key of a request's file in its context.
type fileKey struct{}

// named finds the file that a request is about: that of its parameter file, else the job that
// a person named when the program was started.
func (p *Page) named(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		f, err := p.folder.given, error(nil)
		if asked := r.URL.Query(); f == nil || asked.Has("file") {
			f, err = p.folder.file(asked.Get("file"))
		}
		if err != nil {
			refuse(w, http.StatusBadRequest, err.Error())
			return
		}
		next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), fileKey{}, f)))
	})
}

// fileOf is the file that a request is about.
func fileOf(ctx context.Context) *file {
	f, ok := ctx.Value(fileKey{}).(*file)
	if !ok {
		return &file{}
	}
	return f
}
