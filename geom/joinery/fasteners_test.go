package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// shank is a screw or dowel as the drawing of a box has it.
type shank struct {
	part       Role
	a, b       geom.Vec3
	hole, deep float64
}

// shanks are read off the parts and the bores of a finished box: holes through cleats, bottoms and box fronts, and
// what is bored into ends and edges behind them.
func shanks(d Drawer) (list []shank) {
	add := func(p Part, s geom.Placement, from, to geom.Vec3, hole float64) {
		list = append(list, shank{p.Role, s.Apply(from), s.Apply(to), hole, to.Sub(from).Norm()})
	}
	s := d.Spec
	for _, b := range d.Bores {
		p := d.part(b.Part)
		wide := b.Diameter
		if s.Fastened() == Screws { // the hole in the side is wider
			cuts := d.part(Side).Panel.Pockets
			drilled := slices.IndexFunc(cuts, func(k geom.Pocket) bool { return k.Kind == geom.Drill })
			_, r, _ := cuts[drilled].Outline.AsCircle()
			wide = 2 * r
		}
		for _, y := range b.Heights {
			for _, x := range []float64{0, p.Panel.Length()} {
				in := b.Depth
				if x > 0 {
					in = x - b.Depth
				}
				for _, off := range edgesOf(b, wide) {
					add(p, p.Placements[0], geom.Vec3{X: x, Y: y + off, Z: b.FromOutside},
						geom.Vec3{X: in, Y: y + off, Z: b.FromOutside}, wide)
				}
			}
		}
	}
	for _, p := range d.Parts {
		t := p.Panel.Thickness
		for _, stand := range p.Placements {
			for _, k := range p.Panel.Pockets {
				at, r, round := k.Outline.AsCircle()
				if !round || k.Kind != geom.Drill || k.Depth < t-settle {
					continue
				}
				from, to := geom.Vec3{X: at.X, Y: at.Y}, geom.Vec3{X: at.X, Y: at.Y, Z: t}
				switch {
				case p.Role == Bottom && s.BottomFit == BottomCleats:
					from.Z = -s.BottomHeight * cleatHold
				case p.Role == Bottom:
					to.Z += appliedLength
				case p.Role == CleatRole:
					from.Z = -1
				case p.Role == Front && 2*r < 9: // not the one behind a handle
				default:
					continue
				}
				add(p, stand, from, to, 2*r)
			}
		}
	}
	return list
}

// edgesOf are the middles of a bore, of a mortise those of the rounds at both ends, from its middle.
func edgesOf(b Bore, wide float64) []float64 {
	if len(b.Lengths) == 0 {
		return []float64{0}
	}
	return []float64{(wide - b.Lengths[0]) / 2, (b.Lengths[0] - wide) / 2}
}

// wood is that between two of them, found by halving: the distance of two lines is convex along each.
func (a shank) wood(b shank) float64 {
	at := func(s shank, t float64) geom.Vec3 { return s.a.Add(s.b.Sub(s.a).Scale(t)) }
	least := func(f func(float64) float64) float64 {
		low, high := 0.0, 1.0
		for range 60 {
			m1, m2 := low+(high-low)/3, high-(high-low)/3
			if f(m1) < f(m2) {
				high = m2
			} else {
				low = m1
			}
		}
		return f((low + high) / 2)
	}
	return least(func(t float64) float64 {
		return least(func(u float64) float64 { return at(a, t).Sub(at(b, u)).Norm() })
	}) - (a.hole+b.hole)/2
}

// TestNoTwoScrewsMeet: between the holes of any two screws or dowels of a box there is wood as wide as the thicker is
// thick, or the box says that there is not; without a drawer front there always is, in a box 120 wide or more.
func TestNoTwoScrewsMeet(t *testing.T) {
	fits := make(map[BottomFit]int)
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		s.Joint, s.BackJoint = Butt, ""
		s.BottomFit = rapid.SampledFrom([]BottomFit{BottomApplied, BottomSlideIn, BottomCleats}).Draw(t, "screwed")
		s.Cutter.Width = s.Bottom.Thickness.Mean + 0.3
		anyFittings(t, &s)
		d, problems := Build(s)
		if slices.ContainsFunc(problems, geom.Diagnosis.IsError) {
			return
		}
		told := slices.ContainsFunc(problems, func(p geom.Diagnosis) bool {
			return p.Code == "fasteners" && strings.Contains(fact(p), "of wood between them")
		})
		if told && s.DrawerFront == nil && s.Width >= 120 {
			t.Fatalf("screws too near each other in %+v", s)
		}
		list := shanks(d)
		for i, a := range list {
			for _, b := range list[:i] {
				thick := 3.5
				if s.Fastened() != Screws { // at least
					thick = math.Min(metricDowels[0], thick)
				}
				if wood := a.wood(b); wood < thick-1e-6 && !told {
					t.Fatalf("%.2f mm of wood between %+v and %+v", wood, a, b)
				}
			}
		}
		fits[s.BottomFit]++
	})
	if fits[BottomApplied] == 0 || fits[BottomSlideIn] == 0 || fits[BottomCleats] == 0 {
		t.Errorf("boxes with screws: %v", fits)
	}
}

// TestScrewsOfATote: the bottom's screws next to the corners stand beyond the tips of the corners' screws, which are
// 30 mm deep in ends 12 mm thick.
func TestScrewsOfATote(t *testing.T) {
	s := saw(420, 150, 280, 6.3, sheet("birch", 12.15), sheet("birch", 12.15))
	s.Joint, s.BottomFit = Butt, BottomApplied
	d := mustBuild(t, s)
	nearest := math.Inf(1)
	for _, k := range d.part(Bottom).Panel.Pockets {
		if at, _, _ := k.Outline.AsCircle(); at.Y < 12.15 { // into the box front
			nearest = min(nearest, at.X)
		}
	}
	near(t, "first screw of the bottom", nearest, 12.15+30+(4.5+4)/2+4)
}

// TestScrewsMeetIsSaid: what no place in the box avoids is said, and stops a box in which screws meet.
func TestScrewsMeetIsSaid(t *testing.T) {
	for wood, level := range map[float64]geom.Level{-1: geom.LevelError, 2: geom.LevelWarning, 5: geom.LevelNote} {
		l := newLayout(saw(420, 150, 280, 6.3, sheet("birch", 12), sheet("birch", 12)))
		l.drive(Front, geom.Vec3{X: 10, Y: 6, Z: 20}, geom.Vec3{X: 30}, 4, 4)
		l.drive(Front, geom.Vec3{X: 40 + 4 + wood, Y: 6}, geom.Vec3{Z: 30}, 4, 4)
		l.checkApart()
		if found := len(l.problems) > 0; found != (wood < 4) || found && l.problems[0].Level != level {
			t.Errorf("%g mm of wood: %+v", wood, l.problems)
		}
	}
}

// TestScrewsUnderTheBack: with its rear edge level with the back's rear face a sheet bottom that is slid in has its
// holes under the middle of the back.
func TestScrewsUnderTheBack(t *testing.T) {
	s := saw(420, 150, 280, 6.3, sheet("birch", 12.15), sheet("ply", 5.93))
	s.BackJoint, s.BackSetback, s.BottomFit = Housed, 15, BottomSlideIn
	d := mustBuild(t, s)
	back, bottom := d.part(Back), d.part(Bottom)
	rear := back.Placements[0].Origin.Y
	near(t, "rear edge of the bottom", bottom.Placements[0].Apply(geom.Vec3{Y: bottom.Panel.Width()}).Y, rear)
	if len(bottom.Panel.Pockets) == 0 {
		t.Error("no holes for screws")
	}
	for _, k := range bottom.Panel.Pockets {
		at := k.Outline.Bounds().Center()
		near(t, "hole under the back", bottom.Placements[0].Apply(geom.Vec3{X: at.X, Y: at.Y}).Y, rear-12.15/2)
	}
}
