package page

import (
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
	unsaved bool // the last one was closed with changes in it, which the browser may bring back
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

// mostTabs are more than anybody has open.
const mostTabs = 1000

// opened notes a tab.
func (t *tabs) opened(id string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.open == nil || len(t.open) >= mostTabs {
		t.open = map[string]bool{}
	}
	t.open[id] = true
	t.unsaved = false // the changes are in it, or given up
	if t.ends != nil {
		t.ends.Stop()
		t.ends = nil
	}
}

// closed notes that a tab is open no more.
func (t *tabs) closed(id string, unsaved bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.open, id)
	t.unsaved = t.unsaved || unsaved
	if len(t.open) > 0 || t.unsaved || t.ended == nil || t.ends != nil {
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
	var asked tab
	if read(w, r, &asked) {
		p.tabs.opened(asked.Tab)
		w.WriteHeader(http.StatusNoContent)
	}
}

func (p *Page) leave(w http.ResponseWriter, r *http.Request) {
	var asked tab
	if read(w, r, &asked) {
		p.tabs.closed(asked.Tab, asked.Unsaved)
		w.WriteHeader(http.StatusNoContent)
	}
}
