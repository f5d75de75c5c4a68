package page

import (
	"maps"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/cmd/internal/firstbox"
)

// loggedText is a job with a log, whose boxes are right as drawn.
var loggedText = strings.NewReplacer("5.9,", "[5.92, 5.86, 5.95],",
	"drawers:", "log: shop.csv\ndrawers:").Replace(jobText)

// boxAsked is a request about a first box.
type boxAsked struct {
	Text     string            `json:"text"`
	Unit     string            `json:"unit"`
	Drawer   string            `json:"drawer"`
	Readings map[string]string `json:"readings"`
	Log      bool              `json:"log"`
}

func firstOf(t *testing.T, p *Page, of boxAsked) firstBox {
	t.Helper()
	return answer[firstBox](t, p, "/api/first", of, http.StatusOK)
}

// rowsOf are the rows of a form, by their names, and how many there are.
func rowsOf(f firstBox) (rows map[string]firstRow, n int) {
	rows = make(map[string]firstRow)
	for _, p := range f.Parts {
		for _, r := range p.Rows {
			rows[r.What] = r
			n++
		}
	}
	return rows, n
}

// allRight are readings of a form that are right.
func allRight(f firstBox) map[string]string {
	readings := make(map[string]string)
	rows, _ := rowsOf(f)
	for what, r := range rows {
		readings[what] = r.Right
	}
	return readings
}

// TestFirstBoxForm: the form has the rows of the table that inspect takes, in its order, in the job's unit and in the
// one that is shown.
func TestFirstBoxForm(t *testing.T) {
	p, _ := open(t, loggedText)
	done, err := p.work.out(t.Context(), task{text: loggedText})
	if err != nil {
		t.Fatal(err)
	}
	for i, drawer := range []string{"wide", "narrow"} {
		f, at := firstOf(t, p, boxAsked{Text: loggedText, Drawer: drawer}), 0
		fields := firstbox.Of(done.Batch, i).Fields()
		for _, part := range f.Parts {
			for _, r := range part.Rows {
				w := fields[at]
				if r.What != w.What || r.Right != w.Right || r.Least != w.Least || r.Most != w.Most ||
					r.Verdict != "not measured" {
					t.Errorf("%s: %+v, the table has %+v", drawer, r, w)
				}
				at++
			}
		}
		if at != len(fields) || at < 20 || f.Drawer != drawer || f.Unit != "mm" || f.Log != "shop.csv" ||
			!strings.Contains(f.Safely, "unplug") {
			t.Errorf("%s: %d rows of %d: %+v", drawer, at, len(fields), f)
		}
	}
	inches, _ := rowsOf(firstOf(t, p, boxAsked{Text: loggedText, Unit: "in"}))
	if r := inches["width front"]; r.Right != "18.110" { // 460 / 25.4
		t.Errorf("%+v", r)
	}
}

// TestFirstBoxIsJudged: what is typed is judged as inspect does, and a mistake is told at its row.
func TestFirstBoxIsJudged(t *testing.T) {
	p, _ := open(t, loggedText)
	of := boxAsked{Text: loggedText}
	of.Readings = allRight(firstOf(t, p, of))
	const right = "First box of wide: it is right; leave all as it is, and cut the rest."
	if f := firstOf(t, p, of); f.Level != "good" || f.Head != right || f.Do != "" {
		t.Errorf("%+v", f)
	}
	of.Readings["from the end to a dado"], of.Readings["thickness of a tongue"] = "6.4", "6 13/32 mm"
	delete(of.Readings, "box front tongue clearance in its dado")
	delete(of.Readings, "box front recess at the side ends (proud below 0)")
	of.Readings["depth left"], of.Readings["height"] = "19 3/4 in", "14,0"
	f := firstOf(t, p, of)
	rows, _ := rowsOf(f)
	if f.Level != "bad" || !strings.Contains(f.Do, "move the fence toward the cutter by 0.3 mm") ||
		!strings.Contains(f.Do, "depth left: 501.65, right is 499.50 to 500.50: sides shorter, by 1.65 mm.") {
		t.Errorf("%+v", f)
	}
	if r := rows["from the end to a dado"]; r.Verdict != "over" || r.Level != "bad" {
		t.Errorf("%+v", r)
	}
	if r := rows["height"]; r.Verdict != "not measured" || !strings.HasPrefix(r.Fault, "it has a comma; write") {
		t.Errorf("%+v", r)
	}
}

// TestFirstBoxIsLogged: a box goes into the log that the job names, once, behind what is there, also where several do
// so at once; into none where something is to be mended, and into no file beyond the folder.
func TestFirstBoxIsLogged(t *testing.T) {
	p, path := open(t, loggedText)
	shop := filepath.Join(filepath.Dir(path), "shop.csv")
	const head = "date,machine,cutter,what,aimed,measured,units,then\n"
	const before = head + "2026-03-02,saw,,fence,6.1,6.12,mm,kept\n"
	if err := os.WriteFile(shop, []byte(before), 0o644); err != nil {
		t.Fatal(err)
	}
	of := boxAsked{Text: loggedText, Log: true}
	of.Readings = allRight(firstOf(t, p, boxAsked{Text: loggedText}))
	said := make([]string, 3)
	var all sync.WaitGroup
	for i := range 3 { // of which the first two are the same
		one := of
		one.Readings = maps.Clone(of.Readings)
		if i == 2 {
			one.Readings["width of a dado"] = "6.36"
		}
		all.Go(func() { said[i] = strings.Join(firstOf(t, p, one).Logged, "") })
	}
	all.Wait()
	slices.Sort(said)
	if !slices.Equal(said, []string{"4 lines added to shop.csv.", "4 lines added to shop.csv.",
		"Nothing is added: shop.csv has these readings of this day already."}) {
		t.Errorf("%q", said)
	}
	text, err := os.ReadFile(shop)
	if err != nil || !strings.HasPrefix(string(text), before) || strings.Count(string(text), "\n") != 10 ||
		strings.Count(string(text), ",length,447.8,447.8,mm,kept\n") != 2 {
		t.Errorf("%q %v", text, err)
	}
	refused := func(why string, of boxAsked, code int) {
		t.Helper()
		got := answer[struct{ Error string }](t, p, "/api/first", of, code)
		if now, _ := os.ReadFile(shop); !strings.Contains(got.Error, why) || string(now) != string(text) {
			t.Errorf("%q; the log is %q", got.Error, now)
		}
	}
	odd := of
	odd.Readings = map[string]string{"height": "x"}
	if f := firstOf(t, p, odd); len(f.Logged) != 1 || !strings.HasPrefix(f.Logged[0], "Nothing is added") {
		t.Errorf("%q", f.Logged)
	}
	odd = of
	odd.Text = strings.Replace(loggedText, "log: shop.csv\n", "", 1)
	refused("the job names no log", odd, http.StatusBadRequest)
	outside := filepath.Join(t.TempDir(), "shop.csv")
	if err := os.WriteFile(outside, []byte(before), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(outside, filepath.Join(filepath.Dir(path), "link.csv")); err != nil {
		t.Skip(err) // a system where links take a right of their own
	}
	for _, name := range []string{"../shop.csv", outside, "link.csv"} {
		odd.Text = strings.Replace(loggedText, "log: shop.csv", "log: "+name, 1)
		if w := do(p, request(p, "POST", "/api/first", odd)); w.Code < 400 {
			t.Errorf("%s: %d", name, w.Code)
		}
	}
	if now, _ := os.ReadFile(outside); string(now) != before {
		t.Errorf("beyond the folder is %q", now)
	}
	bad := head + "2026-03-02,saw,,fence,6.1,6.12,feet,kept\n"
	text = []byte(bad)
	if err := os.WriteFile(shop, text, 0o644); err != nil {
		t.Fatal(err)
	}
	refused("the job has mistakes", of, http.StatusUnprocessableEntity)
}
