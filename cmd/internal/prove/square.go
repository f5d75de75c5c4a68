package prove

import (
	"fmt"
	"math"

	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
)

// The sides of the square on SCALE that the shop measures, in millimeters, of drawings in
// millimeters and in inches.
const (
	squareSide = 100.0
	squareInch = 4 * geom.InchMM
)

// misfit is what is wrong with a thing of a drawing.
type misfit struct {
	line          int
	hint, message string
}

// square measures the square of a drawing whose unit is scale mm long; nil where it is
// right.
func (p *Prover) square(f *dxfread.File, scale float64) *misfit {
	want := squareSide
	if p.report.DXF.Units == "in" {
		want = squareInch
	}
	var squares []dxfread.Entity
	for _, e := range f.Entities {
		if same(e.Layer, "SCALE") {
			squares = append(squares, e)
		}
	}
	if len(squares) != 1 || !squares[0].Closed || len(squares[0].Vertices) != 4 {
		return &misfit{0, rebuild, "the drawing has no square on SCALE to measure"}
	}
	b := (&sheet{scale: scale}).loop(squares[0]).Bounds()
	if math.Abs(b.Width()-want) <= tick && math.Abs(b.Height()-want) <= tick {
		return nil
	}
	return &misfit{squares[0].Line, "export it again without scaling",
		fmt.Sprintf("the square on SCALE is %s x %s, not %s: all is %.4g times as wide and %.4g times as high",
			p.text(b.Width()), p.text(b.Height()), p.text(want), b.Width()/want, b.Height()/want)}
}
