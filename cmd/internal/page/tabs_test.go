package page

import (
	"net/http"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

// The program ends a minute after the last tab was closed with nothing unsaved, and not before a
// tab was open.
func TestTabs(t *testing.T) {
	const minute = time.Minute
	type step struct {
		wait            time.Duration
		opened, closed  string // tabs, with their files before a colon
		unsaved, lasted bool   // lasted: the page is still served
	}
	for name, steps := range map[string][]step{
		"never opened": {{wait: time.Hour, lasted: true}},
		"closed": {{opened: "a", lasted: true}, {closed: "a", lasted: true}, {wait: minute - 1, lasted: true},
			{wait: 2}},
		"hidden for a day": {{opened: "a", lasted: true}, {wait: 24 * time.Hour, lasted: true}},
		"loaded again":     {{opened: "a"}, {closed: "a"}, {opened: "b"}, {wait: time.Hour, lasted: true}},
		"loaded again, late word": {{opened: "a"}, {opened: "b"}, {closed: "a"},
			{wait: time.Hour, lasted: true}},
		"back again": {{opened: "a"}, {closed: "a"}, {wait: minute - 1}, {opened: "a"},
			{wait: time.Hour, lasted: true}},
		"one of two": {{opened: "a"}, {opened: "b"}, {closed: "b"}, {wait: time.Hour, lasted: true}, {closed: "a"},
			{wait: minute + 1}},
		"told twice": {{opened: "a"}, {closed: "a"}, {wait: minute / 2}, {closed: "a"}, {wait: minute/2 + 1}},
		"unsaved":    {{opened: "a"}, {closed: "a", unsaved: true}, {wait: 24 * time.Hour, lasted: true}},
		"unsaved, then saved": {{opened: "a"}, {closed: "a", unsaved: true}, {wait: time.Hour}, {opened: "b"},
			{closed: "b"}, {wait: minute + 1}},
		"one unsaved of two": {{opened: "a"}, {opened: "b"}, {closed: "a", unsaved: true}, {closed: "b"},
			{wait: time.Hour, lasted: true}},
		"unsaved, and another that is seen again": {{opened: "a"}, {opened: "b"}, {closed: "a", unsaved: true},
			{opened: "b"}, {closed: "b"}, {wait: time.Hour, lasted: true}},
		"unsaved, and one of another file": {{opened: "x:a"}, {closed: "x:a", unsaved: true}, {opened: "y:b"},
			{closed: "y:b"}, {wait: time.Hour, lasted: true}},
		"unsaved of two files, one saved": {{opened: "x:a"}, {closed: "x:a", unsaved: true}, {opened: "y:b"},
			{closed: "y:b", unsaved: true}, {opened: "x:c"}, {closed: "x:c"}, {wait: time.Hour, lasted: true},
			{opened: "y:d"}, {closed: "y:d"}, {wait: minute + 1}},
		"ended, and back": {{opened: "a"}, {closed: "a"}, {wait: minute + 1}, {opened: "a"}, {closed: "a"},
			{wait: minute + 1}},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				p := &Page{}
				ended := p.Ended(minute)
				lasted := true
				for _, s := range steps {
					if s.opened != "" {
						file, id := tabOf(s.opened)
						p.tabs.opened(id, file)
					}
					if s.closed != "" {
						file, id := tabOf(s.closed)
						p.tabs.closed(id, file, s.unsaved)
					}
					time.Sleep(s.wait)
					synctest.Wait()
					select {
					case <-ended:
						lasted = false
					default:
						lasted = true
					}
					if s.lasted && !lasted {
						t.Fatalf("ended after %+v", s)
					}
				}
				if last := steps[len(steps)-1]; lasted != last.lasted {
					t.Errorf("at last: served %t", lasted)
				}
			})
		})
	}
	kept := &Page{} // nobody asks for its end
	kept.tabs.opened("a", "")
	kept.tabs.closed("a", "", false)
	if kept.tabs.ends != nil {
		t.Error("a page that is kept has a time")
	}
}

// tabOf is a tab of a step, with its file.
func tabOf(said string) (file, id string) {
	if file, id, found := strings.Cut(said, ":"); found {
		return file, id
	}
	return "", said
}

// A tab tells of the file that it is about; what it is known by is short.
func TestTabsOfFiles(t *testing.T) {
	p, _ := openIn(t, map[string]string{"a.yaml": jobText, "b.yaml": jobText})
	say := func(path, file, id string, unsaved bool, code int) {
		t.Helper()
		if w := do(p, request(p, "POST", path, tab{id, unsaved}, about(file))); w.Code != code {
			t.Errorf("%d %s", w.Code, w.Body)
		}
	}
	say("/api/here", "a.yaml", "1", false, http.StatusNoContent)
	say("/api/leave", "a.yaml", "1", true, http.StatusNoContent)
	say("/api/here", "b.yaml", "2", false, http.StatusNoContent)
	if len(p.tabs.unsaved) != 1 {
		t.Errorf("a tab of another file: unsaved %v", p.tabs.unsaved)
	}
	say("/api/here", "a.yaml", "3", false, http.StatusNoContent)
	if len(p.tabs.unsaved) != 0 {
		t.Errorf("a tab of the file: unsaved %v", p.tabs.unsaved)
	}
	say("/api/here", "a.yaml", strings.Repeat("x", maxTab+1), false, http.StatusBadRequest)
	say("/api/leave", "a.yaml", strings.Repeat("x", maxTab+1), true, http.StatusBadRequest)
	if len(p.tabs.open) != 2 || len(p.tabs.unsaved) != 0 {
		t.Errorf("a long name: %v %v", p.tabs.open, p.tabs.unsaved)
	}
}
