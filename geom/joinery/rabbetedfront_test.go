package joinery

import (
	"slices"
	"testing"

	"drawerwright/geom"
)

// fronted is a job with a front over the sides' ends: Ts = 12, Tf = 18, Tk = 14, h = 8.
func fronted(change func(*Spec)) Spec {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.Joint, s.Front, s.Back, s.CutterHeight = RabbetedFront, sheet("eighteen", 18), sheet("fourteen", 14), 8
	s.FenceDistance = 6
	change(&s)
	return s
}

func TestRabbetedFrontSizes(t *testing.T) {
	d := mustBuild(t, fronted(func(*Spec) {}))
	left, right, front, back, bottom := d.Parts[0], d.Parts[1], d.part(Front), d.part(Back), d.part(Bottom)
	if left.Label != "left" || right.Label != "right" || len(d.Parts) != 5 {
		t.Fatalf("parts %v", d.Parts)
	}
	near(t, "side length", left.Panel.Length(), 490) // 500 - (18 - 8)
	near(t, "front length", front.Panel.Length(), 460)
	near(t, "back length", back.Panel.Length(), 452) // 460 - 24 + 16
	near(t, "bottom length", bottom.Panel.Length(), 450)
	near(t, "bottom width", bottom.Panel.Width(), 482) // 500 - 18 - 14 + 16 - 2
	for _, c := range []struct {
		part Part
		want []geom.Pocket
	}{
		{front, []geom.Pocket{
			{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(0, 0, 12, 140)},
			{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(448, 0, 460, 140)},
			{Kind: geom.Groove, Depth: 8, Outline: geom.Rectangle(0, 6, 460, 12.35)}}},
		{left, []geom.Pocket{
			{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(476, 0, 490, 140)},
			{Kind: geom.Groove, Depth: 8, Outline: geom.Rectangle(0, 6, 490, 12.35)}}},
		{right, []geom.Pocket{
			{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(0, 0, 14, 140)},
			{Kind: geom.Groove, Depth: 8, Outline: geom.Rectangle(0, 6, 490, 12.35)}}},
		{back, []geom.Pocket{{Kind: geom.Groove, Depth: 8, Outline: geom.Rectangle(0, 6, 452, 12.35)}}},
	} {
		if len(c.part.Panel.Pockets) != len(c.want) {
			t.Fatalf("%s: %v", c.part.Role, c.part.Panel.Pockets)
		}
		for i, k := range c.part.Panel.Pockets {
			if w := c.want[i]; k.Kind != w.Kind || k.Face != w.Face || k.Depth != w.Depth ||
				k.Outline.Bounds() != w.Outline.Bounds() {
				t.Errorf("%s: pocket %+v, want %+v", c.part.Role, k, w)
			}
		}
	}
	for _, c := range []struct {
		what string
		at   geom.Placement
		want geom.Vec3
	}{
		{"left side", left.Placements[0], geom.Vec3{Y: 10}},
		{"right side", right.Placements[0], geom.Vec3{X: 460, Y: 500}},
		{"front", front.Placements[0], geom.Vec3{X: 460}},
		{"back", back.Placements[0], geom.Vec3{X: 4, Y: 500}},
		{"bottom", bottom.Placements[0], geom.Vec3{X: 5, Y: 11, Z: 6}}, // T - h, half the slack
	} {
		if c.at.Origin != c.want {
			t.Errorf("%s at %v, want %v", c.what, c.at.Origin, c.want)
		}
	}
	near(t, "inside width", d.Inside.Width, 436)
	near(t, "inside depth", d.Inside.Depth, 468)
	near(t, "last pass of the back's", d.Setup.LastFence, 14-6.35) // the longest of 12 and 14
	near(t, "glue", d.GlueArea(), 2*140*(12+8)+2*140*(14+8))
	if d.Setup.RabbetPasses != 3 {
		t.Errorf("%d passes", d.Setup.RabbetPasses)
	}
}

// TestRabbetedFrontGrooveEnds: a stopped groove of the front ends in its rabbets, where the
// bottom's corner, Ts - h and half its clearance from the end, comes free of the bit's round;
// that of the sides runs out under the front, and stops in the rabbet of the back.
func TestRabbetedFrontGrooveEnds(t *testing.T) {
	d := mustBuild(t, fronted(routed))
	front, side := cutOf(t, d.part(Front).Panel, geom.Groove), cutOf(t, d.Parts[0].Panel, geom.Groove)
	near(t, "front's groove", front.Outline.Bounds().Min.X, 4) // 12 - 8, less than 12 / 2
	near(t, "bottom in it", front.Takes.Bounds().Min.X, 5)
	near(t, "side's groove", side.Outline.Bounds().Min.X, 0)
	near(t, "side's groove ends", side.Outline.Bounds().Max.X, 490-7)
}

// TestRabbetedFrontProblems: what leaves no lip or no shoulder is refused, with a change that helps.
func TestRabbetedFrontProblems(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Spec)
		code   geom.Code
		field  geom.Setting
	}{
		"front thinner than the rabbet": {func(s *Spec) { s.Front = sheet("thin", 8.5) }, "cutter-height", SettingBoxFront},
		"the same without grooves": {func(s *Spec) { s.Front, s.BottomFit = sheet("thin", 8.5), BottomApplied },
			"cutter-height", SettingBoxFront},
		"sides too thin":           {func(s *Spec) { s.CutterHeight = 11.5 }, "cutter-height", SettingCutterHeight},
		"glue space without dados": {func(s *Spec) { s.GlueSpace = 0.2 }, "glue-space", SettingGlueSpace},
	} {
		_, problems := Build(fronted(c.change))
		i := slices.IndexFunc(problems, func(p geom.Diagnosis) bool {
			return p.Code == c.code && p.Subject.Setting == c.field
		})
		if i < 0 || len(problems[i].Remedies) == 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

// TestRabbetedFrontLap: what a side is thicker stands proud of the front's ends, and what it is
// thinner stands back from them.
func TestRabbetedFrontLap(t *testing.T) {
	lap := mustBuild(t, fronted(func(s *Spec) { s.Sides.Thickness = Thickness{12, 11.5, 12.5} })).fit(CheckLap)
	if lap.Min != -0.5 || lap.Max != 0.5 || lap.Verdict.Right() {
		t.Errorf("%+v", lap)
	}
}
