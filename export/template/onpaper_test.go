package template

import (
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom/joinery"
)

// TestPrintShowsThePanelsEdges: a print has the two edges that a plate's pins stop at, from the corner
// of the panel on, dashed; files for a cutter have no dashes.
func TestPrintShowsThePanelsEdges(t *testing.T) {
	dashed := func(d drawing.Drawing) (list []drawing.Shape) {
		for _, s := range d.Shapes {
			if len(s.Pen.Dash) > 0 {
				list = append(list, s)
			}
		}
		return list
	}
	plates, _ := Panels(built(spec(joinery.DadoRabbet)), options())
	for _, p := range plates {
		if n := len(dashed(p.Made(0).Picture())); n > 0 {
			t.Errorf("%s: the file for a cutter has %d dashed lines", p.Name, n)
		}
		d, _ := p.OnPaper()
		edges := dashed(d)
		if len(edges) != 2 || edges[0].Paths[0][0].Point != p.Origin || edges[1].Paths[0][0].Point != p.Origin {
			t.Errorf("%s: the print has %v", p.Name, edges)
		}
	}
}
