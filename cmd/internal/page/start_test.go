package page

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/starter"
)

// openIn is a page of a folder with files, without a job.
func openIn(t *testing.T, files map[string]string) (*Page, string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
	p, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { p.Close() })
	return p, dir
}

// began is what a tab begins with.
type began struct {
	state
	Name  string
	Fresh bool
	Keys  any
}

// Of a folder, of a file that is not there and of an empty one the page begins with a first job,
// which is nowhere until it is saved.
func TestBeginsWithNothing(t *testing.T) {
	p, dir := openIn(t, map[string]string{"empty.yaml": " \r\n"})
	for path, version := range map[string]string{"": "", "new.yaml": "", "empty.yaml": stateOf([]byte(" \r\n")).Version} {
		q := p
		if path != "" {
			var err error
			if q, err = Open(path); err != nil {
				t.Errorf("%s: %v", path, err)
				continue
			}
			defer q.Close()
		}
		got := answer[began](t, q, "/api/job", nil, http.StatusOK)
		named := got.Name == path && got.Version == version
		if !q.New() || !got.Fresh || !named || !strings.Contains(got.Text, "drawers:") {
			t.Errorf("%q begins with %+v", path, got)
		}
		l := answer[looked](t, q, "/api/look", asked{Text: got.Text}, http.StatusOK)
		if l.Failed || len(l.Problems) > 0 {
			t.Errorf("%q: the first job: %+v", path, l.Problems)
		}
	}
	if list, err := os.ReadDir(dir); err != nil || len(list) != 1 {
		t.Errorf("files were written: %v %v", list, err)
	}
	q, err := Open("new.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer q.Close()
	answer[state](t, q, "/api/save", state{Text: jobText}, http.StatusOK)
	if data, err := os.ReadFile("new.yaml"); err != nil || string(data) != jobText || q.New() {
		t.Errorf("the new file: %v %s", err, data)
	}
}

// A card gives a job that nothing is to be warned of, and says of wrong answers which it is.
func TestCards(t *testing.T) {
	p, _ := openIn(t, nil)
	facts := answer[struct {
		Usual  []usual
		Slides []string
	}](t, p, "/api/start", nil, http.StatusOK)
	if len(facts.Usual) != 4 || len(facts.Slides) != len(starter.Slide.Words()) {
		t.Errorf("%+v", facts)
	}
	for _, u := range facts.Usual {
		got := answer[struct{ Text string }](t, p, "/api/begin", answered(u), http.StatusOK)
		l := answer[looked](t, p, "/api/look", asked{Text: got.Text}, http.StatusOK)
		says := strings.Contains(got.Text, u.Sides) && strings.Contains(got.Text, u.Bottom) &&
			strings.Contains(got.Text, "width: "+u.Cutter) && strings.Contains(got.Text, "count: "+u.Count) &&
			strings.Contains(got.Text, u.Size[0])
		if l.Failed || len(l.Problems) > 0 || l.Unit != u.Units || !says {
			t.Errorf("%+v: %+v\n%s", u, l.Problems, got.Text)
		}
	}
	fine := answered{"mm", "opening", []string{"564", "150", "545"}, "12.1, 12.2", "5.8 5.9", "side-mount",
		"6.3", "2", "", ""}
	for name, c := range map[string]struct {
		change      func(*answered)
		field, says string
		built       bool
	}{
		"another unit":  {func(a *answered) { a.Units = "cubits" }, "units", "cubits", false},
		"another thing": {func(a *answered) { a.Measured = "hole" }, "measured", "hole", false},
		"no size":       {func(a *answered) { a.Size = []string{"", "", ""} }, "size", "type what you measured", false},
		"no depth":      {func(a *answered) { a.Size = []string{"564", "150", " "} }, "size", "type what you measured", false},
		"two sizes":     {func(a *answered) { a.Size = a.Size[:2] }, "size", "3", false},
		"YAML":          {func(a *answered) { a.Sides = "12, 13]\ncutter: {}" }, "sides", "numbers", false},
		"one reading":   {func(a *answered) { a.Sides = "12" }, "sides", "one reading", false},
		"no readings":   {func(a *answered) { a.Sides = "" }, "sides", "12.1, 12.0, 12.2 is only an example", false},
		"no bottom":     {func(a *answered) { a.Bottom = "" }, "bottom", "only an example", false},
		"a high hole":   {func(a *answered) { a.Size = []string{"600", "610", "570"} }, "rows", "above each other", true},
		"too many rows": {func(a *answered) { a.Rows = "99" }, "rows", "1 to 40", false},
		"a long slide":  {func(a *answered) { a.Length = "600" }, "length", "deep", false},
		"no length":     {func(a *answered) { a.Length = "long" }, "length", "numbers", false},
		"a slash":       {func(a *answered) { a.Sides = "12.1 / 12.2" }, "sides", "put a comma", false},
		"no cutter":     {func(a *answered) { a.Cutter = "wide" }, "cutter", "numbers", false},
		"no blade":      {func(a *answered) { a.Cutter = "" }, "cutter", "type what you measured", false},
		"no number":     {func(a *answered) { a.Count = "" }, "count", "write numbers", false},
		"no boxes":      {func(a *answered) { a.Count = "0" }, "count", "1 to", false},
		"no slide":      {func(a *answered) { a.Slide = "rope" }, "slide", "rope", false},
		"a rack":        {func(a *answered) { a.Size = []string{"900", "150", "545"} }, "slide", "rack", true},
	} {
		a := fine
		c.change(&a)
		got := answer[refusal](t, p, "/api/begin", a, http.StatusUnprocessableEntity)
		if got.Field != c.field || !strings.Contains(got.Error, c.says) || (got.Text != "") != c.built {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// One reading of the bottom makes a job at once, which says what the one leaves open and leads to the field
// for the others.
func TestBottomReadOnce(t *testing.T) {
	p, _ := openIn(t, nil)
	once := answered{"mm", "box", []string{"460", "140", "500"}, "12.1, 12.2", "5.92", "", "6.35", "2", "", ""}
	got := answer[struct{ Text string }](t, p, "/api/begin", once, http.StatusOK)
	if !strings.Contains(got.Text, "# Read once: ") || !strings.Contains(got.Text, "  bottom: {thickness: 5.92,") {
		t.Errorf("made:\n%s", got.Text)
	}
	l := answer[looked](t, p, "/api/look", asked{Text: got.Text}, http.StatusOK)
	leads := func(q problem) bool {
		return len(q.Ways) > 0 && slices.Equal(q.Ways[0].Lead, []string{"stock", "bottom", "thickness"})
	}
	if l.Failed || !slices.ContainsFunc(l.Problems, leads) {
		t.Errorf("no way to the readings: %+v", l.Problems)
	}
}

// Of a size the wrong fields are told, and readings are taken as the form takes them.
func TestCardSizes(t *testing.T) {
	p, _ := openIn(t, nil)
	fine := answered{"mm", "opening", []string{"412.5, 411.8", "610", "570"}, "12.1, 12.2", "5.8 5.9", "side-mount",
		"6.3", "1", "450", "3"}
	got := answer[struct{ Text string }](t, p, "/api/begin", fine, http.StatusOK)
	for _, says := range []string{"width: [412.5, 411.8]", "rows: 3", "lengths: [450]"} {
		if !strings.Contains(got.Text, says) {
			t.Errorf("nothing of %q:\n%s", says, got.Text)
		}
	}
	l := answer[looked](t, p, "/api/look", asked{Text: got.Text}, http.StatusOK)
	if l.Failed || len(l.Drawers) != 3 {
		t.Errorf("%d drawers: %+v", len(l.Drawers), l.Problems)
	}
	for side, says := range map[string]string{"412,5": "decimal point", "wide": "numbers", "": "type what you measured"} {
		a := fine
		a.Size = []string{side, "610", "570"}
		got := answer[refusal](t, p, "/api/begin", a, http.StatusUnprocessableEntity)
		if got.Field != "size" || !slices.Equal(got.Sides, []string{"width"}) || !strings.Contains(got.Error, says) {
			t.Errorf("%q: %+v", side, got)
		}
	}
	box := fine
	box.Measured = "box"
	no := answer[refusal](t, p, "/api/begin", box, http.StatusUnprocessableEntity)
	if !slices.Equal(no.Sides, []string{"width"}) || !strings.Contains(no.Error, "one number for each") {
		t.Errorf("a box of two widths: %+v", no)
	}
}

// The slide that a card takes is the one that its job has.
func TestCardSlide(t *testing.T) {
	p, _ := openIn(t, nil)
	fine := answered{"mm", "opening", []string{"564", "150", "545, 540"}, "12.1, 12.2", "5.8 5.9", "side-mount", "6.3", "1", "", ""}
	for _, c := range []struct {
		slide, length, depth, taken string
	}{
		{"side-mount", "", "545, 540", "500 mm"}, {"side-mount", "450", "545", "450 mm"}, {"side-mount", "600", "545", ""},
		{"side-mount", "", "200", ""}, {"side-mount", "", "deep", ""}, {"wooden-runner", "", "545.4", "540 mm"},
	} {
		a := fine
		a.Slide, a.Length, a.Size = c.slide, c.length, []string{"564", "150", c.depth}
		got := answer[struct{ Taken string }](t, p, "/api/slide", a, http.StatusOK)
		if got.Taken != c.taken {
			t.Errorf("%+v: %q", c, got.Taken)
		}
		if c.taken == "" {
			continue
		}
		made := answer[struct{ Text string }](t, p, "/api/begin", a, http.StatusOK)
		j, _ := job.Read("", strings.NewReader(made.Text))
		if deep := fmt.Sprintf("%g mm", j.Drawers[0].Depth); deep != c.taken {
			t.Errorf("%+v: the box is %s deep", c, deep)
		}
	}
}

// The list of files has the jobs of the folder, and nothing else of it or of elsewhere.
func TestListOfJobs(t *testing.T) {
	elsewhere := filepath.Join(t.TempDir(), "other.yaml")
	if err := os.WriteFile(elsewhere, []byte(jobText), 0o644); err != nil {
		t.Fatal(err)
	}
	p, dir := openIn(t, map[string]string{"b.yaml": jobText, "a.yml": "job: A <b>\n" + jobText,
		"slides.yaml": "units: mm\nslides: {}\n", "notes.txt": jobText, ".hidden.yaml": jobText,
		"large.yaml": jobText + strings.Repeat("#", maxFile), "latin.yaml": "\xe4"})
	if err := os.Mkdir(filepath.Join(dir, "folder.yaml"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(elsewhere, filepath.Join(dir, "link.yaml")); err != nil {
		t.Skip(err) // a system where links take a right of their own
	}
	got := answer[struct {
		Folder string
		Jobs   []listed
	}](t, p, "/api/start", nil, http.StatusOK)
	want := []listed{{"a.yml", "A <b>"}, {"b.yaml", ""}}
	if here, _ := filepath.EvalSymlinks(dir); got.Folder != here || !slices.Equal(got.Jobs, want) {
		t.Errorf("%+v", got)
	}
}

// Whatever name a request has, nothing is read or written but plain files of the folder.
func TestNamesStayInTheFolder(t *testing.T) {
	const old = "units: mm # ancient\n"
	p, dir := openIn(t, map[string]string{"here.yaml": old, "notes.txt": old})
	outside := filepath.Join(t.TempDir(), "outside.yaml")
	if err := os.WriteFile(outside, []byte(old), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(dir, "below", "x.yaml"), 0o755); err != nil {
		t.Fatal(err)
	}
	bad := []string{outside, "../" + filepath.Base(filepath.Dir(outside)) + "/outside.yaml", "..", ".", "below/y.yaml",
		`below\y.yaml`, "c:here.yaml", "here.yaml\x00", "here.yaml/", "notes.txt", ".env.yaml", "con.yaml", "nul.x.yaml",
		"a\nb.yaml", "\xff.yaml", "x.yaml.", strings.Repeat("x", 200) + ".yaml", "*.yaml", " .yaml",
		"COM¹.yaml", "lpt³.yaml", "conin$.yaml", "CONOUT$.yaml", "-x.yaml", "_x.yaml", "~$x.yaml", "$x.yaml"}
	if os.Symlink(outside, filepath.Join(dir, "link.yaml")) == nil {
		bad = append(bad, "link.yaml")
	}
	if os.Symlink(filepath.Join(t.TempDir(), "none.yaml"), filepath.Join(dir, "dangling.yaml")) == nil {
		bad = append(bad, "dangling.yaml")
	}
	if os.Symlink(filepath.Dir(outside), filepath.Join(dir, "way")) == nil {
		bad = append(bad, "way/outside.yaml")
	}
	for _, name := range bad {
		file := about(name)
		for _, r := range []*http.Request{
			request(p, "GET", "/api/job", nil, file), request(p, "GET", "/api/disk?seen=x", nil, file),
			request(p, "POST", "/api/save", state{"", "# new\n"}, file),
			request(p, "POST", "/api/save", state{stateOf([]byte(old)).Version, "# new\n"}, file),
		} {
			if w := do(p, r); w.Code < 400 || strings.Contains(w.Body.String(), "ancient") {
				t.Errorf("%q, %s %s: %d %s", name, r.Method, r.URL.Path, w.Code, w.Body)
			}
		}
		if name == "notes.txt" || name == "x.yaml." { // .yaml is put behind it
			continue
		}
		answer[map[string]string](t, p, "/api/name", map[string]string{"name": name}, http.StatusUnprocessableEntity)
	}
	for _, path := range []string{outside, "here.yaml", "notes.txt"} {
		if data, err := os.ReadFile(path); err != nil || string(data) != old {
			t.Errorf("%s: %q %v", path, data, err)
		}
	}
	if list, err := os.ReadDir(dir); err != nil || runtime.GOOS != "windows" && len(list) != 6 {
		t.Errorf("the folder has %v %v", list, err)
	}
}

// about asks about a file of the folder.
func about(name string) func(*http.Request) {
	return func(r *http.Request) {
		q := r.URL.Query()
		q.Set("file", name)
		r.URL.RawQuery = q.Encode()
	}
}

// A name is checked before anything is written, and a file that has it is replaced only by who has
// seen that it is there.
func TestFirstSave(t *testing.T) {
	p, _ := openIn(t, map[string]string{"taken.yaml": "# mine\n"})
	answer[map[string]string](t, p, "/api/save", state{Text: jobText}, http.StatusBadRequest) // it has no name
	type named struct{ Name, Version string }
	got := answer[named](t, p, "/api/name", map[string]string{"name": " bench 1 "}, http.StatusOK)
	if got != (named{"bench 1.yaml", ""}) {
		t.Errorf("a new name: %+v", got)
	}
	got = answer[named](t, p, "/api/name", map[string]string{"name": "taken"}, http.StatusOK)
	if got != (named{"taken.yaml", stateOf([]byte("# mine\n")).Version}) {
		t.Errorf("a name that is taken: %+v", got)
	}
	save := func(seen string, code int) {
		t.Helper()
		if w := do(p, request(p, "POST", "/api/save", state{seen, jobText}, about("taken.yaml"))); w.Code != code {
			t.Errorf("%d %s", w.Code, w.Body)
		}
	}
	if err := os.Chmod("taken.yaml", 0o444); err != nil {
		t.Fatal(err)
	}
	refused := answer[refusal](t, p, "/api/name", map[string]string{"name": "taken"}, http.StatusUnprocessableEntity)
	if !strings.Contains(refused.Error, "read-only") {
		t.Errorf("a file that cannot be written: %+v", refused)
	}
	if err := os.Chmod("taken.yaml", 0o644); err != nil {
		t.Fatal(err)
	}
	save("", http.StatusConflict)
	if data, err := os.ReadFile("taken.yaml"); err != nil || string(data) != "# mine\n" {
		t.Errorf("it was replaced unseen: %q %v", data, err)
	}
	save(got.Version, http.StatusOK)
	if data, err := os.ReadFile("taken.yaml"); err != nil || string(data) != jobText {
		t.Errorf("it was not replaced: %q %v", data, err)
	}
}

// The address for the command line of a browser opens the page once, and the latest alone.
func TestAddressOnce(t *testing.T) {
	p, _ := open(t, jobText)
	first := func(address string) int {
		r := httptest.NewRequest("GET", strings.TrimPrefix(address, "http://"+host), nil)
		r.Host = host
		return do(p, r).Code
	}
	old, address := p.AddressOnce(host), p.AddressOnce(host)
	for i, want := range []int{http.StatusUnauthorized, http.StatusSeeOther, http.StatusUnauthorized} {
		a := address
		if i == 0 {
			a = old
		}
		if code := first(a); code != want {
			t.Errorf("time %d: %d, want %d", i, code, want)
		}
	}
	if first("http://"+host+"/?ticket=") != http.StatusUnauthorized || strings.Contains(address, p.token) {
		t.Error("no ticket, or the token itself")
	}
	if first(p.Address(host)) != http.StatusOK {
		t.Error("the printed address opens it no more")
	}
}
