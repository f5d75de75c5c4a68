package page

import (
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
		opened, closed  string
		unsaved, lasted bool // lasted: the page is still served
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
						p.tabs.opened(s.opened)
					}
					if s.closed != "" {
						p.tabs.closed(s.closed, s.unsaved)
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
	kept.tabs.opened("a")
	kept.tabs.closed("a", false)
	if kept.tabs.ends != nil {
		t.Error("a page that is kept has a time")
	}
}
