package packet

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
)

// sheetsOfLabels are all that a job can ask for, each with its paper.
var sheetsOfLabels = [][2]string{{"grid", "A4"}, {"page", "A4"}, {"2x4", "A4"}, {"2x7", "A4"}, {"2x8", "A4"},
	{"3x7", "A4"}, {"3x8", "A4"}, {"2x3", "Letter"}, {"2x5", "Letter"}, {"2x7", "Letter"}, {"2x10", "Letter"},
	{"3x10", "Letter"}}

// How high capitals of a label are at least, in mm: on any sheet, and on labels of 35 mm height or more.
const minLabelLetters, minLargeLetters = 1.8, 2.0

// TestLabelsFitTheirCells: on every sheet of labels each label of two jobs has its piece of how many,
// left or right where it is a side, its size, the edge that is down, its face, the grain where there
// is one and the code of the job. Nothing of it stands on anything else, nor on the label beside it.
func TestLabelsFitTheirCells(t *testing.T) {
	for _, file := range []string{"../../../samples/bench-drawers.yaml", "../../../samples/tool-chest.yaml"} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, sheet := range sheetsOfLabels {
			name := fmt.Sprintf("%s, %s on %s", filepath.Base(file), sheet[0], sheet[1])
			b := read(t, "", fmt.Appendf(nil, "%s\npaper: {size: %s, labels: %s}\n", text, sheet[1], sheet[0]))
			var pages []drawing.Page
			m := maker{Book: book(b, "", func(p drawing.Page) { pages = append(pages, p) }), batch: b, unit: b.Units}
			if err := m.labels(); err != nil {
				t.Fatal(err)
			}
			want := map[string]int{"code " + b.Code: len(pages)} // at the foot of each
			for _, d := range b.Drawers {
				for _, p := range d.Parts {
					for _, word := range []string{"piece ", " down", " face", " x ", "code " + b.Code} {
						want[word] += p.Quantity
					}
					if p.Stock.Grain != joinery.GrainNone {
						want["grain"] += p.Quantity
					}
					if p.Role == joinery.Side && p.Label != "right" {
						want["LEFT"] += d.Spec.Count
					}
					if p.Role == joinery.Side && p.Label != "left" {
						want["RIGHT"] += d.Spec.Count
					}
				}
			}
			if found := labelWords(t, name, pages, want); !maps.Equal(found, want) {
				t.Errorf("%s: %v, should be %v", name, found, want)
			}
		}
	}
}

// labelWords counts the texts of pages of labels in which words are, and sees that they can be read.
func labelWords(t *testing.T, name string, pages []drawing.Page, words map[string]int) map[string]int {
	found, least := make(map[string]int), minLabelLetters
	if large := regexp.MustCompile(`grid|page|2x[1-7] |3x7`); large.MatchString(name) {
		least = minLargeLetters
	}
	for _, p := range pages {
		for _, said := range collisions(p.Drawing) {
			t.Errorf("%s: %s", name, said)
		}
		for _, w := range p.Texts {
			if high := w.Size * 0.72; high < least {
				t.Errorf("%s: %q is %.2f mm high", name, w.String, high)
			}
			for word := range words {
				if strings.Contains(w.String, word) {
					found[word]++
				}
			}
		}
	}
	return found
}

// TestLabelsNameTheirBoards: of the bench sample every board that the cuts give stands on one label, and on that of the
// part that the sheet has it serve.
func TestLabelsNameTheirBoards(t *testing.T) {
	file := "../../../samples/bench-drawers.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b := read(t, file, text)
	plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	want := make(map[string]int) // stock, board and part
	for i := range plan.Stocks {
		s := &plan.Stocks[i]
		for _, one := range s.Laid {
			for n, called := range one.Called {
				want[called+" "+s.Names(one, n)[0]]++
			}
		}
	}
	m := maker{batch: b, plan: plan, unit: b.Units}
	found := make(map[string]int)
	for _, l := range m.labelsOfParts() {
		if l.Board == "" {
			t.Errorf("%s, piece %d, has no board", l.Part, l.Piece)
		}
		found[l.Board+" "+l.Part]++
	}
	if !maps.Equal(want, found) || len(found) < 24 {
		t.Errorf("boards on labels: %v, want %v", found, want)
	}
}

// TestLabelsNameTheFaceThatIsSeen: a divider across looks to the front with its inside face, one from front to back to
// the right; the drawer front's is behind, the bottom's above.
func TestLabelsNameTheFaceThatIsSeen(t *testing.T) {
	b := read(t, "", []byte(`units: mm
stock: {b: {thickness: 6}, s: {thickness: 12.2}}
cutter: {kind: router, diameter: 3}
drawers:
  - name: d
    outside: 400 x 120 x 400
    sides: s
    bottom: b
    dividers: [{direction: across, at: 1, stock: b}, {direction: along, at: 1, stock: b}]
    drawer-front: {stock: s, width: 420, height: 140, overhang-left: 10, overhang-below: 10}
`))
	found := make(map[string]string)
	for _, p := range b.Drawers[0].Parts {
		found[p.Name], _ = faces(*p.Part)
	}
	want := map[string]string{"d-side": "inside face", "d-box-front": "inside face", "d-back": "inside face",
		"d-bottom": "upper face", "d-divider-1": "front face", "d-divider-2": "right face", "d-drawer-front": "rear face"}
	if !maps.Equal(found, want) {
		t.Errorf("faces %v, want %v", found, want)
	}
}
