package proof

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// values are all numbers of a box that say what becomes of it, by what they are.
func values(b Box) map[string]float64 {
	yes := func(v bool) float64 {
		if v {
			return 1
		}
		return 0
	}
	all := map[string]float64{"goes": yes(b.GoesTogether()), "bottom clearance": b.GrooveClearance, "clearance x": b.ClearanceX, "clearance y": b.ClearanceY, "front width": b.WidthFront, "back width": b.WidthBack,
		"depth": b.Depth, "height": b.Height, "diagonal": b.Diagonal, "rack": b.Racking}
	for _, c := range b.Corners {
		at := c.End + "/" + c.Side + " "
		for what, v := range map[string]float64{"goes": yes(c.GoesTogether), "captured": yes(c.Captured), "play": c.Clearance, "shoulder": yes(c.OnShoulder),
			"fingers": yes(c.Fingers), "open": c.Open, "shoulder gap": c.ShoulderGap, "floor gap": c.FloorGap, "recess": c.Recess, "laps": yes(c.Laps), "lap": c.Lap} {
			all[at+what] = v
		}
	}
	for _, w := range b.BottomJoints {
		all[w.Name+" goes"], all[w.Name+" play"], all[w.Name+" hold"], all[w.Name+" gap"] = yes(w.GoesIn), w.Clearance, w.Engagement, w.Gap
	}
	all["bottom fit"], all["blocked"] = float64(b.BottomFit), float64(len(b.Blocked))
	for _, d := range b.Dividers {
		all[d.Name+" goes"], all[d.Name+" play"], all[d.Name+" slack"], all[d.Name+" stand"], all[d.Name+" lifts"] = yes(d.GoesIn), d.Clearance, d.EndClearance, d.Height, yes(d.Lifts)
		for _, w := range d.Joints {
			all[d.Name+" in "+w.Name] = w.Engagement
		}
	}
	for _, c := range b.Crossings {
		all["crossing goes"], all["crossing clearance"] = yes(c.GoesTogether), c.Clearance
	}
	for _, f := range b.DrawerFronts {
		all[f.Name+" gap"], all[f.Name+" covers"], all[f.Name+" holes"] = f.Gap, f.Covers, float64(f.Holes)
	}
	for _, o := range b.Overlaps {
		names := []string{o.A, o.B}
		slices.Sort(names)
		all[fmt.Sprint("overlap ", names)] = o.Volume
	}
	return all
}

// verdicts are the values that say what goes into what.
func verdicts(all map[string]float64) map[string]float64 {
	maps.DeleteFunc(all, func(k string, _ float64) bool {
		return !strings.HasSuffix(k, "goes") && !strings.HasSuffix(k, "captured")
	})
	return all
}

// alike compares boxes. Of a volume a strip may be left out here and not there: of
// narrowStrip times the 1000 mm2 that a long groove's wall has.
func alike(t *rapid.T, what string, got, want map[string]float64) {
	t.Helper()
	for k := range got {
		if _, there := want[k]; !there {
			t.Fatalf("%s: %s is new: %g", what, k, got[k])
		}
	}
	for k, v := range want {
		g, there := got[k]
		tolerance := 1e-7 + 1e-7*math.Abs(v)
		if strings.HasPrefix(k, "overlap") {
			tolerance = 1000*narrowStrip + 1e-5*v
		}
		if !there || !near(g, v, tolerance) {
			t.Fatalf("%s: %s is %.12g, was %.12g (%t)", what, k, g, v, there)
		}
	}
}

// anyPieces draws the boards of a box, every other one with cuts that are not what
// they should be.
func anyPieces(t *rapid.T) ([]Piece, bool) {
	d, ok := anyDrawer(t)
	if !ok {
		return nil, false
	}
	list := piecesOf(d)
	if rapid.Bool().Draw(t, "sound") {
		return list, true
	}
	// In hundredths: what is off by less than narrowStrip is seen from one side
	// and not from the other.
	off := func(what string) float64 { return float64(rapid.IntRange(-50, 50).Draw(t, what)) / 100 }
	for i := range list {
		for k := range list[i].Board.Cuts {
			if rapid.Bool().Draw(t, "cut otherwise") {
				recut(&list[i], k, sideways(off("from"), off("to")))
				list[i].Board.Cuts[k].Depth += off("depth")
			}
		}
		if rapid.Bool().Draw(t, "another board") {
			list[i].Board.Thickness += off("thicker")
		}
	}
	return list, true
}

// decided reports whether nothing about the box hangs on a length near the limit of
// what counts as penetration, or of what counts as level: there rounding decides.
func decided(b Box) bool {
	clear := func(v float64) bool { return math.Abs(math.Abs(v)-penetration) > 1e-6 }
	ok := clear(b.GrooveClearance) && clear(b.ClearanceX) && clear(b.ClearanceY)
	for i, c := range b.Corners {
		ok = ok && clear(c.Clearance) && clear(c.ShoulderGap-c.FloorGap) && clear(c.ShoulderGap) && clear(c.FloorGap)
		side := b.Pieces[i%2]
		ok = ok && math.Abs(math.Abs(c.Lap)-side.Board.Thickness/4) > 1e-6
	}
	for _, w := range b.BottomJoints {
		ok = ok && clear(w.Clearance) && clear(w.Engagement)
	}
	for _, o := range b.Overlaps {
		ok = ok && math.Abs(o.Volume-MaxOverlap) > 0.05 && math.Abs(o.Volume-minOverlap) > 0.05
	}
	return ok
}

// TestNothingChanges: what must not matter to a box.
func TestNothingChanges(t *testing.T) {
	seen := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		list, ok := anyPieces(t)
		if !ok {
			return
		}
		b := assemble(list)
		if !decided(b) {
			return
		}
		seen[b.GoesTogether()]++
		want := values(b)

		var m Assembler // once more, with its memory used
		m.Assemble(list)
		alike(t, "again", values(m.Assemble(list)), want)

		place := rapid.Float64Range(-2000, 2000)
		by := geom.Vec3{X: place.Draw(t, "x"), Y: place.Draw(t, "y"), Z: place.Draw(t, "z")}
		moved := slices.Clone(list)
		for i := range moved {
			moved[i].Placement.Origin = moved[i].Placement.Origin.Add(by)
		}
		alike(t, "all moved", values(assemble(moved)), want)

		reversed := slices.Clone(list)
		slices.Reverse(reversed)
		alike(t, "in another order", values(assemble(reversed)), want)

		beyond := slices.Clone(list)
		for i := range beyond {
			p := &beyond[i].Board
			box := p.Outline.Bounds()
			at := rapid.Float64Range(0.01, 30).Draw(t, "beyond")
			p.Cuts = append(slices.Clone(p.Cuts),
				Cut{Face: geom.Inside, Depth: 5, Shape: ShapeOf(geom.Rectangle(box.Max.X+at, box.Min.Y-5, box.Max.X+at+20, box.Max.Y+5))},
				Cut{Face: geom.Outside, Depth: 5, Shape: ShapeOf(geom.Circle(geom.Point{X: box.Min.X, Y: box.Min.Y - at - 10}, 10))})
		}
		alike(t, "cut beside the boards", values(assemble(beyond)), want)

		split := slices.Clone(list) // every cut in two that meet
		for i := range split {
			p := &split[i].Board
			cuts := p.Cuts
			p.Cuts = nil
			for _, c := range cuts {
				r := c.Shape.Bounds()
				y := r.Min.Y + r.Height()*rapid.Float64Range(0.2, 0.8).Draw(t, "split")
				p.Cuts = append(p.Cuts, Cut{c.Face, c.Depth, ShapeOf(geom.Rectangle(r.Min.X, r.Min.Y, r.Max.X, y)), c.Lean},
					Cut{c.Face, c.Depth, ShapeOf(geom.Rectangle(r.Min.X, y, r.Max.X, r.Max.Y).Reverse()), c.Lean})
			}
		}
		alike(t, "cut in two passes", values(assemble(split)), want)

		// Turned about by half a turn seen from above: left is right, front is back.
		turned := slices.Clone(list)
		other := map[string]string{"left side": "right side", "right side": "left side", "front": "back", "back": "front", "bottom": "bottom"}
		for i := range turned {
			p := &turned[i]
			turn := func(v geom.Vec3) geom.Vec3 { return geom.Vec3{X: -v.X, Y: -v.Y, Z: v.Z} }
			p.Placement = geom.Placement{Origin: turn(p.Placement.Origin), X: turn(p.Placement.X), Y: turn(p.Placement.Y)}
			p.Name = other[p.Name]
		}
		about := assemble(turned)
		about.WidthFront, about.WidthBack = about.WidthBack, about.WidthFront
		for i := range about.Corners {
			c := &about.Corners[i]
			c.End, c.Side = other[c.End], other[c.Side]
		}
		for i := range about.BottomJoints {
			about.BottomJoints[i].Name = other[about.BottomJoints[i].Name]
		}
		for i := range about.Overlaps {
			o := &about.Overlaps[i]
			o.A, o.B = other[o.A], other[o.B]
		}
		got := values(about)
		if !b.GoesTogether() { // what is stuck stands this way or that
			got, want = verdicts(got), verdicts(want)
		}
		alike(t, "turned about", got, want)
	})
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("boxes that go together or not: %v", seen)
	}
}
