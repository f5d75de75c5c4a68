package joinery

import (
	"strings"
	"testing"

	"drawerwright/geom"
)

// fielded asks for such a bottom, this thick, and a bit of 4.
func fielded(thick float64) func(*Spec) {
	return func(s *Spec) { s.BottomFit, s.Bottom, s.Cutter.Width = BottomFielded, sheet("thick", thick), 4 }
}

// TestFieldedBottom: of 10, half is its tongue, 5 thick, in a groove of 5.2; the rabbets are 6 long,
// as the groove is deep, and 5 deep, so that it stands 6 - 5 over the edges. The back stands a hair
// over it. Size and place are those of a bottom that is slid in.
func TestFieldedBottom(t *testing.T) {
	d := mustBuild(t, routedBox(fielded(10)))
	bottom, slid := d.part(Bottom), mustBuild(t, routedBox(slidIn)).part(Bottom)
	bounds(t, "bottom", bottom.Panel.Outline, 0, 0, 386, 442)
	near(t, "stands", bottom.Placements[0].Origin.Z, 1)
	near(t, "begins", bottom.Placements[0].Origin.Y, slid.Placements[0].Origin.Y)
	near(t, "back stands", d.part(Back).Placements[0].Origin.Z, 6+5+bottomRoom)
	near(t, "clear height", d.Inside.Height, 120-11)
	near(t, "clearance", d.fit("groove-clearance").Nominal, 0.2)
	var rabbets []geom.Rect
	for _, k := range bottom.Panel.Pockets {
		if k.Kind == geom.Rabbet {
			rabbets = append(rabbets, k.Outline.Bounds())
			near(t, "deep", k.Depth, 5)
		}
	}
	want := []geom.Rect{{Max: geom.Point{X: 6, Y: 442}}, {Min: geom.Point{X: 380}, Max: geom.Point{X: 386, Y: 442}}, {Max: geom.Point{X: 386, Y: 6}}}
	if len(rabbets) != len(want) {
		t.Fatalf("rabbets %v", rabbets)
	}
	for i, r := range rabbets {
		if r != want[i] {
			t.Errorf("rabbet %v, want %v", r, want[i])
		}
	}
	side := d.Parts[0].Panel
	bounds(t, "groove", side.Pockets[2].Outline, 6+6.2/2, 6, 450, 11.2)
}

// TestFieldedOnASaw: a groove of 6.35 takes a tongue as thick as the others, 6, with 0.35 of clearance,
// and one of 6.8, which leaves too much, a tongue of 6.6. Stood on end the bottom's top is at the
// fence; one too large for that lies flat, the cutter 10 - 6.6 high.
func TestFieldedOnASaw(t *testing.T) {
	sawn := routedBox(fielded(10))
	sawn.Cutter, sawn.GrooveEnds, sawn.DadoClearance = Cutter{Kind: Saw, Width: 6.35}, GrooveThrough, 0
	d := mustBuild(t, sawn)
	near(t, "fence", d.Setup.BottomFence, 6)
	sawn.Cutter.Width = 6.8
	d = mustBuild(t, sawn)
	near(t, "fence", d.Setup.BottomFence, 6.6)
	near(t, "flat", d.Setup.BottomHeight, 0)
	sawn.OnEnd.Length = geom.Interval{Min: 150, Max: 400}
	d = mustBuild(t, sawn)
	near(t, "fence", d.Setup.BottomFence, 0)
	near(t, "flat", d.Setup.BottomHeight, 3.4)
}

// TestFieldedIsRefused: one that is no thicker than its groove is slid in as it is; a thick one
// would hang out of the box unless its groove is higher; one without clearance does not go in.
func TestFieldedIsRefused(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Spec)
		fact   string
		ways   []string
	}{
		"thin": {fielded(4.5), "on a tongue of 3.8 mm leaves nothing to rabbet", []string{"bottom-fit slide-in", "bottom 4.8 or more"}},
		"thick": {func(s *Spec) { fielded(18)(s); s.Bottom.Thickness.Max = 18.1 },
			"reaches 9.1 mm below its tongue, and the groove is 6 mm over the bottom edges", []string{"bottom-height 9.1"}},
		"tight": {func(s *Spec) { fielded(10)(s); s.GrooveClearance = 0 }, "the groove has no clearance", []string{"groove-clearance"}},
	} {
		_, problems := Build(routedBox(c.change))
		found := false
		for _, p := range problems {
			said := p.Fact.In(geom.Millimeter)
			if !p.IsError() || !strings.Contains(said, c.fact) {
				t.Errorf("%s: %s", name, said)
				continue
			}
			found = true
			for _, way := range c.ways {
				if !strings.Contains(advice(p), way) {
					t.Errorf("%s: %s", name, advice(p))
				}
			}
		}
		if !found {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

// TestFieldedOverSlides: slides that want 13 mm under the bottom want the groove of one of 10, of which
// 5 are below its tongue, at 18.
func TestFieldedOverSlides(t *testing.T) {
	s := routedBox(fielded(10))
	s.Joint, s.BottomHeight, s.Undermount = Rabbet, 13, &Undermount{BottomRecess: 13, MaxSide: 16}
	_, problems := Build(s)
	if len(problems) == 0 || !strings.Contains(advice(problems[0]), "bottom-height 18 or more") {
		t.Errorf("%v", problems)
	}
	s.BottomHeight = 18
	near(t, "stands", mustBuild(t, s).part(Bottom).Placements[0].Origin.Z, 13)
}
