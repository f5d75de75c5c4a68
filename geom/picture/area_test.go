package picture

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// before is the view from straight before the box.
var before = View{Right: geom.Vec3{X: 1}, Up: geom.Vec3{Z: 1}}

func areaOf(loops []geom.Loop) (sum float64) {
	for _, l := range loops {
		sum += l.Area() // of holes below 0
	}
	return sum
}

// TestAreas: from before, a wall of 100 x 100 has all of its 10000 mm2, and of a block of 40 x 100
// that half looks out at its right and by 50 over it, 40 x 50 above and 20 x 50 beside are seen:
// 3000. What stands behind the wall has nothing.
func TestAreas(t *testing.T) {
	list := Areas([]solid.Mesh{
		block(t, 80, 50, 50, 40, 10, 100), block(t, 0, 0, 0, 100, 10, 100), block(t, 20, 50, 20, 30, 30, 30),
	}, before)
	for i, want := range []float64{40*50 + 20*50, 10000, 0} {
		if got := areaOf(list[i]); math.Abs(got-want) > 0.01 {
			t.Errorf("solid %d has %.3f mm2, should have %g", i, got, want)
		}
	}
}

// TestAreaOfHole: through a hole of a wall the block behind is seen, 20 x 20.
func TestAreaOfHole(t *testing.T) {
	wall := geom.Panel{Outline: geom.Rectangle(0, 0, 100, 100), Thickness: 10,
		Holes: []geom.Loop{geom.Rectangle(40, 40, 60, 60)}}
	upright := geom.Placement{X: geom.Vec3{X: 1}, Y: geom.Vec3{Z: 1}}
	list := Areas([]solid.Mesh{placed(t, wall, upright), block(t, 10, 50, 10, 80, 10, 80)}, before)
	for i, want := range []float64{10000 - 400, 400} {
		if got := areaOf(list[i]); math.Abs(got-want) > 0.01 {
			t.Errorf("solid %d has %.3f mm2, should have %g", i, got, want)
		}
	}
}

// TestAreasOfCube: three faces of a cube, each its square times the root of a third, in one loop
// of six corners.
func TestAreasOfCube(t *testing.T) {
	list := Areas([]solid.Mesh{block(t, 0, 0, 0, 60, 60, 60)}, isometric())
	want, got := 3*3600/math.Sqrt(3), areaOf(list[0])
	if len(list[0]) != 1 || len(list[0][0]) != 6 || math.Abs(got-want) > 0.5 {
		t.Errorf("%v with %.3f mm2, should have %.3f", list[0], got, want)
	}
}

// TestMiddle: the middle of a U is in wood, not in its gap.
func TestMiddle(t *testing.T) {
	u := []geom.Loop{geom.Rectangle(0, 0, 90, 90), geom.Rectangle(20, 20, 70, 90)}
	p, found := Middle(u)
	if far, in := within(u, p); !found || !in || far < 9 {
		t.Errorf("%v, %.2f mm from the border, in it %v", p, far, in)
	}
	if _, found := Middle(nil); found {
		t.Error("nothing has a middle")
	}
}

// TestLinesBetween: of a line that goes behind a wall of 100 the ends that look out, 30 and 20, are seen; before
// the wall all of it; a line through the wall up to the wall.
func TestLinesBetween(t *testing.T) {
	wall := []solid.Mesh{block(t, 0, 0, 0, 100, 10, 100)}
	at := func(x, y float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: 40} }
	for _, c := range []struct {
		from, to geom.Vec3
		want     float64
	}{
		{at(-30, 50), at(120, 50), 50}, {at(-30, -50), at(120, -50), 150}, {at(50, -50), at(90, 150), 10},
	} {
		got := total(DrawBetween([]Between{{c.from, c.to}}, wall, before))
		if math.Abs(got-c.want) > 0.5 {
			t.Errorf("from %v to %v %.2f mm are seen, should be %g", c.from, c.to, got, c.want)
		}
	}
}
