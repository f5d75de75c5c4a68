package job

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// TestLabelSheetsFillTheirPaper: labels, gaps and margins of each sheet make up the width of its paper to a tenth of a
// millimeter, and its rows leave margins of a quarter of an inch to 22 mm.
func TestLabelSheetsFillTheirPaper(t *testing.T) {
	papers := map[string][2]float64{"A4": {210, 297}, "Letter": {215.9, 279.4}}
	for _, s := range labelSheets {
		paper := papers[s.Paper]
		wide := float64(s.Columns)*s.Wide + float64(s.Columns-1)*s.Between + 2*s.Aside
		if math.Abs(wide-paper[0]) > 0.1 {
			t.Errorf("%s of %s is %.2f mm wide", s.Name, s.Paper, wide)
		}
		if top := (paper[1] - float64(s.Rows)*s.High) / 2; top < labelInch/4 || top > 22 {
			t.Errorf("%s of %s has margins of %.2f mm above and below", s.Name, s.Paper, top)
		}
		if name := fmt.Sprintf("%dx%d", s.Columns, s.Rows); name != s.Name {
			t.Errorf("%s is called %s", name, s.Name)
		}
	}
}

// TestLabelSheets: a job takes a sheet of its paper, A4 or, in inches, Letter; one of another paper is refused where it
// stands, with the paper that has it and the sheets that there are.
func TestLabelSheets(t *testing.T) {
	read := func(units, paper string) (*Job, Problems) {
		_, rest, _ := strings.Cut(platesJob, "\n")
		return Read("job.yaml", strings.NewReader("units: "+units+"\npaper: "+paper+"\n"+rest))
	}
	j, problems := read("mm", "{labels: 3x8}")
	if problems.Failed() || j.Paper.Sheet == nil || j.Paper.Rows != 8 || j.Paper.Sheet.High != 33.9 {
		t.Errorf("%v %v", j, problems)
	}
	j, problems = read("mm", "{size: Letter, labels: 2x7}")
	if problems.Failed() || math.Abs(j.Paper.Sheet.High-33.867) > 0.001 {
		t.Errorf("%v %v", j, problems)
	}
	_, problems = read("mm", "{labels: 3x10}")
	said := fmt.Sprint(problems)
	for _, want := range []string{"job.yaml:2:17",
		"no sheet of 3x10 labels on A4", "size: Letter", "2x4, 2x7, 2x8, 3x7, 3x8"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
}
