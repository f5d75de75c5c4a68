package outside

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// richPanel has what the boxes of the samples do not: arcs, circles, holes,
// drills, an odd outline, pockets of one depth on both faces, a wide and a narrow
// pocket that take square parts, one no wider than a bit of 5 mm.
func richPanel() geom.Panel {
	outline := geom.RoundedRectangle(0, 0, 320, 140, 12)
	at := func(x, y, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x, Y: y}, Bulge: bulge}
	}
	return geom.Panel{
		Outline: outline, Thickness: 18,
		Holes: []geom.Loop{geom.RoundedRectangle(120, 80, 200, 110, 15), geom.Circle(geom.Point{X: 60, Y: 100}, 8)},
		Pockets: []geom.Pocket{
			{Kind: geom.Drill, Depth: 18, Outline: geom.Circle(geom.Point{X: 37, Y: 87}, 2.5)},
			{Kind: geom.Drill, Face: geom.Outside, Depth: 9, Outline: geom.Circle(geom.Point{X: 69, Y: 37}, 2.5)},
			{Kind: geom.Groove, Depth: 5.985, Outline: geom.RoundedRectangle(20, 10, 300, 16.35, 3.175)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: 5.985, Outline: geom.Rectangle(0, 20, 10, 120)},
			{Kind: geom.Cutout, Depth: 18, Outline: geom.Loop{at(220, 80, 0), at(230, 80, -0.5), at(250, 80, 0), at(260, 80, 0), at(260, 110, 0.3), at(220, 110, 0)}},
			{Kind: geom.Dado, Depth: 3, Outline: geom.Rectangle(0, 60, 320, 70)},
			{Kind: geom.Dado, Depth: 8, Outline: geom.Rectangle(120, 25, 170, 50), Takes: geom.Rectangle(120, 25, 170, 50)},
			{Kind: geom.Dado, Depth: 8, Outline: geom.Rectangle(220, 25, 226.5, 50), Takes: geom.Rectangle(220, 25, 226.5, 50)},
			{Kind: geom.Dado, Depth: 4, Outline: geom.Rectangle(200, 25, 205, 50)},
		},
	}
}

// TestDXFOfAnyPanel does as TestDXF does for a panel with every kind of shape, sawn and
// routed.
func TestDXFOfAnyPanel(t *testing.T) {
	p := richPanel()
	for _, v := range p.Check() {
		t.Fatalf("the panel itself: %s", v.Diagnosis(p).Fact.In(geom.Millimeter))
	}
	for _, c := range []struct {
		version dxf.Version
		name    string
		unit    geom.Unit
		bits    []mill.Bit
		rules   routing
	}{
		{dxf.R2000, "R2000", geom.Millimeter, nil, routing{}},
		{dxf.R12, "R12", geom.Millimeter, []mill.Bit{{Name: "five", Diameter: 5}}, routing{Overcut: 1, Relief: "dogbone",
			ExactSlots: "widened", DepthFrom: "top"}},
		{dxf.R2000, "R2000", geom.Inch, []mill.Bit{{Name: "five", Diameter: 5}}, routing{Overcut: 0, Relief: "t-bone",
			ExactSlots: "centerline", DepthFrom: "spoilboard"}},
		{dxf.R12, "R12", geom.Inch, nil, routing{}},
	} {
		work, faults := mill.Prepare(mill.Part{Panel: p, MinThickness: 18, MaxThickness: 18}, mill.Settings{Bits: c.bits,
			Overcut: c.rules.Overcut, Relief: mill.Relief(c.rules.Relief),
			Slots: mill.Slots(c.rules.ExactSlots), FromSpoilboard: c.rules.DepthFrom == "spoilboard", Unit: c.unit})
		if len(faults) > 0 {
			t.Fatalf("%+v", faults)
		}
		s := sheet{Panel: p, unit: c.unit, routing: c.rules, bits: func(string) []float64 { return []float64{0} }}
		if len(c.bits) > 0 {
			s.bits = func(string) []float64 { return []float64{c.bits[0].Diameter} }
		}
		options := router.Options{Version: c.version, Unit: c.unit}
		part := router.Part{Name: "rich", Quantity: 2, Stock: "birch", Panel: p, Work: work, Bits: c.bits, FromSpoilboard: c.rules.DepthFrom == "spoilboard"}
		for _, face := range []geom.Face{geom.Inside, geom.Outside} {
			t.Run(fmt.Sprint(c.name, c.unit, len(c.bits), face), func(t *testing.T) {
				layers, err := router.Layers(part, face, options)
				if err != nil {
					t.Fatal(err)
				}
				file := filepath.Join(t.TempDir(), "panel.dxf")
				f, err := os.Create(file)
				if err != nil {
					t.Fatal(err)
				}
				if _, err := router.Draw(part, face, layers, options).WriteTo(f); err != nil {
					t.Fatal(err)
				}
				if err := f.Close(); err != nil {
					t.Fatal(err)
				}
				want, err := s.drawing(face)
				if err != nil {
					t.Fatal(err)
				}
				for _, a := range audit(t, []string{file}) {
					checkHeader(t, a, c.name, c.unit.String())
					_, rest := registered(a.Entities, c.unit.MM())
					if err := compare(want, rest, c.unit.MM()); err != nil {
						t.Errorf("ezdxf: %v", err)
					}
				}
				for _, a := range lines[audited](t, file, "node", "dxf_loops.mjs") {
					_, rest := registered(a.Entities, c.unit.MM())
					if err := compare(want, rest, c.unit.MM()); err != nil {
						t.Errorf("dxf-parser: %v", err)
					}
				}
			})
		}
	}
}
