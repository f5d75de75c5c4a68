package template

import (
	"strings"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom/joinery"
)

// plateWords are words of what paper does not have.
var plateWords = []string{"dowel", "hang", "strip", "glue", "kerf", "pieces together", "push it home"}

// TestDowelsOnlyWhereThereAreHoles: a template says dowels where it has three holes for them, and not
// where strips stop it or what cuts it takes away more than a hole. A print says nothing of either.
func TestDowelsOnlyWhereThereAreHoles(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Options)
		dowels bool
	}{
		"pins":               {func(*Options) {}, true},
		"strips":             {func(o *Options) { o.Register = Lip }, false},
		"a bit too wide":     {func(o *Options) { o.MinBridge = 6 }, false},
		"in pieces, on pins": {func(o *Options) { o.Bed.X, o.Bed.Y = 300, 200 }, true},
	} {
		o := options()
		c.change(&o)
		plates, _ := Panels(built(spec(joinery.DadoRabbet)), o)
		for _, p := range plates {
			lip := strings.Contains(p.Name, "-lip-")
			if said := strings.Contains(strings.Join(p.Notes, " "), "dowel"); said != (c.dowels && !lip) {
				t.Errorf("%s: %s says dowels: %v", name, p.Name, said)
			}
			_, notes := p.Made(0).OnPaper()
			for _, word := range plateWords {
				if strings.Contains(strings.Join(notes, " "), word) {
					t.Errorf("%s: the print of %s says %q: %v", name, p.Name, word, notes)
				}
			}
			if len(notes) == 0 {
				t.Errorf("%s: the print of %s says nothing", name, p.Name)
			}
		}
	}
}

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
		d, _ := p.Made(0).OnPaper()
		edges := dashed(d)
		if len(edges) != 2 || edges[0].Paths[0][0].Point != p.Origin || edges[1].Paths[0][0].Point != p.Origin {
			t.Errorf("%s: the print has %v", p.Name, edges)
		}
	}
}
