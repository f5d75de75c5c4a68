package dxf

import (
	"errors"
	"math"
	"slices"
	"testing"

	"drawerwright/export/dxf/dxftest"
)

// raised draws one thing at each of two heights, and one at 0 after them.
func raised(v Version) *Drawing {
	d := &Drawing{Version: v}
	l := d.Layer("A", 1)
	d.Level(-6.1, 6.1)
	d.Polyline(l, Closed, []Vertex{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 3}})
	d.Level(-2.5, 2.5)
	d.Circle(l, 1, 2, 0.5)
	d.Level(0, 0)
	d.Circle(l, 3, 2, 0.5)
	return d
}

// The height of an LWPOLYLINE is its group 38, that of a POLYLINE the 30 of itself and of
// its vertices, that of a circle the 30 of its center; 39 is the thickness of all (DXF
// Reference, entities LWPOLYLINE, POLYLINE, VERTEX and CIRCLE).
func TestLevel(t *testing.T) {
	vertex := func(x, y string) []pair {
		return []pair{{0, "VERTEX"}, {8, "A"}, {10, x}, {20, y}, {30, "-6.1"}}
	}
	flat := []pair{{10, "3.0"}, {20, "2.0"}, {30, "0.0"}, {40, "0.5"}}
	low := []pair{{39, "2.5"}, {10, "1.0"}, {20, "2.0"}, {30, "-2.5"}, {40, "0.5"}}
	want := slices.Concat(
		[]pair{{0, "POLYLINE"}, {8, "A"}, {66, "1"}, {10, "0.0"}, {20, "0.0"}, {30, "-6.1"}, {39, "6.1"}, {70, "1"}},
		vertex("0.0", "0.0"), vertex("4.0", "0.0"), vertex("4.0", "3.0"), []pair{{0, "SEQEND"}, {8, "A"}},
		[]pair{{0, "CIRCLE"}, {8, "A"}}, low, []pair{{0, "CIRCLE"}, {8, "A"}}, flat)
	if got := pairsFrom(t, written(t, raised(R12)), "ENTITIES"); !slices.Equal(got, want) {
		t.Errorf("R12: got  %v\nwant %v", got, want)
	}
	got := pairsFrom(t, written(t, raised(R2000)), "ENTITIES")
	got = slices.DeleteFunc(got, func(p pair) bool { return p.code == 5 || p.code == 330 || p.code == 100 })
	want = slices.Concat(
		[]pair{{0, "LWPOLYLINE"}, {8, "A"}, {90, "3"}, {70, "1"}, {43, "0.0"}, {38, "-6.1"}, {39, "6.1"},
			{10, "0.0"}, {20, "0.0"}, {10, "4.0"}, {20, "0.0"}, {10, "4.0"}, {20, "3.0"}},
		[]pair{{0, "CIRCLE"}, {8, "A"}}, low, []pair{{0, "CIRCLE"}, {8, "A"}}, flat)
	if !slices.Equal(got, want) {
		t.Errorf("R2000: got  %v\nwant %v", got, want)
	}
	for _, v := range []Version{R2000, R12} {
		d := raised(v)
		if _, err := dxftest.ReadRaised(d); err != nil { // the extents reach from -6.1 to 0
			t.Errorf("version %d: %v", v, err)
		}
		if _, err := dxftest.ReadBack(d); err == nil {
			t.Errorf("version %d: what lies at heights passes for flat", v)
		}
	}
}

func TestLevelErrors(t *testing.T) {
	for _, c := range []struct {
		elevation, thickness float64
		rule                 error
	}{{math.NaN(), 0, ErrNotFinite}, {0, math.Inf(1), ErrNotFinite}, {-2 * MaxCoordinate, 0, ErrOutOfRange}, {0, 2 * MaxCoordinate, ErrOutOfRange}} {
		var d Drawing
		if d.Level(c.elevation, c.thickness); !errors.Is(d.err, c.rule) {
			t.Errorf("%v, %v: %v, want %v", c.elevation, c.thickness, d.err, c.rule)
		}
	}
}
