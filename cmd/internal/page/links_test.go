package page

import (
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/geom/geomtest"
)

// TestSwappedForLinks: while the page answers, the job and a file that it names are swapped for links
// that lead out and back again, all the time. Nothing from out there is served, and nothing written.
func TestSwappedForLinks(t *testing.T) {
	text := strings.Replace(jobText, "drawers:", "slides-file: slides.yaml\ndrawers:", 1)
	p, path := open(t, text)
	const secret = "units: mm\nslides:\n  secret: {kind: side-mount}\n"
	outside := filepath.Join(t.TempDir(), "outside.yaml")
	slides := filepath.Join(filepath.Dir(path), "slides.yaml")
	inside := map[string]string{path: text, slides: strings.ReplaceAll(secret, "secret", "quiet")}
	for name, data := range map[string]string{outside: secret, slides: ""} {
		if err := os.WriteFile(name, []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	done, stopped := make(chan struct{}), make(chan error)
	go func() { // beside the requests: each name is at any moment a file or a link
		scratch := t.TempDir()
		defer close(stopped)
		for i := 0; ; i++ {
			for name, data := range inside {
				now := filepath.Join(scratch, "now")
				err := os.Symlink(outside, now)
				if i%2 > 0 {
					os.Remove(now)
					err = os.WriteFile(now, []byte(data), 0o644)
				}
				if err == nil {
					err = os.Rename(now, name)
				}
				if err != nil {
					stopped <- err
					return
				}
			}
			select {
			case <-done:
				return
			default:
			}
		}
	}()
	version := stateOf([]byte(text)).Version
	seen := map[int]int{} // answers by their codes
	for range geomtest.Cases(300, 20_000) {
		if in, err := p.folder.beside("slides.yaml"); err == nil {
			if data, _ := io.ReadAll(in); strings.Contains(string(data), "secret") {
				t.Error("slides are read from outside")
			}
			in.Close()
		}
		asks := []*http.Request{
			request(p, "POST", "/api/save", state{version, text}),
			request(p, "POST", "/api/save", state{stateOf([]byte(secret)).Version, text}),
			request(p, "GET", "/api/start", nil),
		}
		for range 30 { // these take no time
			asks = append(asks, request(p, "GET", "/api/disk?seen=", nil))
		}
		for _, r := range asks {
			w := do(p, r)
			seen[w.Code]++
			if strings.Contains(w.Body.String(), "secret") {
				t.Errorf("%s tells what is outside: %.300s", r.URL.Path, w.Body)
			}
		}
	}
	close(done)
	if err := <-stopped; err != nil {
		t.Skip(err) // a system where links take a right of their own
	}
	if now, err := os.ReadFile(outside); string(now) != secret {
		t.Errorf("outside is written: %q, %v", now, err)
	}
	t.Logf("answers by their codes: %v", seen)
}
