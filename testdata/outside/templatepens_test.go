package outside

import (
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestWeightsOfTemplates: the lines of a template's SVG, of each class, have the width and the gray there that they
// have in its print, as pikepdf reads it, on sheets and on a roll, in millimeters and in inches, with pins and with
// strips.
func TestWeightsOfTemplates(t *testing.T) {
	t.Parallel()
	hand, inch := textOf(t, "../../samples/hand-cut.yaml"), textOf(t, "../../samples/inch-chest.yaml")
	inch = strings.Replace(inch, "\nstock:\n", "\nstock:\n  plates: {thickness: 0.122}\n", 1) +
		"\ntemplates: {stock: plates, roll-width: 36}\n"
	own := regexp.MustCompile(`(?m)^templates:\n`)
	const thin, strong = 0.18, 0.25 // mm, as ISO 128-2 has them
	weights := map[string]float64{"ENGRAVE_INSIDE_LINE_SURFACE": thin, "CUTOUT_INSIDE_THROUGH": strong, "PROFILE_INSIDE_THROUGH": strong, "SCALE": strong}
	for name, job := range map[string]string{
		"on sheets":                hand,
		"on sheets, with strips":   own.ReplaceAllString(hand, "$0  register: lip\n"),
		"on a roll, in mm":         own.ReplaceAllString(hand, "$0  roll-width: 900\n"),
		"on a roll of 36 in, inch": inch,
	} {
		dir, _ := build(t, job)
		svgs, err := filepath.Glob(filepath.Join(dir, "templates", "*.as-drawn.svg"))
		if err != nil || len(svgs) == 0 {
			t.Fatal(name, "no templates", err)
		}
		type pens struct {
			Group    string
			SVG, PDF [2]float64 // width in mm, gray
			Found    bool
			Lines    int
		}
		found := make(map[string]int)
		for _, p := range lines[pens](t, "", python, append([]string{"template_pens.py", filepath.Join(dir, "templates", "as-drawn.pdf")}, svgs...)...) {
			if math.Abs(p.SVG[0]-weights[p.Group]) > 1e-6 {
				t.Errorf("%s: lines of %s are %g mm wide in the SVG", name, p.Group, p.SVG[0])
			}
			if !p.Found { // clipped at the edge of a sheet, or what paper has no use for
				continue
			}
			found[p.Group] += p.Lines
			if math.Abs(p.SVG[0]-p.PDF[0]) > 0.002 || math.Abs(p.SVG[1]-p.PDF[1]) > 0.003 {
				t.Errorf("%s: %d lines of %s are %g mm wide and of gray %g in the SVG, %g and %g on paper", name,
					p.Lines, p.Group, p.SVG[0], p.SVG[1], p.PDF[0], p.PDF[1])
			}
		}
		for group := range weights {
			if found[group] == 0 {
				t.Errorf("%s: no line of %s is in the print: %v", name, group, found)
			}
		}
	}
}
