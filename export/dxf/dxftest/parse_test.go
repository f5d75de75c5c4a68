package dxftest_test

import (
	"strings"
	"testing"

	"drawerwright/export/dxf/dxftest"
)

// What another library might write of the same, with blanks before group codes,
// Windows line ends and an entity of another kind, is read.
func TestParse(t *testing.T) {
	text := strings.Join([]string{
		"999", "Units: inches", "  0", "SECTION", "  2", "HEADER", "  9", "$ACADVER", "  1", "AC1009", "  0", "ENDSEC",
		"  0", "SECTION", "  2", "TABLES", "  0", "TABLE", "  2", "LAYER", " 70", "     1",
		"  0", "LAYER", "  2", "CUT", " 62", "     5", "  6", "CONTINUOUS", "  0", "ENDTAB", "  0", "ENDSEC",
		"  0", "SECTION", "  2", "ENTITIES", "  0", "LINE", "  8", "0",
		"  0", "POLYLINE", "  8", "CUT", " 66", "     1", " 70", "     1",
		"  0", "VERTEX", "  8", "CUT", " 10", "1.5", " 20", "-2", " 42", "0.25",
		"  0", "VERTEX", "  8", "CUT", " 10", "3", " 20", "4E1", "  0", "SEQEND",
		"  0", "CIRCLE", "  8", "CUT", " 10", "7", " 20", "8", " 40", "9", "  0", "ENDSEC", "  0", "EOF", "",
	}, "\r\n")
	f, err := dxftest.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if f.Version != "AC1009" || f.Unit != "in" || len(f.Layers) != 1 || f.Layers[0] != (dxftest.Layer{Name: "CUT", Colour: 5, Linetype: "CONTINUOUS"}) {
		t.Errorf("%+v", f)
	}
	if len(f.Entities) != 2 {
		t.Fatalf("%d entities", len(f.Entities))
	}
	p, c := f.Entities[0], f.Entities[1]
	if !p.Closed || len(p.Vertices) != 2 || p.Vertices[0] != (dxftest.Vertex{X: 1.5, Y: -2, Bulge: 0.25}) || p.Vertices[1] != (dxftest.Vertex{X: 3, Y: 40}) {
		t.Errorf("%+v", p)
	}
	if c.Type != "CIRCLE" || c.X != 7 || c.Y != 8 || c.Radius != 9 || c.Layer != "CUT" {
		t.Errorf("%+v", c)
	}
}
