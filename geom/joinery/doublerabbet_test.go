package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// doubled is a plain job with the double rabbet, changed.
func doubled(change func(*Spec)) Spec {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.Joint = DoubleRabbet
	change(&s)
	return s
}

// routed cuts a job with a small bit.
func routed(s *Spec) { s.Cutter, s.GrooveEnds = Cutter{Kind: Router, Width: 3}, GrooveStopped }

// TestDoubleRabbetSizes: Ts = 12, Tf = 10, Tk = 14, h = 5, f = Tf/2 = 5, so that no
// two lengths of the corner are the same.
func TestDoubleRabbetSizes(t *testing.T) {
	d := mustBuild(t, doubled(func(s *Spec) {
		s.Front, s.Back, s.CutterHeight = sheet("ten", 10), sheet("fourteen", 14), 5
	}))
	side, front, back, bottom := d.part(Side), d.part(Front), d.part(Back), d.part(Bottom)
	near(t, "side length", side.Panel.Length(), 486) // 500 - (10 - 5) - (14 - 5)
	near(t, "side height", side.Panel.Width(), 140)
	near(t, "front length", front.Panel.Length(), 460)
	near(t, "back length", back.Panel.Length(), 460)
	near(t, "front height", front.Panel.Width(), 140)
	near(t, "back thickness", back.Panel.Thickness, 14)
	near(t, "bottom length", bottom.Panel.Length(), 444) // 460 - 24 + 10 - 2
	near(t, "bottom width", bottom.Panel.Width(), 484)   // 500 - 10 - 14 + 10 - 2
	for _, c := range []struct {
		part           Part
		length, rabbet float64
	}{{side, 486, 5}, {front, 460, 7}, {back, 460, 7}} { // h, and Ts - h
		want := []geom.Pocket{
			{Kind: geom.Rabbet, Depth: 5, Outline: geom.Rectangle(0, 0, c.rabbet, 140)},
			{Kind: geom.Rabbet, Depth: 5, Outline: geom.Rectangle(c.length-c.rabbet, 0, c.length, 140)},
			{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(0, 5, c.length, 5+6.35)},
		}
		for i, k := range c.part.Panel.Pockets {
			if k.Kind != want[i].Kind || k.Face != geom.Inside || k.Depth != 5 || !slices.Equal(k.Outline, want[i].Outline) {
				t.Errorf("%s: pocket %+v, want %+v", c.part.Role, k, want[i])
			}
		}
	}
	if on, front := side.Panel.Outline.Marked(geom.Mating), front.Panel.Outline.Marked(geom.Mating); !slices.Equal(on, []int{1, 3}) || front != nil {
		t.Errorf("another part bears on the sides %v of the side, %v of the front", on, front)
	}
	for _, c := range []struct {
		what string
		at   geom.Placement
		want geom.Vec3
	}{
		{"left side", side.Placements[0], geom.Vec3{Y: 5}},                // Tf - h
		{"right side", side.Placements[1], geom.Vec3{X: 460, Y: 500 - 9}}, // Tk - h
		{"front", front.Placements[0], geom.Vec3{X: 460}},
		{"back", back.Placements[0], geom.Vec3{Y: 500}},
		{"bottom", bottom.Placements[0], geom.Vec3{X: 12 - 5 + 1, Y: 10 - 5 + 1, Z: 5}}, // T - h, half the slack
	} {
		if c.at.Origin != c.want {
			t.Errorf("%s at %v, want %v", c.what, c.at.Origin, c.want)
		}
	}
	near(t, "back clearance", 500-(bottom.Placements[0].Origin.Y+bottom.Panel.Width()), 14-5+1)
	if d.Outside != (Size{460, 140, 500}) {
		t.Errorf("outside %v", d.Outside)
	}
	near(t, "inside width", d.Inside.Width, 436)
	near(t, "inside depth", d.Inside.Depth, 476)
	near(t, "inside height", d.Inside.Height, 140-5-5.9)
}

// TestDoubleRabbetFlushBottom: 12 mm does not go into 6.35; its rabbets are all
// that is cut on an outside face.
func TestDoubleRabbetFlushBottom(t *testing.T) {
	d := mustBuild(t, doubled(func(s *Spec) { s.Bottom = sheet("twelve", 12) }))
	for _, p := range d.Parts {
		if p.Panel.CutOn(geom.Outside) != (p.Role == Bottom) {
			t.Errorf("%s: %+v", p.Role, p.Panel.Pockets)
		}
	}
	near(t, "tongue clearance", d.fit("groove-clearance").Nominal, 6.35-(12-6))
	near(t, "flush", d.fit("bottom-flush").Nominal, 0)
	near(t, "bottom stands at", d.part(Bottom).Placements[0].Origin.Z, 0)
}

// TestDoubleRabbetGrooveEnds: stopped grooves end in the middle of the rabbets, 6
// long each, or as much nearer to the end as the bit's radius asks for; the bottom,
// half its slack further in, decides on the rounds that a wider bit leaves.
func TestDoubleRabbetGrooveEnds(t *testing.T) {
	for _, c := range []struct {
		bit  float64
		ends GrooveEnds
		want float64
	}{{3, GrooveStopped, 3}, {8, GrooveStopped, 2}, {13, GrooveStopped, 0}, {3, GrooveThrough, 0}} {
		d := mustBuild(t, doubled(func(s *Spec) {
			s.Cutter, s.GrooveEnds, s.Bottom = Cutter{Kind: Router, Width: c.bit}, c.ends, sheet("ply", max(6, c.bit-0.2))
		}))
		for _, p := range d.Parts[:3] {
			groove := p.Panel.Pockets[2]
			near(t, "groove starts", groove.Outline.Bounds().Min.X, c.want)
			near(t, "groove ends", groove.Outline.Bounds().Max.X, p.Panel.Length()-c.want)
			if c.want == 0 {
				if len(groove.Takes) != 0 {
					t.Errorf("%s: a groove that runs through takes %v", p.Role, groove.Takes)
				}
				continue
			}
			near(t, "bottom's corner", groove.Takes.Bounds().Min.X, map[Role]float64{Side: 1, Front: 7, Back: 7}[p.Role])
		}
	}
}

// TestDoubleRabbetSetting: 18 mm sides, h = 9: rabbets 9 long take two passes with
// 6.35, the last at 9 - 6.35. With 12 mm sides, 6 long, 0.35 of the cutter are in
// the fence.
func TestDoubleRabbetSetting(t *testing.T) {
	d := mustBuild(t, doubled(func(*Spec) {}))
	if s := d.Setup; s.RabbetPasses != 1 || s.DadoHeight != 0 || s.BottomFence != 0 || s.FenceDistance != 6 || s.CutterHeight != 6 {
		t.Errorf("%+v", s)
	}
	near(t, "one pass", d.Setup.LastFence, 0)
	d = mustBuild(t, doubled(func(s *Spec) { s.Sides = sheet("thick", 18) }))
	if d.Setup.RabbetPasses != 2 {
		t.Errorf("%d passes", d.Setup.RabbetPasses)
	}
	near(t, "two passes", d.Setup.LastFence, 2.65)
	// h = 4: the front's rabbets, 8 long, are the longer ones.
	d = mustBuild(t, doubled(func(s *Spec) { s.CutterHeight = 4; s.BottomClearance = 1 }))
	near(t, "the longer", d.Setup.LastFence, 8-6.35)
	d = mustBuild(t, doubled(func(s *Spec) { routed(s); s.Sides = sheet("thick", 18) }))
	if d.Setup.RabbetPasses != 1 || d.Setup.LastFence != d.Setup.FenceDistance {
		t.Errorf("a router has %+v", d.Setup)
	}
}

func TestDoubleRabbetProblems(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Spec)
		code   geom.Code
		field  geom.Setting
		error  bool
		says   string // in the message or the hint
		follow func(*Spec)
	}{
		"glue space": {func(s *Spec) { s.GlueSpace = 0.2 }, "glue-space", SettingGlueSpace, false, "the glue-space of 0.2 mm changes nothing",
			func(s *Spec) { s.GlueSpace = 0 }},
		"cut too deep":    {func(s *Spec) { s.CutterHeight = 11.5 }, "cutter-height", SettingCutterHeight, true, "cuts 11.5 mm deep in sides of 12 mm", func(s *Spec) { s.CutterHeight = 6 }},
		"cut too shallow": {func(s *Spec) { s.CutterHeight = 0.9; s.BottomClearance = 0.5 }, "cutter-height", SettingCutterHeight, true, "cuts 0.9 mm deep", func(s *Spec) { s.CutterHeight = 6 }},
		"cut through a thin spot": {func(s *Spec) { s.Sides = sheet("uneven", 11, 12.6, 12.6); s.CutterHeight = 10.1 }, "cutter-height", SettingCutterHeight, true,
			"11 mm at the thinnest", nil},
		"thin front": {func(s *Spec) { s.Front = sheet("thin", 6.9); s.FenceDistance = 6 }, "cutter-height", SettingBoxFront, true,
			"front 8 or more", func(s *Spec) { s.Front = sheet("eight", 8) }},
		"thin back": {func(s *Spec) { s.Back = sheet("thin", 6.9) }, "cutter-height", SettingBack, true, "the groove is 6 mm deep in a back of 6.9 mm",
			func(s *Spec) { s.Back = sheet("ten", 10) }},
		"thin web": {func(s *Spec) { s.CutterHeight = 6.1; s.Front = sheet("eight", 8); s.Cutter.Width = 6.4 }, "thin-web", SettingBoxFront, false,
			"cutter-height 6 or less", func(s *Spec) { s.CutterHeight = 6 }},
		"groove at the edge": {func(s *Spec) { s.FenceDistance = 0.9 }, "fence-distance", SettingFenceDistance, true,
			"fence-distance 1 or more", func(s *Spec) { s.FenceDistance = 1 }},
		"narrow box":  {func(s *Spec) { s.Width = 43.9 }, "room", SettingOutside, true, "outside width 44 or more", func(s *Spec) { s.Width = 44 }},
		"shallow box": {func(s *Spec) { s.Back = sheet("eighteen", 18); s.Depth, s.Height = 49.9, 49 }, "room", SettingOutside, true, "outside depth 50 or more", func(s *Spec) { s.Depth = 50 }},
		"passes": {func(s *Spec) { s.Sides = sheet("thick", 18) }, "rabbet-passes", SettingCutter, false,
			"one pass leaves 2.65 mm of rabbets that are 9 mm long | take 2 passes, the first along the end, the fence moved out by at most 6.35 mm each time, the last at 2.65 mm", func(s *Spec) { s.Sides = sheet("twelve", 12) }},
		"two lengths": {func(s *Spec) { s.CutterHeight = 5.9 }, "rabbet-setup", SettingCutterHeight, false,
			"the rabbets of the sides are 5.9 mm long, those of box front and back 6.1 mm", func(s *Spec) { s.CutterHeight = 6 }},
		"alike would be too deep": {func(s *Spec) { s.Front, s.FenceDistance, s.CutterHeight = sheet("thin", 6.9), 6, 4 }, "rabbet-setup", SettingCutterHeight, false,
			"cutter-height 6 and box-front 8 or more", func(s *Spec) { s.CutterHeight, s.Front = 6, sheet("eight", 8) }},
		// Half of 11.99 is 5.995, written as 6: 6 + 1 is more than 6.996, 5.995 + 1 is not.
		"alike as written": {func(s *Spec) {
			s.Sides, s.Front, s.FenceDistance, s.CutterHeight = sheet("just under", 11.99), sheet("thin", 6.996), 6, 4
		}, "rabbet-setup", SettingCutterHeight, false,
			"cutter-height 6 and box-front 8 or more", func(s *Spec) { s.CutterHeight, s.Front = 6, sheet("eight", 8) }},
		"swapped": {func(s *Spec) { s.Height, s.Depth = 500, 140 }, "proportions", SettingOutside, false, "width x height x depth", func(s *Spec) { s.Height, s.Depth = 140, 500 }},
		// A cutter for the bottom alone: there is no tongue that it has to suit.
		"thin bottom": {func(s *Spec) { s.Bottom = sheet("thin", 5.6) }, "groove-clearance", SettingBottom, false,
			"bottom 5.75 to 6.32; or cutter 6.01 to 6.2", func(s *Spec) { s.Cutter.Width = 6.2 }},
	} {
		t.Run(name, func(t *testing.T) {
			s := doubled(c.change)
			_, problems := Build(s)
			at := slices.IndexFunc(problems, func(p geom.Diagnosis) bool {
				return p.Code == c.code && p.Subject.Setting == c.field && p.IsError() == c.error
			})
			if at < 0 {
				t.Fatalf("no %s among %+v", c.code, problems)
			}
			if p := problems[at]; fact(p) == "" || advice(p) == "" || !strings.Contains(fact(p)+" | "+advice(p), c.says) {
				t.Errorf("%+v\ndoes not say %q", p, c.says)
			}
			if c.follow == nil {
				return
			}
			c.follow(&s)
			_, problems = Build(s)
			for _, p := range problems {
				if p.IsError() || p.Code == c.code {
					t.Errorf("followed: %+v", p)
				}
			}
		})
	}
	if _, problems := Build(doubled(func(*Spec) {})); len(problems) != 0 {
		t.Errorf("the plain job has %+v", problems)
	}
	if _, problems := Build(doubled(func(s *Spec) { routed(s); s.DadoClearance = 1.5 })); len(problems) != 0 {
		t.Errorf("dado-clearance, always filled in, has %+v", problems)
	}
	if _, problems := Build(doubled(func(s *Spec) { s.Joint = "glue" })); len(problems) != 1 ||
		advice(problems[0]) != "write dado-rabbet, double-rabbet, rabbet, butt, box-joint, rabbeted-front or dovetail" {
		t.Errorf("%+v", problems)
	}
}

// TestGlueRoomChangesNothing: the warned-of entry leaves the drawer as it is.
func TestGlueRoomChangesNothing(t *testing.T) {
	with := mustBuild(t, doubled(func(s *Spec) { s.GlueSpace = 5.5 })) // too deep for a dado
	without := mustBuild(t, doubled(func(*Spec) {}))
	if with.Setup != without.Setup || !slices.Equal(with.Fit, without.Fit) {
		t.Errorf("%+v, %+v", with.Setup, with.Fit)
	}
	for i, p := range with.Parts {
		for j, k := range p.Panel.Pockets {
			if k.Depth != without.Parts[i].Panel.Pockets[j].Depth {
				t.Errorf("%s: cut %g deep", p.Role, k.Depth)
			}
		}
	}
}

// TestDoubleRabbetMirrors: a box with front and back exchanged is the same box
// turned about: its parts are the same, and each stands a half turn further.
func TestDoubleRabbetMirrors(t *testing.T) {
	s := doubled(func(s *Spec) { s.Front, s.Back, s.FenceDistance = sheet("ten", 10), sheet("fourteen", 14), 6 })
	d := mustBuild(t, s)
	s.Front, s.Back = s.Back, s.Front
	turned := mustBuild(t, s)
	for a, b := range map[Role]Role{Side: Side, Front: Back, Back: Front} {
		p, q := d.part(a), turned.part(b)
		near(t, string(a)+" length", p.Panel.Length(), q.Panel.Length())
		last := len(p.Placements) - 1
		for i, stand := range p.Placements {
			o, u := stand.Origin, q.Placements[last-i].Origin
			if math.Abs(o.X-(460-u.X)) > 1e-9 || math.Abs(o.Y-(500-u.Y)) > 1e-9 || o.Z != u.Z {
				t.Errorf("%s at %v, turned %v", a, o, u)
			}
		}
	}
}
