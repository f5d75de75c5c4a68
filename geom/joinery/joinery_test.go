package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/solid"

	"pgregory.net/rapid"
)

func sheet(name string, readings ...float64) Stock {
	return Stock{Name: name, Thickness: Measure(readings...), Grain: GrainNone}
}

// saw is a plain job: every field that a job file would fill in.
func saw(w, h, d, cutter float64, sides, bottom Stock) Spec {
	return Spec{
		Name: "test", Count: 1, Width: w, Height: h, Depth: d, Sides: sides, Front: sides, Back: sides, Bottom: bottom,
		Joint: DadoRabbet, Cutter: Cutter{Kind: Saw, Width: cutter}, GrooveEnds: GrooveThrough, BottomFit: BottomAuto,
		BottomSlack: DefaultBottomSlack, DadoPlay: DefaultDadoPlay, GroovePlay: DefaultGroovePlay,
	}
}

func mustBuild(t interface {
	Helper()
	Fatalf(string, ...any)
}, s Spec) Drawer {
	t.Helper()
	d, problems := Build(s)
	for _, p := range problems {
		if p.Error {
			t.Fatalf("%s: %s (%s)", p.Code, p.Message, p.Hint)
		}
	}
	return d
}

func (d Drawer) part(r Role) Part {
	return d.Parts[slices.IndexFunc(d.Parts, func(p Part) bool { return p.Role == r })]
}

func (d Drawer) fit(name string) Check {
	return d.Fit[slices.IndexFunc(d.Fit, func(c Check) bool { return c.Name == name })]
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) < 1e-9) {
		t.Errorf("%s is %.6f, want %.6f", what, got, want)
	}
}

// TestHalfInchBox: common practice, no source. With 1/2 in stock a box 20 in
// deep and 12 in wide has sides of 20 in, front and back of 11 1/2 in, and a
// bottom of 11 1/2 x 19 1/2 in less 1/16 in each way.
func TestHalfInchBox(t *testing.T) {
	const in = geom.InchMM
	s := saw(12*in, 6*in, 20*in, 0.26*in, sheet("ply", in/2), sheet("thin", 0.2*in))
	s.BottomSlack = in / 16
	d := mustBuild(t, s)
	near(t, "side length", d.part(Side).Panel.Length(), 20*in)
	near(t, "front length", d.part(Front).Panel.Length(), 11.5*in)
	near(t, "back length", d.part(Back).Panel.Length(), 11.5*in)
	near(t, "bottom length", d.part(Bottom).Panel.Length(), (11.5-1.0/16)*in)
	near(t, "bottom width", d.part(Bottom).Panel.Width(), (19.5-1.0/16)*in)
}

// TestSixMillimetreSetting: common practice, no source. With 11.98 mm stock,
// height and fence at 6 mm and a 1/4 in slot, the front comes out flush with
// some play for glue, and a 6.3 mm bottom goes into the slot.
func TestSixMillimetreSetting(t *testing.T) {
	s := saw(460, 140, 500, geom.InchMM/4, sheet("birch", 11.98), sheet("hardboard", 6.3))
	s.FenceDistance, s.CutterHeight = 6, 6
	d := mustBuild(t, s)
	recess := d.fit("front recess at the side ends (proud below 0)") // 2 x 6 - 11.98
	near(t, "recess", recess.Nominal, 0.02)
	if recess.Verdict != IsFlush {
		t.Errorf("front is %s", recess.Verdict)
	}
	play := d.fit("front tongue play in its dado") // 6.35 - 6
	near(t, "tongue play", play.Nominal, 0.35)
	if play.Verdict != Goes {
		t.Errorf("tongue: %s", play.Verdict)
	}
	bottom := d.fit("captured bottom play in its groove") // 6.35 - 6.3
	near(t, "bottom play", bottom.Nominal, 0.05)
	if bottom.Verdict != Goes || len(d.part(Bottom).Panel.Pockets) != 0 {
		t.Errorf("bottom: %s, %d cuts", bottom.Verdict, len(d.part(Bottom).Panel.Pockets))
	}
}

// TestReadings: the mean of three readings sets the joint, the extremes its range.
func TestReadings(t *testing.T) {
	birch := sheet("birch", 12.21, 12.16, 12.24)
	d := mustBuild(t, saw(460, 140, 500, 6.35, birch, sheet("hardboard", 5.9)))
	mean := (12.21 + 12.16 + 12.24) / 3
	near(t, "h", d.Setup.CutterHeight, mean/2)
	near(t, "f", d.Setup.FenceDistance, mean/2)
	r := d.fit("front recess at the side ends (proud below 0)") // 2 f - T
	near(t, "nominal recess", r.Nominal, 0)
	near(t, "least recess", r.Min, mean-12.24)
	near(t, "most recess", r.Max, mean-12.16)
	near(t, "front length", d.part(Front).Panel.Length(), 460-2*mean+2*(mean/2))
}

func TestFlushBottom(t *testing.T) {
	birch := sheet("birch", 12)
	d := mustBuild(t, saw(460, 140, 500, 6.35, birch, birch)) // 12 mm does not go into 6.35
	b := d.part(Bottom)
	if len(b.Panel.Pockets) != 4 || b.Stands[0].Origin.Z != 0 {
		t.Fatalf("%d rabbets, stands at %g", len(b.Panel.Pockets), b.Stands[0].Origin.Z)
	}
	near(t, "bottom play", d.fit("flush bottom play in its groove").Nominal, 6.35-(12-6))
	near(t, "inside height", d.Inside.Height, 140-12)
}

// TestRouterSlots: made to fit, never narrower than the bit; the groove stops
// inside the dados.
func TestRouterSlots(t *testing.T) {
	s := saw(460, 140, 500, 3, sheet("birch", 12), sheet("ply", 6))
	s.Cutter.Kind, s.GrooveEnds = Router, GrooveStopped
	width := func(k geom.Pocket) float64 { return math.Min(k.Outline.Bounds().Width(), k.Outline.Bounds().Height()) }
	d := mustBuild(t, s)
	side := d.part(Side).Panel.Pockets
	near(t, "dado", width(side[0]), 6.15)
	near(t, "groove", width(side[2]), 6.2)
	near(t, "groove start", side[2].Outline.Bounds().Min.X, 6+6.15/2)
	near(t, "groove end", side[2].Outline.Bounds().Max.X, 500-6-6.15/2)
	s.Cutter.Width = 6.35
	d = mustBuild(t, s)
	near(t, "dado as wide as the bit", width(d.part(Side).Panel.Pockets[0]), 6.35)
	s.GrooveEnds = GrooveThrough
	d = mustBuild(t, s)
	near(t, "through groove", d.part(Side).Panel.Pockets[2].Outline.Bounds().Width(), 500)
}

// TestDeepGroovesReach: where grooves are deeper than tongues are thick, the
// bottom reaches beyond the dados, and a stopped groove goes there too.
func TestDeepGroovesReach(t *testing.T) {
	s := saw(460, 140, 500, 3, sheet("thick", 18), sheet("ply", 6))
	s.Front, s.Back = sheet("thin", 12), sheet("thin", 12)
	s.Cutter.Kind, s.GrooveEnds, s.BottomSlack = Router, GrooveStopped, 1
	d := mustBuild(t, s)
	// h = 9, f = 6: grooves in the ends reach to 2 f - h = 3 from the side's end;
	// the bit's round end, radius 1.5, lies beyond that.
	near(t, "groove start", d.part(Side).Panel.Pockets[2].Outline.Bounds().Min.X, 1.5)
	side, bottom := d.part(Side), d.part(Bottom)
	for _, stand := range side.Stands {
		if at, deep := overlap(piece{side, stand}, piece{bottom, bottom.Stands[0]}); deep {
			t.Errorf("side and bottom both fill %v", at)
		}
	}
}

// TestGlueRoom deepens the dados, and nothing else.
func TestGlueRoom(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.GlueRoom = 0.2
	d := mustBuild(t, s)
	side := d.part(Side).Panel.Pockets
	near(t, "dado", side[0].Depth, 6.2)
	near(t, "groove", side[2].Depth, 6)
	near(t, "front length", d.part(Front).Panel.Length(), 460-2*12+2*6)
}

// TestBottomLiesInTheMiddle: half the slack at each edge, so that it can move
// either way. The groove's floor in a side is at T - h = 6 from the outside, in
// the front at 2 f - h = 6 from the side's end.
func TestBottomLiesInTheMiddle(t *testing.T) {
	d := mustBuild(t, saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9)))
	b := d.part(Bottom)
	o, p := b.Stands[0].Origin, b.Panel
	near(t, "left", o.X, 6+1)
	near(t, "right", 460-(o.X+p.Length()), 6+1)
	near(t, "front", o.Y, 6+1)
	near(t, "back", 500-(o.Y+p.Width()), 6+1)
	near(t, "up", o.Z, 6)
}

func TestProblems(t *testing.T) {
	birch, hardboard := sheet("birch", 12), sheet("hardboard", 5.9)
	with := func(change func(*Spec)) Spec {
		s := saw(460, 140, 500, 6.35, birch, hardboard)
		change(&s)
		return s
	}
	for name, c := range map[string]struct {
		spec  Spec
		code  string
		field Field
		error bool
	}{
		"cutter too narrow":      {with(func(s *Spec) { s.Cutter.Width = 5.9; s.Bottom = sheet("thin", 4) }), "cutter-narrow", FieldCutter, true},
		"cutter too wide":        {with(func(s *Spec) { s.Cutter.Width = 7.5 }), "cutter-wide", FieldCutter, true},
		"loose":                  {with(func(s *Spec) { s.Cutter.Width = 6.6 }), "tongue-play", FieldCutter, false},
		"no width":               {with(func(s *Spec) { s.Width = 40 }), "room", FieldOutside, true},
		"no depth":               {with(func(s *Spec) { s.Depth = 40 }), "room", FieldOutside, true},
		"no height":              {with(func(s *Spec) { s.Height = 20 }), "room", FieldOutside, true},
		"cut too deep":           {with(func(s *Spec) { s.CutterHeight = 11.5 }), "cutter-height", FieldCutterHeight, true},
		"deep, thin web":         {with(func(s *Spec) { s.CutterHeight = 10.5 }), "thin-web", FieldSides, false},
		"fence too far":          {with(func(s *Spec) { s.FenceDistance = 11.5 }), "fence-distance", FieldFenceDistance, true},
		"front proud":            {with(func(s *Spec) { s.FenceDistance = 5.5; s.Cutter.Width = 6; s.Bottom = sheet("thin", 5.8) }), "recess", FieldFront, false},
		"sliver":                 {with(func(s *Spec) { s.FenceDistance = 5; s.Cutter.Width = 5.2; s.Bottom = sheet("thin", 5) }), "rabbet-passes", FieldFront, false},
		"uneven sides":           {with(func(s *Spec) { s.Sides = sheet("uneven", 11.5, 12.5) }), "width", FieldSides, false},
		"uneven front":           {with(func(s *Spec) { s.Front = sheet("uneven", 11.5, 12.5) }), "recess", FieldFront, false},
		"swapped":                {with(func(s *Spec) { s.Height, s.Depth = 500, 140 }), "proportions", FieldOutside, false},
		"no play for the tongue": {with(func(s *Spec) { s.Cutter, s.DadoPlay = Cutter{Router, 3}, 0 }), "cutter-narrow", FieldDadoPlay, true},
		"too much play":          {with(func(s *Spec) { s.Cutter, s.DadoPlay = Cutter{Router, 3}, 1.5 }), "cutter-wide", FieldDadoPlay, true},
		"no play for the bottom": {with(func(s *Spec) { s.Cutter, s.GroovePlay = Cutter{Router, 3}, 0 }), "bottom", FieldGroovePlay, true},
		"thin spot of a side":    {with(func(s *Spec) { s.Sides = sheet("uneven", 11, 12.6, 12.6); s.CutterHeight = 11 }), "cutter-height", FieldCutterHeight, true},
		"groove through a thin front": {with(func(s *Spec) {
			s.Sides = sheet("thick", 18)
			s.Front = sheet("thin", 9)
			s.Cutter.Width = 4.7
			s.Bottom = sheet("thin", 4.4)
		}), "cutter-height", FieldFront, true},
		"groove that cannot stop": {with(func(s *Spec) {
			s.Sides = sheet("thick", 20)
			s.Cutter = Cutter{Router, 4}
			s.GrooveEnds = GrooveStopped
		}), "groove-ends", FieldGrooveEnds, false},
		"no slack":                        {with(func(s *Spec) { s.BottomSlack = 0 }), "bottom-slack", FieldBottomSlack, false},
		"much slack":                      {with(func(s *Spec) { s.BottomSlack = 4 }), "bottom-slack", FieldBottomSlack, false},
		"flush with a setting of its own": {with(func(s *Spec) { s.Bottom = sheet("ten", 10) }), "bottom-setup", FieldBottom, false},
		"neither captured nor flush":      {with(func(s *Spec) { s.Bottom = sheet("between", 6.5) }), "bottom", FieldBottom, true},
		"captured, too thick":             {with(func(s *Spec) { s.Bottom = sheet("thick", 9); s.BottomFit = BottomCaptured }), "bottom", FieldBottom, true},
		"flush, still too thick":          {with(func(s *Spec) { s.Bottom = sheet("thick", 18) }), "bottom", FieldBottom, true},
		"flush, too thin":                 {with(func(s *Spec) { s.BottomFit = BottomFlush }), "bottom", FieldBottom, true},
		"slack":                           {with(func(s *Spec) { s.BottomSlack = 6 }), "bottom-slack", FieldBottomSlack, true},
		"thickest reading":                {with(func(s *Spec) { s.Bottom = sheet("uneven", 5.9, 6.4) }), "bottom-play", FieldBottom, false},
		"unknown corner":                  {with(func(s *Spec) { s.Joint = "glue" }), "joint", FieldJoint, true},
		"larger than its sheet":           {with(func(s *Spec) { s.Sides.Length, s.Sides.Width = 450, 450 }), "sheet", FieldSides, true},
	} {
		t.Run(name, func(t *testing.T) {
			_, problems := Build(c.spec)
			for _, p := range problems {
				if p.Code == c.code && p.Field == c.field && p.Error == c.error {
					if p.Message == "" || p.Hint == "" {
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

// TestSheetToTheNanometre: 560 - 2 x 13.83 + 13.83 = 546.17 is no more than the
// sheet, whatever the last bits of float64 say.
func TestSheetToTheNanometre(t *testing.T) {
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
	if len(problems) != 1 || problems[0].Hint != "make the height 22.46 mm or more" {
		t.Fatalf("%+v", problems)
	}
	s.Height = 22.46
	if _, problems = Build(s); len(problems) != 0 {
		t.Errorf("%+v", problems)
	}
	// 0.4805 in: f = 0.24025, and 0.1 mm more is 0.24419, advised as 0.245.
	s = saw(460, 140, 500, 0.24*25.4, sheet("ply", 0.4805*25.4), sheet("hardboard", 5.9))
	s.Units = geom.Inch
	_, problems = Build(s)
	if len(problems) == 0 || !strings.Contains(problems[0].Hint, "a cutter 0.245 in to 0.255 in wide") {
		t.Fatalf("%+v", problems)
	}
	s.Cutter.Width = 0.245 * 25.4
	if _, problems = Build(s); len(problems) != 0 {
		t.Errorf("%+v", problems)
	}
}

// TestPasses: a front of 21 with f = 6.1 and a cutter of 6.35 has a rabbet
// 14.9 wide: three passes, at 6.1, 10.375 and 14.65, none further from the next
// than 6.35; the last reaches the outside face, 14.65 + 6.35 = 21.
func TestPasses(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.Front, s.FenceDistance = sheet("thick", 21), 6.1
	d := mustBuild(t, s)
	if d.Setup.RabbetPasses != 3 {
		t.Errorf("%d passes", d.Setup.RabbetPasses)
	}
	near(t, "last fence", d.Setup.LastFence, 14.65)
	// The front is proud by 21 - 2 x 6.1 = 8.8, the back recessed: the box is
	// that much deeper than asked.
	near(t, "depth", d.Outside.Depth, 508.8)
	if c := d.fit("front recess at the side ends (proud below 0)"); c.Verdict != Proud {
		t.Errorf("front is %s", c.Verdict)
	}
}

// TestVerdictsLookAtTheRange: the nominal may be right where an end is not.
func TestVerdictsLookAtTheRange(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("uneven", 11.5, 12, 12.5), sheet("hardboard", 5.9))
	d, _ := Build(s)
	// 460 + 2 (12.5 - 12) = 461: beyond 0.8 more than was asked.
	if c := d.fit("outside width"); c.Min != 459 || c.Max != 461 || c.Verdict == AsAsked {
		t.Errorf("%+v", c)
	}
	if c := d.fit("front recess at the side ends (proud below 0)"); c.Nominal != 0 || c.Verdict == IsFlush {
		t.Errorf("%+v", c)
	}
	s.Cutter = Cutter{Router, 5}
	d, _ = Build(s)
	if c := d.fit("front tongue play in its dado"); c.Verdict != Tight || c.Min > -0.3 {
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

// anySpec draws jobs of which most can be built.
func anySpec(t *rapid.T) Spec {
	ply := rapid.Float64Range(9, 19).Draw(t, "sides")
	ends := ply
	if rapid.Bool().Draw(t, "other ends") {
		ends = rapid.Float64Range(9, 19).Draw(t, "ends")
	}
	s := saw(rapid.Float64Range(80, 900).Draw(t, "w"), rapid.Float64Range(45, 300).Draw(t, "h"), rapid.Float64Range(100, 700).Draw(t, "d"),
		ends/2+rapid.Float64Range(0.02, 0.9).Draw(t, "play"), sheet("a", ply), sheet("c", rapid.Float64Range(3, 14).Draw(t, "bottom")))
	s.Front, s.Back = sheet("b", ends), sheet("b", ends)
	if rapid.Bool().Draw(t, "other back") {
		s.Back = sheet("d", ends+rapid.Float64Range(-1, 3).Draw(t, "back"))
	}
	if rapid.Bool().Draw(t, "own fence") {
		s.FenceDistance = ends/2 + rapid.Float64Range(-1.5, 1.5).Draw(t, "fence")
		s.Cutter.Width = s.FenceDistance + rapid.Float64Range(0.02, 0.9).Draw(t, "own play")
	}
	s.GlueRoom = rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "room")
	s.BottomSlack = rapid.Float64Range(0, 3).Draw(t, "slack")
	s.BottomFit = rapid.SampledFrom([]BottomFit{BottomAuto, BottomCaptured, BottomFlush}).Draw(t, "fit")
	if rapid.Bool().Draw(t, "router") {
		s.Cutter = Cutter{Router, rapid.Float64Range(1.5, 7).Draw(t, "bit")}
		s.GrooveEnds = rapid.SampledFrom([]GrooveEnds{GrooveStopped, GrooveThrough}).Draw(t, "ends")
	}
	return s
}

// TestAnyBoxGoesTogether: whatever is not refused has sound panels, stands
// inside its outside size, and no two parts fill the same space.
func TestAnyBoxGoesTogether(t *testing.T) {
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		d, problems := Build(anySpec(t))
		for _, p := range problems {
			if p.Error {
				return
			}
		}
		built++
		var pieces []piece
		grid := solid.GridFor(2048)
		for _, p := range d.Parts {
			m, err := solid.Build(p.Panel, solid.Options{Grid: grid})
			if err != nil {
				t.Fatal(err)
			}
			if err := m.Check(); err != nil {
				t.Fatalf("%s: %v", p.Role, err)
			}
			for _, s := range p.Stands {
				low, high := m.Place(s, grid).Bounds()
				proud := math.Max(0, math.Max(d.Spec.Front.Thickness.Mean, d.Spec.Back.Thickness.Mean)-2*d.Setup.FenceDistance)
				if low.X < -1e-3 || low.Y < -proud-1e-3 || low.Z < -1e-3 ||
					high.X > d.Outside.Width+1e-3 || high.Y > d.Outside.Depth+proud+1e-3 || high.Z > d.Outside.Height+1e-3 {
					t.Fatalf("%s reaches from %v to %v in a box of %v", p.Role, low, high, d.Outside)
				}
				pieces = append(pieces, piece{p, s})
			}
		}
		for i, a := range pieces {
			for _, b := range pieces[i+1:] {
				if at, deep := overlap(a, b); deep {
					t.Fatalf("%s and %s both fill %v (setup %+v, spec %+v)", a.Role, b.Role, at, d.Setup, d.Spec)
				}
			}
		}
	})
	if built == 0 {
		t.Error("every box was refused")
	}
}

// piece is a part in one of its places.
type piece struct {
	Part
	stand geom.Placement
}

// solidBoxes splits a panel into axis-parallel boxes of wood in the box's
// space: the cells between all coordinates at which a pocket begins or ends.
// All pockets of the corner are rectangles, so this is exact.
func (p piece) solidBoxes() [][2]geom.Vec3 {
	cut := func(f func(geom.Rect) [2]float64, size float64) []float64 {
		list := []float64{0, size}
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

// overlap tells whether two pieces fill the same space over 0.001 mm deep.
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
	if _, deep := overlap(piece{front, front.Stands[0]}, piece{side, side.Stands[0]}); deep {
		t.Error("overlap in a good box")
	}
	moved := front.Stands[0]
	moved.Origin.X -= 0.1
	if _, deep := overlap(piece{front, moved}, piece{side, side.Stands[0]}); !deep {
		t.Error("a front 0.1 mm off is not seen")
	}
}
