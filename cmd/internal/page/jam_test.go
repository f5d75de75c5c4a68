package page

import (
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/geom/joinery"
)

// clearancesIn are the clearances of a scene that are not right, by what they are of, as told in the
// picture, and its boxes.
func clearancesIn(t *testing.T, scene json.RawMessage) (wrong map[string]string, boxes []string) {
	t.Helper()
	var read struct {
		Boxes []struct {
			Name  string
			Plays []struct {
				Name, Measure, Verdict string
				Play                   float64
			}
		}
	}
	if err := json.Unmarshal(scene, &read); err != nil {
		t.Fatal(err)
	}
	wrong = map[string]string{}
	for _, b := range read.Boxes {
		boxes = append(boxes, b.Name)
		for _, p := range b.Plays {
			if p.Verdict != "" {
				wrong[p.Name] = p.Verdict
			}
		}
	}
	return wrong, boxes
}

// TestJamIsSeen: a job whose parts do not go in is drawn, with the word of its error, and nothing
// else comes of it; what has no shape is not drawn.
func TestJamIsSeen(t *testing.T) {
	p, path := open(t, jobText)
	front, word := "box front in the dado of the left side", string(joinery.WillNot)
	for _, c := range []struct {
		was, is  string
		seen     string // that is not right
		boxes    int
		sizes    bool // can be changed in the picture
		nowThere string
	}{
		{"[12.21, 12.16, 12.24]", "13", front, 1, true, word},
		{"5.9", "6.5", "bottom in the groove of the back", 1, true, word},
		{"[12.21, 12.16, 12.24]", "0.9", "", 0, false, ""},
		{"width: 6.35", "width: oops", "", 0, false, ""},
		{"sheet: 1525 x 1525", "sheet: 300 x 300", "", 1, true, ""},
		{"460 x 140 x 500", "20 x 140 x 500", "", 0, false, ""},
		{"460 x 140 x 500", "460 x 140", "", 0, false, ""}, // it cannot be read: the other is not shown for it
	} {
		text := strings.Replace(jobText, c.was, c.is, 1)
		got := askedFor(t, p, text, "fit")
		numbers := got.Fit != nil || got.Strip != nil || got.Tables != nil || got.Answer != ""
		if !got.Failed || numbers || (len(got.Measures) > 0) != c.sizes {
			t.Errorf("%s: %+v", c.is, got)
		}
		if (len(got.Scene) > 0) != (c.boxes > 0) {
			t.Errorf("%s: drawn %t", c.is, len(got.Scene) > 0)
			continue
		}
		if (got.Known != nil) != (c.boxes > 0) {
			t.Errorf("%s: known are %+v", c.is, got.Known)
		}
		if c.boxes == 0 {
			continue
		}
		told := func(row []cell) bool { return row[3].Text == "✕ "+word && row[3].Level == present.Bad }
		if jams := slices.ContainsFunc(got.Known.Rows, told); jams != (c.nowThere == word) {
			t.Errorf("%s: the measures are %+v", c.is, got.Known.Rows)
		}
		wrong, boxes := clearancesIn(t, got.Scene)
		if len(boxes) != c.boxes || c.seen != "" && wrong[c.seen] != c.nowThere {
			t.Errorf("%s: %s is %q in %v", c.is, c.seen, wrong[c.seen], wrong)
		}
		says := func(q problem) bool { return q.Level == "error" && strings.Contains(q.Message, "it "+word) }
		if told := slices.ContainsFunc(got.Problems, says); told != (c.nowThere == word) {
			t.Errorf("%s: the picture says %q, the messages %+v", c.is, c.nowThere, got.Problems)
		}
		for _, what := range []string{"all", "packet", "labels", "sheets", "shop"} {
			w := do(p, request(p, "POST", "/api/take", map[string]string{"text": text, "what": what}))
			if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "mistakes") {
				t.Errorf("%s can be taken: %d %.300s", what, w.Code, w.Body)
			}
		}
	}
	flat := answer[looked](t, p, "/api/look", asked{strings.Replace(jobText, "5.9", "6.5", 1), view{Flat: true, Drawer: "narrow"}}, http.StatusOK)
	if !flat.Failed || flat.Picture == nil || flat.Drawer != 1 || len(flat.Drawers) != 2 {
		t.Errorf("without the viewer: %+v", flat)
	}
	if found, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "*")); len(found) != 1 {
		t.Errorf("the folder has %v", found)
	}
	if text, _ := os.ReadFile(path); string(text) != jobText {
		t.Error("the file has changed")
	}
}

// TestOneLimit: a front that is made thicker, 0.01 at a time, goes from right over tight to what does
// not go in at the same thickness in the strip, the fit, the picture and the message. Its tongue is
// half of it, its dado 6.35: at 12.7 nothing is left.
func TestOneLimit(t *testing.T) {
	p, _ := open(t, jobText)
	const measure, seen = "box front tongue clearance in its dado", "box front in the dado of the left side"
	words := map[string]bool{}
	for hundredths := 1230; hundredths <= 1275; hundredths++ {
		thickness := fmt.Sprintf("[%d.%02d, %[1]d.%02[2]d]", hundredths/100, hundredths%100)
		l := askedFor(t, p, strings.Replace(jobText, "[12.21, 12.16, 12.24]", thickness, 1), "fit")
		wrong, _ := clearancesIn(t, l.Scene)
		word := wrong[seen]
		words[word] = true
		jams := hundredths >= 1270
		told := slices.ContainsFunc(l.Problems, func(q problem) bool {
			return q.Level == "error" && strings.HasSuffix(q.Message, "it "+word)
		})
		if jams != l.Failed || jams != told || jams != (word == string(joinery.WillNot)) || jams != (l.Strip == nil) {
			t.Errorf("%s: failed %t, told %t, in the picture %q, strip %+v", thickness, l.Failed, told, word, l.Strip)
		}
		if jams {
			continue
		}
		at := slices.IndexFunc(l.Fit.Measures, func(m drawnMeasure) bool { return m.Name == measure })
		m := l.Fit.Measures[at]
		right := m.Mark == joinery.StateRight
		if right != (word == "") || !right && m.Verdict != word {
			t.Errorf("%s: the picture says %q, the fit %q", thickness, word, m.Verdict)
		}
		if !right && l.Strip.Mark == joinery.StateRight {
			t.Errorf("%s: the strip says %q of what is %s", thickness, l.Strip.Word, word)
		}
	}
	if !words[""] || !words["may come out tight"] || !words[string(joinery.Tight)] || !words[string(joinery.WillNot)] {
		t.Errorf("the words are %v", words)
	}
}

// TestCabinetOfWhatIsDrawn: of a cabinet in which a drawer has no shape the others are drawn.
func TestCabinetOfWhatIsDrawn(t *testing.T) {
	j, problems := job.Read("bank.yaml", strings.NewReader(bankText))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	at := slices.IndexFunc(b.Drawers, func(d batch.Drawer) bool { return d.Spec.Name == "bank-2" })
	b.Drawers[at].Shaped = false
	_, boxes := clearancesIn(t, sceneOf(b, at+1, true, false))
	if len(boxes) != 11 || slices.Contains(boxes, "bank-2") {
		t.Errorf("drawn are %v", boxes)
	}
}
