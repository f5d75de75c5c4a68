package page

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
)

// askedFor is what a look answers on a list.
func askedFor(t *testing.T, p *Page, text, list string) looked {
	t.Helper()
	return answer[looked](t, p, "/api/look", asked{text, view{Show: list}}, http.StatusOK)
}

// TestFitIsSent: the fit comes as drawings, one for each measure of the table, and with no other list.
func TestFitIsSent(t *testing.T) {
	p, _ := open(t, jobText)
	l := askedFor(t, p, jobText, "fit")
	rows := l.Tables[1].Rows
	if l.Fit == nil || len(l.Fit.Measures) != len(rows) || len(rows) < 9 {
		t.Fatalf("%d rows, drawn %+v", len(rows), l.Fit)
	}
	for i, m := range l.Fit.Measures {
		if m.Name != rows[i][0].Text || m.Verdict != rows[i][4].Text {
			t.Errorf("beside %v is drawn %s, %s", rows[i], m.Name, m.Verdict)
		}
		if !strings.Contains(m.Said, "likely "+rows[i][3].Text) || len(m.Picture.Shapes) < 9 {
			t.Errorf("%s is told as %q and has %d shapes", m.Name, m.Said, len(m.Picture.Shapes))
		}
	}
	if other := askedFor(t, p, jobText, "parts"); other.Fit != nil {
		t.Error("the cut list comes with the fit")
	}
}

// TestStrip: the word of a verdict has its mark, and what to watch is a measure of the fit.
func TestStrip(t *testing.T) {
	fits := strings.Replace(jobText, "5.9", "[5.92, 5.86, 5.95]", 1)
	p, _ := open(t, fits)
	for thickness, mark := range map[string]joinery.State{"[12.21, 12.16, 12.24]": "right", "[12.21, 11.8, 12.5]": "doubt",
		"[11.4, 12.2, 13]": "wrong"} {
		l := askedFor(t, p, strings.Replace(fits, "[12.21, 12.16, 12.24]", thickness, 1), "fit")
		s := l.Strip
		if s == nil || s.Mark != mark || s.Off != (mark != "right") {
			t.Errorf("boards of %s: %+v", thickness, s)
			continue
		}
		if s.Word+": "+s.Said != l.Answer {
			t.Errorf("the strip says %q of what is %q elsewhere", s.Word+": "+s.Said, l.Answer)
		}
		found := false
		for _, m := range l.Fit.Measures {
			found = found || m.Name == s.Measure && strings.HasPrefix(s.Watch, m.Title+" (")
		}
		if !found || s.Drawer != l.Fit.Drawer {
			t.Errorf("watch %q of %s, which is no measure of %s", s.Measure, s.Drawer, l.Fit.Drawer)
		}
	}
	if l := askedFor(t, p, "units: mm\n", "fit"); !l.Failed || l.Strip != nil {
		t.Errorf("a job with mistakes has the verdict %+v", l.Strip)
	}
}

// TestCannotBeCut: what fits and is no setup of the machine has the word and the sign of what is wrong, and no measure
// has it.
func TestCannotBeCut(t *testing.T) {
	p, _ := open(t, jobText)
	text := strings.Replace(jobText, "5.9", "[5.92, 5.86, 5.95]", 1) + "machines:\n  saw: {max-height: 2}\n"
	l := askedFor(t, p, text, "fit")
	if l.Strip == nil || l.Strip.Word != record.CannotBeCut || l.Strip.Mark != joinery.StateWrong || l.Strip.Off {
		t.Errorf("the strip is %+v with %+v", l.Strip, l.Problems)
	}
}

// TestLogIsShown: a job that takes its accuracy from a log beside it is looked at by that, and the fit says what
// the log shows and how the odds change; without a log yet it is as it usually is.
func TestLogIsShown(t *testing.T) {
	logged := strings.Replace(jobText, "units: mm", "log: shop.csv\naccuracy: from-log\nunits: mm", 1)
	p, file := open(t, logged)
	usual := askedFor(t, p, jobText, "fit")
	before := askedFor(t, p, logged, "fit")
	if before.Answer != usual.Answer {
		t.Errorf("without a log it is %q, not %q", before.Answer, usual.Answer)
	}
	log := "date,machine,cutter,what,aimed,measured,units,then\n" +
		strings.Repeat("2026-03-02,saw,,fence,6,6.3,mm,kept\n2026-03-02,saw,,fence,6,5.8,mm,kept\n", 6)
	if err := os.WriteFile(filepath.Join(filepath.Dir(file), "shop.csv"), []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	l := askedFor(t, p, logged+"\n", "fit")
	last := l.Tables[len(l.Tables)-1]
	if l.Answer == usual.Answer || len(l.Tables) != len(usual.Tables)+1 || len(last.Rows) != 1 ||
		last.Rows[0][0].Text != "saw, fence" || last.Rows[0][1].Text != "12" ||
		!strings.Contains(last.Title, "By the log shop.csv, ") {
		t.Errorf("%s: %+v", l.Answer, last)
	}
}
