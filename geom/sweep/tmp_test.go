package sweep

import (
	"fmt"
	"math"
	"testing"

	"drawerwright/geom"
)

func show(loops []geom.Loop, err error) {
	fmt.Println(len(loops), err)
	a := 0.0
	for _, l := range loops {
		a += l.Area()
		for _, v := range l {
			fmt.Printf("  (%.7f %.7f %.5f)", v.X, v.Y, v.Bulge)
		}
		fmt.Println()
	}
	fmt.Printf("area %.7f\n", a)
}

func TestTmp(t *testing.T) {
	p := func(x, y float64) geom.Point { return geom.Point{x, y} }
	show(Pocket(geom.Rectangle(0, 0, 100, 50), 5))
	show(pocket(geom.Rectangle(0, 0, 100, 50), 5))
	fmt.Println(5000 - (4-math.Pi)*25)
	show(Pocket(geom.Polygon(p(0, 0), p(100, 0), p(100, 40), p(60, 40), p(60, 80), p(0, 80)), 5))
	fmt.Println(6400 - 5*(1-math.Pi/4)*25)
	show(Pocket(geom.Polygon(p(0, 0), p(30, 0), p(30, 10), p(40, 10), p(40, 0), p(70, 0), p(70, 30), p(40, 30), p(40, 18), p(30, 18), p(30, 30), p(0, 30)), 5))
	show(Pocket(geom.Polygon(p(0, 0), p(30, 0), p(30, 10), p(40, 10), p(40, 0), p(70, 0), p(70, 30), p(40, 30), p(40, 20), p(30, 20), p(30, 30), p(0, 30)), 5))
	show(Line([]geom.Vertex{{p(0, 0), 0}, {p(100, 0), 0}}, 5))
	fmt.Println(1000 + math.Pi*25)
	show(Line([]geom.Vertex{{p(0, 0), 0}, {p(100, 0), 0}, {p(100, 10), 0}, {p(0, 10), 0}}, 5))
	show(Line([]geom.Vertex{{p(0, 0), 0}, {p(100, 0), 0}, {p(100, 50), 0}, {p(0, 50), 0}, {p(0, 0), 0}}, 5))
	o, err := Outside(geom.Polygon(p(0, 0), p(100, 0), p(100, 40), p(60, 40), p(60, 80), p(0, 80)), 5)
	show([]geom.Loop{o}, err)
	fmt.Println(6400 + (1-math.Pi/4)*25)
	q := math.Sqrt(0.5)
	_ = q
	// relief at the corner 0,0 of rho 6: diameter ends on both sides
	rho := 6.0
	e := rho * math.Sqrt2
	rel := geom.Loop{{p(e, 0), 0}, {p(100, 0), 0}, {p(100, 50), 0}, {p(0, 50), 0}, {p(0, e), 1}}
	fmt.Println(rel.Area())
	show(Pocket(rel, 5))
}

func BenchmarkTmp(b *testing.B) {
	p := func(x, y float64) geom.Point { return geom.Point{x, y} }
	l := geom.Polygon(p(0, 0), p(100, 0), p(100, 40), p(60, 40), p(60, 80), p(0, 80))
	b.Run("fast", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Pocket(geom.Rectangle(0, 0, 100, 50), 5)
		}
	})
	b.Run("L", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Pocket(l, 5)
		}
	})
}
