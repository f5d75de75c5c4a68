package page

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
)

// smallText is a job that is worked out at once.
const smallText = "units: mm\nstock:\n  birch: {thickness: 12, sheet: 1525 x 1525}\ncutter: {kind: saw, width: 6}\n" +
	"drawers:\n  - {name: wide, count: 2, outside: 460 x 140 x 500, sides: birch, bottom: birch}\n"

// sent are the bodies of requests of every kind, by their addresses.
var sent = []struct{ at, body string }{
	{"/api/look", `{"text": TEXT, "view": {"drawer": "wide", "entry": 1, "unit": "in", "show": "fit"}}`},
	{"/api/look", `{"text": TEXT, "view": {"show": "parts", "flat": true, "entry": -1}}`},
	{"/api/look", `{"text": TEXT, "view": {"show": "setups", "whole": true}}`},
	{"/api/look", `{"text": TEXT, "view": {"show": "buy", "soon": true}}`},
	{"/api/begin", `{"units": "mm", "measured": "opening", "size": ["564", "150", "545"], "sides": "12.1, 12.2", "bottom": "5.8", "slide": "side-mount", "cutter": "6.35", "count": "1", "length": "500", "rows": "2"}`},
	{"/api/slide", `{"units": "in", "measured": "opening", "size": ["22", "6", "21"], "sides": "1/2", "bottom": "1/4", "slide": "undermount", "cutter": "1/4", "count": "1"}`},
	{"/api/name", `{"name": "bench 2.yaml"}`},
	{"/api/here", `{"tab": "one"}`},
	{"/api/leave", `{"tab": "one", "unsaved": true}`},
	{"/api/edit", `{"text": TEXT, "do": "enter", "path": ["drawers", "0", "count"], "value": "3", "then": [{"do": "remove", "path": ["drawers", "0", "name"]}], "view": {"entry": 0}}`},
	{"/api/edit", `{"text": TEXT, "do": "rename", "path": ["stock", "birch"], "value": "oak", "then": [{"do": "copy", "path": ["drawers", "0"]}, {"do": "move", "path": ["drawers", "1"], "value": "0"}]}`},
	{"/api/edit", `{"text": TEXT, "do": "convert", "path": [], "value": "in", "then": [{"do": "begin", "path": ["openings"], "value": "x"}, {"do": "size", "path": ["drawers", "0"], "value": "opening"}]}`},
	{"/api/edit", `{"text": TEXT, "do": "write", "path": ["drawers", "0", "dividers"], "value": "[{direction: along, at: 9}]", "then": [{"do": "respell", "path": ["stock"], "value": "stocks"}, {"do": "make", "path": ["drawers", "0", "slide"]}]}`},
	{"/api/sheets", `{"text": TEXT, "unit": "in"}`},
	{"/api/first", `{"text": TEXT, "drawer": "wide", "readings": {"width front": "460", "height": "5 1/2 in"}, "log": false}`},
	{"/api/save", `{"version": VERSION, "text": TEXT}`},
	{"/api/take", `{"text": TEXT, "what": "labels"}`},
}

// TestSpoiledRequests: a spoiled request is answered, or refused with a reason; and only the job's own file is written.
func TestSpoiledRequests(t *testing.T) {
	p, path := open(t, smallText)
	version := stateOf([]byte(smallText)).Version
	filled := strings.NewReplacer("TEXT", quoted(t, smallText), "VERSION", quoted(t, version))
	var list []mutate.Sample
	for _, s := range sent {
		var body bytes.Buffer
		if err := json.Indent(&body, []byte(filled.Replace(s.body)), "", "  "); err != nil {
			t.Fatal(err)
		}
		list = append(list, mutate.Sample{Name: s.at, Text: body.String()})
	}
	codes, saved := map[int]int{}, 0
	mutate.JSON.Each(t, list, func(spoiled mutate.Sample) error {
		w := do(p, request(p, http.MethodPost, spoiled.Name, spoiled.Text))
		codes[w.Code]++
		if left, err := os.ReadFile(path); err != nil || string(left) != smallText {
			var asked state
			err := json.Unmarshal([]byte(spoiled.Text), &asked)
			if err != nil || w.Code != 200 || spoiled.Name != "/api/save" || string(left) != asked.Text {
				return fmt.Errorf("%d, and the file has become %q", w.Code, left)
			}
			saved++
			if err := os.WriteFile(path, []byte(smallText), 0o644); err != nil {
				return err
			}
		}
		return soundAnswer(w.Code, w.Header(), w.Body.String(), path)
	})
	t.Logf("%d of them were saved", saved)
	t.Log(codes)
}

// TestSpoiledAddresses: what an address asks for is a job of the folder, or it is refused.
func TestSpoiledAddresses(t *testing.T) {
	p, path := open(t, smallText)
	codes := map[int]int{}
	list := []mutate.Sample{{Name: "/api/job?file=", Text: "bench.yaml"}, {Name: "/api/job?file=", Text: "new one.yml"}, {Name: "/api/disk?seen=", Text: "0123456789abcdef"}, {Name: "/api/disk?file=", Text: "bench.yaml"},
		{Name: "/", Text: "main.js"}, {Name: "/api/", Text: "start"}}
	mutate.Lines.Each(t, list, func(spoiled mutate.Sample) error {
		w := do(p, request(p, http.MethodGet, spoiled.Name+url.QueryEscape(spoiled.Text), nil))
		if codes[w.Code]++; strings.Contains(w.Body.String(), "root:") {
			return fmt.Errorf("it tells what it must not: %.200s", w.Body)
		}
		return soundAnswer(w.Code, w.Header(), w.Body.String(), path)
	})
	t.Log(codes)
}

// TestSpoiledJobFiles: whatever stands in the job's file and beside it, the page has answers, and leaves it as it is.
func TestSpoiledJobFiles(t *testing.T) {
	p, path := open(t, smallText)
	codes, number := map[int]int{}, 0
	mutate.YAML.EachInUse(t, mutate.Samples(t, "../../../samples/*.yaml"), func(spoiled mutate.Sample) error {
		if err := os.WriteFile(path, []byte(spoiled.Text), 0o644); err != nil {
			return err
		}
		requests := []*http.Request{request(p, http.MethodGet, "/api/job", nil)}
		if number%2 == 0 { // the list of jobs reads it as well
			requests[0] = request(p, http.MethodGet, "/api/start", nil)
		}
		if number++; number%some == 0 {
			v := view{Show: views[number/some%len(views)], Entry: number/some%4 - 1, Whole: number%3 == 0, Flat: number%7 == 0}
			requests = append(requests, request(p, http.MethodPost, "/api/look", asked{spoiled.Text, v}))
		}
		for _, r := range requests {
			w := do(p, r)
			codes[w.Code]++
			if err := soundAnswer(w.Code, w.Header(), w.Body.String(), path); err != nil {
				return err
			}
		}
		if left, err := os.ReadFile(path); err != nil || string(left) != spoiled.Text {
			return fmt.Errorf("the file has become %q: %w", left, err)
		}
		return nil
	})
	t.Log(codes)
}

// some is how many job files there are for one that is looked at, which takes as long as a hundred of the others.
const some = 50

// views are what a tab shows.
var views = []string{"", "fit", "parts", "setups", "buy"}

func quoted(t *testing.T, text string) string {
	t.Helper()
	data, err := json.Marshal(text)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// soundAnswer reports what is wrong with an answer to whatever was asked, and with the folder of a job after it.
func soundAnswer(code int, header http.Header, body, path string) error {
	if code < 200 || code >= 500 || header.Get("Content-Security-Policy") != policy {
		return fmt.Errorf("the answer is %d: %.300s", code, body)
	}
	if code >= 400 && code != http.StatusConflict && strings.HasPrefix(header.Get("Content-Type"), "application/json") {
		var refused struct{ Error string }
		if json.Unmarshal([]byte(body), &refused) != nil || refused.Error == "" {
			return fmt.Errorf("%d without a reason: %.300s", code, body)
		}
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err == nil && (len(entries) != 1 || entries[0].Name() != filepath.Base(path)) {
		err = fmt.Errorf("the folder has %v", entries)
	}
	return err
}
