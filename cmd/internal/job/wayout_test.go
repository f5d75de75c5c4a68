package job

import (
	"slices"
	"strings"
	"testing"
)

// TestWaysOutOfMistakes: each way out of each mistake of the table ends it.
func TestWaysOutOfMistakes(t *testing.T) {
	tried := make(map[string]int)
	for _, m := range mistakes {
		text := m.file()
		_, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
		o := Outlined([]byte(text))
		for _, p := range problems {
			if p.File != "job.yaml" || !o.Sound {
				continue
			}
			for _, w := range o.WaysOut(p) {
				out, err := taken(text, w)
				if err != nil {
					t.Errorf("%s: %s\n%q: %v", m.name, p, w.Label, err)
					continue
				}
				_, after := Read("job.yaml", strings.NewReader(out), Files(openTest))
				inPlace := w.Steps[0].Do == DoWrite || w.Steps[0].Do == DoRespell // lines stay where they are
				still := func(q Problem) bool {
					return q.Code == p.Code && (q.Message == p.Message || inPlace && q.Line == p.Line && q.Column == p.Column)
				}
				if n := count(problems, still); count(after, still) >= n {
					t.Errorf("%s: %s\nis there after %q:\n%s", m.name, p, w.Label, out)
				}
				if w.Label == "" || strings.Contains(w.Label, "\n") {
					t.Errorf("%s: the button says %q", m.name, w.Label)
				}
				tried[w.Steps[0].Do]++
			}
		}
	}
	for _, do := range []string{DoWrite, DoRemove, DoRespell, DoMake} {
		if tried[do] < 3 {
			t.Errorf("%d ways out %s", tried[do], do)
		}
	}
}

// taken is a text after a way out.
func taken(text string, w WayOut) (string, error) {
	for _, s := range w.Steps {
		texts, err := s.Texts([]byte(text), Files(openTest))
		if err != nil {
			return "", err
		}
		text = string(texts[0])
	}
	return text, nil
}

func count(list Problems, is func(Problem) bool) int {
	return len(slices.DeleteFunc(slices.Clone(list), func(p Problem) bool { return !is(p) }))
}

// TestWayLabels: a button says what it does in the words of the form.
func TestWayLabels(t *testing.T) {
	for _, c := range []struct{ path, value, want string }{
		{"drawers/0/sides", "oak", "Sides: oak"},
		{"drawers/0/joinery/bottom-fit", "flush", "Joinery, How the bottom is held: flush"},
		{"drawers/0/cutter", "{kind: router, diameter: 6 mm}", "Cutting tool: kind: router, diameter: 6 mm"},
		{"drawers/0/dividers/1/height", "60 mm", "divider 2, Height: 60 mm"},
		{"stock/birch/count", "3", "birch, Sheets in the shop: 3"},
		{"router/tabs/height", "2", "CNC router, Tabs, Height: 2"},
		{"units", "mm", "Unit of bare numbers: mm"},
	} {
		if got := wayOf([]Edit{{strings.Split(c.path, "/"), c.value}}).Label; got != c.want {
			t.Errorf("%s: %q, want %q", c.path, got, c.want)
		}
	}
}
