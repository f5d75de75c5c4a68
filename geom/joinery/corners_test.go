package joinery

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// routedBox is 400 x 120 x 450 of 12 mm sides with 6 mm bottom, from a 6 mm bit.
func routedBox(change func(*Spec)) Spec {
	s := saw(400, 120, 450, 6, sheet("ply", 12), sheet("thin", 5.8))
	s.Cutter.Kind, s.GrooveEnds, s.BottomClearance = Router, GrooveStopped, 2
	change(&s)
	return s
}

func bounds(t *testing.T, what string, l geom.Loop, x0, y0, x1, y1 float64) {
	t.Helper()
	r := l.Bounds()
	near(t, what+" x0", r.Min.X, x0)
	near(t, what+" y0", r.Min.Y, y0)
	near(t, what+" x1", r.Max.X, x1)
	near(t, what+" y1", r.Max.Y, y1)
}

// TestRabbetCorner: f = h = 6. Front 400 - 24 + 12 = 388 long, in rabbets 12 long
// and 6 deep; bottom 388 - 2 by 450 - 24 + 12 - 2 = 436.
func TestRabbetCorner(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.Joint = Rabbet }))
	side := d.part(Side).Panel
	bounds(t, "front's rabbet", side.Pockets[0].Outline, 0, 0, 12, 120)
	bounds(t, "back's rabbet", side.Pockets[1].Outline, 438, 0, 450, 120)
	near(t, "depth", side.Pockets[0].Depth, 6)
	bounds(t, "groove", side.Pockets[2].Outline, 6, 6, 444, 12)
	bounds(t, "front", d.part(Front).Panel.Outline, 0, 0, 388, 120)
	bounds(t, "bottom", d.part(Bottom).Panel.Outline, 0, 0, 386, 436)
	near(t, "inside depth", d.Inside.Depth, 450-24)
}

// TestButtCorner: front 400 - 24 = 376 long between plain sides, dowels of 6 mm
// (half of 12) at 6 from the ends, 8 deep (two thirds of 12), the lowest 20 over the
// groove's top at 12.05, the highest 20 below 120: 67.95 apart, so two.
func TestButtCorner(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.Joint, s.Fasteners = Butt, Dowels }))
	bounds(t, "front", d.part(Front).Panel.Outline, 0, 0, 376, 120)
	side := d.part(Side).Panel
	bounds(t, "lower hole", side.Pockets[0].Outline, 3, 29, 9, 35)
	bounds(t, "upper hole", side.Pockets[1].Outline, 3, 97, 9, 103)
	near(t, "hole's depth", side.Pockets[0].Depth, 8)
	// The bottom reaches to 12 - 6 = 6 from the end; a bit of 6 begins 3.2 before.
	bounds(t, "groove", side.Pockets[4].Outline, 2.8, 6, 450-2.8, 12)
	if want := []Item{{Name: "dowel 6 x 30 mm", Count: 8}}; !slices.Equal(d.Hardware, want) {
		t.Errorf("hardware %v, want %v", d.Hardware, want)
	}
	// 8 and up to 25 deep less 2 for glue: 30 is sold, so 24 deep.
	if len(d.Bores) != 2 || d.Bores[0].Depth != 24 || !slices.Equal(d.Bores[0].Heights, []float64{32, 100}) {
		t.Errorf("bores %v", d.Bores)
	}
}

// TestTenonedCorner: ends 12 thick take tenons of 5, at most 0.45 of 12, 4 x 5 = 20 wide. The groove's
// top is at 12.05, so the lowest begins 22.05 over the edge, the highest ends 10 below 120: middles at
// 32.05 and 100, 67.95 apart, so two. A router cuts mortises 0.1 larger; those in the ends are 2 longer
// over the lowest. Tenons: 8 and up to 25 deep less 2 for glue, 30 is sold, so 24 deep in the ends.
func TestTenonedCorner(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.Joint, s.Fasteners = Butt, Tenons }))
	side := d.part(Side).Panel
	low := d.part(Front).Panel.Pockets[0].Outline.Bounds().Max.Y + 10
	bounds(t, "lower mortise", side.Pockets[0].Outline, 3.45, low-0.05, 8.55, low+20.05)
	bounds(t, "upper mortise", side.Pockets[1].Outline, 3.45, 90-0.05, 8.55, 110.05)
	near(t, "mortise's depth", side.Pockets[0].Depth, 8)
	near(t, "mortise's area", side.Pockets[0].Outline.Area(), 15*5.1+math.Pi*2.55*2.55)
	near(t, "rear mortise's area", side.Pockets[2].Outline.Area(), 15*5.1+math.Pi*2.55*2.55)
	if want := []Item{{Name: "loose tenon 5 x 20 x 30 mm", Count: 8}}; !slices.Equal(d.Hardware, want) {
		t.Errorf("hardware %v, want %v", d.Hardware, want)
	}
	for _, b := range d.Bores {
		if b.Diameter != 5 || b.Depth != 24 || b.FromOutside != 6 || !slices.Equal(b.Lengths, []float64{20, 22}) {
			t.Errorf("mortises in ends: %+v", b)
		}
		near(t, "lower middle", b.Heights[0], low+10)
		near(t, "upper middle", b.Heights[1], 100)
	}
	sawn := mustBuild(t, routedBox(func(s *Spec) {
		s.Joint, s.Fasteners, s.Height = Butt, Tenons, 45
		s.Cutter, s.GrooveEnds = Cutter{Kind: Saw, Width: 6.3}, GrooveThrough
	}))
	k := sawn.part(Side).Panel.Pockets[0].Outline.Bounds()
	near(t, "as wide as its bit", k.Width(), 5)
	near(t, "as long as a low side lets it be", k.Height(), math.Floor(45-10-10-12.3))
}

// TestPinsFillTheirHoles: whatever the boards are thick, the two holes of a dowel or a tenon are 2 deeper than
// what is bought for them is long, so that none goes in whole on one side.
func TestPinsFillTheirHoles(t *testing.T) {
	for _, held := range []Fastener{Dowels, Tenons} {
		for _, thick := range []float64{9, 12, 15, 18, 22, 38} {
			d := mustBuild(t, routedBox(func(s *Spec) {
				s.Joint, s.Fasteners = Butt, held
				s.Sides, s.Front, s.Back = sheet("sides", thick), sheet("front", thick), sheet("back", thick)
			}))
			holes := d.part(Side).Panel.Pockets[0].Depth + d.Bores[0].Depth
			words := strings.Fields(strings.TrimSuffix(d.Hardware[0].Name, " mm"))
			if length := words[len(words)-1]; fmt.Sprintf("%.4g", holes-2) != length {
				t.Errorf("%s in %g mm: holes of %g, %s", held, thick, holes, d.Hardware[0].Name)
			}
		}
	}
}

// TestTenonsAreRefused: ends too thin for cheeks, and sides too low for a tenon twice as wide as thick.
func TestTenonsAreRefused(t *testing.T) {
	thin := routedBox(func(s *Spec) {
		s.Joint, s.Fasteners, s.Front, s.Back = Butt, Tenons, sheet("thin", 8), sheet("thin", 8)
	})
	low := routedBox(func(s *Spec) { s.Joint, s.Fasteners, s.Height = Butt, Tenons, 39 })
	for what, s := range map[string]Spec{"leaves cheeks": thin, "have no room for a tenon": low} {
		_, problems := Build(s)
		found := slices.IndexFunc(problems, func(p geom.Diagnosis) bool { return strings.Contains(fact(p), what) })
		if found < 0 || !problems[found].IsError() || len(problems[found].Remedies) == 0 {
			t.Errorf("%s: %v", what, problems)
		}
	}
}

// TestBoxJointCorner: with a wish of 24, 120 / 24 = 5 rows of 24; a play of 0.2
// makes fingers 0.05 smaller at each edge. The front has rows 1, 3, 5.
func TestBoxJointCorner(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.Joint, s.FingerWidth = BoxJoint, 24 }))
	front, side := d.part(Front).Panel, d.part(Side).Panel
	bounds(t, "front", front.Outline, 0, 0, 400, 120)
	bounds(t, "side", side.Outline, 0, 0, 450, 120)
	// Front: 400 x 120 less two notches of 24.1 x 12 at each end. Side: less three
	// rows of notches, 24.05 at the edges and 24.1 in the middle.
	near(t, "front's area", front.Outline.Area(), 400*120-2*2*12*24.1)
	near(t, "side's area", side.Outline.Area(), 450*120-2*12*(24.05+24.1+24.05))
	relieve := front.Outline.Marked(geom.Relief)
	if n := len(side.Outline.Marked(geom.Relief)); len(relieve) != 8 || n != 8 {
		t.Errorf("%d and %d corners to relieve", len(relieve), n)
	}
	for _, v := range relieve {
		if x := front.Outline[v].X; x != 12 && x != 388 {
			t.Errorf("the front is to be relieved at x %g", x)
		}
	}
	// In the front's lowest finger the groove stops 3.2 before the bottom's corner
	// at 12 - 6; the side's begins at its notch.
	bounds(t, "front's groove", front.Pockets[0].Outline, 2.8, 6, 397.2, 12)
	bounds(t, "side's groove", side.Pockets[0].Outline, 12, 6, 438, 12)
	if n := len(front.Outline.Marked(geom.Mating)); len(front.Outline) != n+2 {
		t.Errorf("%d of %d sides bear on fingers", n, len(front.Outline))
	}
}

// TestSawnFingers: a 6 mm stack makes notches of 6 and, at a play of (0.05 + 0.4) / 2, 0.23
// as it is printed, a pitch of 6 - 0.115 = 5.885.
func TestSawnFingers(t *testing.T) {
	s := saw(400, 120, 450, 6, sheet("ply", 12), sheet("thin", 5.8))
	s.Joint, s.BottomHeight = BoxJoint, 30
	// A groove of 6 goes into no row of 5.885: the fifth, from 4 x 5.885 = 23.54, is made to
	// hold it from 30 to 36 and 2 more, and half of half the play.
	d := mustBuild(t, s)
	if d.Setup.FingerRow != 5 {
		t.Errorf("row %d is another height", d.Setup.FingerRow)
	}
	near(t, "its height", d.Setup.FingerHeight, 36+2+0.0575-23.54)
	bounds(t, "front's groove", d.part(Front).Panel.Pockets[0].Outline, 0, 30, 400, 36)
	bounds(t, "side's groove", d.part(Side).Panel.Pockets[0].Outline, 12, 30, 438, 36)
	// Raised by 10 a blade of 3 makes a groove of 6 for 5.8 + 0.2 in one of 6.35 - 0.115, and
	// the lowest row is what puts it in the middle of the third.
	s.Cutter.Groove, s.Cutter.Width, s.BottomHeight = 3, 6.35, 16.5
	d = mustBuild(t, s)
	near(t, "lowest row", d.Setup.FingerHeight, 16.5-(6.235-6)/2-6.235)
	s.Cutter, s.BottomHeight = Cutter{Kind: Saw, Width: 6}, 30
	s.BottomFit = BottomApplied
	d = mustBuild(t, s)
	at := newLayout(d.Spec).edges()
	near(t, "rows", float64(len(at)-1), 19) // walls of 120 - 5.8
	near(t, "last row", at[19]-at[18], 114.2-18*5.885)
}

// TestHousedBack: the setback of 15 leaves 450 - 15 - 12 before the back; the dado
// is 12 + 0.2 wide.
func TestHousedBack(t *testing.T) {
	for _, j := range Joints {
		d := mustBuild(t, routedBox(func(s *Spec) {
			if s.Joint, s.BackJoint, s.BackSetback = j, Housed, 15; j == Dovetail {
				s.Cutter.Kind = Hand
			}
		}))
		if len(d.Parts) != 5 || d.Parts[0].Label != "left" || d.Parts[1].Label != "right" {
			t.Fatalf("%s: left and right are no twins: %v", j, d.Parts)
		}
		left, right := d.Parts[0].Panel, d.Parts[1].Panel
		short := 0.0
		if j == DoubleRabbet || j == RabbetedFront {
			short = 6
		}
		in := func(p geom.Panel) geom.Loop {
			i := slices.IndexFunc(p.Pockets,
				func(k geom.Pocket) bool { return k.Kind == geom.Dado && k.Outline.Bounds().Width() > 12 })
			return p.Pockets[i].Outline
		}
		bounds(t, string(j)+" left dado", in(left), 450-short-15-12.2, 0, 450-short-15, 120)
		bounds(t, string(j)+" right dado", in(right), 15, 0, 15+12.2, 120)
		near(t, "inside depth", d.Inside.Depth, 450-15-12-d.toFront())
	}
}

func (d Drawer) toFront() float64 { return d.Spec.Front.Thickness.Mean }

// TestSlidInBottom: the back ends a hair over the bottom, at 6 + 5.8 + 0.03; the bottom
// reaches to its outside face: 450 - 12 + 6 - 2 = 442 (f = 6: flush).
func TestSlidInBottom(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.BottomFit = BottomSlideIn }))
	back, bottom := d.part(Back), d.part(Bottom)
	bounds(t, "back", back.Panel.Outline, 0, 0, 388, 120-11.83)
	near(t, "back stands", back.Placements[0].Origin.Z, 11.83)
	bounds(t, "bottom", bottom.Panel.Outline, 0, 0, 386, 442)
	near(t, "bottom begins", bottom.Placements[0].Origin.Y, 12-6+2)
	for _, k := range back.Panel.Pockets {
		if k.Kind == geom.Groove {
			t.Error("a back above the bottom has a groove")
		}
	}
	side := d.Parts[0].Panel
	bounds(t, "left groove", side.Pockets[2].Outline, 6+6.2/2, 6, 450, 12)
}

// TestAppliedBottom: 400 x 450 below walls of 120 - 5.8.
func TestAppliedBottom(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.BottomFit = BottomApplied }))
	bounds(t, "bottom", d.part(Bottom).Panel.Outline, 0, 0, 400, 450)
	bounds(t, "side", d.part(Side).Panel.Outline, 0, 0, 450, 114.2)
	near(t, "side stands", d.part(Side).Placements[0].Origin.Z, 5.8)
	near(t, "clear height", d.Inside.Height, 120-5.8)
	for _, p := range d.Parts {
		for _, k := range p.Panel.Pockets {
			if k.Kind == geom.Groove {
				t.Errorf("the %s has a groove", p.Role)
			}
		}
	}
}

// TestGlueArea: a dado-rabbet corner is glued over 12 + 2 x 6 = 24 mm of 120, a
// rabbet over 12 + 6, a butt over 12; of a box joint 4 finger faces of 12 x 12 and
// 120 x 12 of floors.
func TestGlueArea(t *testing.T) {
	for _, c := range []struct {
		joint Joint
		want  float64
	}{{DadoRabbet, 4 * 24 * 120}, {DoubleRabbet, 4 * 18 * 120}, {Rabbet, 4 * 18 * 120}, {Butt, 4 * 12 * 120}, {BoxJoint, 4 * (4*144 + 120*12)},
		{RabbetedFront, 4 * 18 * 120}} {
		d := mustBuild(t, routedBox(func(s *Spec) { s.Joint, s.FingerWidth = c.joint, 24 }))
		near(t, string(c.joint), d.GlueArea(), c.want)
	}
}

// TestFingerWidthNotTaken: where a wished width is not what is made, it is said.
func TestFingerWidthNotTaken(t *testing.T) {
	for name, c := range map[string]struct {
		cutter Cutter
		wish   float64
		says   string
	}{
		"near":   {Cutter{Kind: Router, Width: 6}, 24, ""},
		"narrow": {Cutter{Kind: Router, Width: 6}, 5, "they are made"},
		"saw":    {Cutter{Kind: Saw, Width: 6.35}, 5, "a saw cuts fingers as wide as its slots"},
		"sawn":   {Cutter{Kind: Saw, Width: 6.35}, 6.24, ""},
	} {
		s := routedBox(func(s *Spec) {
			s.Joint, s.FingerWidth, s.Cutter, s.BottomFit = BoxJoint, c.wish, c.cutter, BottomApplied
		})
		_, problems := Build(s)
		said := ""
		for _, p := range problems {
			if p.Code == "finger-width" && p.Subject.Setting == SettingFingerWidth {
				said += fact(p)
			}
		}
		if c.says == "" && said != "" || !strings.Contains(said, c.says) {
			t.Errorf("%s: %q", name, said)
		}
	}
}
