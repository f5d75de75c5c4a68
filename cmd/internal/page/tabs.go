package page

import (
	"fmt"
	"net/http"
	"sync"
	"time"
)

// tabs are those of browsers in which the page is open. A tab says itself that it is there and
// that it is closed: what a hidden tab asks for, or one of a computer that sleeps, comes late or
// not at all, and says nothing.
type tabs struct {
	mu      sync.Mutex
	open    map[string]bool
	unsaved map[string]bool // files of tabs that were closed with changes, which the browser may bring back
	wait    time.Duration
	ends    *time.Timer
	ended   chan struct{}
}

// Ended is closed when no tab has been open for a while, after one was, and the last was closed
// with nothing unsaved. It is asked for once, before the page is served; who never asks is
// never told.
func (p *Page) Ended(wait time.Duration) <-chan struct{} {
	p.tabs.mu.Lock()
	defer p.tabs.mu.Unlock()
	p.tabs.wait, p.tabs.ended = wait, make(chan struct{})
	return p.tabs.ended
}

// mostTabs are more than anybody has open; maxTab is the most bytes of what one is known by.
const (
	mostTabs = 1000
	maxTab   = 64
)

// opened notes a tab of a file. It may be noted already: a tab says again that it is there.
func (t *tabs) opened(id, file string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.open == nil || len(t.open) >= mostTabs {
		t.open = map[string]bool{}
	}
	if !t.open[id] {
		delete(t.unsaved, file) // the changes are in it, or given up
	}
	t.open[id] = true
	if t.ends != nil {
		t.ends.Stop()
		t.ends = nil
	}
}

// closed notes that a tab of a file is open no more.
func (t *tabs) closed(id, file string, unsaved bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.open, id)
	if t.unsaved == nil {
		t.unsaved = map[string]bool{}
	}
	if unsaved && len(t.unsaved) < mostTabs {
		t.unsaved[file] = true
	}
	if len(t.open) > 0 || len(t.unsaved) > 0 || t.ended == nil || t.ends != nil {
		return
	}
	var timer *time.Timer
	timer = time.AfterFunc(t.wait, func() {
		t.mu.Lock()
		defer t.mu.Unlock()
		if t.ends == timer { // no tab has come meanwhile
			close(t.ended)
			t.ended = nil
		}
	})
	t.ends = timer
}

// tab is what a tab says of itself.
type tab struct {
	Tab     string `json:"tab"`
	Unsaved bool   `json:"unsaved"`
}

func (p *Page) here(w http.ResponseWriter, r *http.Request) {
	if asked, ok := readTab(w, r); ok {
		p.tabs.opened(asked.Tab, fileOf(r.Context()).name)
		w.WriteHeader(http.StatusNoContent)
	}
}

func (p *Page) leave(w http.ResponseWriter, r *http.Request) {
	if asked, ok := readTab(w, r); ok {
		p.tabs.closed(asked.Tab, fileOf(r.Context()).name, asked.Unsaved)
		w.WriteHeader(http.StatusNoContent)
	}
}

// readTab reads what a tab says of itself. Where it cannot, it has answered.
func readTab(w http.ResponseWriter, r *http.Request) (asked tab, ok bool) {
	if !read(w, r, &asked) {
		return asked, false
	}
	if len(asked.Tab) > maxTab {
		refuse(w, http.StatusBadRequest, fmt.Sprintf("a tab is known by %d bytes at most", maxTab))
		return asked, false
	}
	return asked, true
}
