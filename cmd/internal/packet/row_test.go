package packet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// wallsInRow are the placements of the walls of a box by their place in the triangle on their labels, and the pieces
// that have none by the face that their label goes on.
func wallsInRow(t *testing.T, m maker, taken Taken, name string) [4]geom.Placement {
	t.Helper()
	var walls [4]geom.Placement
	for _, p := range taken.drawer.Parts {
		for n := range p.Placements {
			l := m.label(p, n)
			wall := p.Role == joinery.Side || p.Role == joinery.Front || p.Role == joinery.Back
			if wall != (l.Set == len(walls)) || wall && (l.Face != "inside face" || l.Edge != "lower edge") {
				t.Errorf("%s: %s, on its %s, %s down, stands at %d of %d in the row", name, l.Part, l.Face, l.Edge,
					l.Place, l.Set)
			}
			if !wall || l.Set != len(walls) {
				continue
			}
			if walls[l.Place-1] != (geom.Placement{}) {
				t.Errorf("%s: two walls at %d", name, l.Place)
			}
			walls[l.Place-1] = p.Placements[n]
		}
	}
	return walls
}

// TestRowJoinsEndToEnd: the walls of every box of the samples, laid side by side as the triangle on their labels has
// them, labels up and lower edges toward one, have those ends beside each other that meet in the box: the right end of
// each is nearer to the left end of the next than any other ends of the two, and that of the last to the first.
func TestRowJoinsEndToEnd(t *testing.T) {
	boxes := 0
	eachTaken(t, func(name string, taken Taken) {
		boxes++
		ends := make(map[geom.Placement][2]geom.Vec3) // in the box, at the left and at the right of the label
		for _, p := range taken.drawer.Parts {
			r := p.Panel.Outline.Bounds()
			for _, at := range p.Placements {
				ends[at] = [2]geom.Vec3{at.Apply(geom.Vec3{X: r.Min.X}), at.Apply(geom.Vec3{X: r.Max.X})}
			}
		}
		walls := wallsInRow(t, maker{unit: geom.Millimeter}, taken, name)
		for i, w := range walls {
			if w.Y != geom.Up || w.Normal().Z != 0 {
				t.Errorf("%s: the label at %d is not upright in the box", name, i+1)
			}
			here, next := ends[w], ends[walls[(i+1)%len(walls)]]
			least, nearest := math.Inf(1), ""
			for a := range here {
				for b := range next {
					d := here[a].Sub(next[b])
					if apart := math.Hypot(d.X, d.Y); apart < least {
						least, nearest = apart, fmt.Sprint(a, b)
					}
				}
			}
			if nearest != "1 0" {
				t.Errorf("%s: beside the right end of %d in the row lies another end than it meets", name, i+1)
			}
		}
	})
	if boxes < 20 {
		t.Errorf("%d boxes", boxes)
	}
}

// TestStepsBeforeGlue: what is done about a tongue that is too long is said at the dry fit, and not once there is
// glue; where screws go into an edge there is a pilot hole.
func TestStepsBeforeGlue(t *testing.T) {
	b := read(t, "", many(1))
	for _, fit := range []joinery.BottomFit{joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied} { // screws into edges
		if said := bottomIn(batch.Batch{}, joinery.Spec{BottomFit: fit}); !strings.Contains(said, "pilot hole") {
			t.Errorf("%s: %q", fit, said)
		}
	}
	taken, err := take(b.Stocks, b.Drawers[0])
	if err != nil {
		t.Fatal(err)
	}
	m := maker{Book: &paper.Book{Size: paper.A4}, batch: b, unit: b.Units}
	steps := m.steps(taken)
	if !strings.Contains(steps[0].Words, openShoulder) || !strings.Contains(steps[1].Words, laidOut()) {
		t.Errorf("before the glue: %q, %q", steps[0].Words, steps[1].Words)
	}
	for _, s := range steps[1:] {
		if strings.Contains(s.Words, "trim") {
			t.Errorf("once there is glue: %q", s.Words)
		}
	}
}

// TestOpenEndsHaveTheirPlugs: grooves that run out show at four corners, at those of the back alone where a drawer
// front is before the others; plugs that are wished for are those of the hardware.
func TestOpenEndsHaveTheirPlugs(t *testing.T) {
	for instead, want := range map[string][2]int{
		"sides: ply": {1, 1},
		"drawer-front: {stock: ply, height: 100, width: 330, overhang-left: 15, overhang-below: 10}, sides: ply": {0, 1},
		"joinery: {groove-ends: plugged}, sides: ply":                                                            {1, 1},
		"joinery: {bottom-fit: slide-in}, sides: ply":                                                            {1, 0},
		"joinery: {bottom-fit: applied}, sides: ply":                                                             {0, 0},
	} {
		b := read(t, "", []byte(strings.Replace(string(many(1)), "sides: ply", instead, 1)))
		d := b.Drawers[0]
		said := strings.Join(openEnds(d), " ")
		got := [2]int{strings.Count(said, "at the box front 2 x plug "), strings.Count(said, "at the back 2 x plug ")}
		if got != want {
			t.Errorf("%s: %v of front and back, should be %v: %q", instead, got, want, said)
		}
		plugs := 0
		for _, h := range d.Hardware {
			if h.Offcut {
				plugs += h.Count
			}
		}
		plugged := strings.Contains(instead, "plugged")
		if plugged != (plugs == 4) || plugged != strings.HasPrefix(said, "Glue a plug") {
			t.Errorf("%s: %d plugs in the hardware, said %q", instead, plugs, said)
		}
	}
}
