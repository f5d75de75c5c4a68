package setup_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// cuboid is a block along the axes of a panel or a machine.
type cuboid struct{ low, high geom.Vec3 }

// inPanel is a block of the machine in the coordinates of the panel that stands there.
func inPanel(c cuboid, at geom.Placement) cuboid {
	into := func(v geom.Vec3) geom.Vec3 {
		d := v.Sub(at.Origin)
		return geom.Vec3{X: d.Dot(at.X), Y: d.Dot(at.Y), Z: d.Dot(at.Normal())}
	}
	a, b := into(c.low), into(c.high)
	return cuboid{geom.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)},
		geom.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}}
}

// taken is what all passes of a turn take off the blank, in its coordinates, within the board;
// wrong says where the board does not lie on the table at its fence.
func taken(b setup.Board, s setup.Step, turn setup.Turn) (all cuboid, wrong string) {
	p := b.Panel
	for i, face := range s.Faces() {
		at := s.Lies(p, turn.Edges, face)
		low, high := setup.Extent(p, at)
		if math.Abs(high.X-face) > near/2 || math.Abs(low.Y) > near/2 || math.Abs(low.Z) > near/2 {
			return all, fmt.Sprintf("at a fence of %g it stands from %v to %v", face, low, high)
		}
		along := at.X                                         // which way a stop is counted
		x := geom.Interval{Min: -s.Cutter, Max: min(0, face)} // all of the cutter that is not in the fence
		begin, end := s.Stops[0], s.Stops[1]
		if along.Y < -0.5 {
			begin, end = end, begin
		}
		one := inPanel(cuboid{geom.Vec3{X: x.Min, Y: begin}, geom.Vec3{X: x.Max, Y: high.Y - end, Z: s.Height}}, at)
		one.low = geom.Vec3{X: max(one.low.X, 0), Y: max(one.low.Y, 0), Z: max(one.low.Z, 0)}
		board := geom.Vec3{X: p.Length(), Y: p.Width(), Z: p.Thickness}
		one.high = geom.Vec3{X: min(one.high.X, board.X), Y: min(one.high.Y, board.Y), Z: min(one.high.Z, board.Z)}
		if i == 0 {
			all = one
			continue
		}
		all.low = geom.Vec3{X: min(all.low.X, one.low.X), Y: min(all.low.Y, one.low.Y), Z: min(all.low.Z, one.low.Z)}
		all.high = geom.Vec3{X: max(all.high.X, one.high.X), Y: max(all.high.Y, one.high.Y), Z: max(all.high.Z, one.high.Z)}
	}
	return all, ""
}

// pocketBlock is the wood that a pocket takes off the blank.
func pocketBlock(p geom.Panel, k geom.Pocket) cuboid {
	b := k.OnBlank().Bounds()
	out := cuboid{geom.Vec3{X: b.Min.X, Y: b.Min.Y}, geom.Vec3{X: b.Max.X, Y: b.Max.Y, Z: k.Depth}}
	if k.Face == geom.Inside {
		out.low.Z, out.high.Z = p.Thickness-k.Depth, p.Thickness
	}
	return out
}

func (c cuboid) is(o cuboid) bool {
	d, e := c.low.Sub(o.low), c.high.Sub(o.high)
	return max(math.Abs(d.X), math.Abs(d.Y), math.Abs(d.Z), math.Abs(e.X), math.Abs(e.Y), math.Abs(e.Z)) < near
}

// TestLiesAtItsCut: of random boxes, wherever a board lies or stands for a cut on a saw or a router
// table, it is on the table, on the operator's side of the fence; what the cutter at its height takes
// off it at all fence distances is the pocket that the drawing has, and each pocket is made so once.
func TestLiesAtItsCut(t *testing.T) {
	works := make(map[setup.Holding]int)
	for seed := range uint64(geomtest.Cases(800, 8000)) {
		r := rand.New(rand.NewPCG(19, seed))
		s, machines := anySpec(r), anyMachines(r)
		d, problems, _ := joinery.LayOut(s)
		refused := slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() })
		if refused || !s.Cutter.Kind.Fenced() {
			continue
		}
		for _, b := range boards(d) {
			for _, step := range setup.Process(b, s.Cutter, machines) {
				fail := func(format string, args ...any) {
					t.Fatalf("job %d, %s, %s: %s\n%+v", seed, b.Name, step.Holding, fmt.Sprintf(format, args...), step)
				}
				var made, cut []int
				for _, turn := range step.Turns {
					made, cut = append(made, turn.Pockets...), append(cut, turn.EdgeCuts...)
				}
				if !slices.Equal(sorted(made), sorted(step.Pockets)) ||
					!slices.Equal(sorted(cut), sorted(step.EdgeCuts)) {
					fail("turns make %v and %v", made, cut)
				}
				if setting := step.Holding; step.Refused != nil || !slices.Contains(fenced, setting) {
					continue
				}
				works[step.Holding]++
				for _, turn := range step.Turns {
					if step.Holding == setup.Fingers {
						if wrong := fingersTaken(b.Panel, step, turn); wrong != "" {
							fail("%s", wrong)
						}
						continue
					}
					got, wrong := taken(b, step, turn)
					if wrong != "" {
						fail("%s", wrong)
					}
					for _, i := range turn.Pockets {
						if want := pocketBlock(b.Panel, b.Panel.Pockets[i]); !got.is(want) {
							fail("%+v: takes %v, the pocket is %v", turn.Edges, got, want)
						}
					}
				}
			}
		}
	}
	t.Log(works)
	for _, w := range fenced {
		if works[w] == 0 {
			t.Errorf("no board lies %q", w)
		}
	}
}

var fenced = []setup.Holding{setup.Across, setup.AtEnd, setup.OnEnd, setup.Along, setup.AtEdge, setup.Fingers}

func sorted(list []int) []int { return slices.Sorted(slices.Values(list)) }

// fingersTaken says what is wrong with the notches of a turn: each is what the cutter takes where the
// lower edge stands for it, within the board.
func fingersTaken(p geom.Panel, s setup.Step, turn setup.Turn) string {
	for _, i := range turn.EdgeCuts {
		b := p.EdgeCuts[i].Area.Bounds()
		want := cuboid{geom.Vec3{X: b.Min.X, Y: b.Min.Y}, geom.Vec3{X: b.Max.X, Y: b.Max.Y, Z: p.Thickness}}
		var all cuboid
		for k, right := range setup.NotchStands(geom.Interval{Min: b.Min.Y, Max: b.Max.Y}, s.Cutter) {
			at := s.Lies(p, turn.Edges, right)
			low, high := setup.Extent(p, at)
			if math.Abs(high.X-right) > near/2 || math.Abs(low.Z) > near/2 {
				return fmt.Sprintf("it stands from %v to %v", low, high)
			}
			one := inPanel(cuboid{geom.Vec3{X: -s.Cutter}, geom.Vec3{Y: high.Y, Z: s.Height}}, at)
			one.low.Y, one.high.Y = max(0, one.low.Y), min(p.Width(), one.high.Y)
			if k == 0 {
				all = one
			}
			all.low.Y, all.high.Y = min(all.low.Y, one.low.Y), max(all.high.Y, one.high.Y)
		}
		if !all.is(want) {
			return fmt.Sprintf("a notch takes %v, not %v", all, want)
		}
	}
	return ""
}
