package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// solidBottom makes the bottom of a box of wood that swells and shrinks by parts of its width.
func solidBottom(swells, shrinks float64, more ...func(*Spec)) Spec {
	s := routedBox(func(s *Spec) {
		s.Bottom.Solid, s.Bottom.Grain, s.Bottom.Swelling, s.Bottom.Shrinkage = true, GrainLength, swells, shrinks
	})
	for _, change := range more {
		change(&s)
	}
	return s
}

func slidIn(s *Spec) { s.BottomFit = BottomSlideIn }

func deep(v float64) func(*Spec) { return func(s *Spec) { s.BottomClearanceDepth = &v } }

// codes are those of problems, errors with a mark.
func codes(list []geom.Diagnosis) (all []string) {
	for _, p := range list {
		code := string(p.Code)
		if p.IsError() {
			code = "!" + code
		}
		all = append(all, code)
	}
	return all
}

// TestSolidBottom: captured, 436 wide across the grain and swelling by 1 %, it needs 4.36
// of slack in grooves 6 deep, and half a millimeter more: the way out is behind.
func TestSolidBottom(t *testing.T) {
	_, problems := Build(solidBottom(0.01, 0))
	if !slices.Equal(codes(problems), []string{"!bottom-movement"}) || !strings.Contains(fact(problems[0]), "from front to back the bottom, 436 mm, swells by 4.36 mm and has 2 mm of clearance") ||
		!strings.Contains(advice(problems[0]), "bottom-fit slide-in") {
		t.Errorf("%+v", problems)
	}
	// Swelling by 0.5 %, 2.18, it has room with a slack of its own from front to back.
	_, problems = Build(solidBottom(0.005, 0))
	if len(problems) != 1 || problems[0].Remedies[0].Changes[0].Setting != SettingBottomClearanceDepth || !strings.HasPrefix(advice(problems[0]), "bottom-clearance-depth 2.68 to 3") {
		t.Errorf("%+v", problems)
	}
	if _, problems = Build(solidBottom(0.005, 0, deep(2.7))); len(problems) > 0 {
		t.Errorf("%+v", problems)
	}
}

// TestSolidScrewedOn: the movement that screws hinder is told as far as it is known. Across its
// grain the bottom is as wide as the box is deep, 450.
func TestSolidScrewedOn(t *testing.T) {
	for want, moves := range map[string][2]float64{
		"cannot swell and shrink":                      {0, 0},
		"cannot swell by 4.5 mm":                       {0.01, 0.000005},
		"cannot shrink by 2.25 mm":                     {0, 0.005},
		"cannot swell by 4.5 mm and shrink by 2.25 mm": {0.01, 0.005},
	} {
		s := solidBottom(moves[0], moves[1])
		s.BottomFit = BottomApplied
		_, problems, _ := LayOut(s)
		if len(problems) != 1 || !strings.HasSuffix(fact(problems[0]), "450 mm wide across its grain, "+want) {
			t.Errorf("%v: %+v", moves, problems)
		}
	}
}

// TestGrid: lengths are printed to 0.01 mm or 0.001 in.
func TestGrid(t *testing.T) {
	for unit, step := range map[geom.Unit]float64{geom.Millimeter: 0.01, geom.Inch: 0.0254} {
		if l := newLayout(Spec{Units: unit}); math.Abs(l.grid()-step) > 1e-9 {
			t.Errorf("in %s the step is %g", unit, l.grid())
		}
	}
}

// TestSolidSlidIn: a bottom that is open behind has all the room there is, however much
// it swells. Under a back of 12 its screws stand in the middle, 6 before the rear edge, in
// slots of 4 that reach as far to the front as it swells and to the rear as it shrinks.
func TestSolidSlidIn(t *testing.T) {
	for _, swelling := range []float64{0.002, 0.01, 0.03} {
		d, problems := Build(solidBottom(swelling, 0.002, slidIn))
		if len(problems) > 0 {
			t.Fatalf("%g: %+v", swelling, problems)
		}
		p := d.part(Bottom).Panel
		width := p.Width()
		near(t, "stands out behind", d.BottomOut, width*swelling)
		for _, k := range p.Pockets {
			b := k.Outline.Bounds()
			if k.Kind != geom.Cutout {
				t.Errorf("a %s for the screws", k.Kind)
			}
			near(t, "slot from", b.Min.Y, width-6-2-width*swelling)
			near(t, "slot to", b.Max.Y, width-6+2+width*0.002)
			near(t, "slot's width", b.Max.X-b.Min.X, 4)
		}
		if !slices.ContainsFunc(d.Hardware, func(i Item) bool { return strings.Contains(i.Name, "washer") && i.Count == len(p.Pockets) }) {
			t.Errorf("hardware %+v", d.Hardware)
		}
	}
}

// TestSlotsHaveRoom: shrinking by 0.7 % of 443 or so, 3.1, the screws move 0.1 or so from
// the middle of the back toward the front, so that 2 are left behind the slots; by 2 %,
// 8.9, they come to 4 before the back's inside face and have 4 of room, which is reported.
func TestSlotsHaveRoom(t *testing.T) {
	d, problems := Build(solidBottom(0, 0.007, slidIn))
	p := d.part(Bottom).Panel
	near(t, "wood behind the slots", p.Width()-p.Pockets[0].Outline.Bounds().Max.Y, 2)
	near(t, "slot's length", p.Pockets[0].Outline.Bounds().Max.Y-p.Pockets[0].Outline.Bounds().Min.Y, 4+0.007*p.Width())
	if len(problems) > 0 {
		t.Errorf("%+v", problems)
	}
	_, problems = Build(solidBottom(0, 0.02, slidIn))
	if !slices.Equal(codes(problems), []string{"bottom-movement"}) || !strings.Contains(fact(problems[0]), "its slots let it by 4 mm") {
		t.Errorf("%+v", problems)
	}
}

// TestSheetMoves: a sheet moves both ways, and from front to back too where it is open
// behind: 1 % of 398 - 1.6 and more is over the slack of 2 from side to side.
func TestSheetMoves(t *testing.T) {
	for _, change := range []func(*Spec){func(*Spec) {}, slidIn} {
		s := routedBox(func(s *Spec) { s.Bottom.Swelling = 0.01; change(s) })
		_, problems := Build(s)
		if i := slices.Index(codes(problems), "!bottom-movement"); i < 0 || !strings.Contains(fact(problems[i]), "from side to side") {
			t.Errorf("%+v", problems)
		}
	}
}

// TestSlackEachWay: 400 x 450 with sides and ends of 12 and grooves of 6, the fence at 6:
// 376 + 12 less the slack long, 426 + 12 less the other wide; the bottom stands in the
// middle of both. Slid in it has all of it at the front, and reaches to the outside of
// the back: 6 + 426 + 12 less the slack.
func TestSlackEachWay(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) { s.BottomClearance = 1; deep(2.4)(s) }))
	bounds(t, "bottom", d.part(Bottom).Panel.Outline, 0, 0, 387, 435.6)
	at := d.part(Bottom).Placements[0].Origin
	near(t, "stands from the left", at.X, 12-6+0.5)
	near(t, "and from the front", at.Y, 12-6+1.2)
	d = mustBuild(t, routedBox(func(s *Spec) { s.BottomClearance = 1; deep(0)(s); slidIn(s) }))
	bounds(t, "slid in", d.part(Bottom).Panel.Outline, 0, 0, 387, 444)
	near(t, "from the front", d.part(Bottom).Placements[0].Origin.Y, 6)
	for name, c := range map[string]struct {
		spec  Spec
		field []geom.Setting
	}{
		"across":          {routedBox(func(s *Spec) { s.BottomClearance = 4; deep(1)(s) }), []geom.Setting{SettingBottomClearance}},
		"deep":            {routedBox(func(s *Spec) { s.BottomClearance = 1; deep(4)(s) }), []geom.Setting{SettingBottomClearanceDepth}},
		"both":            {routedBox(func(s *Spec) { s.BottomClearance = 4 }), []geom.Setting{SettingBottomClearance}},
		"each":            {routedBox(func(s *Spec) { s.BottomClearance = 4; deep(0.2)(s) }), []geom.Setting{SettingBottomClearance, SettingBottomClearanceDepth}},
		"far too deep":    {routedBox(func(s *Spec) { deep(6)(s) }), []geom.Setting{SettingBottomClearanceDepth}},
		"none, captured":  {routedBox(func(s *Spec) { deep(0)(s) }), []geom.Setting{SettingBottomClearanceDepth}},
		"none, but open":  {routedBox(func(s *Spec) { deep(0)(s); slidIn(s) }), nil},
		"slid in, deeply": {routedBox(func(s *Spec) { deep(4)(s); slidIn(s) }), []geom.Setting{SettingBottomClearanceDepth}},
	} {
		_, problems := Build(c.spec)
		var got []geom.Setting
		for _, p := range problems {
			if p.Code == "bottom-clearance" {
				got = append(got, p.Subject.Setting)
			}
		}
		if !slices.Equal(got, c.field) {
			t.Errorf("%s: %+v", name, problems)
		}
	}
}
