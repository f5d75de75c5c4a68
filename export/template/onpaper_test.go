package template

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom"
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

// TestStickSaysWhatItHas: a stick, and its print, tell of guides for screws where it has some.
func TestStickSaysWhatItHas(t *testing.T) {
	for name, c := range map[string]struct {
		holes  []geom.Point
		guides bool
	}{
		"without holes":         {nil, false},
		"near the front edge":   {[]geom.Point{{X: 37, Y: 122.7}}, true},
		"beyond the stick":      {[]geom.Point{{X: 261, Y: 122.7}}, false},
		"some beyond the stick": {[]geom.Point{{X: 37, Y: 122.7}, {X: 261, Y: 122.7}}, true},
	} {
		p := Stick(Side{Name: "left", Height: 720, Lines: []Line{{"low", 122.7}}, Holes: c.holes}, options())
		round := slices.ContainsFunc(p.Openings, func(l geom.Loop) bool { _, _, round := l.AsCircle(); return round })
		_, paper := p.OnPaper()
		tells := func(notes []string) bool { return strings.Contains(strings.Join(notes, " "), "screw") }
		onPlate, onPaper := tells(p.Notes), tells(paper)
		if round != c.guides || onPlate != c.guides || onPaper != c.guides {
			t.Errorf("%s: guides %v, told of on the plate %v, on paper %v", name, round, onPlate, onPaper)
		}
	}
}
