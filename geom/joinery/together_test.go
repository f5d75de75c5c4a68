package joinery

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"
)

// TestDeepGroovesReach: where grooves are deeper than tongues are thick, the
// bottom reaches beyond the dados, and a stopped groove goes there too.
func TestDeepGroovesReach(t *testing.T) {
	s := saw(460, 140, 500, 3, sheet("thick", 18), sheet("ply", 6))
	s.Front, s.Back = sheet("thin", 12), sheet("thin", 12)
	s.Cutter.Kind, s.GrooveEnds, s.BottomClearance = Router, GrooveStopped, 1
	d := mustBuild(t, s)
	// h = 9, f = 6: grooves in the ends reach to 2 f - h = 3 from the side's end;
	// the bottom's corner, half the slack inside that, decides on the relief there.
	groove := d.part(Side).Panel.Pockets[2]
	near(t, "groove start", groove.Outline.Bounds().Min.X, 3)
	near(t, "bottom's corner", groove.Takes.Bounds().Min.X, 3.5)
	near(t, "bottom's room", groove.Takes.Bounds().Max.Y, groove.Outline.Bounds().Max.Y)
	side, bottom := d.part(Side), d.part(Bottom)
	for _, stand := range side.Placements {
		if at, deep := overlap(piece{side, stand}, piece{bottom, bottom.Placements[0]}); deep {
			t.Errorf("side and bottom both fill %v", at)
		}
	}
}

var (
	// Tails and pins are no upright boxes: they have tests of their own.
	allJoints  = slices.DeleteFunc(slices.Clone(Joints), func(j Joint) bool { return j == Dovetail })
	allBottoms = []BottomFit{BottomAuto, BottomGroovedIn, BottomFlush, BottomSlideIn, BottomFielded, BottomApplied, BottomCleats}
)

// anySpec draws jobs of which most can be built.
func anySpec(t *rapid.T) Spec {
	ply := rapid.Float64Range(9, 19).Draw(t, "sides")
	ends := ply
	if rapid.Bool().Draw(t, "other ends") {
		ends = rapid.Float64Range(9, 19).Draw(t, "ends")
	}
	s := saw(rapid.Float64Range(80, 900).Draw(t, "w"), rapid.Float64Range(45, 300).Draw(t, "h"),
		rapid.Float64Range(100, 700).Draw(t, "d"),
		ends/2+rapid.Float64Range(0.02, 0.9).Draw(t, "play"), sheet("a", ply), sheet("c",
			rapid.Float64Range(3, 14).Draw(t, "bottom")))
	s.Front, s.Back = sheet("b", ends), sheet("b", ends)
	if rapid.Bool().Draw(t, "other back") {
		s.Back = sheet("d", ends+rapid.Float64Range(-1, 3).Draw(t, "back"))
	}
	if rapid.Bool().Draw(t, "own fence") {
		s.FenceDistance = ends/2 + rapid.Float64Range(-1.5, 1.5).Draw(t, "fence")
		s.Cutter.Width = s.FenceDistance + rapid.Float64Range(0.02, 0.9).Draw(t, "own clearance")
	}
	s.Joint = rapid.SampledFrom(allJoints).Draw(t, "joint")
	if rapid.IntRange(0, 3).Draw(t, "housed") == 0 {
		s.BackJoint, s.BackSetback = Housed, rapid.Float64Range(4, 30).Draw(t, "setback")
	}
	s.Fasteners = rapid.SampledFrom(AllFasteners).Draw(t, "fasteners")
	if rapid.Bool().Draw(t, "own height") {
		s.CutterHeight = ply/2 + rapid.Float64Range(-1.4, 1.4).Draw(t, "height")
	}
	s.GlueSpace = rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "room")
	s.BottomClearance = rapid.Float64Range(0, 3).Draw(t, "slack")
	if rapid.IntRange(0, 2).Draw(t, "deep") == 0 {
		deep := rapid.Float64Range(0, 6).Draw(t, "deep clearance")
		s.BottomClearanceDepth = &deep
	}
	s.BottomFit = rapid.SampledFrom(allBottoms).Draw(t, "fit")
	s.Bottom.Solid = rapid.IntRange(0, 3).Draw(t, "solid") == 0
	s.Bottom.Swelling, s.Bottom.Shrinkage = rapid.SampledFrom([]float64{0, 0.0005, 0.006}).Draw(t, "swelling"), rapid.SampledFrom([]float64{0, 0.0005, 0.006}).Draw(t, "shrinkage")
	if s.Bottom.Solid {
		s.Bottom.Grain = GrainLength
	}
	if rapid.IntRange(0, 3).Draw(t, "raised") == 0 {
		s.BottomHeight = rapid.Float64Range(3, 20).Draw(t, "bottom height")
	}
	if rapid.IntRange(0, 2).Draw(t, "groove cutter") == 0 {
		s.Cutter.Groove = rapid.SampledFrom([]float64{2.4, 3.2, 6.35, s.Cutter.Width}).Draw(t, "blade")
	}
	if rapid.Bool().Draw(t, "router") {
		s.Cutter = Cutter{Kind: Router, Width: rapid.Float64Range(1.5, 7).Draw(t, "bit")}
		s.GrooveEnds = rapid.SampledFrom([]GrooveEnds{GrooveStopped, GrooveThrough}).Draw(t, "ends")
	}
	return s
}

// anyFittings draws what stands in a box, is cut into it, or is screwed on.
func anyFittings(t *rapid.T, s *Spec) {
	odds := func(name string, in int) bool { return rapid.IntRange(0, in-1).Draw(t, name) == 0 }
	for odds("divider", 2) && len(s.Dividers) < 3 {
		thick := rapid.Float64Range(3, 12).Draw(t, "divider thickness")
		if s.Cutter.Kind == Saw {
			thick = s.Cutter.Width - rapid.SampledFrom([]float64{0.2, 0.2, 0.9}).Draw(t, "divider clearance")
		}
		d := Divider{Stock: sheet("dividers", thick), Direction: rapid.SampledFrom([]GrainDirection{Across, Along}).Draw(t, "way"), Loose: rapid.Bool().Draw(t, "loose"),
			Count: rapid.IntRange(1, 3).Draw(t, "count"), Height: rapid.SampledFrom([]float64{0, 30}).Draw(t, "divider height")}
		if rapid.Bool().Draw(t, "at") {
			d.Count, d.At = 0, []float64{rapid.Float64Range(10, 200).Draw(t, "place")}
		}
		s.Dividers = append(s.Dividers, d)
	}
	if len(s.Dividers) == 0 && odds("insert", 2) {
		s.Insert = &Insert{Stock: sheet("strips", rapid.Float64Range(3, 12).Draw(t, "strips")), Columns: []float64{0, rapid.Float64Range(10, 120).Draw(t, "column"), 0},
			Rows: rapid.SampledFrom([][]float64{{0, 0}, {60, 60}, {100, 0, 0}}).Draw(t, "rows"), Height: rapid.SampledFrom([]float64{0, 30}).Draw(t, "insert height"),
			ContentsClearance: 10, WallClearance: rapid.Float64Range(0.2, 6).Draw(t, "wall clearance")}
		s.Insert.Stock.Swelling = rapid.SampledFrom([]float64{0, 0.02}).Draw(t, "strips swell")
	}
	s.Pull.Shape = rapid.SampledFrom([]PullShape{NoPull, NoPull, PullHole, PullHalf, PullSlot, PullHandHold}).Draw(t, "pull")
	if odds("drawer front", 3) {
		over := rapid.Float64Range(-5, 20).Draw(t, "over")
		s.DrawerFront = &DrawerFront{Stock: sheet("fronts", 19), Width: s.Width + 2*over, Height: s.Height + 2*over, OverhangLeft: over, OverhangBelow: over,
			Handles: rapid.IntRange(0, 2).Draw(t, "handles"), HandleSpacing: 64}
	}
	if odds("undermount", 3) {
		s.BottomHeight = 13
		s.Undermount = &Undermount{BottomRecess: 13, MaxSide: 16, NotchWidth: 35, NotchHeight: 13, HookDiameter: 6, HookDepth: 10, HookHeight: 35, HookIn: 7}
	}
	if len(s.Dividers) == 1 && s.Cutter.Kind == Router && odds("folders", 3) {
		d := &s.Dividers[0]
		d.Stock.Thickness = sheet("rails", rapid.Float64Range(2.5, 4.2).Draw(t, "rail")).Thickness
		d.Folders = Folders{Width: rapid.Float64Range(15, 250).Draw(t, "hooks"),
			Below: rapid.Float64Range(10, 100).Draw(t, "below"), Above: rapid.Float64Range(5, 20).Draw(t, "above")}
	}
}

// TestAnyBoxGoesTogether: whatever is not refused has sound panels, stands
// inside its outside size, and no two parts fill the same space.
func TestAnyBoxGoesTogether(t *testing.T) {
	built, based := make(map[Joint]int), make(map[BottomFit]int)
	housed, fitted := 0, make(map[Role]int)
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		if rapid.Bool().Draw(t, "fitted") {
			anyFittings(t, &s)
		}
		d, problems := Build(s)
		for _, p := range problems {
			if p.IsError() {
				return
			}
		}
		built[d.Spec.Joint]++
		based[d.Spec.BottomFit]++
		if d.Spec.BackJoint == Housed {
			housed++
		}
		for _, p := range d.Parts {
			fitted[p.Role]++
		}
		for _, p := range d.Parts { // nothing is turned over but a flush bottom
			if d.Spec.Joint == DoubleRabbet && p.Role != Bottom && d.Spec.Undermount == nil && p.Panel.CutOn(geom.Outside) {
				t.Fatalf("the %s is cut on its outside face", p.Role)
			}
		}
		var pieces []piece
		var least, most geom.Vec3
		grid := geom.FineGrid(2048)
		for _, p := range d.Parts {
			m, err := solid.Build(p.Panel, solid.Options{Grid: grid})
			if err != nil {
				t.Fatal(err)
			}
			if err := geomtest.CheckMesh(m); err != nil {
				t.Fatalf("%s: %v", p.Role, err)
			}
			for _, s := range p.Placements {
				pieces = append(pieces, piece{p, s})
				if p.Role == DrawerFrontRole { // before the box, whose size it does not change
					continue
				}
				low, high := geomtest.Extent(m.Place(s, grid))
				least = geom.Vec3{X: math.Min(least.X, low.X), Y: math.Min(least.Y, low.Y), Z: math.Min(least.Z, low.Z)}
				most = geom.Vec3{X: math.Max(most.X, high.X), Y: math.Max(most.Y, high.Y), Z: math.Max(most.Z, high.Z)}
			}
		}
		// Sides are as high, wide and long as asked; proud ends add to the depth.
		if size := most.Sub(least); math.Abs(size.X-d.Outside.Width) > 1e-3 || math.Abs(size.Y-d.Outside.Depth) > 1e-3 || math.Abs(size.Z-d.Outside.Height) > 1e-3 || least.X != 0 || least.Z != 0 {
			t.Fatalf("stands from %v to %v, not %v", least, most, d.Outside)
		}
		for i, a := range pieces {
			for _, b := range pieces[i+1:] {
				if at, deep := overlap(a, b); deep {
					t.Fatalf("%s and %s both fill %v (setup %+v, spec %+v)", a.Role, b.Role, at, d.Setup, d.Spec)
				}
			}
		}
	})
	if len(built) < len(allJoints) || len(based) < len(allBottoms)-1 || housed == 0 || fitted[InsertRole] == 0 ||
		fitted[DividerRole]+fitted[DrawerFrontRole] == 0 {
		t.Errorf("boxes not refused: %v, %v, %d housed, %v", built, based, housed, fitted)
	}
}

// piece is a part in one of its places.
type piece struct {
	Part
	stand geom.Placement
}

// solidBoxes splits a panel into axis-parallel boxes of wood in the box's
// space: the cells between all coordinates at which a pocket begins or ends.
// Pockets and outlines have level and upright sides, so this is exact but for
// holes, which count as squares.
func (p piece) solidBoxes() [][2]geom.Vec3 {
	cut := func(f func(geom.Rect) [2]float64, size float64) []float64 {
		list := []float64{0, size}
		for _, v := range p.Panel.Outline {
			at := f(geom.Rect{Min: v.Point, Max: v.Point})
			list = append(list, at[0])
		}
		for _, k := range p.Panel.Pockets {
			v := f(k.Outline.Bounds())
			list = append(list, v[0], v[1])
		}
		slices.Sort(list)
		return slices.Compact(list)
	}
	xs := cut(func(r geom.Rect) [2]float64 { return [2]float64{r.Min.X, r.Max.X} }, p.Panel.Length())
	ys := cut(func(r geom.Rect) [2]float64 { return [2]float64{r.Min.Y, r.Max.Y} }, p.Panel.Width())
	var boxes [][2]geom.Vec3
	for i := 1; i < len(xs); i++ {
		for j := 1; j < len(ys); j++ {
			x, y := (xs[i-1]+xs[i])/2, (ys[j-1]+ys[j])/2
			low, high := 0.0, p.Panel.Thickness
			if !within(p.Panel.Outline, geom.Point{X: x, Y: y}) {
				continue
			}
			for _, k := range p.Panel.Pockets {
				if r := k.Outline.Bounds(); x > r.Min.X && x < r.Max.X && y > r.Min.Y && y < r.Max.Y {
					if k.Face == geom.Outside {
						low = math.Max(low, k.Depth)
					} else {
						high = math.Min(high, p.Panel.Thickness-k.Depth)
					}
				}
			}
			if low < high {
				a, b := p.stand.Apply(geom.Vec3{X: xs[i-1], Y: ys[j-1], Z: low}), p.stand.Apply(geom.Vec3{X: xs[i], Y: ys[j], Z: high})
				boxes = append(boxes, [2]geom.Vec3{
					{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y), Z: math.Min(a.Z, b.Z)},
					{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y), Z: math.Max(a.Z, b.Z)},
				})
			}
		}
	}
	return boxes
}

// within reports whether a point is in an outline of straight sides.
func within(l geom.Loop, p geom.Point) bool {
	in := false
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// overlap reports whether two pieces fill the same space over 0.001 mm deep.
func overlap(a, b piece) (geom.Vec3, bool) {
	const deep = 1e-3
	for _, p := range a.solidBoxes() {
		for _, q := range b.solidBoxes() {
			dx := math.Min(p[1].X, q[1].X) - math.Max(p[0].X, q[0].X)
			dy := math.Min(p[1].Y, q[1].Y) - math.Max(p[0].Y, q[0].Y)
			dz := math.Min(p[1].Z, q[1].Z) - math.Max(p[0].Z, q[0].Z)
			if dx > deep && dy > deep && dz > deep {
				return geom.Vec3{X: math.Max(p[0].X, q[0].X), Y: math.Max(p[0].Y, q[0].Y), Z: math.Max(p[0].Z, q[0].Z)}, true
			}
		}
	}
	return geom.Vec3{}, false
}

// TestOverlapFinds: the comparator sees a box whose front is 0.1 mm too long.
func TestOverlapFinds(t *testing.T) {
	d := mustBuild(t, saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9)))
	front, side := d.part(Front), d.part(Side)
	if _, deep := overlap(piece{front, front.Placements[0]}, piece{side, side.Placements[0]}); deep {
		t.Error("overlap in a good box")
	}
	moved := front.Placements[0]
	moved.Origin.X -= 0.1
	if _, deep := overlap(piece{front, moved}, piece{side, side.Placements[0]}); !deep {
		t.Error("a front 0.1 mm off is not seen")
	}
}
