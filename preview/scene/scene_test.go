package scene_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

func stock(name string, t float64) joinery.Stock {
	return joinery.Stock{Name: name, Thickness: joinery.Measure(t), Grain: joinery.GrainLength}
}

// spec is a drawer with a corner and a bottom, cut on a router.
func spec(j joinery.Joint, bottom joinery.BottomFit) joinery.Spec {
	ply, kind := stock("ply", 12), joinery.Router
	if j == joinery.Dovetail {
		kind = joinery.Hand
	}
	return joinery.Spec{Name: "tray", Count: 2, Width: 460, Height: 140, Depth: 500, Sides: ply, Front: ply, Back: ply, Bottom: stock("board", 5),
		Joint: j, Fasteners: joinery.Screws, Cutter: joinery.Cutter{Kind: kind, Width: 3}, GrooveEnds: joinery.GrooveStopped, BottomFit: bottom,
		BottomClearance: joinery.UsualBottomClearance(geom.Millimeter), DadoClearance: 0.2, GrooveClearance: joinery.DefaultGrooveClearance, SlotRoom: 0.05}
}

func made(t *testing.T, s joinery.Spec) scene.Scene {
	t.Helper()
	d, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatalf("%s: %s", p.Code, p.Fact.In(geom.Millimeter))
		}
	}
	out, err := sceneOf(s, d)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func sceneOf(s joinery.Spec, d joinery.Drawer) (scene.Scene, error) {
	source := scene.Drawer{Drawer: d}
	for i, p := range d.Parts {
		source.Names = append(source.Names, fmt.Sprintf("%s-%s", s.Name, p.Role))
		source.Quantities, source.Numbers = append(source.Quantities, i+1), append(source.Numbers, i+1)
	}
	return scene.Make(source, geom.FineGrid(1000))
}

// each makes a box of every corner and bottom, with dividers and a drawer front.
func each(t *testing.T, do func(t *testing.T, s joinery.Spec, made scene.Scene)) {
	for _, j := range joinery.Joints {
		for _, bottom := range []joinery.BottomFit{joinery.BottomGroovedIn, joinery.BottomFlush, joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied, joinery.BottomCleats} {
			for _, housed := range []bool{false, true} {
				if j.Interlocks() && bottom.SlidesIn() && !housed {
					continue // refused: fingers would show below the back
				}
				t.Run(fmt.Sprint(j, bottom, housed), func(t *testing.T) {
					s := spec(j, bottom)
					if bottom == joinery.BottomFlush || bottom == joinery.BottomFielded {
						if s.Bottom = stock("board", 9); j == joinery.Dovetail { // its groove is over a half pin
							s.Bottom = stock("board", 12)
						}
					}
					if housed {
						s.BackJoint, s.BackSetback = joinery.Housed, 15
					}
					s.Dividers = []joinery.Divider{{Direction: joinery.Across, Count: 2, Stock: stock("ply 9", 9)}, {Direction: joinery.Along, Count: 1, Stock: stock("ply 9", 9), Loose: true}}
					s.DrawerFront = &joinery.DrawerFront{Stock: stock("oak", 18), Width: 500, Height: 180, OverhangLeft: 20, OverhangBelow: 20}
					do(t, s, made(t, s))
				})
			}
		}
	}
}

// TestOpensWithoutHarm: in no step of opening does a piece go through another, and
// when it is open no two have their blocks in common even a little apart.
func TestOpensWithoutHarm(t *testing.T) {
	each(t, func(t *testing.T, s joinery.Spec, made scene.Scene) {
		b := made.Boxes[0]
		if len(b.Overlaps) > 0 {
			t.Fatalf("the box itself overlaps: %v", b.Overlaps[0])
		}
		for n := range 10*len(b.Opening) + 1 {
			steps := float64(n) / 10
			for _, o := range made.OverlapsAt(0, steps) {
				t.Fatalf("after %.1f steps %s: from %v to %v", steps, o.Name, o.Low, o.High)
			}
		}
		for _, p := range b.Pieces {
			if len(p.Moves) == 0 && made.Parts[p.Part].Role != joinery.Bottom {
				t.Errorf("%s does not move", p.Name)
			}
		}
	})
}

// TestOverlapIsSeen: a side that is moved in by half a millimeter overlaps with front,
// back and bottom, and where.
func TestOverlapIsSeen(t *testing.T) {
	m := made(t, spec(joinery.DadoRabbet, joinery.BottomGroovedIn))
	b := &m.Boxes[0]
	for i := range b.Pieces {
		if b.Pieces[i].Name == "left side" {
			b.Pieces[i].Placement.Origin.X += 0.5
		}
	}
	found := map[string]bool{}
	for _, o := range m.OverlapsAt(0, 0) {
		found[o.Name] = true
		if o.High.X-o.Low.X > 0.5+1e-9 || o.High.X > 13 {
			t.Errorf("%s from %v to %v", o.Name, o.Low, o.High)
		}
	}
	if !found["left side and box front"] || !found["left side and back"] || len(found) != 2 { // the bottom has 1 mm of slack
		t.Errorf("found %v", found)
	}
}

// TestFloorHasItsOwnName: a bottom has a clearance across its groove, 0.2, and one to the floor, of half
// of what it is shorter, and no two clearances of a box have one name.
func TestFloorHasItsOwnName(t *testing.T) {
	s := spec(joinery.DadoRabbet, joinery.BottomGroovedIn)
	s.BottomClearance = 0.6
	gaps := map[string]float64{}
	for _, c := range made(t, s).Clearances(0) {
		if _, twice := gaps[c.Name]; twice {
			t.Errorf("two clearances are %s", c.Name)
		}
		gaps[c.Name] = c.Gap
	}
	for name, want := range map[string]float64{"bottom in the groove of the left side": 0.2, "bottom to the floor of the groove of the left side": 0.3} {
		if math.Abs(gaps[name]-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", name, gaps[name], want)
		}
	}
}

// TestPlays: a dado of a tongue f = 6 is 6.2 wide, a groove of a bottom of 5 5.2; both
// are shown ten times as large in the eased parts.
func TestPlays(t *testing.T) {
	m := made(t, spec(joinery.DadoRabbet, joinery.BottomGroovedIn))
	want := map[string]float64{
		"box front in the dado of the left side": 0.2, "back in the dado of the left side": 0.2,
		"box front in the dado of the right side": 0.2, "back in the dado of the right side": 0.2,
		"bottom in the groove of the left side": 0.2, "bottom in the groove of the right side": 0.2,
		"bottom in the groove of the box front": 0.2, "bottom in the groove of the back": 0.2,
	}
	sum := map[string]float64{}
	for _, p := range m.Clearances(0) {
		if p.Axis == p.Along || p.Gap <= 0 {
			t.Errorf("%+v", p)
		}
		low, high := [3]float64{p.Low.X, p.Low.Y, p.Low.Z}, [3]float64{p.High.X, p.High.Y, p.High.Z}
		if math.Abs(high[p.Axis]-low[p.Axis]-p.Gap) > 1e-9 {
			t.Errorf("%s: %g mm from %v to %v", p.Name, p.Gap, low, high)
		}
		if across := map[bool]int{true: 2, false: 1}[strings.HasPrefix(p.Name, "bottom")]; p.Axis == across || strings.Contains(p.Name, "dado") {
			sum[p.Name] += p.Gap
		}
	}
	for name, gap := range want {
		if math.Abs(sum[name]-gap) > 1e-9 {
			t.Errorf("%s has %g mm of clearance, want %g", name, sum[name], gap)
		}
		delete(sum, name)
	}
	if len(sum) > 0 {
		t.Errorf("clearances beside these: %v", sum)
	}
	for _, p := range m.Parts {
		grown := m.Meshes[p.Mesh].Mesh().Volume() - m.Meshes[p.Eased].Mesh().Volume()
		switch p.Role {
		case joinery.Side: // two dados 9 x 0.2 mm wider, 6 mm deep, 140 mm high, less where the groove crosses, and the groove
			if least := 2 * 1.8 * 6 * 130; grown < least {
				t.Errorf("the eased side has %g mm3 less wood, at least %g", grown, least)
			}
		case joinery.Bottom:
			if p.Mesh != p.Eased {
				t.Error("the bottom has no pocket and is eased")
			}
		}
	}
}

// TestFingerPlays: each edge between two rows of fingers has half of their play, at every
// corner; shown exaggerated, the wood of nine more is gone on one side of each.
func TestFingerPlays(t *testing.T) {
	s := spec(joinery.BoxJoint, joinery.BottomApplied)
	s.FingerWidth = 20 // seven rows
	m := made(t, s)
	const rows, gap = 7, 0.2 / 2
	count := map[string]int{}
	pitch := m.Boxes[0].Size.Height / rows
	for _, p := range m.Clearances(0) {
		corner, n, _ := strings.Cut(p.Name, ", ")
		count[corner]++
		middle := (p.Low.Z + p.High.Z) / 2
		if want := float64(count[corner]) * pitch; p.Axis != 2 || math.Abs(p.Gap-gap) > 1e-9 || math.Abs(p.High.Z-p.Low.Z-gap) > 1e-9 || math.Abs(middle-want) > 6 {
			t.Errorf("%+v: at %g, want about %g", p, middle, want)
		}
		if want := fmt.Sprintf("%d from below", count[corner]); n != want {
			t.Errorf("%s: want %s", p.Name, want)
		}
		if p.High.X-p.Low.X != 12 || p.High.Y-p.Low.Y != 12 {
			t.Errorf("%+v: not as long and wide as a corner", p)
		}
	}
	if len(count) != 4 {
		t.Errorf("clearances at corners: %v", count)
	}
	for corner, n := range count {
		if n != rows-1 {
			t.Errorf("%s: %d clearances, want %d", corner, n, rows-1)
		}
	}
	want := 2.0 * (rows - 1) * (scene.Exaggeration - 1) * gap * 12 * 12
	gone := 0.0
	for i, p := range m.Parts {
		if p.Role == joinery.Front || i == 0 {
			gone = max(gone, m.Meshes[p.Mesh].Mesh().Volume()-m.Meshes[p.Eased].Mesh().Volume())
		}
	}
	if math.Abs(gone-want) > 1e-3*want {
		t.Errorf("a part shown exaggerated has %g mm3 less wood, want %g", gone, want)
	}
}

// TestEasedStands: what is shown exaggerated never has more wood, and never falls apart.
func TestEasedStands(t *testing.T) {
	each(t, func(t *testing.T, _ joinery.Spec, m scene.Scene) {
		for _, p := range m.Parts {
			if err := geomtest.CheckMesh(m.Meshes[p.Eased].Mesh()); err != nil {
				t.Errorf("%s: %v", p.Name, err)
			}
			if grown := m.Meshes[p.Eased].Mesh().Volume() - m.Meshes[p.Mesh].Mesh().Volume(); grown > 1e-6 {
				t.Errorf("%s: %g mm3 more wood", p.Name, grown)
			}
		}
	})
}

// TestJoinShares: drawers of one size share their solids, and groups keep their boxes.
func TestJoinShares(t *testing.T) {
	one := made(t, spec(joinery.DadoRabbet, joinery.BottomGroovedIn))
	bank := scene.Group{Name: "bank", Boxes: []int{0, 1}, At: []geom.Vec3{{}, {Z: 200}}}
	two := scene.Join("two", geom.Millimeter, []scene.Scene{one, one}, []scene.Group{bank})
	if len(two.Meshes) != len(one.Meshes) || len(two.Parts) != 2*len(one.Parts) || len(two.Boxes) != 2 || len(two.Groups) != 3 {
		t.Errorf("%d meshes, %d parts, %d boxes, %d groups", len(two.Meshes), len(two.Parts),
			len(two.Boxes), len(two.Groups))
	}
	for _, p := range two.Boxes[1].Pieces {
		if p.Part < len(one.Parts) {
			t.Errorf("%s of the second box is a part of the first", p.Name)
		}
	}
	// Front and back are the same board.
	roles := map[joinery.Role]scene.Part{}
	for _, p := range one.Parts {
		roles[p.Role] = p
	}
	if roles[joinery.Front].Mesh != roles[joinery.Back].Mesh {
		t.Error("box front and back have two meshes")
	}
}

// TestJudge: a clearance has the measure that judges it, and the word of one that is not right: a
// back that is the front's twin has the front's.
func TestJudge(t *testing.T) {
	s := spec(joinery.DadoRabbet, joinery.BottomGroovedIn)
	s.Dividers = []joinery.Divider{{Direction: joinery.Across, At: []float64{200}, Stock: stock("thin", 6)}}
	m := made(t, s)
	measure := func(name string, verdict joinery.Verdict, id joinery.CheckID) joinery.Check {
		return joinery.Check{CheckID: id, Name: name, Nominal: 1, Verdict: verdict}
	}
	measures := []joinery.Check{
		measure("tongue", joinery.Loose, joinery.CheckID{Code: joinery.CheckTongueClearance, Part: joinery.Front}),
		measure("groove", joinery.Tight, joinery.CheckID{Code: joinery.CheckGrooveClearance, Part: joinery.Bottom}),
		measure("divider", joinery.GoesTogether,
			joinery.CheckID{Code: joinery.CheckDividerClearance, Part: joinery.DividerRole, Item: 1}),
	}
	m.Boxes[0].Judged = func() []joinery.Check { return measures }
	want := map[string][2]string{"box front": {"tongue", "loose"}, "back": {"tongue", "loose"},
		"bottom": {"groove", "tight"}, "divider": {"divider", ""}}
	found := map[string]bool{}
	for _, c := range m.Clearances(0) {
		piece, _, _ := strings.Cut(c.Name, " in the ")
		if across := map[bool]int{true: 2, false: 1}[piece == "bottom"]; c.Axis != across {
			if c.Verdict != "" {
				t.Errorf("%s is %s across %d", c.Name, c.Verdict, c.Axis)
			}
			continue
		}
		found[piece] = true
		if got := [2]string{c.Measure, c.Verdict}; got != want[piece] {
			t.Errorf("%s is judged %q", c.Name, got)
		}
	}
	if len(found) != len(want) {
		t.Errorf("judged are %v", found)
	}
}
