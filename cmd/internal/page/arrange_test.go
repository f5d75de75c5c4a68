package page

import (
	"net/http"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
)

// A stock is renamed with all that refer to it, drawers change places, and the job is converted, each
// as one edit that leaves the comments.
func TestArrange(t *testing.T) {
	p, _ := open(t, jobText)
	for _, c := range []struct {
		do, path, value string
		says, not       string
	}{
		{"rename", "stock/birch", "oak 12", "  oak 12: {thickness: [12.21,", "sides: birch"},
		{"move", "drawers/1", "0", "drawers:\n  - name: narrow\n", "drawers:\n  # the wide one"},
		{"convert", "units", "in", "outside: 18.1102 x 5.5118 x 19.685   # width x height x depth", "units: mm"},
	} {
		e := edited{Text: jobText, Step: step(c.do, strings.Split(c.path, "/"), c.value)}
		got := answer[looked](t, p, "/api/edit", e, http.StatusOK)
		if got.Failed || !strings.Contains(got.Text, c.says) || strings.Contains(got.Text, c.not) {
			t.Errorf("%s: %+v\n%s", c.do, got.Problems, got.Text)
		}
		if strings.Count(got.Text, "#") != strings.Count(jobText, "#") {
			t.Errorf("%s loses comments:\n%s", c.do, got.Text)
		}
	}
	for _, c := range []job.Step{step("move", []string{"drawers", "0"}, "first"), step("move", []string{"drawers", "0"}, "9"),
		step("convert", []string{"units"}, "cubits"), step("rename", []string{"stock", "birch"}, "hard"), step("turn", nil, "")} {
		answer[map[string]string](t, p, "/api/edit", edited{Text: jobText, Step: c}, http.StatusUnprocessableEntity)
	}
}
