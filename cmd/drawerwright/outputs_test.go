package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/page"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/shop"
)

// folderFiles are the files of a build that are read by people and programs, but for
// drawings and previews.
var folderFiles = []string{readback.ReportJSON, readback.PartsTxt, readback.PartsList, readback.CutList, readback.BuyList, readback.LayoutList, readback.CutsList, readback.SlideLines, readback.Packet, readback.ShopPage}

// jobIn writes a job into a folder, beside the files of slides that samples share.
func jobIn(t *testing.T, dir, text string) string {
	t.Helper()
	job := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(job, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(dir, "slides"), os.DirFS("../../samples/slides")); err != nil {
		t.Fatal(err)
	}
	return job
}

// commanded are the outputs of a job by running every command, in a folder of its own.
func commanded(t *testing.T, text string) readback.Outputs {
	t.Helper()
	dir := t.TempDir()
	job, out := jobIn(t, dir, text), filepath.Join(dir, "out")
	outputs := readback.Outputs{}
	for name, args := range map[string][]string{
		readback.CheckText: {"check", job}, readback.CheckJSON: {"check", job, "--json"},
		readback.PartsText: {"parts", job, "--all"}, readback.PartsJSON: {"parts", job, "--json"}, readback.PartsCSV: {"parts", job, "--csv"},
		readback.FitText: {"fit", job, "--all"}, readback.FitJSON: {"fit", job, "--json"},
		readback.SetupText: {"setup", job, "--all"}, readback.SetupJSON: {"setup", job, "--json"},
		readback.SheetsText: {"sheets", job, "--all"}, readback.SheetsJSON: {"sheets", job, "--json"}, readback.SheetsCSV: {"sheets", job, "--csv"},
		"": {"build", job, "-o", out},
	} {
		code, said, errs := call(t, "", args...)
		if code != exitDone {
			t.Fatalf("%q: exit %d\n%s%s", args, code, said, errs)
		}
		switch outputs[name] = said; name {
		case readback.CheckText:
			outputs[name] += errs
		case readback.PartsText, readback.FitText, readback.SetupText, readback.SheetsText:
			_, outputs[name], _ = strings.Cut(said, "\n\n") // what stands below the answer
		}
	}
	delete(outputs, "")
	for _, name := range folderFiles {
		data, err := os.ReadFile(filepath.Join(out, name))
		if err == nil {
			outputs[name] = string(data)
		} else if !os.IsNotExist(err) {
			t.Fatal(err)
		}
	}
	return outputs
}

// composed are the outputs of a job by what the commands call, worked out once, without
// drawings and their proof; of check the problems alone. ok is false for a job that cannot
// be built.
func composed(t *testing.T, text string) (outputs readback.Outputs, ok bool) {
	t.Helper()
	l := loaded{load.Read("job.yaml", strings.NewReader(text), load.Beside("../../samples/job.yaml"))}
	l.Lay(t.Context(), nil, sheets.Search{})
	if l.Failed() {
		return nil, false
	}
	b, u := l.Batch, l.Batch.Units
	r, f, setups, laid := record.MakeKept(b, l.Plan,
		l.Warnings), record.ForecastOf(b), present.SetupsOf(record.WorkOf(b)), record.SheetsOf(l.Plan)
	outputs = readback.Outputs{
		readback.CheckJSON: inJSON(t, checked{OK: true, Problems: found(l), More: l.More, Verdicts: record.VerdictsOf(b)}),
		readback.PartsText: ofAnyWidth(func(out *present.Printed) { present.PrintParts(out, r) }), readback.PartsJSON: inJSON(t, r.Whole()),
		readback.PartsCSV: string(present.PartsCSV(r)),
		readback.FitText:  ofAnyWidth(func(out *present.Printed) { present.PrintForecast(out, f, u) }), readback.FitJSON: inJSON(t, f),
		readback.SetupText: string(present.SetupText(setups, u)), readback.SetupJSON: inJSON(t, setups),
		readback.SheetsText: ofAnyWidth(func(out *present.Printed) { present.PrintSheets(out, laid, u) }), readback.SheetsJSON: inJSON(t, laid), readback.SheetsCSV: string(present.SheetsCSV(laid)),
		readback.CutList: string(present.CutListCSV(r)), readback.BuyList: string(present.BuyCSV(r.Buy)),
	}
	if len(laid.Stocks) > 0 {
		outputs[readback.CutsList] = string(present.CutsCSV(laid))
	}
	if len(b.Banks) > 0 {
		outputs[readback.SlideLines] = string(present.LinesCSV(r))
	}
	var pdf bytes.Buffer
	if err := packet.Write(context.Background(), &pdf, b, r, l.Plan); err != nil {
		t.Fatal(err)
	}
	outputs[readback.Packet] = pdf.String()
	phone, err := shop.Page(b, r)
	if err != nil {
		t.Fatal(err)
	}
	outputs[readback.ShopPage] = string(phone)
	return outputs, true
}

// ofAnyWidth is what is printed on the screen of tests, where nothing is wrapped.
func ofAnyWidth(write func(out *present.Printed)) string {
	out := present.Printed{Width: wideScreen}
	write(&out)
	return out.String()
}

func inJSON(t *testing.T, v any) string {
	t.Helper()
	data, err := record.JSON(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// shared are the outputs that a build has under another name, and the same bytes.
var shared = map[string]string{readback.PartsCSV: readback.PartsList, readback.SheetsCSV: readback.LayoutList}

// pageOf are the answers of the page for every list, and for the drawers.
func pageOf(t *testing.T, text string, drawers []string) string {
	t.Helper()
	job := jobIn(t, t.TempDir(), text)
	p, err := page.Open(job)
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	const host = "127.0.0.1:8123"
	handler := p.Handler(host)
	ask := func(method, path string, body any) []byte {
		t.Helper()
		var in bytes.Buffer
		if body != nil {
			if err := json.NewEncoder(&in).Encode(body); err != nil {
				t.Fatal(err)
			}
		}
		q := httptest.NewRequest(method, p.Address(host)+path, &in)
		q.Host = host
		q.Header.Set("Origin", "http://"+host)
		q.Header.Set("Sec-Fetch-Site", "same-origin")
		q.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, q)
		if w.Code >= 400 {
			t.Fatalf("%s %s: %d %s", method, path, w.Code, w.Body)
		}
		return w.Body.Bytes()
	}
	var all readback.PageAnswers
	look := func(show, drawer string) {
		view := map[string]any{"drawer": drawer, "entry": -1, "show": show}
		answer := ask(http.MethodPost, "api/look", map[string]any{"text": text, "view": view})
		all.Looks = append(all.Looks, readback.PageLook{Show: show, Drawer: drawer, Answer: answer})
	}
	for _, name := range drawers {
		look("fit", name)
	}
	for _, show := range []string{"parts", "setups", "buy"} {
		look(show, "")
	}
	all.Sheets = ask(http.MethodPost, "api/sheets", map[string]any{"text": text, "unit": ""})
	data, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// read adds the answers of the page, for every drawer or for two, and says what readers have
// to know of the job.
func read(t *testing.T, text string, outputs readback.Outputs, every bool) readback.Job {
	t.Helper()
	var first struct {
		Units   string
		Drawers []struct{ Name string }
	}
	if err := json.Unmarshal([]byte(outputs[readback.PartsJSON]), &first); err != nil {
		t.Fatal(err)
	}
	job := readback.Job{Units: first.Units}
	for _, d := range first.Drawers {
		job.Drawers = append(job.Drawers, d.Name)
	}
	if job.Shown = job.Drawers; len(job.Shown) > 2 && !every { // the first and the last stand for them
		job.Shown = []string{job.Shown[0], job.Shown[len(job.Shown)-1]}
	}
	outputs[readback.Page] = pageOf(t, text, job.Shown)
	return job
}

// agreed compares the outputs of a job.
func agreed(t *testing.T, text string, outputs readback.Outputs, every bool) {
	t.Helper()
	printedAgain(t, outputs)
	job := read(t, text, outputs, every)
	facts, err := readback.Read(job, outputs)
	if err != nil {
		t.Fatal(err)
	}
	found, err := readback.Settings(job, [2]string{readback.Packet, readback.ShopPage},
		[2]io.Reader{strings.NewReader(outputs[readback.Packet]), strings.NewReader(outputs[readback.ShopPage])})
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range append(found, readback.Compare(job, facts, outputs)...) {
		if t.Errorf("%s", c); i > 20 {
			t.Fatal("and more")
		}
	}
	if t.Failed() && testing.Verbose() {
		t.Logf("of the job\n%s", text)
	}
}

// printedAgain holds what is for people and for other programs against what the record makes
// of it once it is read back: nothing is printed that the record does not have.
func printedAgain(t *testing.T, outputs readback.Outputs) {
	t.Helper()
	for _, o := range []struct{ record, text, parts, cuts, buy string }{
		{readback.PartsJSON, readback.PartsText, readback.PartsCSV, readback.CutList, readback.BuyList},
		{readback.ReportJSON, readback.PartsTxt, readback.PartsList, readback.CutList, readback.BuyList},
	} {
		if outputs[o.record] == "" {
			continue
		}
		r, err := record.Read([]byte(outputs[o.record]))
		if err != nil {
			t.Fatal(err)
		}
		var list bytes.Buffer
		present.PartsText(&list, record.Keep(r)) // into memory: it cannot fail
		text := list.Bytes()
		if o.text == readback.PartsText { // which the command prints for a screen
			text = []byte(ofAnyWidth(func(out *present.Printed) { present.PrintParts(out, record.Keep(r)) }))
		}
		for name, again := range map[string][]byte{o.text: text, o.parts: present.PartsCSV(record.Keep(r)),
			o.cuts: present.CutListCSV(record.Keep(r)), o.buy: present.BuyCSV(r.Buy)} {
			if strings.TrimSpace(string(again)) != strings.TrimSpace(outputs[name]) {
				t.Errorf("%s is not what %s makes of it", name, o.record)
			}
		}
	}
}

// whole has a job printed by the commands, and holds what they call to the same bytes.
func whole(t *testing.T, text string) {
	t.Helper()
	outputs := commanded(t, text)
	agreed(t, text, outputs, true)
	same, _ := composed(t, text)
	for name, data := range same {
		if name == readback.CheckJSON || name == readback.Packet && len(outputs[readback.Packet]) > 0 { // with another path; with proof
			continue
		}
		if strings.TrimSpace(outputs[name]) != strings.TrimSpace(data) {
			t.Errorf("%s: by the command %d bytes, by what it calls %d, not the same", name,
				len(outputs[name]), len(data))
		}
	}
	for name, file := range shared {
		if outputs[name] != outputs[file] && outputs[file] != "" {
			t.Errorf("%s and %s are not the same", name, file)
		}
	}
}

func TestOutputsOfSamplesAgree(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(files) < 3 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			t.Parallel()
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			whole(t, string(text))
		})
	}
}

// randomJobs is how many random jobs are tried; .ci/nightly tries 300, some minutes'
// work.
var randomJobs = flag.Int("jobs", 8, "how many random jobs have their outputs compared")

// TestOutputsOfAnyJobAgree: of random jobs that can be built, the first by the commands
// themselves.
func TestOutputsOfAnyJobAgree(t *testing.T) {
	jobs, byCommand := *randomJobs, 1
	var next, agree atomic.Int64
	t.Run("jobs", func(t *testing.T) {
		for range 4 {
			t.Run("some", func(t *testing.T) {
				t.Parallel()
				for agree.Load() < int64(jobs) && !t.Failed() {
					seed := uint64(next.Add(1))
					text := jobtest.Text(seed)
					outputs, ok := composed(t, text)
					if !ok {
						continue
					}
					if agree.Add(1) <= int64(byCommand) {
						whole(t, text)
					} else {
						agreed(t, text, outputs, false)
					}
				}
			})
		}
	})
	t.Logf("%d of %d random jobs could be built and agree", agree.Load(), next.Load())
}
