package page

import (
	"bytes"
	"io"
	"maps"
	"net/http"
	"slices"
	"sync"
)

// besideFile is a file that a job names, as it was read; its version is empty where it could not be.
type besideFile struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// maxBeside is the most of a file beside a job that is read: what the reader of tables takes, and a little more.
const maxBeside = 65 << 20

// noted opens files that a job names, and notes how each was read.
type noted struct {
	in   *folder
	lock sync.Mutex
	seen map[string]string // versions by name
}

func (n *noted) open(name string) (io.ReadCloser, error) {
	data, err := n.in.readBeside(name)
	n.lock.Lock()
	defer n.lock.Unlock()
	if n.seen[name] = ""; err != nil {
		return nil, err
	}
	n.seen[name] = stateOf(data).Version
	return io.NopCloser(bytes.NewReader(data)), nil
}

// files are those that were opened.
func (n *noted) files() (list []besideFile) {
	n.lock.Lock()
	defer n.lock.Unlock()
	for _, name := range slices.Sorted(maps.Keys(n.seen)) {
		list = append(list, besideFile{name, n.seen[name]})
	}
	return list
}

// readBeside reads a file that a job names.
func (d *folder) readBeside(name string) ([]byte, error) {
	in, err := d.beside(name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return io.ReadAll(io.LimitReader(in, maxBeside))
}

// maxAsked is about how many files beside a job a tab asks at once.
const maxAsked = 16

// changed tells a tab whether one of the files that its job names is no more what it was.
func (p *Page) changed(w http.ResponseWriter, r *http.Request) {
	names, seen := r.URL.Query()["name"], r.URL.Query()["seen"]
	if len(names) != len(seen) || len(names) > maxAsked {
		refuse(w, http.StatusBadRequest, "the request cannot be read")
		return
	}
	for i, name := range names {
		version := ""
		if data, err := p.folder.readBeside(name); err == nil {
			version = stateOf(data).Version
		}
		if version != seen[i] {
			reply(w, http.StatusOK, besideFile{name, version})
			return
		}
	}
	w.WriteHeader(http.StatusNoContent)
}
