package page

import (
	"archive/zip"
	"bytes"
	"compress/zlib"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/sheets"
	"runtime"
	"sync"
)

// took is an answer with something to take along: what its lines said, and the bytes after them.
type took struct {
	Name, Kind, Error string
	Done, Of          int
	data              []byte
}

func taken(t *testing.T, p *Page, text, what string) (got took) {
	t.Helper()
	w := do(p, request(p, "POST", "/api/take", map[string]string{"text": text, "what": what}))
	if w.Code != http.StatusOK || w.Header().Get("Content-Type") != "application/octet-stream" {
		t.Fatalf("%s: %d %s", what, w.Code, w.Body)
	}
	for rest := w.Body.Bytes(); got.Name == "" && got.Error == ""; {
		line, after, whole := bytes.Cut(rest, []byte("\n"))
		if err := json.Unmarshal(line, &got); err != nil || !whole {
			t.Fatalf("%s: %v: %q", what, err, line)
		}
		rest, got.data = after, after
	}
	return got
}

// wanted is what a build of a text writes.
func wanted(t *testing.T, p *Page, text string) (dir string) {
	t.Helper()
	l := load.Read(p.folder.given.name, strings.NewReader(text), p.folder.beside)
	l.Lay(t.Context(), nil, sheets.Search{})
	dir = filepath.Join(t.TempDir(), "out")
	stage, err := outdir.Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := files.Write(t.Context(), l.Batch, stage, files.Options{Warnings: l.Warnings, Plan: l.Plan}); err != nil {
		t.Fatal(err)
	}
	if err := stage.Commit(); err != nil {
		t.Fatal(err)
	}
	return dir
}

// TestTake: what is taken along has the bytes of a build's files, tells how far it has come, and
// leaves nothing behind in the folder for such files.
func TestTake(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	p, _ := open(t, jobText)
	want := wanted(t, p, jobText)
	for what, file := range map[string]string{"packet": "packet.pdf", "shop": "shop.html"} {
		got := taken(t, p, jobText, what)
		data, err := os.ReadFile(filepath.Join(want, file))
		if err != nil || !bytes.Equal(got.data, data) || got.Name != "bench-"+file {
			t.Errorf("%s, %s: %d bytes; a build has %d: %v", what, got.Name, len(got.data), len(data), err)
		}
		if got.Done != 2 || got.Of != 2 {
			t.Errorf("%s: %d of %d drawers", what, got.Done, got.Of)
		}
	}
	all := taken(t, p, jobText, "all")
	z, err := zip.NewReader(bytes.NewReader(all.data), int64(len(all.data)))
	if err != nil || all.Name != "bench.zip" || all.Kind != "application/zip" {
		t.Fatal(all.Name, err)
	}
	var names, there []string
	for _, f := range z.File {
		in, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(in)
		name := strings.TrimPrefix(f.Name, "bench/")
		names = append(names, name)
		built, missing := os.ReadFile(filepath.Join(want, name))
		if err != nil || missing != nil || !bytes.Equal(data, built) {
			t.Errorf("%s is not what a build writes: %v, %v", f.Name, err, missing)
		}
	}
	err = filepath.WalkDir(want, func(path string, d os.DirEntry, err error) error {
		if name, _ := filepath.Rel(want, path); err == nil && !d.IsDir() {
			there = append(there, filepath.ToSlash(name))
		}
		return err
	})
	if slices.Sort(there); err != nil || !slices.Equal(names, there) {
		t.Errorf("in the zip %v; in a build %v, %v", names, there, err)
	}
	if again := taken(t, p, jobText, "all"); !bytes.Equal(again.data, all.data) {
		t.Error("a second download has other bytes")
	}
	if left, err := os.ReadDir(os.TempDir()); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

var streams = regexp.MustCompile(`(?s)stream\n(.*?)\nendstream`)

// drawn are the contents of a document's pages.
func drawn(t *testing.T, data []byte) (pages []string) {
	t.Helper()
	for _, m := range streams.FindAllSubmatch(data, -1) {
		z, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue
		}
		content, err := io.ReadAll(z)
		shared := bytes.HasPrefix(content, []byte("0 G 0 g ")) // by pages: of how many each is one
		if err == nil && bytes.Contains(content, []byte(" Tj ET")) && !shared {
			pages = append(pages, string(content))
		}
	}
	return pages
}

// TestTakeAlone: labels and sheets alone are whole documents; each piece of the job has a label, and
// each sheet its page.
func TestTakeAlone(t *testing.T) {
	p, _ := open(t, jobText)
	for what, pages := range map[string]int{"labels": 1, "sheets": 2} {
		got := taken(t, p, jobText, what)
		if got.Name != "bench-"+what+".pdf" ||
			got.Kind != "application/pdf" || !bytes.HasPrefix(got.data, []byte("%PDF-")) {
			t.Fatalf("%s: %+v", what, got)
		}
		if list := drawn(t, got.data); len(list) < pages {
			t.Errorf("%s has %d pages", what, len(list))
		}
	}
	labels := drawn(t, taken(t, p, jobText, "labels").data)
	packet := drawn(t, taken(t, p, jobText, "packet").data)
	if shapes(labels[0]) != shapes(packet[len(packet)-len(labels)]) {
		t.Error("the labels alone are drawn otherwise than those of the packet")
	}
}

// shapes are the contents of a page of labels without its letters, which have numbers of their own in each
// document, and without the two texts at its foot, which say which page it is.
func shapes(page string) string {
	for range 2 {
		page = page[:strings.LastIndex(page, "BT ")]
	}
	return regexp.MustCompile(`\([^)]*\) Tj|/F\d+`).ReplaceAllString(page, "")
}

// TestNothingToTake: what a job has none of, and what there is not, is refused with what to change;
// a job with mistakes, or with drawings that make no box, gives nothing.
func TestNothingToTake(t *testing.T) {
	p, _ := open(t, jobText)
	bare := strings.NewReplacer(", sheet: 1525 x 1525", "", ", sheet: 2440 x 1220", "").Replace(jobText)
	for _, c := range []struct{ text, what, said string }{
		{"paper: {labels: none}\n" + jobText, "labels", "labels: grid"},
		{bare, "sheets", "`sheet`"},
		{"units: mm\n", "all", "mistakes"},
		{"units: mm\n", "shop", "mistakes"},
	} {
		w := do(p, request(p, "POST", "/api/take", map[string]string{"text": c.text, "what": c.what}))
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), c.said) {
			t.Errorf("%s: %d %s", c.what, w.Code, w.Body)
		}
	}
	unknown := map[string]string{"text": jobText, "what": "../x"}
	if w := do(p, request(p, "POST", "/api/take", unknown)); w.Code != http.StatusBadRequest {
		t.Errorf("an unknown thing: %d %s", w.Code, w.Body)
	}
}

// TestTakeCanceled: who gives up gets nothing, holds nobody up, and leaves no files.
func TestTakeCanceled(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	p, _ := open(t, bankText)
	gone, stop := context.WithCancel(t.Context())
	go func() {
		for begun, _ := filepath.Glob(filepath.Join(os.TempDir(), "*", "*")); len(begun) == 0; {
			time.Sleep(time.Millisecond)
			begun, _ = filepath.Glob(filepath.Join(os.TempDir(), "*", "*"))
		}
		stop()
	}()
	all := map[string]string{"text": bankText, "what": "all"}
	w := do(p, request(p, "POST", "/api/take", all).WithContext(gone))
	if !strings.HasSuffix(w.Body.String(), `{"error":"stopped"}`+"\n") {
		t.Errorf("given up: %.300s", w.Body)
	}
	if left, err := os.ReadDir(os.TempDir()); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
	if got := taken(t, p, bankText, "shop"); got.Name != "bench-shop.html" {
		t.Errorf("after that: %+v", got)
	}
}

// TestTakeWithoutRoom: where nothing can be written the line with the error says so.
func TestTakeWithoutRoom(t *testing.T) {
	t.Setenv("TMPDIR", filepath.Join(t.TempDir(), "none"))
	p, _ := open(t, jobText)
	if got := taken(t, p, jobText, "packet"); got.Error == "" || got.Name != "" {
		t.Errorf("%+v", got)
	}
}

// slow is a browser that tells, before it takes bytes, what it has been given so far.
type slow struct {
	*httptest.ResponseRecorder
	before    func(said string)
	deadlines int
}

func (s *slow) Write(data []byte) (int, error) {
	s.before(s.Body.String())
	return s.ResponseRecorder.Write(data)
}

func (s *slow) SetWriteDeadline(time.Time) error {
	s.deadlines++
	return nil
}

// TestTakeIsReadSlowly: while a browser takes its time with what it was given, another build goes on; and
// it has not all the time.
func TestTakeIsReadSlowly(t *testing.T) {
	p, _ := open(t, jobText)
	w := &slow{ResponseRecorder: httptest.NewRecorder()}
	lines, taken := 0, false
	w.before = func(said string) {
		lines++
		if w.deadlines < lines {
			t.Errorf("%d pieces have %d ends of time", lines, w.deadlines)
		}
		if !strings.Contains(said, `"name"`) {
			return
		}
		taken = true
		select {
		case p.work.build <- struct{}{}:
			<-p.work.build
		default:
			t.Fatal("no other build can begin")
		}
		lines = 0 // what follows has one end of time
	}
	p.Handler(host).ServeHTTP(w, request(p, "POST", "/api/take", map[string]string{"text": jobText, "what": "all"}))
	if !taken {
		t.Errorf("nothing is given: %.200s", w.Body)
	}
}

// TestCloseClears: a page that is closed in the midst of a build waits for it to be cleared away.
func TestCloseClears(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	p, _ := open(t, jobText)
	ctx, stop := context.WithCancel(context.Background())
	w := &slow{ResponseRecorder: httptest.NewRecorder()}
	closed := make(chan []os.DirEntry, 1)
	var begin sync.Once
	w.before = func(string) {
		begin.Do(func() {
			stop()
			go func() {
				p.Close()
				left, _ := os.ReadDir(os.TempDir())
				closed <- left
			}()
			for p.folder.busy.TryRLock() { // until it waits, or has not
				p.folder.busy.RUnlock()
				if len(closed) > 0 {
					return
				}
				runtime.Gosched()
			}
		})
	}
	r := request(p, "POST", "/api/take", map[string]string{"text": jobText, "what": "all"}).WithContext(ctx)
	p.Handler(host).ServeHTTP(w, r)
	if stop(); !strings.Contains(w.Body.String(), "stopped") {
		t.Errorf("it says %.200s", w.Body)
	}
	if left := <-closed; len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
