package files

import (
	"maps"
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/export/drawing"
	"drawerwright/export/layer"
)

// weights are how wide and dark the lines of each group of a drawing are.
func weights(list []drawing.Shape) map[string][2]float64 {
	out := make(map[string][2]float64)
	for _, s := range list {
		if s.Group != "" && s.Group != layer.Scale {
			out[s.Group] = [2]float64{s.Pen.Width, float64(s.Pen.Ink)}
		}
	}
	return out
}

// TestPrintsHaveTheWeightsOfTheSVG: what is cut and what is scored has lines of the same width and ink
// in the SVG of a template and in its print on sheets.
func TestPrintsHaveTheWeightsOfTheSVG(t *testing.T) {
	text, err := os.ReadFile("../../../samples/hand-cut.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, problems := job.Read("hand-cut.yaml", strings.NewReader(string(text)))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	for _, p := range b.Templates.Prints {
		want := weights(p.Made(0).Picture().Shapes)
		found := make(map[string][2]float64)
		for _, page := range printed(b, p) {
			maps.Copy(found, weights(page.Shapes))
		}
		if len(want) == 0 || !maps.Equal(found, want) {
			t.Errorf("%s: printed with %v, in the SVG %v", p.Name, found, want)
		}
	}
}
