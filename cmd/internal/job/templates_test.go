package job

import (
	"strings"
	"testing"
)

const platesJob = `units: mm
stock:
  ply: {thickness: 12.2}
  plate: {thickness: [3.1, 3.2], kerf: 0.18}
  thick: {thickness: 6.5}
cutter: {kind: saw, width: 6.35}
templates: {stock: plate}
drawers:
  - {name: a, outside: 400 x 120 x 450, sides: ply, bottom: plate}
`

func TestTemplates(t *testing.T) {
	j, problems := Read("job.yaml", strings.NewReader(platesJob))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := Templates{Stock: "plate", Thickness: 3.15, Kerf: 0.18, Register: RegisterPins, PinDiameter: 5, SlotWidth: 1.2}
	want.Bed.X, want.Bed.Y = 600, 400
	if got := *j.Templates; got.Thickness < 3.1499 || got.Thickness > 3.1501 {
		t.Errorf("thickness %g", got.Thickness)
	} else if got.Thickness = want.Thickness; got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if want := (Paper{Size: "A4", Labels: LabelsGrid, Columns: 3, Rows: 7}); j.Paper != want {
		t.Errorf("got %+v, want %+v", j.Paper, want)
	}
	inches, _ := Read("job.yaml", strings.NewReader(strings.Replace(platesJob, "units: mm", "units: in", 1)))
	if inches == nil || inches.Paper.Size != "Letter" {
		t.Errorf("inches on %+v", inches)
	}
}

func TestTemplatesRefused(t *testing.T) {
	for section, code := range map[string]Code{
		"{stock: thick}":   CodeOutOfRange,
		"{stock: plat}":    CodeUnknownStock,
		"{register: pins}": CodeMissingKey,
		"{stock: plate, register: lip, pin-diameter: 5}":                        CodeNoEffect,
		"{stock: plate, bed: 600 x 100}":                                        CodeOutOfRange,
		"{stock: plate, register: nails}":                                       CodeUnknownWord,
		"{stock: plate, roll-width: 610 mm, slot-width: 0, pin-diameter: 5 mm}": CodeOutOfRange,
	} {
		_, problems := Read("job.yaml", strings.NewReader(strings.Replace(platesJob, "{stock: plate}", section, 1)))
		if len(problems) != 1 || problems[0].Code != code || problems[0].Line != 7 {
			t.Errorf("%s: got %v, want one of %s in line 7", section, problems, code)
		}
	}
}
