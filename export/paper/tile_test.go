package paper

import (
	"strings"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// TestSheetsAreJoinedWhereThereAreSeveral: a print says to join its sheets where it has more than one.
func TestSheetsAreJoinedWhereThereAreSeveral(t *testing.T) {
	for wide, sheets := range map[float64]int{100: 1, 400: 2} {
		d := drawing.Drawing{Width: wide, Height: 100}
		d.Loops(drawing.Thin, 0, geom.Rectangle(0, 0, wide, 100))
		pages := Tile(d, A4, "a print", nil, geom.Millimeter)
		said := false
		for _, text := range pages[0].Texts {
			said = said || strings.Contains(text.String, "join them")
		}
		if len(pages) != sheets+1 || said != (sheets > 1) {
			t.Errorf("%g mm wide: %d pages, says to join them: %v", wide, len(pages), said)
		}
	}
}
