package proof

import (
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// boardOf is a panel cut without any error by a cutter without a radius.
func boardOf(p geom.Panel) Board {
	b := Board{Outline: ShapeOf(p.Outline), Thickness: p.Thickness}
	for _, k := range p.Pockets {
		b.Cuts = append(b.Cuts, Cut{Face: k.Face, Depth: k.Depth, Shape: ShapeOf(k.Outline), Lean: k.Lean})
	}
	return b
}

func stock(mm float64) joinery.Stock {
	return joinery.Stock{Name: "s", Thickness: joinery.Measure(mm)}
}

// spec is a box of 460 x 140 x 500 from boards of 12.2 and 5.9, with slots of
// 6.35: fence distance and cutter height are 6.1.
func spec() joinery.Spec {
	return joinery.Spec{Name: "t", Count: 1, Width: 460, Height: 140, Depth: 500, Sides: stock(12.2), Front: stock(12.2), Back: stock(12.2), Bottom: stock(5.9),
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomAuto, BottomClearance: 2}
}

type tester interface {
	Helper()
	Fatal(...any)
}

// built is a drawer that joinery has nothing against.
func built(t tester, s joinery.Spec) joinery.Drawer {
	t.Helper()
	d, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatal(p)
		}
	}
	return d
}

// Indices of the pieces of a box.
const (
	left = iota
	right
	front
	back
	bottom
)

// Indices of the cuts of its boards, with a dado-and-rabbet corner.
const (
	// A left side's x runs from front to back, a right side's the other way.
	leftFrontDado, leftBackDado, sideGroove = 0, 1, 2
	// A front's x runs from right to left.
	endGroove, frontRightRabbet, frontLeftRabbet = 0, 1, 2
)

// piecesOf stands a drawer's boards where they are meant to be.
func piecesOf(d joinery.Drawer) []Piece {
	var list []Piece
	for _, p := range d.Parts {
		for i, at := range p.Placements {
			name := strings.TrimPrefix(string(p.Role), "box-")
			if p.Label != "" {
				name = p.Label + " " + name
			}
			if len(p.Placements) == 2 {
				name = []string{"left ", "right "}[i] + name
			}
			one := Piece{Name: name, Board: boardOf(p.Panel), Placement: at}
			if lip := d.Spec.Lip; p.Role == joinery.Front {
				one.Lips.X, one.Lips.Z = [2]float64{lip.Left, lip.Right}, [2]float64{lip.Bottom, lip.Top}
			}
			list = append(list, one)
		}
	}
	return list
}

func pieces(t tester, s joinery.Spec) []Piece { return piecesOf(built(t, s)) }

// recut gives a cut of a piece other sides, each moved outward.
func recut(p *Piece, cut int, by geom.Rect) {
	c := &p.Board.Cuts[cut]
	b := c.Shape.Bounds()
	c.Shape = ShapeOf(geom.Rectangle(b.Min.X+by.Min.X, b.Min.Y+by.Min.Y, b.Max.X+by.Max.X, b.Max.Y+by.Max.Y))
}

// sideways is a change of a cut's two ends along the panel.
func sideways(low, high float64) geom.Rect {
	return geom.Rect{Min: geom.Point{X: low}, Max: geom.Point{X: high}}
}

func assemble(list []Piece) Box {
	var m Assembler
	return m.Assemble(list)
}

// rounding is what sums of a few lengths of half a meter may be off by, in
// millimeters.
const rounding = 1e-9

func near(got, want, tolerance float64) bool {
	return got == want || math.Abs(got-want) <= tolerance // both may be infinite
}

func same(t testing.TB, what string, got, want float64) {
	t.Helper()
	if !near(got, want, rounding) {
		t.Errorf("%s is %.9f, want %.9f", what, got, want)
	}
}
