package proof

import (
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// mirrored is a box seen in a mirror beside it: every panel the other way about,
// left for right.
func mirrored(list []Piece) []Piece {
	over := func(v geom.Vec3) geom.Vec3 { v.X = -v.X; return v }
	other := map[string]string{"left side": "right side", "right side": "left side"}
	var all []Piece
	for _, p := range list {
		r := p.Board.Outline.Bounds()
		turn := func(s Shape) Shape {
			ring := make([]geom.Point, len(s.ring))
			for i, v := range s.ring {
				ring[i] = geom.Point{X: r.Min.X + r.Max.X - v.X, Y: v.Y}
			}
			slices.Reverse(ring)
			return ShapeOf(geom.Polygon(ring...))
		}
		q := p
		q.Board.Outline, q.Board.Cuts = turn(p.Board.Outline), nil
		for _, c := range p.Board.Cuts {
			q.Board.Cuts = append(q.Board.Cuts, Cut{c.Face, c.Depth, turn(c.Shape), c.Lean})
		}
		q.Placement = geom.Placement{Origin: over(p.Placement.Origin.Add(p.Placement.X.Scale(r.Min.X + r.Max.X))), X: over(p.Placement.X).Scale(-1), Y: over(p.Placement.Y)}
		if name, there := other[p.Name]; there {
			q.Name = name
		}
		all = append(all, q)
	}
	return all
}

// TestMadeMirrored: any of the boxes made by hand, with boards and cuts that are
// not what they should be, is the same moved, in another order and in a mirror.
func TestMadeMirrored(t *testing.T) {
	seen := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		m := madeBox{front: rapid.SampledFrom([]joinery.Joint{joinery.Rabbet, joinery.Butt, joinery.BoxJoint}).Draw(t, "front"),
			back:   rapid.SampledFrom([]joinery.Joint{joinery.Rabbet, joinery.Butt, joinery.BoxJoint, joinery.Housed}).Draw(t, "back"),
			bottom: rapid.SampledFrom([]joinery.BottomFit{joinery.BottomGroovedIn, joinery.BottomSlideIn, joinery.BottomApplied}).Draw(t, "bottom")}
		if m.front == joinery.BoxJoint && m.back != joinery.Housed {
			m.back = joinery.BoxJoint
		} else if m.back == joinery.BoxJoint {
			m.back = joinery.Rabbet
		}
		// Fingers made by hand are as high as the box, and a back of them is not cut short.
		if m.front == joinery.BoxJoint && (m.bottom == joinery.BottomApplied || m.back == joinery.BoxJoint) {
			m.bottom = joinery.BottomGroovedIn
		}
		list := m.pieces()
		if m.bottom != joinery.BottomApplied && rapid.Bool().Draw(t, "divided") {
			list = across(list, 100)
		}
		off := func(what string) float64 { return float64(rapid.IntRange(-30, 30).Draw(t, what)) / 100 }
		if !rapid.Bool().Draw(t, "sound") {
			for i := range list {
				list[i].Board.Thickness += off("thicker")
				for k := range list[i].Board.Cuts {
					list[i].Board.Cuts[k].Depth += off("deeper")
				}
			}
		}
		b := assemble(list)
		if !decided(b) {
			return
		}
		seen[b.GoesTogether()]++
		want := values(b)
		moved := slices.Clone(list)
		for i := range moved {
			moved[i].Placement.Origin = moved[i].Placement.Origin.Add(geom.Vec3{X: 300, Y: -40, Z: 7})
		}
		slices.Reverse(moved)
		alike(t, "moved, in another order", values(assemble(moved)), want)

		seen := assemble(mirrored(list))
		other := map[string]string{"left side": "right side", "right side": "left side"}
		swap := func(name *string) {
			if to, there := other[*name]; there {
				*name = to
			}
		}
		for i := range seen.Corners {
			swap(&seen.Corners[i].Side)
		}
		for i := range seen.BottomJoints {
			swap(&seen.BottomJoints[i].Name)
		}
		for i := range seen.Dividers {
			swap(&seen.Dividers[i].Joints[0].Name)
			swap(&seen.Dividers[i].Joints[1].Name)
		}
		for i := range seen.Overlaps {
			swap(&seen.Overlaps[i].A)
			swap(&seen.Overlaps[i].B)
		}
		got := values(seen)
		if !b.GoesTogether() { // what is stuck stands this way or that
			got, want = verdicts(got), verdicts(want)
		}
		alike(t, "in a mirror", got, want)
	})
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("boxes that go together or not: %v", seen)
	}
}
