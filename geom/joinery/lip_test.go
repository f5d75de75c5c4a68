package joinery

import (
	"slices"
	"testing"

	"drawerwright/geom"
)

// lipped is [fronted] with lips of 10 and 12 at the ends, 9 above and 7 below.
func lipped(change func(*Spec)) Spec {
	return fronted(func(s *Spec) {
		s.Lip = Lip{Left: 10, Right: 12, Top: 9, Bottom: 7}
		change(s)
	})
}

// TestLipSizes, by hand: the front is 460 + 22 by 140 + 16, its rabbets are longer by the lips, others run
// along its edges, and its groove is 7 further up; the box behind is that of a front without lips.
func TestLipSizes(t *testing.T) {
	d, plain := mustBuild(t, lipped(func(*Spec) {})), mustBuild(t, fronted(func(*Spec) {}))
	front := d.part(Front)
	near(t, "length", front.Panel.Length(), 482)
	near(t, "width", front.Panel.Width(), 156)
	want := []geom.Pocket{
		{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(0, 0, 24, 156)},
		{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(460, 0, 482, 156)},
		{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(0, 147, 482, 156)},
		{Kind: geom.Rabbet, Depth: 8, Outline: geom.Rectangle(0, 0, 482, 7)},
		{Kind: geom.Groove, Depth: 8, Outline: geom.Rectangle(0, 13, 482, 19.35)},
	}
	if !slices.EqualFunc(front.Panel.Pockets, want, func(k, w geom.Pocket) bool {
		return k.Kind == w.Kind && k.Face == w.Face && k.Depth == w.Depth && k.Outline.Bounds() == w.Outline.Bounds()
	}) {
		t.Errorf("%+v", front.Panel.Pockets)
	}
	if at := front.Placements[0].Origin; at != (geom.Vec3{X: 472, Z: -7}) {
		t.Errorf("the front stands at %v", at)
	}
	for _, r := range []Role{Side, Back, Bottom} {
		if !alike(d.part(r).Panel, plain.part(r).Panel) || d.part(r).Placements[0] != plain.part(r).Placements[0] {
			t.Errorf("lips change the %s", r)
		}
	}
	if d.Outside != plain.Outside || d.Inside != plain.Inside {
		t.Errorf("outside %v, inside %v", d.Outside, d.Inside)
	}
	near(t, "last pass", d.Setup.LastFence, 24-6.35)
}

// TestLipGrooveEnds: a stopped groove ends in the rabbets behind the lips.
func TestLipGrooveEnds(t *testing.T) {
	d := mustBuild(t, lipped(routed))
	front := cutOf(t, d.part(Front).Panel, geom.Groove)
	near(t, "from the right", front.Outline.Bounds().Min.X, 12+4) // as without lips, 12 - 8
	near(t, "from the left", front.Outline.Bounds().Max.X, 482-10-4)
	near(t, "bottom in it", front.Takes.Bounds().Min.X, 12+5)
	near(t, "up", front.Outline.Bounds().Min.Y, 7+6)
}

// TestLipWidth: sides stand on the shoulders of a front with lips, so that nothing laps and the width
// changes with both of them.
func TestLipWidth(t *testing.T) {
	d := mustBuild(t, lipped(func(s *Spec) { s.Sides.Thickness = Thickness{12, 11.9, 12.2} }))
	if i := slices.IndexFunc(d.Fit, func(c Check) bool { return c.Code == CheckLap }); i >= 0 {
		t.Errorf("a lap is judged: %+v", d.Fit[i])
	}
	wide := d.fit(CheckOutsideWidth)
	near(t, "narrowest", wide.Min, 459.8)
	near(t, "widest", wide.Max, 460.4)
}

// TestLipProblems: what would show or be in the way is refused, with a change that helps, or said.
func TestLipProblems(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Spec)
		code   geom.Code
		level  geom.Level
		ways   int
	}{
		"at one end":     {func(s *Spec) { s.Lip.Left = 0 }, "lip", geom.LevelError, 0},
		"applied bottom": {func(s *Spec) { s.BottomFit = BottomApplied }, "lip", geom.LevelError, 1},
		"lower lip":      {func(*Spec) {}, "lip-setup", geom.LevelNote, 0},
		"pull at the upper edge": {func(s *Spec) { s.Pull = Pull{Shape: PullHalf} }, "pull",
			geom.LevelError, 0},
	} {
		_, problems := Build(lipped(c.change))
		i := slices.IndexFunc(problems, func(p geom.Diagnosis) bool { return p.Code == c.code })
		if i < 0 || problems[i].Level != c.level || len(problems[i].Remedies) < c.ways || problems[i].Ask.IsEmpty() {
			t.Errorf("%s: %v", name, problems)
		}
	}
	for name, s := range map[string]Spec{
		"no lower lip": lipped(func(s *Spec) { s.Lip.Bottom = 0 }),
		"on a router":  lipped(routed),
		"no groove":    lipped(func(s *Spec) { s.BottomFit = BottomCleats }),
	} {
		_, problems := Build(s)
		if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.Code == "lip-setup" || p.IsError() }) {
			t.Errorf("%s: %v", name, problems)
		}
	}
}
