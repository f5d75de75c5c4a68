package shop

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/preview/viewer"
)

const samples = "../../../samples/"

// pageOf is the page of a sample with a change to its text.
func pageOf(t *testing.T, name, old, put string) []byte {
	t.Helper()
	data, err := os.ReadFile(samples + name)
	if err != nil || !bytes.Contains(data, []byte(old)) {
		t.Fatalf("%s has no %q: %v", name, old, err)
	}
	text := strings.Replace(string(data), old, put, 1)
	l := load.Read(name, strings.NewReader(text), load.Beside(samples+"x"))
	l.Lay(t.Context(), nil, sheets.Search{})
	if l.Failed() {
		t.Fatal(l.Problems)
	}
	out, err := Page(l.Batch, record.MakeKept(l.Batch, l.Plan, l.Warnings))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var (
	codes = regexp.MustCompile(`<body data-code="([0-9a-f]{16})">`)
	ticks = regexp.MustCompile(`id="tick-\d+"`)
	links = regexp.MustCompile(`(?:src|href|action)="([^"]*)"`)
)

// TestPage: of every sample the page has ticks, each under a name of its own, asks for nothing from
// anywhere, and lets its own script and style alone.
func TestPage(t *testing.T) {
	names, err := filepath.Glob(samples + "*.yaml")
	if err != nil || len(names) < 10 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		page := pageOf(t, filepath.Base(name), "units:", "units:")
		once := map[string]bool{}
		for _, tick := range ticks.FindAll(page, -1) {
			if once[string(tick)] {
				t.Errorf("%s: %s twice", name, tick)
			}
			once[string(tick)] = true
		}
		if len(once) < 5 {
			t.Errorf("%s: %d ticks", name, len(once))
		}
		for _, m := range links.FindAllSubmatch(page, -1) {
			if link := string(m[1]); link != "data:," && !strings.HasPrefix(link, "#") {
				t.Errorf("%s leads to %s", name, link)
			}
		}
		for _, text := range []string{source("script.js"), source("style.css")} {
			allowed := strings.ReplaceAll(viewer.Fingerprint(text), "+", "&#43;")
			if !bytes.Contains(page, []byte(text)) || !bytes.Contains(page, []byte(allowed)) {
				t.Errorf("%s: script or style is not the one that is allowed", name)
			}
		}
	}
}

// TestCode: the same job has the same page; ticks of another job, or of another state of it, are
// not taken for its own.
func TestCode(t *testing.T) {
	const name = "bench-drawers.yaml"
	page := pageOf(t, name, "units:", "units:")
	if !bytes.Equal(page, pageOf(t, name, "units:", "units:")) {
		t.Error("the same job has two pages")
	}
	code := string(codes.FindSubmatch(page)[1])
	for _, change := range [][2]string{{"count: 2", "count: 3"}, {"width: 6.35", "width: 6.3"}, {"job: Bench", "job: Other"}} {
		if other := pageOf(t, name, change[0], change[1]); string(codes.FindSubmatch(other)[1]) == code {
			t.Errorf("%q has the same code", change)
		}
	}
	if again := pageOf(t, name, "units:", "# a remark\nunits:"); string(codes.FindSubmatch(again)[1]) != code {
		t.Error("a remark loses the ticks")
	}
}

// TestTextIsNoMarkup: what a job says stays text.
func TestTextIsNoMarkup(t *testing.T) {
	page := pageOf(t, "bench-drawers.yaml", "job: Bench drawers", `job: '</main><script>x</script> "&'`)
	if n := bytes.Count(page, []byte("<script>")); n != 1 || bytes.Count(page, []byte("</main>")) != 1 {
		t.Errorf("%d scripts", n)
	}
}

// TestToBuy: what to buy stands on the page, the screws of a butt joint with it, and none where the
// joint has none.
func TestToBuy(t *testing.T) {
	const name = "bench-drawers.yaml"
	bought := regexp.MustCompile(`<span class="quantity">([^<]+)</span> <span class="of-what">([^<]+)</span></span> ` +
		`<span class="kind">([^<]+)</span>: <span class="bought">([^<]+)</span>`)
	list := map[string]string{}
	page := pageOf(t, name, "bottom: hardboard\n", "bottom: hardboard\n    joint: butt\n")
	for _, m := range bought.FindAllSubmatch(page, -1) {
		list[string(m[3])+" "+string(m[4])] = string(m[1]) + " " + string(m[2])
	}
	screws := 0
	for what, n := range list {
		if strings.HasPrefix(what, "hardware screw 4 x ") && strings.HasSuffix(n, " pieces") {
			screws++
		}
	}
	if screws != 1 || list["board birch, 1525 x 1525 mm"] == "" || len(list) < 4 {
		t.Errorf("to buy: %v", list)
	}
	if plain := pageOf(t, name, "units:", "units:"); bytes.Contains(plain, []byte("screw 4 x")) {
		t.Error("a box without screws takes some")
	}
}
