package glb_test

import (
	"bytes"
	"io"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
	"drawerwright/preview/glb"
	"drawerwright/preview/scene"
	"drawerwright/preview/stl"
)

// compare writes the same triangles as STL and as GLB.
func compare(b *testing.B, s scene.Scene) {
	var placed []solid.Mesh
	for _, p := range s.Boxes[0].Pieces {
		placed = append(placed, s.Meshes[s.Parts[p.Part].Mesh].Mesh().Place(p.Placement, geom.FineGrid(1000)))
	}
	m := solid.Join(placed...)
	for _, format := range []struct {
		name  string
		write func(io.Writer) error
	}{
		{"STL", func(w io.Writer) error { return stl.Binary(w, "x", m) }},
		{"GLB", func(w io.Writer) error { return glb.Write(w, s, s.Groups[0]) }},
	} {
		b.Run(format.name, func(b *testing.B) {
			var out bytes.Buffer
			for b.Loop() {
				out.Reset()
				if err := format.write(&out); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(m.Triangles)), "triangles")
			b.ReportMetric(float64(out.Len()), "bytes")
		})
	}
}

// BenchmarkCrowded is a panel of many triangles by itself, nothing shared.
func BenchmarkCrowded(b *testing.B) {
	s := pair(b, "x", geomtest.CrowdedRounded())
	s.Boxes[0].Pieces = s.Boxes[0].Pieces[:1]
	compare(b, s)
}

// BenchmarkDrawer is a box of few triangles, in which the numbers of parts weigh most.
func BenchmarkDrawer(b *testing.B) {
	ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(12)}
	d, _, _ := joinery.LayOut(joinery.Spec{Name: "tray", Count: 2, Width: 460, Height: 140, Depth: 500, Sides: ply, Front: ply, Back: ply,
		Bottom: joinery.Stock{Name: "board", Thickness: joinery.Measure(5)}, Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35},
		GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn, BottomClearance: 2})
	s, err := scene.Make(scene.Drawer{Drawer: d, Names: []string{"side", "front", "back", "bottom"},
		Numbers: []int{1, 2, 2, 3}, Quantities: []int{4, 2, 2, 2}}, geom.FineGrid(1000))
	if err != nil {
		b.Fatal(err)
	}
	compare(b, s)
}
