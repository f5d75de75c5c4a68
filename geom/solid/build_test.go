package solid_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"

	"pgregory.net/rapid"
)

func build(t interface {
	Helper()
	Fatal(...any)
}, p geom.Panel, o solid.Options) solid.Mesh {
	t.Helper()
	m, err := solid.Build(p, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := geomtest.CheckMesh(m); err != nil {
		t.Fatal(err)
	}
	return m
}

// surface is the area of a mesh in square millimeters.
func surface(m solid.Mesh) float64 {
	sum := 0.0
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		n := b.Sub(a).Cross(c.Sub(a))
		sum += n.Norm()
	}
	return sum / 2
}

func TestVolumesInClosedForm(t *testing.T) {
	rect := geom.Rectangle
	for name, c := range map[string]struct {
		panel           geom.Panel
		volume, surface float64 // surface 0: not stated
	}{
		"blank": {geom.Panel{Outline: rect(0, 0, 300, 100), Thickness: 12}, 300 * 100 * 12, 2 * (300*100 + 300*12 + 100*12)},
		// Blank less two dados and a groove, plus the two crossings that both take.
		"side": {geomtest.Side(), 500*140*12.2 - 6.1*6.35*(2*140+500-2*6.35), 0},
		"deep pocket in a wide one": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 2, Outline: rect(10, 10, 90, 90)}, {Depth: 5, Outline: rect(30, 30, 50, 50)}}}, 100*100*10 - 80*80*2 - 20*20*3, 2*100*100 + 4*100*10 + 4*80*2 + 4*20*3},
		"meeting pockets make a hole": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 6, Outline: rect(0, 40, 100, 60)}, {Face: geom.Outside, Depth: 6, Outline: rect(40, 0, 60, 100)}}}, 100*100*10 - 2*100*20*6 + 20*20*2, 0},
		// A pin at each end of 10 x 60, whose flanks lean by 2 over the thickness of 16.
		"pins": {geomtest.Pins(), 200*100*16 - 2*2*20*10*16 - 2*2*10*2*16/2, 0},
		"exactly meeting": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 5, Outline: rect(0, 40, 100, 60)}, {Face: geom.Outside, Depth: 5, Outline: rect(40, 0, 60, 100)}}}, 100*100*10 - 2*100*20*5, 0},
		"pockets that touch at a corner": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 5, Outline: rect(10, 10, 50, 50)}, {Depth: 5, Outline: rect(50, 50, 90, 90)}}}, 100*100*10 - 2*40*40*5, 0},
		"through pockets that touch at a corner": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 10, Outline: rect(10, 10, 50, 50)}, {Depth: 99, Outline: rect(50, 50, 90, 90)}}}, 100*100*10 - 2*40*40*10, 0},
		"hole and pocket across it": {geom.Panel{Outline: rect(0, 0, 100, 100), Holes: []geom.Loop{rect(40, 40, 60, 60)}, Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 5, Outline: rect(0, 45, 100, 55)}}}, 100*100*10 - 20*20*10 - (100-20)*10*5, 0},
		"hole far from the panel": {geom.Panel{Outline: rect(0, 0, 1, 1), Holes: []geom.Loop{rect(100, 0, 101, 1)}, Thickness: 1}, 1, 6},
		"pocket over the edge": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 5, Outline: rect(-20, 20, 30, 40)}}}, 100*100*10 - 30*20*5, 0},
		"cut in two": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 10, Outline: rect(40, 0, 60, 100)}}}, 80 * 100 * 10, 0},
		"nothing left": {geom.Panel{Outline: rect(0, 0, 100, 100), Thickness: 10, Pockets: []geom.Pocket{
			{Depth: 10, Outline: rect(0, 0, 100, 100)}}}, 0, 0},
		"two steps and their backs at one corner": {geom.Panel{Outline: rect(0, 0, 90, 90), Thickness: 12, Pockets: []geom.Pocket{
			{Depth: 2, Outline: rect(0, 0, 45, 45)}, {Depth: 4, Outline: rect(45, 0, 90, 45)}, {Depth: 6, Outline: rect(0, 45, 45, 90)},
			{Face: geom.Outside, Depth: 3, Outline: rect(0, 0, 45, 45)}, {Face: geom.Outside, Depth: 5, Outline: rect(45, 45, 90, 90)}}},
			90*90*12 - 45*45*(2+4+6+3+5), 0},
	} {
		t.Run(name, func(t *testing.T) {
			m := build(t, c.panel, solid.Options{})
			if d := math.Abs(m.Volume() - c.volume); d > 1e-6*c.volume {
				t.Errorf("volume %.6f, want %.6f", m.Volume(), c.volume)
			}
			if c.surface != 0 && math.Abs(surface(m)-c.surface) > 1e-6*c.surface {
				t.Errorf("surface %.6f, want %.6f", surface(m), c.surface)
			}
		})
	}
}

// TestArcTolerance: a drilled hole's volume comes within what the chords leave
// out: at most 2/3 of chord tolerance times the perimeter for flat arcs.
func TestArcTolerance(t *testing.T) {
	for _, chord := range []float64{1, 0.1, 0.01, 0.001} {
		p := geom.Panel{Outline: geom.Rectangle(0, 0, 100, 100), Thickness: 10,
			Pockets: []geom.Pocket{{Kind: geom.Drill, Depth: 8, Outline: geom.Circle(geom.Point{X: 50, Y: 50}, 20)}}}
		m := build(t, p, solid.Options{Chord: chord})
		short := m.Volume() - (100*100*10 - math.Pi*20*20*8)
		if limit := 2.0 / 3 * chord * 2 * math.Pi * 20 * 8; short < 0 || short > limit {
			t.Errorf("chord %g: hole is short of %g mm3, at most %g", chord, short, limit)
		}
	}
}

func TestAlwaysClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := geomtest.AnyPanel().Draw(t, "panel")
		for _, o := range []solid.Options{{}, {Grid: geom.CoarseGrid, Chord: 1}} {
			m := build(t, p, o)
			// Metamorphic: the order of pockets has no meaning.
			q := p
			q.Pockets = nil
			for i := range p.Pockets {
				q.Pockets = append(q.Pockets, p.Pockets[len(p.Pockets)-1-i])
			}
			if d := math.Abs(build(t, q, o).Volume() - m.Volume()); d > 1e-9*(1+m.Volume()) {
				t.Fatalf("another order of pockets changes the volume by %g", d)
			}
		}
	})
}

// TestTurnOver: the panel turned over end for end, faces exchanged, keeps its volume.
func TestTurnOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := geomtest.AnyPanel().Draw(t, "panel")
		q := geom.Panel{Outline: p.Outline.TurnOver(p.Length()), Thickness: p.Thickness}
		for _, k := range p.Pockets {
			k.Outline, k.Face = k.Outline.TurnOver(p.Length()), 1-k.Face
			q.Pockets = append(q.Pockets, k)
		}
		a, b := build(t, p, solid.Options{}), build(t, q, solid.Options{})
		if math.Abs(a.Volume()-b.Volume()) > 1e-5*p.Length()*p.Width()*p.Thickness {
			t.Fatalf("volume %g, turned over %g", a.Volume(), b.Volume())
		}
	})
}

func TestPlace(t *testing.T) {
	grid := geom.FineGrid(1000)
	m := build(t, geomtest.Side(), solid.Options{Grid: grid})
	// The right side of a box 460 wide: its x runs to the front, z to the left.
	placed := m.Place(geom.Placement{Origin: geom.Vec3{X: 460, Y: 500}, X: geom.Back.Scale(-1), Y: geom.Up}, grid)
	if err := geomtest.CheckMesh(placed); err != nil {
		t.Fatal(err)
	}
	if low, high := geomtest.Extent(placed); math.Abs(low.X-(460-12.2)) > grid || low.Y != 0 || low.Z != 0 || high != (geom.Vec3{X: 460, Y: 500, Z: 140}) {
		t.Errorf("stands from %v to %v", low, high)
	}
	if d := math.Abs(placed.Volume() - m.Volume()); d > 1e-9*m.Volume() {
		t.Errorf("volume changed by %g", d)
	}
	// An origin between grid points is rounded to one, so that nothing is lost.
	off := m.Place(geom.Placement{Origin: geom.Vec3{X: 447.7 / 3, Y: 0.1, Z: 1e-7}, X: geom.Right, Y: geom.Up}, grid)
	if err := geomtest.CheckMesh(off); err != nil {
		t.Error(err)
	}
	if low, _ := geomtest.Extent(off); math.Abs(low.X-447.7/3) > grid/2 || low.Z != 0 {
		t.Errorf("stands at %v", low)
	}
	if joined := solid.Join(m, placed); geomtest.CheckMesh(joined) != nil || math.Abs(joined.Volume()-2*m.Volume()) > 1e-9*m.Volume() {
		t.Error("two shells are not the sum of both")
	}
}

// TestExplode: sides go outward and the bottom down, each away from its inside face.
func TestExplode(t *testing.T) {
	for name, c := range map[string]struct {
		stand geom.Placement
		want  geom.Vec3
	}{
		"left side": {geom.Placement{X: geom.Back, Y: geom.Up}, geom.Vec3{X: -50}},
		"front":     {geom.Placement{Origin: geom.Vec3{X: 400}, X: geom.Right.Scale(-1), Y: geom.Up}, geom.Vec3{X: 400, Y: -50}},
		"bottom":    {geom.Placement{Origin: geom.Vec3{Z: 6}, X: geom.Right, Y: geom.Back}, geom.Vec3{Z: -44}},
	} {
		if got := solid.Explode(c.stand, 50).Origin; got != c.want {
			t.Errorf("%s goes to %v, want %v", name, got, c.want)
		}
	}
}

// TestCheckFinds: the invariant fails on what it is there to find.
func TestCheckFinds(t *testing.T) {
	fresh := func() solid.Mesh {
		m := build(t, geomtest.Side(), solid.Options{})
		return solid.Mesh{Vertices: slices.Clone(m.Vertices), Triangles: slices.Clone(m.Triangles)}
	}
	for name, spoil := range map[string]func(m *solid.Mesh){
		"a triangle gone":  func(m *solid.Mesh) { m.Triangles = m.Triangles[1:] },
		"one turned about": func(m *solid.Mesh) { m.Triangles[3][0], m.Triangles[3][1] = m.Triangles[3][1], m.Triangles[3][0] },
		"inside out": func(m *solid.Mesh) {
			for i := range m.Triangles {
				m.Triangles[i][0], m.Triangles[i][1] = m.Triangles[i][1], m.Triangles[i][0]
			}
		},
		"flat":      func(m *solid.Mesh) { m.Triangles = append(m.Triangles, [3]int32{0, 0, 1}) },
		"not float": func(m *solid.Mesh) { m.Vertices[0].X += 1e-12 },
		"a tear": func(m *solid.Mesh) {
			m.Vertices = append(m.Vertices, m.Vertices[0].Add(geom.Up))
			m.Triangles[0][0] = int32(len(m.Vertices) - 1)
		},
	} {
		m := fresh()
		spoil(&m)
		if geomtest.CheckMesh(m) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}

func TestRefuses(t *testing.T) {
	nan := math.NaN()
	for name, p := range map[string]geom.Panel{
		"not a number":    {Outline: geom.Rectangle(0, 0, nan, 1), Thickness: 1},
		"too large":       {Outline: geom.Rectangle(0, 0, 5000, 1), Thickness: 1},
		"huge arc":        {Outline: geom.Loop{{Point: geom.Point{X: 0, Y: 0}, Bulge: 4000}, {Point: geom.Point{X: 4000, Y: 0}}, {Point: geom.Point{X: 0, Y: 9}}}, Thickness: 1},
		"no power of two": {Outline: geom.Rectangle(0, 0, 10, 10), Thickness: 5},
		"no thickness":    {Outline: geom.Rectangle(0, 0, 10, 10)},
		"nan thickness":   {Outline: geom.Rectangle(0, 0, 10, 10), Thickness: nan},
		"beyond its grid": {Outline: geom.Rectangle(0, 0, 1, 1), Thickness: 300},
		"huge thickness":  {Outline: geom.Rectangle(0, 0, 10, 10), Thickness: 1e300},
	} {
		if _, err := solid.Build(p, solid.Options{Grid: map[string]float64{"beyond its grid": geom.FineGrid(1), "no power of two": 0.3}[name]}); !errors.Is(err, geom.ErrExtent) {
			t.Errorf("%s: no error", name)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for name, p := range map[string]geom.Panel{"side": geomtest.Side(), "30 rectangles": geomtest.Crowded(), "30 rounded": geomtest.CrowdedRounded()} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := solid.Build(p, solid.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
