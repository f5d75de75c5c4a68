package job

import (
	"errors"
	"io"
	"io/fs"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/shoplog"
)

const logged = "units: mm\nstock: {a: {thickness: 12.2}, b: {thickness: 5.9}}\n" +
	"cutter: {kind: saw, width: 6.35, machine: old saw, name: stack}\n" +
	"drawers: [{name: d, outside: 400 x 90 x 300, sides: a, bottom: b}]\n"

const logText = "date,machine,cutter,what,aimed,measured,units,then\n"

// readLogged reads a job whose files are in a map.
func readLogged(text string, files map[string]string) (*Job, Problems) {
	return Read("job.yaml", strings.NewReader(text), Files(func(name string) (io.ReadCloser, error) {
		switch text, there := files[name]; {
		case name == "shut.csv":
			return nil, errors.New("no right to read it")
		case !there:
			return nil, fs.ErrNotExist
		default:
			return io.NopCloser(strings.NewReader(text)), nil
		}
	}))
}

// TestFromLog: an accuracy follows from the log of the drawer's machine and cutter, with the stated one before it,
// where the job asks for it.
func TestFromLog(t *testing.T) {
	shop := map[string]string{"shop.csv": logText + strings.Repeat("2026-03-02,old saw,stack,fence,6,6.3,mm,kept\n", 6) +
		strings.Repeat("2026-03-02,old saw,other,cutter,6,6.3,mm,kept\n", 6)}
	accuracy := func(more string) fit.Accuracy {
		t.Helper()
		j, problems := readLogged(logged+more, shop)
		if len(problems) > 0 {
			t.Fatalf("%s: %+v", more, problems)
		}
		if tool := (shoplog.Tool{Machine: "old saw", Cutter: "stack"}); j.Drawers[0].Tool != tool {
			t.Errorf("the tool is %+v", j.Drawers[0].Tool)
		}
		return j.Drawers[0].Accuracy
	}
	for _, more := range []string{"", "accuracy: {from-log: no}\n"} {
		if a := accuracy("log: shop.csv\n" + more); a != fit.SawAccuracy {
			t.Errorf("not asked for, it is %+v", a)
		}
	}
	for _, c := range []struct {
		more, stated string
		fence        float64
	}{{"accuracy: from-log\n", "", fit.SawAccuracy.Fence}, {"accuracy: {from-log: yes, fence: 0.4}\n", "", 0.4}} {
		a := accuracy("log: shop.csv\n" + c.more)
		if a.Log == nil || !a.Learned(fit.OfFence) || a.Learned(fit.OfCutter) ||
			a.Log.Stated.Fence != c.fence || a.Fence < 0.3 {
			t.Errorf("%s: %+v", c.more, a)
		}
	}
	if a := accuracy("log: shop.csv\naccuracy: {from-log: yes, keep-cuts: 5}\n"); a.Log.Laws[fit.OfFence].Cuts != 5 {
		t.Errorf("%d cuts count", a.Log.Laws[fit.OfFence].Cuts)
	}
}

// TestLogMistakes: what is wrong with a log, or that it is not there, is said at its place.
func TestLogMistakes(t *testing.T) {
	files := map[string]string{"bad.csv": logText + "2026-03-02,saw,,fence,6,x,mm,kept\n"}
	for more, want := range map[string]struct {
		level geom.Level
		code  Code
		file  string
		line  int
		says  string
	}{
		"log: bad.csv\n":                            {geom.LevelError, CodeLog, "bad.csv", 2, `column 6, measured: "x" is no length`},
		"log: none.csv\naccuracy: from-log\n":       {geom.LevelNote, CodeFile, "job.yaml", 5, `there is no "none.csv" yet`},
		"log: shut.csv\n":                           {geom.LevelError, CodeFile, "job.yaml", 5, "cannot be opened: no right"},
		"log: /etc/x\n":                             {geom.LevelError, CodeFile, "job.yaml", 5, "does not begin in the folder"},
		"accuracy: from-log\n":                      {geom.LevelError, CodeMissingKey, "job.yaml", 5, "the job names none"},
		"log: none.csv\naccuracy: {keep-cuts: 4}\n": {geom.LevelError, CodeOutOfRange, "job.yaml", 6, "keep-cuts"},
		"log: none.csv\naccuracy: by-the-log\n":     {geom.LevelError, CodeUnknownWord, "job.yaml", 6, "accuracy"},
	} {
		_, problems := readLogged(logged+more, files)
		if len(problems) == 0 {
			t.Errorf("%s: nothing is said", more)
			continue
		}
		p := problems[0]
		for _, q := range problems {
			if q.Level > p.Level {
				p = q
			}
		}
		if p.Level != want.level || p.Code != want.code || p.File != want.file || p.Line != want.line ||
			!strings.Contains(p.Message, want.says) || p.Hint == "" {
			t.Errorf("%s: %+v", more, p)
		}
	}
}
