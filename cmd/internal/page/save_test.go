package page

import (
	"context"
	"encoding/json"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"

	"drawerwright/cmd/internal/outdir"
	"drawerwright/geom/geomtest"
)

// alone reports whether the folder of a job holds it and nothing else.
func alone(t *testing.T, path string) {
	t.Helper()
	list, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(list) != 1 || list[0].Name() != filepath.Base(path) {
		t.Errorf("beside the job are %v, %v", list, err)
	}
}

// Of two tabs the later save gets a message, and so does one after another program's edit.
func TestConflicts(t *testing.T) {
	p, path := open(t, jobText)
	first := answer[state](t, p, "/api/job", nil, http.StatusOK)
	if first.Text != jobText {
		t.Fatal(first)
	}
	if w := do(p, request(p, "GET", "/api/disk?seen="+first.Version, nil)); w.Code != http.StatusNoContent {
		t.Errorf("an unchanged file: %d %s", w.Code, w.Body)
	}
	one, two := jobText+"# one\n", jobText+"# two\n"
	saved := answer[state](t, p, "/api/save", state{first.Version, one}, http.StatusOK)
	told := answer[state](t, p, "/api/save", state{first.Version, two}, http.StatusConflict)
	if told.Text != one || told.Version != saved.Version {
		t.Errorf("the later save gets %+v", told)
	}
	if data, _ := os.ReadFile(path); string(data) != one {
		t.Errorf("the later save is on disk:\n%s", data)
	}
	if got := answer[state](t, p, "/api/disk?seen="+first.Version, nil, http.StatusOK); got != told {
		t.Errorf("the other tab gets %+v", got)
	}
	answer[state](t, p, "/api/save", state{told.Version, two}, http.StatusOK) // it has seen what it replaces
	if err := os.WriteFile(path, []byte("# by hand\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := answer[state](t, p, "/api/save", state{told.Version, one}, http.StatusConflict); got.Text != "# by hand\n" {
		t.Errorf("after another program's edit: %+v", got)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if got := answer[state](t, p, "/api/save", state{told.Version, one}, http.StatusConflict); got != (state{}) {
		t.Errorf("after the file has gone: %+v", got)
	}
	answer[state](t, p, "/api/save", state{"", one}, http.StatusOK)
	alone(t, path)
}

// Of many saves at once that have seen the same, one is written.
func TestManySaves(t *testing.T) {
	p, path := open(t, jobText)
	version := stateOf([]byte(jobText)).Version
	var wait sync.WaitGroup
	codes := make([]int, 20)
	for i := range codes {
		wait.Go(func() {
			codes[i] = do(p, request(p, "POST", "/api/save", state{version, jobText + strings.Repeat("#", i+1)})).Code
		})
	}
	wait.Wait()
	written := 0
	for _, code := range codes {
		if code == http.StatusOK {
			written++
		} else if code != http.StatusConflict {
			t.Errorf("a save answers %d", code)
		}
	}
	if written != 1 {
		t.Errorf("%d of %d saves were written", written, len(codes))
	}
	alone(t, path)
}

// A save keeps line ends and rights; what cannot be written leaves the file as it was.
func TestWholeWrites(t *testing.T) {
	q, own := open(t, jobText)
	seen := answer[state](t, q, "/api/job", nil, http.StatusOK)
	answer[map[string]any](t, q, "/api/save", map[string]string{"version": seen.Version}, http.StatusBadRequest) // no text is not an empty one
	if err := os.Chmod(own, 0o444); err != nil {
		t.Fatal(err)
	}
	answer[map[string]any](t, q, "/api/save", state{seen.Version, "units: mm\n"}, http.StatusInternalServerError)
	if data, _ := os.ReadFile(own); string(data) != jobText {
		t.Errorf("a read-only file is %q", data)
	}
	crlf := strings.ReplaceAll(jobText, "\n", "\r\n")
	p, path := open(t, crlf)
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	first := answer[state](t, p, "/api/job", nil, http.StatusOK)
	if strings.Contains(first.Text, "\r") {
		t.Error("a browser gets carriage returns")
	}
	answer[state](t, p, "/api/save", state{first.Version, first.Text + "# more\n"}, http.StatusOK)
	if data, _ := os.ReadFile(path); string(data) != crlf+"# more\r\n" {
		t.Errorf("line ends are lost: %q", data)
	}
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("%v %v", info.Mode(), err)
	}
	alone(t, path)
	// A folder in its place is never replaced by a file, and nothing is left beside it.
	dir := filepath.Join(t.TempDir(), "bench.yaml")
	if err := os.MkdirAll(filepath.Join(dir, "full"), 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err := outdir.NewFile(dir, []byte("x")); err == nil {
		t.Error("a folder was replaced")
	}
	alone(t, dir)
	if _, err := outdir.NewFile(filepath.Join(dir, "nowhere", "bench.yaml"), []byte("x")); err == nil {
		t.Error("a file was written into no folder")
	}
}

// A link to a job stays one: the file that it leads to is written.
func TestSaveThroughLink(t *testing.T) {
	_, path := open(t, jobText)
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err) // a system where links take a right of their own
	}
	p, err := Open(link)
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	answer[state](t, p, "/api/save", state{stateOf([]byte(jobText)).Version, "# new\n"}, http.StatusOK)
	if data, _ := os.ReadFile(path); string(data) != "# new\n" {
		t.Errorf("the file holds %q", data)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info, err)
	}
	alone(t, path)
}

func TestOpenRefuses(t *testing.T) {
	dir := t.TempDir()
	for name, data := range map[string]string{"latin.yaml": "job: \xe4\n", "large.yaml": strings.Repeat("#", maxFile+1)} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for name, says := range map[string]string{"latin.yaml": "UTF-8", "large.yaml": "more than", "none.txt": "none.txt", "": "regular"} {
		if p, err := Open(filepath.Join(dir, name)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, %v", name, p, err)
		}
	}
}

// Sheets are laid out; a tab that gives up gets nothing and holds nobody up.
func TestSheets(t *testing.T) {
	p, _ := open(t, jobText)
	got := answer[struct {
		Stocks []struct{ Count int }
	}](t, p, "/api/sheets", map[string]string{"text": jobText}, http.StatusOK)
	if len(got.Stocks) != 2 || got.Stocks[0].Count != 1 {
		t.Errorf("%+v", got)
	}
	gone, stop := context.WithCancel(context.Background())
	stop()
	if w := do(p, request(p, "POST", "/api/sheets", map[string]string{"text": jobText}).WithContext(gone)); w.Code != http.StatusServiceUnavailable {
		t.Errorf("after the tab has gone: %d", w.Code)
	}
	answer[any](t, p, "/api/sheets", map[string]string{"text": jobText}, http.StatusOK)
}

// After 300 edits the heap is where it was after 50, within a tenth.
func TestFlatMemory(t *testing.T) {
	p, _ := open(t, jobText)
	text, handler := jobText, p.Handler(host)
	heap := func() float64 {
		runtime.GC()
		runtime.GC() // what the first one finalised
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc)
	}
	var early float64
	edits := geomtest.Cases(120, 300)
	for i := 1; i <= edits; i++ {
		thickness := []string{"12.2", "12.3", "11.9", "oops", "18.1"}[i%5]
		show := []string{"fit", "parts", "setups", "buy"}[i%4]
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, request(p, "POST", "/api/edit", thicker(text, thickness, show)))
		var got looked
		if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || w.Code != 200 {
			t.Fatal(w.Code, err)
		}
		text = got.Text
		if i == 50 {
			early = heap()
		}
	}
	if late := heap(); late > 1.1*early {
		t.Errorf("the heap has grown from %.0f to %.0f bytes", early, late)
	} else {
		t.Logf("heap at edit 50: %.0f bytes, at edit %d: %.0f", early, edits, late)
	}
}
