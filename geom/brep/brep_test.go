package brep_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/brep"
	"drawerwright/geom/geomtest"

	"pgregory.net/rapid"
)

var errSolid = errors.New("no sound boundary")

// check proves that a boundary is closed, and that every corner and every edge lies on the
// surfaces that meet there.
func check(s brep.Solid) error {
	uses := make([][2]int, len(s.Edges))
	inner := 0
	for i, f := range s.Faces {
		for k, l := range f.Loops {
			if a := s.Area(f, l); (a > 0) != (k == 0) {
				return fmt.Errorf("%w: loop %d of face %d encloses %g mm2", errSolid, k, i, a)
			}
			for j, u := range l {
				from, to, turn := s.Ends(u)
				if next, _, _ := s.Ends(l[(j+1)%len(l)]); next != to || from == to {
					return fmt.Errorf("%w: face %d is open", errSolid, i)
				}
				if u.Backward {
					uses[u.Edge][1]++
				} else {
					uses[u.Edge][0]++
				}
				if off := aside(s, f, u, turn); off > brep.Same {
					return fmt.Errorf("%w: edge %d is %g mm off face %d", errSolid, u.Edge, off, i)
				}
			}
		}
		inner += len(f.Loops) - 1
	}
	for i, n := range uses {
		if n != [2]int{1, 1} {
			return fmt.Errorf("%w: edge %d is used %d times, and %d backward", errSolid, i, n[0], n[1])
		}
	}
	// Corners that two fans of faces share count for each; a box has 2, and 2 less for each way
	// through it.
	if n := len(s.Corners) - len(s.Edges) + len(s.Faces) - inner; n > 2 {
		return fmt.Errorf("%w: Euler characteristic %d", errSolid, n)
	}
	return nil
}

// aside is how far the ends and the middle of an edge are from a face's surface.
func aside(s brep.Solid, f brep.Face, u brep.Use, turn float64) (off float64) {
	e := s.Edges[u.Edge]
	a, b := s.Corners[e.From], s.Corners[e.To]
	mid := a.Add(b).Scale(0.5)
	if e.Radius > 0 {
		at := geom.Point{X: a.X - e.Center.X, Y: a.Y - e.Center.Y}.Rotate(math.Abs(turn) / 2)
		mid = geom.Vec3{X: e.Center.X + at.X, Y: e.Center.Y + at.Y, Z: a.Z}
		for _, v := range []geom.Vec3{a, b} {
			off = max(off, math.Abs(math.Hypot(v.X-e.Center.X, v.Y-e.Center.Y)-e.Radius))
		}
	}
	for _, v := range []geom.Vec3{a, mid, b} {
		if f.Radius > 0 {
			off = max(off, math.Abs(math.Hypot(v.X-f.At.X, v.Y-f.At.Y)-f.Radius))
		} else {
			off = max(off, math.Abs(v.Sub(f.At).Dot(f.Normal)))
		}
	}
	return off
}

// volume is what a body holds, in mm3, by its faces that are not upright; those that lean are rectangles.
func volume(s brep.Solid) (sum float64) {
	for _, f := range s.Faces {
		for _, l := range f.Loops {
			if f.Radius > 0 || f.Normal.Z == 0 {
				continue
			}
			height := 0.0
			for _, u := range l {
				from, _, _ := s.Ends(u)
				height += s.Corners[from].Z / float64(len(l))
			}
			sum += s.Area(f, l) / f.Normal.Z * height
		}
	}
	return sum
}

// sound builds the bodies of a panel, checks each, and holds their volume against that of its
// regions.
func sound(p geom.Panel, within float64) ([]brep.Solid, error) {
	list, err := brep.Build(p)
	if err != nil {
		return nil, err
	}
	sum := 0.0
	for _, s := range list {
		if err := check(s); err != nil {
			return list, err
		}
		sum += volume(s)
	}
	if want := geomtest.Volume(p); math.Abs(sum-want) > within*(want+1) {
		return list, fmt.Errorf("%w: %.6f mm3, its regions hold %.6f", errSolid, sum, want)
	}
	return list, nil
}

// TestFaces: as many faces as a person counts, with exact volumes.
func TestFaces(t *testing.T) {
	rect := geom.Rectangle
	blank := func(k ...geom.Pocket) geom.Panel {
		return geom.Panel{Outline: rect(0, 0, 300, 100), Thickness: 12.2, Pockets: k}
	}
	round := geom.Panel{Outline: geom.RoundedRectangle(0, 0, 300, 100, 12.7), Thickness: 12.2}
	for name, c := range map[string]struct {
		panel                    geom.Panel
		bodies, planes, cylinder int
	}{
		"blank":           {blank(), 1, 6, 0},
		"dado":            {blank(geom.Pocket{Depth: 6.1, Outline: rect(6.1, -5, 12.45, 105)}), 1, 10, 0},
		"stopped groove":  {blank(geom.Pocket{Depth: 6.1, Outline: rect(20, 10, 280, 16)}), 1, 11, 0},
		"rabbet":          {blank(geom.Pocket{Depth: 6.1, Outline: rect(0, 0, 6.1, 100)}), 1, 8, 0},
		"blind hole":      {blank(geom.Pocket{Depth: 6, Outline: geom.Circle(geom.Point{X: 50.3, Y: 40}, 2.5)}), 1, 7, 2},
		"through hole":    {blank(geom.Pocket{Depth: 99, Outline: geom.Circle(geom.Point{X: 50.3, Y: 40}, 2.5)}), 1, 6, 2},
		"rounded":         {round, 1, 6, 4},
		"rounded pocket":  {blank(geom.Pocket{Depth: 5, Outline: geom.RoundedRectangle(50, 20, 150, 80, 3)}), 1, 11, 4},
		"cut in two":      {blank(geom.Pocket{Depth: 13, Outline: rect(100, -1, 120, 101)}), 2, 12, 0},
		"pins":            {geomtest.Pins(), 1, 12 + 2, 0}, // four of the twelve walls lean
		"crossing an arc": {blank(geom.Pocket{Depth: 5, Outline: geom.Circle(geom.Point{X: 100}, 20)}, geom.Pocket{Depth: 3, Outline: rect(110, -10, 140, 50)}), 1, 11, 1},
		"touching pockets": {blank(geom.Pocket{Depth: 99, Outline: rect(10, 10, 50, 50)},
			geom.Pocket{Depth: 99, Outline: rect(50, 50, 90, 90)}), 1, 14, 0},
	} {
		list, err := sound(c.panel, 1e-9)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		planes, cylinders := 0, 0
		for _, s := range list {
			for _, f := range s.Faces {
				if f.Radius > 0 {
					cylinders++
				} else {
					planes++
				}
			}
		}
		if len(list) != c.bodies || planes != c.planes || cylinders != c.cylinder {
			t.Errorf("%s: %d bodies of %d planes and %d cylinders, want %d of %d and %d", name, len(list), planes,
				cylinders, c.bodies, c.planes, c.cylinder)
		}
	}
}

// TestAny: the boundary of any panel is closed and holds what its regions hold.
func TestAny(t *testing.T) {
	for _, p := range []geom.Panel{geomtest.Side(), geomtest.Crowded(), geomtest.CrowdedRounded()} {
		if _, err := sound(p, 1e-6); err != nil {
			t.Error(err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		if _, err := sound(geomtest.AnyPanel().Draw(t, "panel"), 1e-5); err != nil {
			t.Fatal(err)
		}
	})
}

// TestHalfDepths: a groove and the rabbet of the other face that it crosses are half the thickness deep: their floors
// are on one level, and no edge between them is without a length.
func TestHalfDepths(t *testing.T) {
	for i := range 400 {
		thick := 11.5 + float64(i)*0.0025
		h, length := thick/2, 407.5
		p := geom.Panel{Outline: geom.Rectangle(0, 0, length, 180), Thickness: thick, Pockets: []geom.Pocket{
			{Kind: geom.Groove, Face: geom.Inside, Depth: h, MayMeet: true, Outline: geom.Rectangle(0, h, length, h+6)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: h, MayMeet: true, Outline: geom.Rectangle(0, 0, h, 180)},
		}}
		bodies, err := brep.Build(p)
		if err != nil || len(bodies) != 1 {
			t.Fatalf("%g mm thick: %d bodies, %v", thick, len(bodies), err)
		}
		for _, e := range bodies[0].Edges {
			if bodies[0].Corners[e.From] == bodies[0].Corners[e.To] {
				t.Fatalf("%g mm thick: an edge at %v has no length", thick, bodies[0].Corners[e.From])
			}
		}
	}
}
