package picture

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
)

func block(t testing.TB, x, y, z, length, width, thick float64) solid.Mesh {
	t.Helper()
	return placed(t, geom.Panel{Outline: geom.Rectangle(0, 0, length, width), Thickness: thick}, geom.Placement{Origin: geom.Vec3{X: x, Y: y, Z: z}, X: geom.Vec3{X: 1}, Y: geom.Vec3{Y: 1}})
}

// step is the grid of all solids here.
const step = 1.0 / 4096

func placed(t testing.TB, p geom.Panel, at geom.Placement) solid.Mesh {
	t.Helper()
	m, err := solid.Build(p, solid.Options{Grid: step})
	if err != nil {
		t.Fatal(err)
	}
	return m.Place(at, step)
}

func total(list []Segment) (sum float64) {
	for _, s := range list {
		sum += s.A.To(s.B)
	}
	return sum
}

// TestCube: of 12 edges the 9 that meet the nearest corner or make the outline are
// seen, each shortened by the root of two thirds.
func TestCube(t *testing.T) {
	list := Draw([]solid.Mesh{block(t, 0, 0, 0, 60, 60, 60)}, isometric())
	if len(list) != 9 {
		t.Fatalf("%d lines: %v", len(list), list)
	}
	for _, s := range list {
		if want := 60 * math.Sqrt(2.0/3); math.Abs(s.A.To(s.B)-want) > 1e-5 {
			t.Errorf("%v is %g long, should be %g", s, s.A.To(s.B), want)
		}
	}
}

// TestBehind: what stands behind a larger block is not seen, and half of what looks out
// over it by half is.
func TestBehind(t *testing.T) {
	front := View{Right: geom.Vec3{X: 1}, Up: geom.Vec3{Z: 1}} // straight from before
	wall := block(t, 0, 0, 0, 100, 10, 100)
	alone := Draw([]solid.Mesh{wall}, front)
	if both := Draw([]solid.Mesh{wall, block(t, 20, 50, 20, 30, 30, 30)}, front); !slices.Equal(alone, both) {
		t.Errorf("a hidden block shows: %v", both)
	}
	// A block 40 wide and 100 high, half over the wall's upper edge: 50 + 40 + 50.
	both := Draw([]solid.Mesh{wall, block(t, 20, 50, 50, 40, 40, 100)}, front)
	if got, want := total(both)-total(alone), 140.0; math.Abs(got-want) > 1e-5 {
		t.Errorf("%g of it is seen, should be %g", got, want)
	}
}

// TestTouching: two blocks that stand against each other show one line between them.
func TestTouching(t *testing.T) {
	front := View{Right: geom.Vec3{X: 1}, Up: geom.Vec3{Z: 1}}
	list := Draw([]solid.Mesh{block(t, 0, 0, 0, 50, 10, 30), block(t, 50, 0, 0, 50, 10, 30)}, front)
	// The outline of 100 by 30, and the line of 30 between.
	if got := total(list); math.Abs(got-290) > 1e-5 {
		t.Errorf("%g mm of lines, should be 290: %v", got, list)
	}
}

// TestHole: of a round hole straight through, seen at 45 degrees in a board half as
// thick as it is wide, the upper rim is whole and of the lower one a part is seen.
func TestHole(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 100, 100), Thickness: 10, Holes: []geom.Loop{geom.Circle(geom.Point{X: 50, Y: 50}, 20)}}
	m, err := solid.Build(p, solid.Options{Grid: step})
	if err != nil {
		t.Fatal(err)
	}
	list := Draw([]solid.Mesh{m}, From(0, 45))
	plain := Draw([]solid.Mesh{block(t, 0, 0, 0, 100, 100, 10)}, From(0, 45))
	// Both rims are ellipses with half axes 20 and 20 sin 45; the lower one is 10 cos 45
	// lower. It is seen within the upper one: where |y + 10 cos 45| on the ellipse is
	// inside, that is below the middle between them, y = -5 cos 45 from its own center
	// turned round: up to the angle asin(5 cos 45 / (20 sin 45)) = asin(1/4) above its
	// middle line.
	a, b := 20.0, 20*math.Sin(math.Pi/4)
	arc := func(from, to float64) (sum float64) {
		const n = 20000
		for i := range n {
			u := from + (to-from)*(float64(i)+0.5)/n
			sum += math.Hypot(a*math.Sin(u), b*math.Cos(u)) * (to - from) / n
		}
		return sum
	}
	want := arc(0, 2*math.Pi) + arc(math.Asin(0.25), math.Pi-math.Asin(0.25))
	if got := total(list) - total(plain); math.Abs(got-want) > 0.01*want {
		t.Errorf("rims of %g mm are seen, should be %g", got, want)
	}
}

func drawers(t testing.TB) map[string][]solid.Mesh {
	t.Helper()
	ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(12.2), Grain: joinery.GrainNone}
	board := joinery.Stock{Name: "board", Thickness: joinery.Measure(5.9), Grain: joinery.GrainNone}
	list := make(map[string][]solid.Mesh)
	for _, joint := range []joinery.Joint{joinery.DadoRabbet, joinery.BoxJoint} {
		s := joinery.Spec{Name: "a", Count: 1, Width: 300, Height: 100, Depth: 260, Sides: ply, Front: ply, Back: ply, Bottom: board, BottomFit: joinery.BottomAuto, BottomClearance: 2,
			Joint: joint, Cutter: joinery.Cutter{Kind: joinery.Router, Width: 6}, GrooveEnds: joinery.GrooveStopped, DadoClearance: 0.2, GrooveClearance: 0.2,
			Pull: joinery.Pull{Shape: joinery.PullHole, Width: 32, FromTop: 45}}
		d, problems, _ := joinery.LayOut(s)
		if len(d.Parts) < 4 {
			t.Fatal(problems)
		}
		for _, apart := range []float64{0, 60} {
			var all []solid.Mesh
			for _, p := range d.Parts {
				for _, at := range p.Placements {
					all = append(all, placed(t, p.Panel, solid.Explode(at, apart)))
				}
			}
			name := string(joint)
			if apart > 0 {
				name += " apart"
			}
			list[name] = all
		}
	}
	return list
}

// TestAgainstRays: at places all along the edges of drawer boxes, put together and
// apart, a line is drawn just where a ray to the eye meets nothing. The rays are cast
// at all triangles in three dimensions.
func TestAgainstRays(t *testing.T) {
	v := From(-31.7, 28.3) // no edge is just before another one
	eye := v.eye()
	for name, solids := range drawers(t) {
		list := Draw(solids, v)
		checked, wrong := 0, 0
		for _, m := range solids {
			for i := range m.Triangles {
				a, b, c := m.Corners(i)
				for k, side := range [3][2]geom.Vec3{{a, b}, {b, c}, {c, a}} {
					// Where a pocket ends on an edge, rounding leaves edges too short to see.
					if length := math.Sqrt(scalar(side[0], side[0]) - 2*scalar(side[0], side[1]) + scalar(side[1], side[1])); length < 0.05 || !sharp(m, side, v) {
						continue
					}
					// Three places on each, at parts without meaning.
					u := []float64{0.137, 0.518, 0.861}[(i+k)%3]
					p := geom.Vec3{X: side[0].X + u*(side[1].X-side[0].X), Y: side[0].Y + u*(side[1].Y-side[0].Y), Z: side[0].Z + u*(side[1].Z-side[0].Z)}
					open, sure := sees(solids, p, eye)
					if !sure {
						continue
					}
					checked++
					flat := func(p geom.Vec3) geom.Point { return geom.Point{X: scalar(p, v.Right), Y: scalar(p, v.Up)} }
					if drawn(list, flat(p), flat(side[0]), flat(side[1])) != open {
						if wrong++; wrong <= 3 {
							t.Errorf("%s: %v is open to the eye: %v, drawn: %v", name, p, open, !open)
						}
					}
				}
			}
		}
		if checked < 300 {
			t.Errorf("%s: only %d places were sure", name, checked)
		}
		t.Log(name, checked, "places,", len(list), "lines")
	}
}

func scalar(a, b geom.Vec3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// sharp reports whether an edge of a mesh is a corner of which a face is turned to the eye.
func sharp(m solid.Mesh, s [2]geom.Vec3, v View) bool {
	turned, least := false, 1.0
	var normals []geom.Vec3
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		for _, o := range [3][2]geom.Vec3{{a, b}, {b, c}, {c, a}} {
			if o == s || o == [2]geom.Vec3{s[1], s[0]} {
				normals = append(normals, m.Normal(i))
			}
		}
	}
	for _, n := range normals {
		turned = turned || scalar(n, v.eye()) > 1e-6
		least = min(least, scalar(n, normals[0]))
	}
	return turned && least < 0.5
}

// sees casts rays from beside a place toward the eye (T. Moeller, B. Trumbore, Fast,
// minimum storage ray/triangle intersection, 1997). It is sure where rays on all
// sides agree, or where those on one side are free and on the other not.
func sees(solids []solid.Mesh, p, eye geom.Vec3) (open, sure bool) {
	free := 0
	steps := []geom.Vec3{{X: 0.011, Y: 0.004, Z: 0.007}, {X: -0.009, Y: 0.012, Z: 0.003}, {X: 0.005, Y: -0.01, Z: -0.011}, {X: -0.007, Y: -0.006, Z: 0.012}}
	for _, s := range steps {
		// From a little nearer than the step can hide.
		q := geom.Vec3{X: p.X + s.X + 0.05*eye.X, Y: p.Y + s.Y + 0.05*eye.Y, Z: p.Z + s.Z + 0.05*eye.Z}
		if !met(solids, q, eye) {
			free++
		}
	}
	// Rays that start beside an edge may start within its own solid: then not all agree.
	return free > 0, free == 0 || free == len(steps)
}

func met(solids []solid.Mesh, q, eye geom.Vec3) bool {
	sub := func(a, b geom.Vec3) geom.Vec3 { return geom.Vec3{X: a.X - b.X, Y: a.Y - b.Y, Z: a.Z - b.Z} }
	cross := func(a, b geom.Vec3) geom.Vec3 {
		return geom.Vec3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
	}
	for _, m := range solids {
		for i := range m.Triangles {
			a, b, c := m.Corners(i)
			e, f := sub(b, a), sub(c, a)
			h := cross(eye, f)
			det := scalar(e, h)
			if math.Abs(det) < 1e-9 {
				continue
			}
			s := sub(q, a)
			u := scalar(s, h) / det
			w := cross(s, e)
			x := scalar(eye, w) / det
			if u >= 0 && x >= 0 && u+x <= 1 && scalar(f, w)/det > 0 {
				return true
			}
		}
	}
	return false
}

// drawn reports whether a line goes through a place, in the direction from a to b: other
// edges may cross there.
func drawn(list []Segment, p, a, b geom.Point) bool {
	for _, s := range list {
		long := s.A.To(s.B)
		if math.Abs((s.B.X-s.A.X)*(b.Y-a.Y)-(s.B.Y-s.A.Y)*(b.X-a.X)) > 0.02*long*a.To(b) {
			continue
		}
		along := ((p.X-s.A.X)*(s.B.X-s.A.X) + (p.Y-s.A.Y)*(s.B.Y-s.A.Y)) / long
		off := math.Abs((p.X-s.A.X)*(s.B.Y-s.A.Y)-(p.Y-s.A.Y)*(s.B.X-s.A.X)) / long
		if off < 0.01 && along > -0.01 && along < long+0.01 {
			return true
		}
	}
	return false
}

// TestOrder: the picture does not depend on the order of the solids, and moves with
// them.
func TestOrder(t *testing.T) {
	for name, solids := range drawers(t) {
		list := Draw(solids, isometric())
		back := slices.Clone(solids)
		slices.Reverse(back)
		if other := Draw(back, isometric()); math.Abs(total(other)-total(list)) > 1e-3 {
			t.Errorf("%s: %g mm of lines, in another order %g", name, total(list), total(other))
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	for name, solids := range drawers(b) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Draw(solids, isometric())
			}
		})
	}
}
