package dxfread_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"drawerwright/export/dxf/dxfread"

	"pgregory.net/rapid"
)

// Each kind of entity by hand, and what changes the way in which it is read.
func TestEntity(t *testing.T) {
	type vertices = []dxfread.Vertex
	root2 := math.Sqrt2 - 1 // tan(90°/4)
	for _, c := range []struct {
		name, tags string
		want       dxfread.Entity
	}{
		{"lwpolyline", "0 LWPOLYLINE|5 2F|330 1F|100 AcDbEntity|8 A|100 AcDbPolyline|90 2|70 0|43 0.0|10 1.0|20 2.0|42 -0.5|10 3.0|20 4.0",
			dxfread.Entity{Type: "LWPOLYLINE", Layer: "A", Vertices: vertices{{1, 2, -0.5}, {3, 4, 0}}}},
		{"lwpolyline closed, filled, raised", "0 LWPOLYLINE|8 A|70 129|38 2.5|10 1.0|20 2.0",
			dxfread.Entity{Type: "LWPOLYLINE", Layer: "A", Closed: true, Vertices: vertices{{1, 2, 0}}, Low: 2.5, High: 2.5}},
		{"lwpolyline of nothing", "0 LWPOLYLINE|8 A|90 0|70 128",
			dxfread.Entity{Type: "LWPOLYLINE", Layer: "A"}},
		{"lwpolyline mirrored", "0 LWPOLYLINE|8 A|70 1|38 1|10 1.0|20 2.0|42 0.5|10 0|20 4|210 0.0|220 0.0|230 -1.0",
			dxfread.Entity{Type: "LWPOLYLINE", Layer: "A", Closed: true, Vertices: vertices{{-1, 2, -0.5}, {0, 4, 0}}, Low: -1, High: -1}},
		{"lwpolyline tilted", "0 LWPOLYLINE|8 A|10 1.0|20 2.0|210 1.0|220 0.0|230 0.0",
			dxfread.Entity{Type: "LWPOLYLINE", Layer: "A", Tilted: true, Vertices: vertices{{1, 2, 0}}}},
		{"tilted sideways", "0 CIRCLE|8 A|10 1|20 2|40 4|210 1|230 1",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, Tilted: true, X: 1, Y: 2, Radius: 4}},
		{"tilted forward", "0 CIRCLE|8 A|10 1|20 2|40 4|220 1|230 1",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, Tilted: true, X: 1, Y: 2, Radius: 4}},
		{"no direction", "0 CIRCLE|8 A|10 1|20 2|40 4|230 0",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, Tilted: true, X: 1, Y: 2, Radius: 4}},
		{"polyline raised", "0 POLYLINE|8 A|66 1|10 9|20 9|30 1.5|0 VERTEX|8 B|10 1|20 2|30 -4|0 VERTEX|8 B|10 3|20 4|30 3|0 SEQEND",
			dxfread.Entity{Type: "POLYLINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, Low: -4, High: 3}},
		{"polyline smoothed", "0 POLYLINE|8 A|70 4|0 VERTEX|70 16|10 1|20 2|0 VERTEX|70 8|10 3|20 4|0 SEQEND",
			dxfread.Entity{Type: "POLYLINE", Layer: "A", Vertices: vertices{{3, 4, 0}}}},
		{"polyline mirrored", "0 POLYLINE|8 A|230 -1|0 VERTEX|10 3|20 4|42 1|0 SEQEND",
			dxfread.Entity{Type: "POLYLINE", Layer: "A", Vertices: vertices{{-3, 4, -1}}}},
		{"polyline in space", "0 POLYLINE|8 A|70 9|230 -1|0 VERTEX|10 3|20 4|30 5|0 SEQEND",
			dxfread.Entity{Type: "POLYLINE", Layer: "A", Closed: true, Vertices: vertices{{3, 4, 0}}, Low: 5, High: 5}},
		{"polyface mesh", "0 POLYLINE|8 A|67 1|70 64|0 VERTEX|10 3|20 4|70 192|0 VERTEX|71 1|70 128|0 SEQEND|8 A",
			dxfread.Entity{Type: "POLYLINE", Layer: "A", Paper: true}},
		{"polygon mesh", "0 POLYLINE|8 A|70 17|0 VERTEX|10 3|20 4|0 SEQEND",
			dxfread.Entity{Type: "POLYLINE", Layer: "A"}},
		{"circle", "0 CIRCLE|8 A|67 1|10 1|20 2|30 -3|40 4",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Paper: true, Closed: true, X: 1, Y: 2, Radius: 4, Low: -3, High: -3}},
		{"circle of R12 raised", "0 CIRCLE|8 A|38 3|10 1|20 2|40 4",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, X: 1, Y: 2, Radius: 4, Low: 3, High: 3}},
		{"circle mirrored, thick", "0 CIRCLE|8 A|10 1|20 2|30 2|39 3|40 4|230 -1",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, X: -1, Y: 2, Radius: 4, Low: -2, High: -2, Thickness: -3}},
		{"circle thick downward", "0 CIRCLE|8 A|10 1|20 2|39 -3|40 4",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, X: 1, Y: 2, Radius: 4, Thickness: -3}},
		{"line", "0 LINE|8 A|10 1|20 2|30 0|11 3|21 4|31 7",
			dxfread.Entity{Type: "LINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, High: 7}},
		{"line with another direction of thickness", "0 LINE|8 A|10 1|20 2|11 3|21 4|210 1|230 0",
			dxfread.Entity{Type: "LINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}}},
		{"line from below, thick upward", "0 LINE|8 A|39 3|10 1|20 2|30 -1|11 3|21 4|31 2",
			dxfread.Entity{Type: "LINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, Low: -1, High: 2, Thickness: 3}},
		{"line from below, thick further down", "0 LINE|8 A|39 -3|10 1|20 2|30 -1|11 3|21 4|31 2",
			dxfread.Entity{Type: "LINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, Low: -1, High: 2, Thickness: -3}},
		{"line thick sideways", "0 LINE|8 A|39 1|10 1|20 2|11 3|21 4|210 1|230 0",
			dxfread.Entity{Type: "LINE", Layer: "A", Tilted: true, Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, Thickness: 1}},
		{"line thick downward", "0 LINE|8 A|39 1|10 1|20 2|11 3|21 4|230 -1",
			dxfread.Entity{Type: "LINE", Layer: "A", Vertices: vertices{{1, 2, 0}, {3, 4, 0}}, Thickness: -1}},
		{"arc of a quarter", "0 ARC|8 A|10 1|20 2|40 10|50 0|51 90",
			dxfread.Entity{Type: "ARC", Layer: "A", Vertices: vertices{{11, 2, root2}, {1, 12, 0}}, X: 1, Y: 2, Radius: 10}},
		{"arc of a half across 0", "0 ARC|8 A|10 0|20 0|40 10|50 270|51 90",
			dxfread.Entity{Type: "ARC", Layer: "A", Vertices: vertices{{0, -10, 1}, {0, 10, 0}}, Radius: 10}},
		{"arc of three quarters, angles beyond a turn", "0 ARC|8 A|10 0|20 0|40 10|50 -270|51 720",
			dxfread.Entity{Type: "ARC", Layer: "A", Vertices: vertices{{0, 10, 1 / root2}, {10, 0, 0}}, Radius: 10}}, // tan(67.5°)
		{"arc of a full turn", "0 ARC|8 A|10 0|20 0|30 1|40 10|50 180|51 180",
			dxfread.Entity{Type: "ARC", Layer: "A", Closed: true, Vertices: vertices{{-10, 0, 1}, {10, 0, 1}}, Radius: 10, Low: 1, High: 1}},
		{"arc from 0 to 360", "0 ARC|8 A|10 0|20 0|40 10|50 0|51 360",
			dxfread.Entity{Type: "ARC", Layer: "A", Closed: true, Vertices: vertices{{10, 0, 1}, {-10, 0, 1}}, Radius: 10}},
		{"arc of 240° that seems to be of 600°", "0 ARC|8 A|10 0|20 0|40 10|50 -330|51 270",
			dxfread.Entity{Type: "ARC", Layer: "A", Vertices: vertices{{8.660254037844387, 4.999999999999999, math.Sqrt(3)}, {0, -10, 0}}, Radius: 10}}, // tan(60°)
		{"arc mirrored", "0 ARC|8 A|10 1|20 2|40 10|50 0|51 90|230 -1",
			dxfread.Entity{Type: "ARC", Layer: "A", Vertices: vertices{{-11, 2, -root2}, {-1, 12, 0}}, X: -1, Y: 2, Radius: 10}},
		{"text", "0 TEXT|67 1|8 A|10 x|40 nan|1 words|8 B|67 0",
			dxfread.Entity{Type: "TEXT", Layer: "A", Paper: true}},
		{"text in the model", "0 TEXT|8 A|67 0|1 words", dxfread.Entity{Type: "TEXT", Layer: "A"}},
		{"circle in the model", "0 CIRCLE|8 A|67 0|10 1|20 2|40 4",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, X: 1, Y: 2, Radius: 4}},
		{"a block", "0 INSERT|8 A|2 B|10 1|20 2",
			dxfread.Entity{Type: "INSERT", Layer: "A"}},
		{"a name with blanks, no capitals", "0 CIRCLE|8  my Layer |10 1|20 2|40 4",
			dxfread.Entity{Type: "CIRCLE", Layer: "my Layer", Closed: true, X: 1, Y: 2, Radius: 4}},
		{"no layer", "0 POINT|10 1|20 2", dxfread.Entity{Type: "POINT"}},
		{"extended data", "0 CIRCLE|8 A|10 1|20 2|40 4|1001 APP|1000 10|1010 5|1040 6|1071 -2147483648",
			dxfread.Entity{Type: "CIRCLE", Layer: "A", Closed: true, X: 1, Y: 2, Radius: 4}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := one(t, c.tags)
			c.want.Line = 5
			for i := range min(len(got.Vertices), len(c.want.Vertices)) {
				v, w := &got.Vertices[i], c.want.Vertices[i]
				if v.X == 0 && math.Signbit(v.X) {
					t.Errorf("vertex %d: a negative zero", i)
				}
				if math.Abs(v.Bulge-w.Bulge) < 1e-15*(1+math.Abs(w.Bulge)) { // a few last bits of the tangent
					v.Bulge = w.Bulge
				}
			}
			if !reflect.DeepEqual(got, c.want) {
				t.Errorf("%+v\nwant %+v", got, c.want)
			}
		})
	}
}

// The vertices and the bulge of any arc give back its circle: chord c and bulge
// B have the radius c(1+B²)/(4|B|), and the middle of the arc lies half the sweep
// on.
func TestArcAgainstItsCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Float64Range(-4000, 4000).Draw(t, "x"), rapid.Float64Range(-4000, 4000).Draw(t, "y")
		r := rapid.Float64Range(0.1, 4000).Draw(t, "r")
		start, sweep := rapid.Float64Range(-720, 720).Draw(t, "start"), rapid.Float64Range(1, 350).Draw(t, "sweep")
		text := tags(head + fmt.Sprintf("0 ARC|8 A|10 %v|20 %v|40 %v|50 %v|51 %v", x, y, r, start, start+sweep) + tail)
		f, err := dxfread.Parse([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		p, q := f.Entities[0].Vertices[0], f.Entities[0].Vertices[1]
		chord := math.Hypot(q.X-p.X, q.Y-p.Y)
		if got := chord * (1 + p.Bulge*p.Bulge) / (4 * p.Bulge); math.Abs(got-r) > 1e-7 {
			t.Fatalf("radius %v, want %v", got, r)
		}
		// The sagitta B c/2 lies to the right of the chord.
		mx := (p.X+q.X)/2 + p.Bulge*(q.Y-p.Y)/2
		my := (p.Y+q.Y)/2 - p.Bulge*(q.X-p.X)/2
		sin, cos := math.Sincos((start + sweep/2) * math.Pi / 180)
		if math.Hypot(mx-x-r*cos, my-y-r*sin) > 1e-6 {
			t.Fatalf("the middle of the arc at %v, %v, want %v, %v", mx, my, x+r*cos, y+r*sin)
		}
	})
}

// Angles beyond all use are still angles: the float64 nearest to 1e308 is a whole
// number, and 296 more than a multiple of 360 (reckoned with Python's integers,
// int(1e308) % 360).
func TestArcOfHugeAngles(t *testing.T) {
	for angles, sweep := range map[string]float64{
		"50 1e308|51 296": 360, "50 64|51 -1e308": 360, "50 1e308|51 -1e308": 128, "50 -1e308|51 1e308": 232, "50 0|51 1e308": 296,
	} {
		e := one(t, "0 ARC|8 A|10 1|20 2|40 10|"+angles)
		want := math.Tan(sweep / 4 * math.Pi / 180)
		if sweep == 360 {
			want = 1 // of each half
		}
		if e.Closed != (sweep == 360) || math.Abs(e.Vertices[0].Bulge-want) > 1e-14 {
			t.Errorf("%s: %+v, want a sweep of %v", angles, e, sweep)
		}
		for _, v := range e.Vertices {
			if math.Abs(math.Hypot(v.X-1, v.Y-2)-10) > 1e-12 {
				t.Errorf("%s: %v is not on the circle", angles, v)
			}
		}
	}
}
