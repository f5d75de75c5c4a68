package page

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestBesideChanges: a look says which files the job names, as they were read; a tab is told once one of them is
// another, is there, or is gone, and nothing of a file beyond the folder.
func TestBesideChanges(t *testing.T) {
	p, path := open(t, loggedText)
	shop := filepath.Join(filepath.Dir(path), "shop.csv")
	look := func() besideFile {
		t.Helper()
		l := answer[looked](t, p, "/api/look", asked{loggedText, view{Show: "parts"}}, http.StatusOK)
		if l.Failed || len(l.Beside) != 1 || l.Beside[0].Name != "shop.csv" {
			t.Fatalf("%+v", l.Beside)
		}
		return l.Beside[0]
	}
	changed := func(f besideFile) int {
		t.Helper()
		at := "/api/beside?" + url.Values{"name": {f.Name}, "seen": {f.Version}}.Encode()
		return do(p, request(p, "GET", at, nil)).Code
	}
	const head = "date,machine,cutter,what,aimed,measured,units,then\n"
	for _, text := range []string{head, head + "2026-03-02,saw,,fence,6.1,6.12,mm,kept\n", ""} {
		was := look()
		if code := changed(was); code != http.StatusNoContent {
			t.Errorf("nothing has changed: %d", code)
		}
		err := os.WriteFile(shop, []byte(text), 0o644)
		if text == "" {
			err = os.Remove(shop)
		}
		if code := changed(was); err != nil || code != http.StatusOK {
			t.Errorf("%q: %d %v", text, code, err)
		}
	}
	outside := filepath.Join(t.TempDir(), "x.csv")
	if err := os.WriteFile(outside, []byte(head), 0o644); err != nil {
		t.Fatal(err)
	}
	if code := changed(besideFile{outside, ""}); code != http.StatusNoContent {
		t.Errorf("a file beyond the folder: %d", code)
	}
	for _, query := range []string{"name=a", "name=a&seen=&name=b", strings.Repeat("name=a&seen=&", maxAsked+1)} {
		if code := do(p, request(p, "GET", "/api/beside?"+query, nil)).Code; code != http.StatusBadRequest {
			t.Errorf("%s: %d", query, code)
		}
	}
}
