package job

import (
	"fmt"
	"strings"
	"testing"
)

// oneMistake is a job with one mistake, and the only error that it gives.
type oneMistake struct{ was, is, at, says, hint string }

// oneMistakes are what people write who have read the README alone.
var oneMistakes = []oneMistake{
	{"bottom: hardboard", "bottom: hardboard\n    dividers: [{direction: across, stock: hardboard, at: 200}]", "11:58",
		`at cannot be "200"`, "write `at: [200]` for one of that length; a number alone is how many, 1 to 50"},
	{"bottom: hardboard", "bottom: hardboard\n    dividers: [{direction: across, stock: hardboard, at: 60 mm}]", "11:58",
		`at cannot be "60 mm"`, "write `at: [60 mm]` for one of that length; a number alone is how many, 1 to 50"},
	{"12.21", "12.2 in", "3:23", "thickness is 12.2 in; it can be 1 mm to 100 mm", "did you mean 12.2 mm?"},
	{"6.35", "6.35in", "5:28", "width is 6.35in; it can be 0.5 mm to 60 mm", "did you mean 6.35 mm?"},
	{"6.35", `6.35"`, "5:28", `width is 6.35"; it can be 0.5 mm to 60 mm`, "did you mean 6.35 mm?"},
	{"[12.21, 12.16]", "[12.21 in, 12.16 in]", "3:22", "thickness has 12.21 in, 12.16 in; each can be 1 mm to 100 mm", "did you mean [12.21 mm, 12.16 mm]?"},
	{"460 x 140 x 500", "460 x 140 x 500 in", "8:14", "outside has 460 in, 500 in; each can be 1 mm to 4000 mm", "did you mean 460 x 140 x 500 mm?"},
	{"460 x 140 x 500", "[0.7, 0.2, 0.8]", "8:14", "outside has 0.7 mm, 0.2 mm, 0.8 mm; each can be 1 mm to 4000 mm", "did you mean [0.7 in, 0.2 in, 0.8 in]?"},
	{"bottom: hardboard", "bottom: hardboard\n    drawer-front: {stock: birch, width: 470, height: 150, overhang-left: 5, overhang-below: 5, handles: pull}", "11:105",
		`handles cannot be "pull"`, "write `handle`, the word for it here"},
	{"bottom: hardboard", "bottom: hardboard\n    drawer-front: {stock: birch, width: 470, height: 150, overhang-left: 5, overhang-below: 5, handle-hight: 60, handles: knob}", "11:96",
		`drawer-front has no entry "handle-hight"`, "did you mean `handle-from-top`?"},
	{"bottom: hardboard", "bottom: hardboard\n    drawer-front: {stock: birch, width: 470, height: 150, overhang-left: 5, overhang-below: 5, handle-diam: 5, handles: knob}", "11:96",
		`drawer-front has no entry "handle-diam"`, "did you mean `handle-diameter`, `handle-spacing` or `handle-from-top`?"},
	{"[12.21, 12.16]", "[12.21, 121.6, 12.24]", "3:30", "thickness is 121.6 mm; it can be 1 mm to 100 mm", "did you mean 12.16?"},
	{"[12.21, 12.16]", "[12.21, 0.48 mm, 12.24]", "3:30", "thickness is 0.48 mm; it can be 1 mm to 100 mm", "did you mean 0.48 in?"},
	{"[12.21, 12.16]", "[12.21, 17000, 12.24]", "3:30", "thickness is 17000 mm; it can be 1 mm to 100 mm", "measure again, or look for a slip of the decimal point"},
	{"12.21", "12000", "3:23", "thickness is 12000 mm; it can be 1 mm to 100 mm", "did you mean 12?"},
}

const mistakenJob = `units: mm
stock:
  birch: {thickness: [12.21, 12.16]}
  hardboard: {thickness: 5.9}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: wide
    outside: 460 x 140 x 500
    sides: birch
    bottom: hardboard
`

// TestOneMistakeIsOneError: each mistake is one error, at its place, with what was meant.
func TestOneMistakeIsOneError(t *testing.T) {
	for _, c := range oneMistakes {
		text := strings.Replace(mistakenJob, c.was, c.is, 1)
		_, problems := Read("job.yaml", strings.NewReader(text))
		if text == mistakenJob || len(problems) != 1 {
			t.Errorf("%s: %d problems: %v", c.is, len(problems), problems)
			continue
		}
		p := problems[0]
		if at := fmt.Sprintf("%d:%d", p.Line, p.Column); at != c.at || p.Message != c.says || p.Hint != c.hint {
			t.Errorf("%s:\n%s %s\n  %s\nnot\n%s %s\n  %s", c.is, at, p.Message, p.Hint, c.at, c.says, c.hint)
		}
	}
}
