package dxf

import (
	"math"
	"testing"

	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/dxf/dxftest"

	"pgregory.net/rapid"
)

// extentsOf gives the extents of one closed or open polyline in drawing units.
func extentsOf(t interface{ Fatal(...any) }, closed bool, v ...Vertex) [4]float64 {
	var d Drawing
	d.Polyline(d.Layer("A", 1), Course(closed), v)
	if err := d.err; err != nil {
		t.Fatal(err)
	}
	e := d.extents
	return [4]float64{e.minX.float(), e.minY.float(), e.maxX.float(), e.maxY.float()}
}

func near(got, want [4]float64, tolerance float64) bool {
	for i := range got {
		if !(math.Abs(got[i]-want[i]) <= tolerance) {
			return false
		}
	}
	return true
}

// writtenTolerance is half of the last decimal, and the float64 error of the sums
// about it.
const writtenTolerance = 0.5e-6 + 1e-9

// The sagitta of an arc over the chord c is |B| c/2, and B = tan(angle/4); the
// angles and bulges are those of the bulge oracles (computed). A chord along x
// from 0 to 10 has its arc below for a positive bulge, which runs
// counter-clockwise, and above for a negative one.
func TestExtentsOfArcs(t *testing.T) {
	for _, c := range []struct {
		degrees, bulge float64
	}{
		{45, 0.198912}, {60, 0.267949}, {90, 0.414214}, {120, 0.577350}, {180, 1},
	} {
		b := math.Tan(c.degrees / 4 * math.Pi / 180)
		if math.Abs(b-c.bulge) > 0.5e-6 {
			t.Errorf("%v degrees: bulge %v, want %v", c.degrees, b, c.bulge)
		}
		sagitta := c.bulge * 10 / 2
		got := extentsOf(t, false, Vertex{0, 0, c.bulge}, Vertex{10, 0, 0})
		if want := [4]float64{0, -sagitta, 10, 0}; !near(got, want, writtenTolerance) {
			t.Errorf("%v degrees: %v, want %v", c.degrees, got, want)
		}
		got = extentsOf(t, false, Vertex{0, 0, -c.bulge}, Vertex{10, 0, 0})
		if want := [4]float64{0, 0, 10, sagitta}; !near(got, want, writtenTolerance) {
			t.Errorf("-%v degrees: %v, want %v", c.degrees, got, want)
		}
	}
	for _, c := range []struct {
		what   string
		closed bool
		v      []Vertex
		want   [4]float64
	}{
		// c = 10, 90 degrees: sagitta 2.071068 (bulge oracle).
		{"a quarter", false, []Vertex{{0, 0, 0.414213562}, {10, 0, 0}}, [4]float64{0, -2.071068, 10, 0}},
		// Quarter of a circle of radius 10 from east to north: no further than its ends.
		{"a fillet", false, []Vertex{{10, 0, 0.414213562}, {0, 10, 0}}, [4]float64{0, 0, 10, 10}},
		// The other way round, 270 degrees, B = tan(67.5 degrees) = 1 + sqrt 2.
		{"three quarters", false, []Vertex{{10, 0, -(1 + math.Sqrt2)}, {0, 10, 0}}, [4]float64{-10, -10, 10, 10}},
		// A full circle of two halves, radius 5 about 5, 0.
		{"two halves", true, []Vertex{{0, 0, 1}, {10, 0, 1}}, [4]float64{0, -5, 10, 5}},
		// Slot 100 long and 20 wide with round ends.
		{"slot", true, []Vertex{{10, 0, 0}, {90, 0, 1}, {90, 20, 0}, {10, 20, 1}}, [4]float64{0, 0, 100, 20}},
		// Rounded rectangle 100 x 60, radius 10.
		{"rounded", true, []Vertex{
			{10, 0, 0}, {90, 0, .414213562}, {100, 10, 0}, {100, 50, .414213562},
			{90, 60, 0}, {10, 60, .414213562}, {0, 50, 0}, {0, 10, .414213562},
		}, [4]float64{0, 0, 100, 60}},
		// The last bulge of an open polyline bends nothing.
		{"last bulge", false, []Vertex{{0, 0, 0}, {10, 0, 1}}, [4]float64{0, 0, 10, 0}},
		// A half circle over a chord without length reaches nowhere.
		{"no chord", true, []Vertex{{0, 0, 1}, {0, 0, 0}, {4, 0, 0}, {4, 4, 0}}, [4]float64{0, 0, 4, 4}},
		// Sagitta 1e-6 x 1e6 / 2 = 0.5 over a chord of a kilometer: radius 2.5e11.
		{"flat", false, []Vertex{{-5e5, 0, 1e-6}, {5e5, 0, 0}}, [4]float64{-5e5, -0.5, 5e5, 0}},
		// The same rising by 0.1: y = x/1e7 - 2 x (c-x)/c² with x from the left end is
		// least at x = 475000: 0.0475 - 2 x 0.475 x 0.525 = -0.45125.
		{"flat and slanted", false, []Vertex{{-5e5, 0, 1e-6}, {5e5, 0.1, 0}}, [4]float64{-5e5, -0.45125, 5e5, 0.1}},
	} {
		if got := extentsOf(t, c.closed, c.v...); !near(got, c.want, 1e-6) {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}

func TestExtentsOfCircle(t *testing.T) {
	var d Drawing
	l := d.Layer("A", 1)
	d.Circle(l, -3, 4, 2.5)
	d.Polyline(l, Open, []Vertex{{X: 0, Y: 0}, {X: 1, Y: 7}})
	want := box{-5_500_000, 0, 1 * microOne, 7 * microOne, true}
	if d.extents != want {
		t.Errorf("%+v, want %+v", d.extents, want)
	}
}

// genArc draws two points some way apart and a bulge.
func genArc(t *rapid.T) (p, q Vertex) {
	c := rapid.Float64Range(-500, 500)
	p = Vertex{X: c.Draw(t, "px"), Y: c.Draw(t, "py")}
	angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
	chord := rapid.Float64Range(0.1, 500).Draw(t, "chord")
	q = Vertex{X: p.X + chord*math.Cos(angle), Y: p.Y + chord*math.Sin(angle)}
	p.Bulge = rapid.SampledFrom([]float64{-1, 1}).Draw(t, "sign") *
		math.Tan(rapid.Float64Range(0.001, 1.5).Draw(t, "quarter of the angle"))
	return p, q
}

// An independent reckoning by angles about the center gives the same, and points
// all along the arc lie inside.
func TestExtentsAgainstAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := genArc(t)
		var d Drawing
		d.Polyline(d.Layer("A", 1), Open, []Vertex{p, q})
		if d.err != nil {
			t.Fatal(d.err)
		}
		a, b := d.nodes[0].vertex(), d.nodes[1].vertex()
		want := dxftest.Extents([]dxfread.Entity{{Type: "POLYLINE", Vertices: []dxfread.Vertex{
			dxfread.Vertex(a), dxfread.Vertex(b),
		}}})
		e := d.extents
		got := [4]float64{e.minX.float(), e.minY.float(), e.maxX.float(), e.maxY.float()}
		if !near(got, want, writtenTolerance) {
			t.Fatalf("%v to %v: %v, want %v", a, b, got, want)
		}
	})
}

// Turned by a quarter and mirrored, the extents turn and mirror with the arc; run
// the other way with the bulge's sign changed, they stay.
func TestExtentsTurnAndMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := genArc(t)
		e := extentsOf(t, false, p, q)
		for _, c := range []struct {
			what string
			p, q Vertex
			want [4]float64
		}{
			{"turned", Vertex{-p.Y, p.X, p.Bulge}, Vertex{-q.Y, q.X, 0}, [4]float64{-e[3], e[0], -e[1], e[2]}},
			{"mirrored", Vertex{-p.X, p.Y, -p.Bulge}, Vertex{-q.X, q.Y, 0}, [4]float64{-e[2], e[1], -e[0], e[3]}},
			{"backward", Vertex{q.X, q.Y, -p.Bulge}, Vertex{p.X, p.Y, 0}, e},
		} {
			if got := extentsOf(t, false, c.p, c.q); !near(got, c.want, 1.1e-6) {
				t.Fatalf("%s: %v, want %v", c.what, got, c.want)
			}
		}
	})
}
