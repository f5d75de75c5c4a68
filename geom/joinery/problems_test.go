package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

func TestProblems(t *testing.T) {
	birch, hardboard := sheet("birch", 12), sheet("hardboard", 5.9)
	with := func(change func(*Spec)) Spec {
		s := saw(460, 140, 500, 6.35, birch, hardboard)
		change(&s)
		return s
	}
	for name, c := range map[string]struct {
		spec  Spec
		code  geom.Code
		field geom.Setting
		error bool
	}{
		"cutter too narrow":           {with(func(s *Spec) { s.Cutter.Width = 5.9; s.Bottom = sheet("thin", 4) }), "cutter-narrow", SettingCutter, true},
		"cutter too wide":             {with(func(s *Spec) { s.Cutter.Width = 7.5 }), "cutter-wide", SettingCutter, true},
		"loose":                       {with(func(s *Spec) { s.Cutter.Width = 6.6 }), "tongue-clearance", SettingCutter, false},
		"no width":                    {with(func(s *Spec) { s.Width = 40 }), "room", SettingOutside, true},
		"no depth":                    {with(func(s *Spec) { s.Depth = 40 }), "room", SettingOutside, true},
		"no height":                   {with(func(s *Spec) { s.Height = 20 }), "room", SettingOutside, true},
		"cut too deep":                {with(func(s *Spec) { s.CutterHeight = 11.5 }), "cutter-height", SettingCutterHeight, true},
		"deep, thin web":              {with(func(s *Spec) { s.CutterHeight = 10.5 }), "thin-web", SettingSides, false},
		"fence too far":               {with(func(s *Spec) { s.FenceDistance = 11.5 }), "fence-distance", SettingFenceDistance, true},
		"front proud":                 {with(func(s *Spec) { s.FenceDistance = 5.5; s.Cutter.Width = 6; s.Bottom = sheet("thin", 5.8) }), "recess", SettingBoxFront, false},
		"sliver":                      {with(func(s *Spec) { s.FenceDistance = 5; s.Cutter.Width = 5.2; s.Bottom = sheet("thin", 5) }), "rabbet-passes", SettingBoxFront, false},
		"swapped":                     {with(func(s *Spec) { s.Height, s.Depth = 500, 140 }), "proportions", SettingOutside, false},
		"no clearance for the tongue": {with(func(s *Spec) { s.Cutter, s.DadoClearance = Cutter{Kind: Router, Width: 3}, 0 }), "cutter-narrow", SettingDadoClearance, true},
		"too much clearance":          {with(func(s *Spec) { s.Cutter, s.DadoClearance = Cutter{Kind: Router, Width: 3}, 1.5 }), "cutter-wide", SettingDadoClearance, true},
		"no clearance for the bottom": {with(func(s *Spec) { s.Cutter, s.GrooveClearance = Cutter{Kind: Router, Width: 3}, 0 }), "bottom", SettingGrooveClearance, true},
		"thin spot of a side":         {with(func(s *Spec) { s.Sides = sheet("uneven", 11, 12.6, 12.6); s.CutterHeight = 11 }), "cutter-height", SettingCutterHeight, true},
		"groove through a thin front": {with(func(s *Spec) {
			s.Sides = sheet("thick", 18)
			s.Front = sheet("thin", 9)
			s.Cutter.Width = 4.7
			s.Bottom = sheet("thin", 4.4)
		}), "cutter-height", SettingBoxFront, true},
		"groove that cannot stop": {with(func(s *Spec) {
			s.Sides = sheet("thick", 20)
			s.Cutter = Cutter{Kind: Router, Width: 4}
			s.GrooveEnds = GrooveStopped
		}), "groove-ends", SettingGrooveEnds, false},
		"no clearance":                    {with(func(s *Spec) { s.BottomClearance = 0 }), "bottom-clearance", SettingBottomClearance, false},
		"much clearance":                  {with(func(s *Spec) { s.BottomClearance = 4 }), "bottom-clearance", SettingBottomClearance, false},
		"flush with a setting of its own": {with(func(s *Spec) { s.Bottom = sheet("ten", 10) }), "bottom-setup", SettingBottom, false},
		"neither captured nor flush":      {with(func(s *Spec) { s.Bottom = sheet("between", 6.5) }), "bottom", SettingBottom, true},
		"captured, too thick":             {with(func(s *Spec) { s.Bottom = sheet("thick", 9); s.BottomFit = BottomGroovedIn }), "bottom", SettingBottom, true},
		"flush, still too thick":          {with(func(s *Spec) { s.Bottom = sheet("thick", 18) }), "bottom", SettingBottom, true},
		"flush, too thin":                 {with(func(s *Spec) { s.BottomFit = BottomFlush }), "bottom", SettingBottom, true},
		"slack":                           {with(func(s *Spec) { s.BottomClearance = 6 }), "bottom-clearance", SettingBottomClearance, true},
		"thickest reading":                {with(func(s *Spec) { s.Bottom = sheet("uneven", 5.9, 6.4) }), "groove-clearance", SettingBottom, false},
		"unknown corner":                  {with(func(s *Spec) { s.Joint = "glue" }), "joint", SettingJoint, true},
		"larger than its sheet":           {with(func(s *Spec) { s.Sides.Length, s.Sides.Width = 450, 450 }), "sheet", SettingSides, true},
	} {
		t.Run(name, func(t *testing.T) {
			_, problems := Build(c.spec)
			for _, p := range problems {
				if p.Code == c.code && p.Subject.Setting == c.field && p.IsError() == c.error {
					if fact(p) == "" || advice(p) == "" {
						t.Errorf("no words: %+v", p)
					}
					return
				}
			}
			t.Errorf("not found among %+v", problems)
		})
	}
	if _, problems := Build(with(func(*Spec) {})); len(problems) != 0 {
		t.Errorf("the plain job has %+v", problems)
	}
}

// TestSheetToTheNanometer: 560 - 2 x 13.83 + 13.83 = 546.17 is no more than the
// sheet, whatever the last bits of float64 say.
func TestSheetToTheNanometer(t *testing.T) {
	s := saw(560, 140, 500, 7.1, sheet("ply", 13.83), sheet("hardboard", 6.9))
	s.Front.Name, s.Front.Length, s.Front.Width = "front", 546.17, 500
	if _, problems := Build(s); len(problems) != 0 {
		t.Errorf("%+v", problems)
	}
	s.Front.Length = 546.16
	if _, problems := Build(s); len(problems) != 1 || problems[0].Code != "sheet" {
		t.Errorf("0.01 mm short: %+v", problems)
	}
}

// TestAdviceHolds: what a hint asks for builds without the complaint.
func TestAdviceHolds(t *testing.T) {
	s := saw(460, 20, 500, 6.35, sheet("birch", 12.2, 12.2, 12.21), sheet("hardboard", 5.9))
	_, problems := Build(s)
	if len(problems) != 1 || advice(problems[0]) != "outside height 22.46 or more" {
		t.Fatalf("%+v", problems)
	}
	s.Height = 22.46
	if _, problems = Build(s); len(problems) != 0 {
		t.Errorf("%+v", problems)
	}
	// 0.4805 in: f = 0.24025, and 0.004 more is 0.24425, advised as 0.245; 0.016 more 0.25625, as 0.256.
	s = saw(460, 140, 500, 0.24*25.4, sheet("ply", 0.4805*25.4), sheet("hardboard", 5.9))
	s.Units = geom.Inch
	_, problems = Build(s)
	if len(problems) == 0 || !slices.ContainsFunc(problems[0].Remedies, func(r geom.Remedy) bool {
		return len(r.Changes) == 1 && r.Changes[0] == geom.Change{Setting: SettingCutter, Min: inches(0.245), Max: inches(0.256)}
	}) {
		t.Fatalf("%+v", problems)
	}
	s.Cutter.Width = 0.245 * 25.4
	if _, problems = Build(s); len(problems) != 0 {
		t.Errorf("%+v", problems)
	}
}

// TestVerdictsLookAtTheRange: the nominal may be right where an end is not.
func TestVerdictsLookAtTheRange(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("uneven", 11.5, 12, 12.5), sheet("hardboard", 5.9))
	d, _ := Build(s)
	// 460 + 2 (12.5 - 12) = 461: beyond 0.8 more than was asked.
	if c := d.fit("outside-width"); c.Min != 459 || c.Max != 461 || c.Verdict == AsAsked {
		t.Errorf("%+v", c)
	}
	if c := d.fit("recess"); c.Nominal != 0 || c.Verdict == IsFlush {
		t.Errorf("%+v", c)
	}
	s.Cutter = Cutter{Kind: Router, Width: 5}
	d, _ = Build(s)
	if c := d.fit("tongue-clearance"); c.Verdict != Tight+" or "+Loose || c.Min > -0.25 || c.Max < 0.5 {
		t.Errorf("%+v", c)
	}
}

// TestGrainAndSheet: a part may turn on a sheet only where grain does not matter.
func TestGrainAndSheet(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.Bottom.Length, s.Bottom.Width = 490, 460 // the bottom is 446 x 486 once less the slack
	if _, problems := Build(s); len(problems) != 0 {
		t.Errorf("without grain: %+v", problems)
	}
	s.Bottom.Grain = GrainLength
	if _, problems := Build(s); len(problems) != 1 || problems[0].Code != "sheet" {
		t.Errorf("with grain: %+v", problems)
	}
}

// inches is a length in mm.
func inches(n float64) float64 { return geom.LengthOf(n * geom.InchMM).MM() }

// TestAdvice: each case has one complaint, and its hint says what a second build
// then shows to be right.
func TestAdvice(t *testing.T) {
	with := func(change func(*Spec)) Spec {
		s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
		change(&s)
		return s
	}
	router := func(s *Spec) { s.Cutter, s.GrooveEnds = Cutter{Kind: Router, Width: 3}, GrooveStopped }
	for name, c := range map[string]struct {
		spec   Spec
		code   geom.Code
		hint   string
		follow func(*Spec)
	}{
		// The cutter that suits the bottom, 4.23 to 4.8, would not cut the dados.
		"thin bottom on a saw": {with(func(s *Spec) { s.Bottom = sheet("thin", 4.2) }), "groove-clearance",
			"groove-cutter 1.5 to 4.8; or bottom 5.75 to 6.32", func(s *Spec) { s.Bottom = sheet("thin", 5.75) }},
		// 6.3 + 0.03 to 6 + 0.4: the same cutter makes the dados.
		"a cutter for both": {with(func(s *Spec) { s.Cutter.Width, s.Bottom = 6.31, sheet("tight", 6.3) }), "groove-clearance",
			"groove-cutter 2.17 to 6.9; or bottom 5.71 to 6.28; or cutter 6.33 to 6.4", func(s *Spec) { s.Cutter.Width = 6.4 }},
		"groove-clearance sets the groove": {with(func(s *Spec) { router(s); s.GrooveClearance = 0.8 }), "groove-clearance",
			"groove-clearance 0.03 to 0.6", func(s *Spec) { s.GrooveClearance = 0.6 }},
		// Readings 0.1 below and 0.2 above the mean, 12.0333: 0.1 + 0.1667 to 0.4 - 0.1333.
		"nearly even front on a router": {with(func(s *Spec) {
			router(s)
			s.DadoClearance = 0.1
			s.Front = sheet("uneven", 12, 11.9, 12.1)
			s.Back = s.Front
		}), "tongue-clearance",
			"dado-clearance 0.2 to 0.3", func(s *Spec) { s.DadoClearance = 0.3 }},
		"a fence that the cutter forbids": {with(func(s *Spec) { s.FenceDistance, s.Cutter.Width, s.Bottom = 7, 7.2, sheet("seven", 6.9) }), "recess",
			"box-front 14; or fence-distance 6 and cutter 6.1 to 6.4 and bottom 5.8 to 6.07",
			func(s *Spec) { s.FenceDistance, s.Cutter.Width, s.Bottom = 6, 6.4, sheet("six", 5.9) }},
		// Half of 18 suits no back of 12.
		"a thick front": {with(func(s *Spec) { router(s); s.Front = sheet("thick", 18) }), "recess",
			"back 18; or joint rabbeted-front", func(s *Spec) { s.Joint = RabbetedFront }},
		"web at the thin spot": {with(func(s *Spec) { s.Sides = sheet("uneven", 11.8, 12, 12.2); s.CutterHeight = 9.9 }), "thin-web",
			"cutter-height 9.8 or less", func(s *Spec) { s.CutterHeight = 9.8 }},
		"too much clearance": {with(func(s *Spec) { s.BottomClearance = 4 }), "bottom-clearance",
			"bottom-clearance 0.5 to 3", func(s *Spec) { s.BottomClearance = 3 }},
		"a back that does not suit": {with(func(s *Spec) { s.Back = sheet("thin", 6.5) }), "fence-distance",
			"back 12", func(s *Spec) { s.Back = sheet("other", 12) }},
		"glue-space too deep": {with(func(s *Spec) { s.GlueSpace = 5.5 }), "cutter-height",
			"glue-space 4 or less", func(s *Spec) { s.GlueSpace = 4 }},
		"just flush": {with(func(s *Spec) { s.Bottom = sheet("twelve", 12.04) }), "", "", nil}, // 0.04 mm off no fence is set
	} {
		t.Run(name, func(t *testing.T) {
			_, problems := Build(c.spec)
			if c.code == "" {
				if len(problems) != 0 {
					t.Errorf("%+v", problems)
				}
				return
			}
			at := slices.IndexFunc(problems, func(p geom.Diagnosis) bool { return p.Code == c.code })
			if at < 0 {
				t.Fatalf("no %s among %+v", c.code, problems)
			}
			if advice(problems[at]) != c.hint {
				t.Errorf("hint %q, want %q", advice(problems[at]), c.hint)
			}
			c.follow(&c.spec)
			if _, problems := Build(c.spec); len(problems) != 0 {
				t.Errorf("followed: %+v", problems)
			}
		})
	}
}

// TestFlushOnASaw: stood on end against the fence, every bottom gets the same
// tongue; what boards differ by shows below.
func TestFlushOnASaw(t *testing.T) {
	s := saw(460, 140, 500, 6.25, sheet("birch", 12), sheet("uneven", 11.6, 12, 12.4))
	d, problems := Build(s)
	if c := d.fit("groove-clearance"); c.Min != c.Max || math.Abs(c.Nominal-0.25) > 1e-9 || c.Verdict != GoesTogether {
		t.Errorf("%+v", c)
	}
	if c := d.fit("bottom-flush"); math.Abs(c.Min+0.4) > 1e-9 || math.Abs(c.Max-0.4) > 1e-9 || c.Verdict == IsFlush {
		t.Errorf("%+v", c)
	}
	// The thickest board's rabbet is 12.4 - 6 = 6.4 wide, the cutter 6.25.
	if !slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.Code == "rabbet-passes" && p.Subject.Part == string(Bottom) }) {
		t.Errorf("no second pass for the bottom: %+v", problems)
	}
	s.Cutter = Cutter{Kind: Router, Width: 3}
	s.BottomFit = BottomFlush
	d, _ = Build(s)
	if c := d.fit("bottom-flush"); c.Min != 0 || c.Max != 0 {
		t.Errorf("from the router: %+v", c)
	}
}

// TestPrintedBeyondTheLimit: 6.4003 - 6 is 0.4003 of play, which is printed as 0.4, the limit
// itself, and so with two digits more; a bottom that goes into no groove is first told of that.
func TestPrintedBeyondTheLimit(t *testing.T) {
	_, problems := Build(saw(460, 140, 500, 6.4003, sheet("birch", 12), sheet("thin", 6)))
	if len(problems) == 0 || !strings.HasPrefix(fact(problems[0]),
		"the box front's tongue has 0.4003 mm of clearance in its dado: loose; 0.1 mm to 0.4 mm") {
		t.Errorf("%+v", problems)
	}
	_, problems = Build(saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("thick", 6.36)))
	const says = "the bottom is 6.36 mm thick, its groove 6.35 mm wide: it does not go in, and a rabbet of 6 mm " +
		"in a flush bottom of 6.36 mm leaves a tongue of 0.36 mm, at least 1 mm is needed"
	if len(problems) == 0 || !strings.HasPrefix(fact(problems[0]), says) {
		t.Errorf("%+v", problems)
	}
}

// TestWiderBitBeforeThinnerFront: in a front of 16 no bit that is sold is as wide as a tongue of 8 and its clearance,
// but one of 8 is as wide as a tongue of 7.875, with which the front stands 0.25 proud and is flush: a wider bit and
// another fence distance come before another board.
func TestWiderBitBeforeThinnerFront(t *testing.T) {
	s := saw(460, 140, 500, 6, sheet("sides", 12), sheet("bottom", 6))
	s.Cutter.Kind, s.Front, s.Back = RouterTable, sheet("front", 16), sheet("front", 16)
	_, problems := Build(s)
	for _, p := range problems {
		if p.Code != "cutter-narrow" {
			continue
		}
		if len(p.Remedies) == 0 || p.Remedies[0].Writes(SettingBoxFront) {
			t.Fatalf("no bit is offered: %+v", p.Remedies)
		}
		r := p.Remedies[0]
		if c := r.Changes[0]; c.Setting != SettingCutter || c.Min != 8 || !r.Writes(SettingFenceDistance) {
			t.Errorf("%+v", r)
		}
		d, left, sound := LayOut(Follow(s, r, r.Ends()[0]))
		if !sound || geom.AnyError(left) {
			t.Fatalf("followed, %+v is left", left)
		}
		recess := d.Fit[slices.IndexFunc(d.Fit, func(c Check) bool { return c.Code == CheckRecess })]
		if recess.Verdict != IsFlush {
			t.Errorf("the front is %s, %.3f", recess.Verdict, recess.Nominal)
		}
		return
	}
	t.Errorf("the tongue goes in: %+v", problems)
}
