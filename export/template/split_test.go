package template

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// TestPiecesMeet: pieces pushed together are as large as the plate, for every one ends
// where the next begins, and all fit the bed with their keys.
func TestPiecesMeet(t *testing.T) {
	for _, bed := range []geom.Point{{X: 300, Y: 250}, {X: 200, Y: 120}, {X: 120, Y: 90}} {
		o := options()
		o.Bed, o.Register = bed, Lip
		s := spec(joinery.DadoRabbet)
		s.Width, s.Depth = 560, 458
		plates, problems := Panels(built(s), o)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		split := 0
		for _, p := range plates {
			list := p.Split()
			for i, q := range list {
				if b := q.Outline.Bounds(); !o.fits(b.Width(), b.Height()) {
					t.Errorf("%s is %g x %g on a bed of %v", q.Name, b.Width(), b.Height(), bed)
				}
				if i == 0 || list[i-1].Origin.Y != q.Origin.Y {
					continue
				}
				split++
				if step := list[i-1].Origin.X - q.Origin.X; !slices.ContainsFunc(list[i-1].Outline, func(v geom.Vertex) bool { return math.Abs(v.X-step) < 1e-9 && v.Y == 0 }) {
					t.Errorf("%s does not end %g from its left", list[i-1].Name, step)
				}
				if !slices.ContainsFunc(q.Outline, func(v geom.Vertex) bool { return v.X == 0 && v.Y == 0 }) {
					t.Errorf("%s does not begin at 0", q.Name)
				}
			}
		}
		if split == 0 {
			t.Error("nothing was split")
		}
	}
}

// TestKeysForABit: with a bit, no corner that it has to reach into is narrower than it,
// and a key in its socket has play all about.
func TestKeysForABit(t *testing.T) {
	o := options()
	o.Bed, o.Register, o.MinBridge, o.Mark = geom.Point{X: 200, Y: 160}, Lip, 3, 4
	plates, problems := Panels(built(spec(joinery.DadoRabbet))[:1], o)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	list := plates[0].Split()
	if len(list) < 2 {
		t.Fatal("not split")
	}
	arcs := 0
	for _, p := range list {
		for i, v := range p.Outline {
			n := p.Outline[(i+1)%len(p.Outline)]
			if v.Bulge == 0 {
				continue
			}
			arcs++
			if r := v.To(n.Point) * (1 + v.Bulge*v.Bulge) / (4 * math.Abs(v.Bulge)); math.Abs(r-1.6) > 1e-9 {
				t.Errorf("%s: a corner of radius %g", p.Name, r)
			}
		}
		if made := p.Made(3); len(made.Found) > 0 {
			t.Errorf("%s: %v", p.Name, made.Found)
		}
	}
	if arcs == 0 {
		t.Fatal("no corner is round")
	}
	// Nothing of one piece's outline is inside the other: points along its keys, and the
	// other outline's polygon.
	a, b := list[0], list[1]
	by := geom.Point{X: a.Origin.X - b.Origin.X, Y: a.Origin.Y - b.Origin.Y}
	var other []geom.Point
	for i, v := range b.Outline {
		n := b.Outline[(i+1)%len(b.Outline)].Point
		for k := range 64 {
			q := along(v, n, float64(k)/64)
			other = append(other, geom.Point{X: q.X + by.X, Y: q.Y + by.Y})
		}
	}
	tested := 0
	for i, v := range a.Outline {
		n := a.Outline[(i+1)%len(a.Outline)].Point
		for k := range 50 {
			q := along(v, n, float64(k)/50)
			if q.X < by.X+0.01 {
				continue
			}
			tested++
			if within, off := inPolygon(other, q); within {
				t.Errorf("the key is in the socket's wood at %v", q)
			} else if off < keyClearance*3/math.Sqrt(10)-1e-3 && q.X > by.X+1 { // flanks lean by 1 in 3
				t.Errorf("%g of clearance at %v", off, q)
			}
		}
	}
	if tested < 100 {
		t.Errorf("only %d points of keys", tested)
	}
}

// inPolygon reports whether a point is in a polygon, and how far it is from its sides.
func inPolygon(l []geom.Point, q geom.Point) (inside bool, off float64) {
	off = math.Inf(1)
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
		dx, dy := b.X-a.X, b.Y-a.Y
		if long := dx*dx + dy*dy; long > 0 {
			k := max(0, min(1, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/long))
			off = min(off, math.Hypot(q.X-a.X-k*dx, q.Y-a.Y-k*dy))
		}
	}
	return inside, off
}

// TestScoredLinesAreParted: the parts of scored paths in the two halves of a plane are as
// long together as the path, and none leaves its half.
func TestScoredLinesAreParted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "sides")
		path := make([]geom.Vertex, n+1)
		for i := range path {
			path[i] = geom.Vertex{Point: geom.Point{X: rapid.Float64Range(-50, 50).Draw(t, "x"), Y: rapid.Float64Range(-50, 50).Draw(t, "y")},
				Bulge: rapid.SampledFrom([]float64{0, 0.3, -0.7, 1}).Draw(t, "bulge")}
		}
		long := func(parts [][]geom.Vertex) (sum float64) {
			for _, p := range parts {
				for i := range len(p) - 1 {
					chord := p[i].To(p[i+1].Point)
					if k := math.Abs(p[i].Bulge); k > 1e-12 {
						chord *= (1 + k*k) / k * math.Atan(k)
					}
					sum += chord
				}
			}
			return sum
		}
		const far = 1000
		left := within(path, geom.Rect{Min: geom.Point{X: -far, Y: -far}, Max: geom.Point{X: 3, Y: far}}, geom.Point{})
		right := within(path, geom.Rect{Min: geom.Point{X: 3, Y: -far}, Max: geom.Point{X: far, Y: far}}, geom.Point{})
		if whole, both := long([][]geom.Vertex{path}), long(left)+long(right); math.Abs(whole-both) > 1e-3 {
			t.Fatalf("%g of %g", both, whole)
		}
		for _, p := range left {
			if b := geom.Loop(p[:len(p):len(p)]).Bounds(); len(p) == 2 && b.Max.X > 3+1e-9 {
				t.Fatalf("%v leaves its half", p)
			}
		}
	})
}

// TestStrips: strips are as long together as the panel, and serve all it serves.
func TestStrips(t *testing.T) {
	o := options()
	o.Bed, o.Register = geom.Point{X: 200, Y: 120}, Lip
	s := spec(joinery.DadoRabbet)
	s.Depth = 458
	panels := built(s)
	plates, _ := Panels(append(panels, panels...), o)
	long := 0.0
	for _, p := range plates {
		if strings.HasSuffix(p.Name, "side-inside-lip-edge") {
			long += p.Outline.Bounds().Width() * float64(p.Count)
			if len(p.Parts) != 2 {
				t.Errorf("%s serves %q", p.Name, p.Parts)
			}
		}
	}
	if math.Abs(long-458) > 1e-9 {
		t.Errorf("strips of %g for a side of 458", long)
	}
}
