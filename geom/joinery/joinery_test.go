package joinery

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

func sheet(name string, readings ...float64) Stock {
	return Stock{Name: name, Thickness: Measure(readings...), Grain: GrainNone}
}

// saw is a plain job: every field that a job file would fill in.
func saw(w, h, d, cutter float64, sides, bottom Stock) Spec {
	return Spec{
		Name: "test", Count: 1, Width: w, Height: h, Depth: d, Sides: sides, Front: sides, Back: sides, Bottom: bottom,
		Joint: DadoRabbet, Cutter: Cutter{Kind: Saw, Width: cutter}, GrooveEnds: GrooveThrough, BottomFit: BottomAuto,
		BottomClearance: UsualBottomClearance(geom.Millimeter), DadoClearance: 0.2, GrooveClearance: 0.2,
	}
}

func mustBuild(t interface {
	Helper()
	Fatalf(string, ...any)
}, s Spec) Drawer {
	t.Helper()
	d, problems := Build(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatalf("%s: %s (%s)", p.Code, fact(p), advice(p))
		}
	}
	return d
}

func (d Drawer) part(r Role) Part {
	return d.Parts[slices.IndexFunc(d.Parts, func(p Part) bool { return p.Role == r })]
}

func (d Drawer) fit(code CheckCode) Check {
	return d.Fit[slices.IndexFunc(d.Fit, func(c Check) bool { return c.Code == code })]
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
	s.BottomClearance = in / 16
	d := mustBuild(t, s)
	near(t, "side length", d.part(Side).Panel.Length(), 20*in)
	near(t, "front length", d.part(Front).Panel.Length(), 11.5*in)
	near(t, "back length", d.part(Back).Panel.Length(), 11.5*in)
	near(t, "bottom length", d.part(Bottom).Panel.Length(), (11.5-1.0/16)*in)
	near(t, "bottom width", d.part(Bottom).Panel.Width(), (19.5-1.0/16)*in)
}

// TestSixMillimeterSetting: common practice, no source. With 11.98 mm stock,
// height and fence at 6 mm and a 1/4 in slot, the front comes out flush with
// some play for glue, and a 6.3 mm bottom goes into the slot.
func TestSixMillimeterSetting(t *testing.T) {
	s := saw(460, 140, 500, geom.InchMM/4, sheet("birch", 11.98), sheet("hardboard", 6.3))
	s.FenceDistance, s.CutterHeight = 6, 6
	d := mustBuild(t, s)
	recess := d.fit("recess") // 2 x 6 - 11.98
	near(t, "recess", recess.Nominal, 0.02)
	if recess.Verdict != IsFlush {
		t.Errorf("front is %s", recess.Verdict)
	}
	play := d.fit("tongue-clearance") // 6.35 - 6
	near(t, "tongue clearance", play.Nominal, 0.35)
	if play.Verdict != GoesTogether {
		t.Errorf("tongue: %s", play.Verdict)
	}
	bottom := d.fit("groove-clearance") // 6.35 - 6.3
	near(t, "bottom clearance", bottom.Nominal, 0.05)
	if bottom.Verdict != GoesTogether || len(d.part(Bottom).Panel.Pockets) != 0 {
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
	r := d.fit("recess") // 2 f - T
	near(t, "nominal recess", r.Nominal, 0)
	near(t, "least recess", r.Min, mean-12.24)
	near(t, "most recess", r.Max, mean-12.16)
	near(t, "front length", d.part(Front).Panel.Length(), 460-2*mean+2*(mean/2))
}

func TestFlushBottom(t *testing.T) {
	birch := sheet("birch", 12)
	d := mustBuild(t, saw(460, 140, 500, 6.35, birch, birch)) // 12 mm does not go into 6.35
	b := d.part(Bottom)
	if len(b.Panel.Pockets) != 4 || b.Placements[0].Origin.Z != 0 {
		t.Fatalf("%d rabbets, stands at %g", len(b.Panel.Pockets), b.Placements[0].Origin.Z)
	}
	near(t, "bottom clearance", d.fit("groove-clearance").Nominal, 6.35-(12-6))
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
	near(t, "dado", width(side[0]), 6.2)
	near(t, "groove", width(side[2]), 6.2)
	near(t, "groove start", side[2].Outline.Bounds().Min.X, 6+6.2/2)
	near(t, "groove end", side[2].Outline.Bounds().Max.X, 500-6-6.2/2)
	s.Cutter.Width = 6.35
	d = mustBuild(t, s)
	near(t, "dado as wide as the bit", width(d.part(Side).Panel.Pockets[0]), 6.35)
	s.GrooveEnds = GrooveThrough
	d = mustBuild(t, s)
	near(t, "through groove", d.part(Side).Panel.Pockets[2].Outline.Bounds().Width(), 500)
}

// TestGlueRoom deepens the dados, and nothing else.
func TestGlueRoom(t *testing.T) {
	s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9))
	s.GlueSpace = 0.2
	d := mustBuild(t, s)
	side := d.part(Side).Panel.Pockets
	near(t, "dado", side[0].Depth, 6.2)
	near(t, "groove", side[2].Depth, 6)
	near(t, "the dados' setting", d.Setup.DadoHeight, 6.2)
	near(t, "front length", d.part(Front).Panel.Length(), 460-2*12+2*6)
}

// TestBottomLiesInTheMiddle: half the slack at each edge, so that it can move
// either way. The groove's floor in a side is at T - h = 6 from the outside, in
// the front at 2 f - h = 6 from the side's end.
func TestBottomLiesInTheMiddle(t *testing.T) {
	d := mustBuild(t, saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("hardboard", 5.9)))
	b := d.part(Bottom)
	o, p := b.Placements[0].Origin, b.Panel
	near(t, "left", o.X, 6+1)
	near(t, "right", 460-(o.X+p.Length()), 6+1)
	near(t, "front", o.Y, 6+1)
	near(t, "back", 500-(o.Y+p.Width()), 6+1)
	near(t, "up", o.Z, 6)
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
	if c := d.fit("recess"); c.Verdict != Proud {
		t.Errorf("front is %s", c.Verdict)
	}
}
