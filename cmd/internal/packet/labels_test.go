package packet

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom/joinery"
)

// sheetsOfLabels are all that a job can ask for, each with its paper.
var sheetsOfLabels = [][2]string{{"grid", "A4"}, {"page", "A4"}, {"2x4", "A4"}, {"2x7", "A4"}, {"2x8", "A4"},
	{"3x7", "A4"}, {"3x8", "A4"}, {"2x3", "Letter"}, {"2x5", "Letter"}, {"2x7", "Letter"}, {"2x10", "Letter"},
	{"3x10", "Letter"}}

// minLabelLetters is how high capitals of a label are at least, in mm.
const minLabelLetters = 1.1

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
	found := make(map[string]int)
	for _, p := range pages {
		for _, said := range collisions(p.Drawing) {
			t.Errorf("%s: %s", name, said)
		}
		for _, w := range p.Texts {
			if high := w.Size * 0.72; high < minLabelLetters {
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
