package paper

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// However long a piece's facts are, its label has the edge that is down, the joiner's triangle and the grain, and
// nothing stands on anything else: assembly lays the parts out by them.
func TestLabelKeepsItsFoot(t *testing.T) {
	code, err := squareOf("part")
	if err != nil {
		t.Fatal(err)
	}
	for _, facts := range []string{"20 x 4 in, birch", "20.622 x 10.629 in, birch, sheet 1",
		"20.622 x 10.629 in, birch of the long shelf, sheet 12, which takes three lines of the label at the least"} {
		for _, size := range [][2]float64{{66.6, 38.3}, {194, 281}, {40, 25}} {
			l := Label{Drawer: "base", Part: "base-front", Piece: 1, Of: 2, Facts: facts, Face: "inside face",
				Edge: "lower edge", Grain: true, Place: 2, Set: 4}
			d := label(l, code, size[0], size[1])
			bare := l
			bare.Set, bare.Place = 0, 0
			// 4 pieces, the filled one, the triangle.
			if without := label(bare, code, size[0], size[1]); len(d.Shapes) != len(without.Shapes)+6 {
				t.Errorf("%v, %q: no triangle", size, facts)
			}
			if !slices.ContainsFunc(d.Texts, func(w drawing.Text) bool { return w.String == "grain" }) {
				t.Errorf("%v, %q: no grain", size, facts)
			}
			edge := func(w drawing.Text) bool { return strings.HasPrefix(w.String, "lower edge down") }
			if !slices.ContainsFunc(d.Texts, edge) {
				t.Errorf("%v, %q: no edge", size, facts)
			}
			for i, a := range d.Texts {
				for _, b := range d.Texts[:i] {
					if a.Box().Overlaps(b.Box()) {
						t.Errorf("%v, %q: %q stands on %q", size, facts, a.String, b.String)
					}
				}
				if box := a.Box(); box.Min.Y < 0 || box.Max.X > size[0] {
					t.Errorf("%v, %q: %q stands beyond the label", size, facts, a.String)
				}
			}
		}
	}
}
