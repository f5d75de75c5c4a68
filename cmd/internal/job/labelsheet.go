package job

import (
	"fmt"
	"slices"
	"strings"
)

// LabelSheet is a sheet of labels as it is sold: of which paper, how many labels it has, and where, in mm.
// They have equal margins at the left and the right and above and below.
type LabelSheet struct {
	Name, Paper    string
	Columns, Rows  int
	Wide, High     float64 // of a label
	Aside, Between float64 // from the edge of the paper to the first column, and between columns; rows touch
}

const labelInch = 25.4

// labelSheets are usual ones, by measure: labels and gaps fill the width of the paper, rows its
// height but for equal margins. Common practice, no source.
var labelSheets = []LabelSheet{
	{"2x4", "A4", 2, 4, 99.1, 67.7, 4.65, 2.5},
	{"2x7", "A4", 2, 7, 99.1, 38.1, 4.65, 2.5},
	{"2x8", "A4", 2, 8, 99.1, 33.9, 4.65, 2.5},
	{"3x7", "A4", 3, 7, 63.5, 38.1, 7.25, 2.5},
	{"3x8", "A4", 3, 8, 63.5, 33.9, 7.25, 2.5},
	{"2x3", "Letter", 2, 3, 4 * labelInch, 10.0 / 3 * labelInch, 5.0 / 32 * labelInch, 3.0 / 16 * labelInch},
	{"2x5", "Letter", 2, 5, 4 * labelInch, 2 * labelInch, 5.0 / 32 * labelInch, 3.0 / 16 * labelInch},
	{"2x7", "Letter", 2, 7, 4 * labelInch, 4.0 / 3 * labelInch, 5.0 / 32 * labelInch, 3.0 / 16 * labelInch},
	{"2x10", "Letter", 2, 10, 4 * labelInch, labelInch, 5.0 / 32 * labelInch, 3.0 / 16 * labelInch},
	{"3x10", "Letter", 3, 10, 2.625 * labelInch, labelInch, 3.0 / 16 * labelInch, labelInch / 8},
}

// labelWords are what labels can be: the layouts of this program, none, and the names of sheets.
func labelWords() []string {
	list := []string{LabelsGrid, LabelsPage, LabelsNone}
	for _, s := range labelSheets {
		if !slices.Contains(list, s.Name) {
			list = append(list, s.Name)
		}
	}
	return list
}

// labelSheet finds the sheet of labels that a file asks for; nil where it asks for none, or for one
// that there is not on its paper, which is reported.
func (r *reader) labelSheet(s *section, size string) *LabelSheet {
	asked := s.values["labels"]
	var there, on []string
	for i, sheet := range labelSheets {
		switch {
		case sheet.Name == asked.text && sheet.Paper == size:
			return &labelSheets[i]
		case sheet.Name == asked.text:
			on = append(on, sheet.Paper)
		case sheet.Paper == size:
			there = append(there, sheet.Name)
		}
	}
	if len(on) > 0 {
		hint := fmt.Sprintf("write `size: %s`, or `labels: grid`", on[0])
		if len(there) > 0 {
			hint += ", or one of " + size + ": " + strings.Join(there, ", ")
		}
		r.fail(CodeUnknownWord, asked.at, hint, "there is no sheet of %s labels on %s", asked.text, size)
	}
	return nil
}
