package job

import (
	"math"
	"strings"
	"testing"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

const fitBase = `units: mm
stock:
  ply: {thickness: [12.1, 12.3]}
  thin: {thickness: 6}
  oak: {thickness: 12, material: white oak}
  sheet: {thickness: 9, tolerance: en315-unsanded}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: a, outside: 400 x 100 x 500, sides: ply, bottom: thin}
`

func TestFitKeys(t *testing.T) {
	j := read(t, fitBase+"limits: {max-tongue-clearance: 0.3, flush: 0.2, diagonal: 1.5}\naccuracy: {fence: 0.1, cut: 0}\nspacers: [6, 6, 0.1, 25.4]\n")
	limits := joinery.DefaultLimits
	limits.TongueClearance.Max, limits.Flush, limits.Diagonal = 0.3, 0.2, 1.5
	if j.Drawers[0].Limits != limits {
		t.Errorf("limits are %+v", j.Drawers[0].Limits)
	}
	saw := fit.SawAccuracy
	saw.Fence, saw.Cut = 0.1, 0
	if j.Drawers[0].Accuracy != saw {
		t.Errorf("accuracy is %+v", j.Drawers[0].Accuracy)
	}
	if len(j.Spacers) != 4 || j.Spacers[0] != 6 || j.Spacers[1] != 6 || j.Spacers[2] != 0.1 || j.Spacers[3] != 25.4 {
		t.Errorf("spacers are %v", j.Spacers)
	}
}

// TestCrossedLimits: a least limit over its most is said, and nothing is judged by the two.
func TestCrossedLimits(t *testing.T) {
	for _, text := range []string{"min-tongue-clearance: 0.6", "max-groove-clearance: 0.01",
		"min-bottom-clearance: 3, max-bottom-clearance: 2"} {
		j, problems := Read("job.yaml", strings.NewReader(fitBase+"limits: {"+text+"}\n"))
		if len(problems) != 1 || !problems.Failed() || j.Drawers[0].Limits != joinery.DefaultLimits {
			t.Errorf("%s: %v, %+v", text, problems, j.Drawers)
		}
	}
}

// EN 315 (values from memory, see geom/wood): sanded sheets of t mm are t - (0.4 + 0.03 t)
// to t + (0.2 + 0.03 t); unsanded ones up to t + (0.8 + 0.03 t). PS 1: 1/64 in up to 3/4 in.
func TestSpreads(t *testing.T) {
	j := read(t, fitBase)
	inches := read(t, strings.NewReplacer("units: mm", "units: in", "[12.1, 12.3]", "15/32", "12,", "1/2,", ": 6}", ": 1/4}", ": 9", ": 3/8", "6.35", "1/4", "400 x 100 x 500", "16 x 4 x 20").Replace(fitBase))
	for _, c := range []struct {
		job   *Job
		stock string
		want  fit.Spread
	}{
		{j, "ply", fit.Spread{Minus: 0.1, Plus: 0.1}},
		{j, "thin", fit.Spread{Minus: 0.58, Plus: 0.38, Assumed: "en315-sanded"}},
		{j, "oak", fit.Spread{}},
		{j, "sheet", fit.Spread{Minus: 0.67, Plus: 1.07, Assumed: "en315-unsanded"}},
		{inches, "ply", fit.Spread{Minus: 25.4 / 64, Plus: 25.4 / 64, Assumed: "ps1-sanded"}},
	} {
		got := c.job.Spreads[c.stock]
		if math.Abs(got.Minus-c.want.Minus) > 1e-9 || math.Abs(got.Plus-c.want.Plus) > 1e-9 || got.Assumed != c.want.Assumed {
			t.Errorf("%s is spread by %+v, not %+v", c.stock, got, c.want)
		}
	}
}

func TestFitMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"limits: {min-tongue-clearance: 0.5}": "min-tongue-clearance is 0.5 mm, more than max-tongue-clearance, 0.4 mm",
		"limits: {max-bottom-clearance: 0.2}": "min-bottom-clearance is 0.5 mm, more than max-bottom-clearance, 0.2 mm",
		"limits: {flush: -1}":                 "flush is -1 mm",
		"accuracy: {fence: 9}":                "fence",
		"accuracy: {speed: 9}":                "accuracy has no entry",
		"spacers: 6":                          "spacers needs a list",
		"spacers: [0]":                        "spacers",
		"spacers: [" + strings.Repeat("1, ", maxSpacers) + "1]": "spacers",
	} {
		_, problems := Read("job.yaml", strings.NewReader(fitBase+text+"\n"))
		if len(problems) != 1 || !problems[0].IsError() || !strings.Contains(problems[0].Message, want) || problems[0].Line != 10 {
			t.Errorf("%s: %v", text, problems)
		}
	}
}
