package sweep

import (
	"errors"
	"math"
	"testing"

	"drawerwright/geom"
)

// FuzzPocket: nothing panics, every error is one of those named, and what is
// covered is no more than there is.
func FuzzPocket(f *testing.F) {
	f.Add([]byte{4, 0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0}, 1.0, 0.5)
	f.Add([]byte{9, 0, 0, 3, 10, 0, 1, 10, 4, 0, 6, 4, 5, 6, 8, 0, 0, 8, 2}, 12.7, 1.0)
	f.Add([]byte{0, 0, 0, 0, 255, 0, 0, 0, 128, 7}, 1e300, math.Inf(1))
	f.Fuzz(func(t *testing.T, data []byte, size, r float64) {
		bulges := [...]float64{0, 0, 0, 1, -1, math.Tan(math.Pi / 8), -math.Tan(math.Pi / 8), 0.2, -0.2, 1e-7, 1e-12, -1e-4, 40, 4096, -7, math.NaN()}
		var l geom.Loop
		for i := 0; i+2 < len(data) && i < 300; i += 3 {
			l = append(l, geom.Vertex{Point: geom.Point{X: float64(int8(data[i])) * size, Y: float64(int8(data[i+1])) * size}, Bulge: bulges[data[i+2]%16]})
		}
		check := func(what string, loops []geom.Loop, err error) {
			known := false
			for _, e := range []error{nil, ErrRadius, geom.ErrExtent, ErrRing, ErrWinding, ErrTooMany, ErrUnsettled} {
				known = known || errors.Is(err, e)
			}
			if !known || err != nil && loops != nil {
				t.Fatalf("%s: %v, %v: %v, %g", what, loops, err, l, r)
			}
			for _, o := range loops {
				for _, p := range o {
					if !(math.Abs(p.X)+math.Abs(p.Y)+math.Abs(p.Bulge) < 1e9) {
						t.Fatalf("%s: %v: %v, %g", what, p, l, r)
					}
				}
			}
		}
		loops, err := Pocket(l, r)
		check("Pocket", loops, err)
		if area := areaSum(loops); err == nil && !(area >= 0 && area <= l.Area()+0.1) {
			t.Fatalf("%g of %g covered: %v, %g", area, l.Area(), l, r)
		}
		o, err := Outside(l, r)
		if err == nil {
			check("Outside", []geom.Loop{o}, nil)
			if !(o.Area() >= l.Area()-0.1) {
				t.Fatalf("%g of %g left: %v, %g", o.Area(), l.Area(), l, r)
			}
		} else {
			check("Outside", nil, err)
		}
		loops, err = Line(l, r)
		check("Line", loops, err)
	})
}
