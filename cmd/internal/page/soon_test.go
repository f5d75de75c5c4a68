package page

import (
	"net/http"
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom/joinery"
)

// TestNumbersComeSoon: of many drawers a tab that asks for it gets all that it shows but what is said of them,
// and that is the same as in the whole answer.
func TestNumbersComeSoon(t *testing.T) {
	p, _ := open(t, sixtyText)
	for _, show := range []string{"fit", "parts", "setups", "told", "sheets"} {
		v := view{Drawer: "base2 bank-3", Show: show, Whole: true}
		whole := answer[looked](t, p, "/api/look", asked{sixtyText, v}, http.StatusOK)
		v.Soon = true
		soon := answer[looked](t, p, "/api/look", asked{sixtyText, v}, http.StatusOK)
		if !soon.Soon || whole.Soon || len(soon.Problems) != 0 || len(whole.Problems) == 0 {
			t.Errorf("%s: %t with %d problems, and %t with %d", show, soon.Soon, len(soon.Problems), whole.Soon, len(whole.Problems))
		}
		soon.Soon, soon.Problems, soon.More = false, whole.Problems, whole.More
		if soon.Fit != nil {
			for i, m := range whole.Fit.Measures {
				if m.Mark != joinery.StateRight { // what helps is said later
					soon.Fit.Measures[i].Help = m.Help
				}
			}
		}
		if !reflect.DeepEqual(soon, whole) {
			t.Errorf("%s: what comes soon is another:\n%+v\nthan the whole:\n%+v", show, soon, whole)
		}
	}
}

// TestWholeAnswers: few drawers, mistakes, and what is to be bought have everything at once.
func TestWholeAnswers(t *testing.T) {
	p, _ := open(t, sixtyText)
	for name, c := range map[string]struct {
		text, show string
		failed     bool
	}{
		"a cabinet":          {bankText, "fit", false},
		"what is bought":     {sixtyText, "buy", false},
		"a mistake":          {strings.Replace(sixtyText, "hard: {thickness: 5.9", "hard: {thickness: 0", 1), "fit", true},
		"no box":             {strings.Replace(sixtyText, "sides: birch", "sides: birch, joinery: {cutter-height: 12}", 1), "fit", true},
		"no file":            {"", "fit", true},
		"what is no mapping": {"- 3\n", "fit", true},
	} {
		v := view{Show: c.show}
		whole := answer[looked](t, p, "/api/look", asked{c.text, v}, http.StatusOK)
		v.Soon = true
		got := answer[looked](t, p, "/api/look", asked{c.text, v}, http.StatusOK)
		if got.Soon || got.Failed != c.failed || !reflect.DeepEqual(got, whole) {
			t.Errorf("%s: soon %t, failed %t, or another than the whole", name, got.Soon, got.Failed)
		}
	}
}
