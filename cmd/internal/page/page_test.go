package page

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
)

const host = "127.0.0.1:8123"

// jobText has comments everywhere that an edit could lose them.
const jobText = `# Bench drawers
units: mm   # of bare numbers
stock:
  # measured on Monday
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length}   # the good one
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  # the wide one
  - name: wide   # named
    count: 2
    outside: 460 x 140 x 500   # width x height x depth
    sides: birch
    bottom: hard
  - name: narrow
    outside: 298 x 90 x 500
    sides: birch
    bottom: hard
# the end
`

// open is a page of a job in a folder of its own.
func open(t testing.TB, text string) (*Page, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "bench.yaml")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	p, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { p.Close() })
	return p, path
}

// request is one that the page itself sends; change makes it another.
func request(p *Page, method, path string, body any, change ...func(*http.Request)) *http.Request {
	var in io.Reader
	switch b := body.(type) {
	case nil:
	case string:
		in = strings.NewReader(b)
	default:
		data, err := json.Marshal(b)
		if err != nil {
			panic(err)
		}
		in = bytes.NewReader(data)
	}
	r := httptest.NewRequest(method, "/"+p.token+path, in)
	r.Host = host
	if method != http.MethodGet {
		r.Header.Set("Origin", "http://"+host)
		r.Header.Set("Sec-Fetch-Site", "same-origin")
		r.Header.Set("Content-Type", "application/json")
	}
	for _, f := range change {
		f(r)
	}
	return r
}

func do(p *Page, r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	p.Handler(host).ServeHTTP(w, r)
	return w
}

// answer sends what the page itself sends, and reads what comes back.
func answer[T any](t testing.TB, p *Page, path string, body any, code int) (out T) {
	t.Helper()
	method := http.MethodPost
	if body == nil {
		method = http.MethodGet
	}
	w := do(p, request(p, method, path, body))
	if w.Code != code {
		t.Fatalf("%s: %d, want %d: %.300s", path, w.Code, code, w.Body)
	}
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil {
		t.Fatalf("%s: %v: %.300s", path, err, w.Body)
	}
	return out
}

type asked struct {
	Text string `json:"text"`
	View view   `json:"view"`
}

// What every tab shows of a good job.
func TestLook(t *testing.T) {
	p, _ := open(t, jobText)
	for show, said := range map[string]string{"fit": "clearance", "parts": "wide-side", "setups": "saw", "buy": "birch", "": ""} {
		got := answer[looked](t, p, "/api/look", asked{jobText, view{Show: show, Entry: -1}}, http.StatusOK)
		text, _ := json.Marshal(got.Tables)
		if got.Failed || !got.Sound || got.Picture != nil || len(got.Scene) == 0 || len(got.Drawers) != 2 || got.Said != "2 kinds of drawer, 3 boxes" || !strings.HasPrefix(got.Answer, "May not fit: 2 kinds of drawer may come out loose ") || !strings.Contains(string(text), said) {
			t.Errorf("%q: %+v", show, got)
		}
	}
	flat := answer[looked](t, p, "/api/look", asked{jobText, view{Flat: true}}, http.StatusOK)
	if flat.Picture == nil || len(flat.Picture.Lines) < 4*12 || flat.Scene != nil {
		t.Errorf("without the viewer: %+v", flat.Picture)
	}
	// Half the thickness of the sides, 12.2033 mm in the mean, in the unit of the display.
	for unit, height := range map[string]string{"": "6.10", "mm": "6.10", "in": "0.240"} {
		got := answer[looked](t, p, "/api/look", asked{jobText, view{Show: "setups", Unit: unit, Drawer: "narrow"}}, http.StatusOK)
		if row := got.Tables[0].Rows[0]; row[3].Text != height || got.Drawer != 1 {
			t.Errorf("unit %q: %q, drawer %d", unit, row, got.Drawer)
		}
	}
}

// A drawer of a cabinet is shown alone, or with all that stand in it.
func TestScenes(t *testing.T) {
	p, _ := open(t, bankText)
	for whole, boxes := range map[bool]int{false: 1, true: 12} {
		got := answer[looked](t, p, "/api/look", asked{bankText, view{Drawer: "bank-3", Whole: whole}}, http.StatusOK)
		var scene struct {
			Title  string
			Boxes  []struct{ Name string }
			Groups []struct{ Boxes []int }
		}
		if err := json.Unmarshal(got.Scene, &scene); err != nil || len(scene.Boxes) != boxes || len(scene.Groups[0].Boxes) != boxes || !got.Drawers[2].Bank {
			t.Errorf("whole %v: %v %+v", whole, err, scene)
		}
		if !whole && scene.Boxes[0].Name != "bank-3" {
			t.Errorf("%+v", scene)
		}
	}
}

// A mistake is said with its place and the field that it is about; of a broken text the
// page still shows the lines.
func TestLookAtMistakes(t *testing.T) {
	p, _ := open(t, jobText)
	for _, c := range []struct{ was, is, path string }{
		{"[12.21, 12.16, 12.24]", "twelve", "stock/birch/thickness"},
		{"460 x 140 x 500", "460 x 140", "drawers/0/outside"},
		{"    sides: birch\n", "", "drawers/0/sides"},
		{"width: 6.35", "width: 2", ""},
		{"drawers:", "drawers: [", ""},
		{"drawers:", "slides-file: ../slides.yaml\ndrawers:", "slides-file"},
	} {
		text := strings.Replace(jobText, c.was, c.is, 1)
		got := answer[looked](t, p, "/api/look", asked{text, view{Show: "fit"}}, http.StatusOK)
		found := false
		for _, q := range got.Problems {
			found = found || q.Level == "error" && q.Line > 0 && q.Message != "" && (c.path == "" || strings.Join(q.Path, "/") == c.path)
		}
		if !got.Failed || !found || len(got.Tables) > 0 || got.Outline == nil {
			t.Errorf("%s: %+v", c.is, got.Problems)
		}
	}
}

// thicker gives a stock another thickness.
func thicker(text, thickness, show string) edited {
	typed := step("enter", []string{"stock", "birch", "thickness"}, thickness)
	return edited{Text: text, Step: typed, View: view{Show: show}}
}

// Edits from the form change what they are to change, and no comment is lost.
func TestEdits(t *testing.T) {
	p, path := open(t, jobText)
	type edit = edited
	for _, c := range []struct {
		do, path, value string
		was, is         string
	}{
		{"enter", "stock/birch/thickness", "18", "[12.21, 12.16, 12.24]", "18"},
		{"enter", "drawers/0/outside", "500 x 140 x 500", "460 x 140 x 500", "500 x 140 x 500"},
		{"enter", "drawers/1/joint", "rabbet", "    bottom: hard\n# the end", "    bottom: hard\n    joint: rabbet\n# the end"},
		{"enter", "drawers/0/count", "", "    count: 2\n", ""},
		{"enter", "drawers/0/name", "<img src=x onerror=alert(1)>", "name: wide", `name: "<img src=x onerror=alert(1)>"`},
		{"remove", "drawers/1", "", "  - name: narrow\n    outside: 298 x 90 x 500\n    sides: birch\n    bottom: hard\n", ""},
		{"copy", "drawers/1", "third", "# the end", "  - name: third\n    outside: 298 x 90 x 500\n    sides: birch\n    bottom: hard\n# the end"},
		{"copy", "stock/hard", "oak", "2440 x 1220}\n", "2440 x 1220}\n  oak: {thickness: 5.9, sheet: 2440 x 1220}\n"},
		{"begin", "drawers/0/pull", "", "    bottom: hard\n  - name: narrow", "    bottom: hard\n    pull: {shape: hole}\n  - name: narrow"},
	} {
		want := strings.Replace(jobText, c.was, c.is, 1)
		asked := edit{Text: jobText, Step: step(c.do, strings.Split(c.path, "/"), c.value), View: view{Show: "fit"}}
		got := answer[looked](t, p, "/api/edit", asked, http.StatusOK)
		if got.Text != want {
			t.Errorf("%s %s: \n%s\nwant\n%s", c.do, c.path, got.Text, want)
		}
	}
	// The form stays at a drawer that is there.
	got := answer[looked](t, p, "/api/edit", edit{Text: jobText, Step: step("remove", []string{"drawers", "1"}, ""),
		View: view{Drawer: "narrow", Entry: 1}}, http.StatusOK)
	if got.Entry != 0 || len(got.Outline.Entries[len(got.Outline.Entries)-1].Items[0].Names) != 5 {
		t.Errorf("after the last drawer was removed the form shows %d: %+v", got.Entry, got.Outline)
	}
	for _, c := range []edit{{Text: "a: [", Step: step("enter", []string{"job"}, "x")},
		{Text: jobText, Step: step("enter", []string{"nothing"}, "x")},
		{Text: jobText, Step: job.Step{Do: "explode"}}, {Text: jobText, Step: job.Step{Do: "copy"}},
		{Text: jobText, Step: job.Step{Do: "remove", Path: []string{"drawers", "9"}}}} {
		if w := do(p, request(p, "POST", "/api/edit", c)); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "error") {
			t.Errorf("%+v: %d %s", c, w.Code, w.Body)
		}
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != jobText {
		t.Errorf("an edit has changed the file: %v", err)
	}
}
