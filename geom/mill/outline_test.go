package mill

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// notched is a panel of 100 x 60 with a notch 12 deep and 24 wide in its left end.
func notched(relieve ...int) geom.Panel {
	outline := geom.Polygon(geom.Point{}, geom.Point{X: 100}, geom.Point{X: 100, Y: 60}, geom.Point{Y: 60},
		geom.Point{Y: 44}, geom.Point{X: 12, Y: 44}, geom.Point{X: 12, Y: 20}, geom.Point{Y: 20})
	return geom.Panel{Thickness: 12, Outline: outline.With(geom.Relief, relieve...)}
}

// TestNotchRelief: with relief a bit of 6 leaves nothing in the corners of the notch.
func TestNotchRelief(t *testing.T) {
	settings := Settings{Bits: []Bit{{Name: "wide", Diameter: 18}, {Name: "six", Diameter: 6}}, Relief: ReliefDogbone, Overcut: 1}
	p := notched(5, 6)
	work, faults := Prepare(Part{Panel: p, MinThickness: 12, MaxThickness: 12}, settings)
	if len(faults) != 0 {
		t.Fatalf("%+v", faults)
	}
	profile := work.Cuts[len(work.Cuts)-1]
	if profile.Operation != Profile || settings.Bits[profile.Bit].Name != "six" { // 18 has no room for its relief
		t.Fatalf("%s with %s", profile.Operation, settings.Bits[profile.Bit].Name)
	}
	left, err := sweep.Outside(profile.Outline, 3)
	if err != nil || left.Area()-profile.Outline.Area() > 0.01 {
		t.Errorf("the bit leaves %.3f mm2 (%v)", left.Area()-profile.Outline.Area(), err)
	}
	// The round of 3.1 through the corner has its middle at r / sqrt 2 along both sides:
	// beyond each lies a segment of a right angle, r^2 (pi / 4 - 1 / 2).
	want := 2 * 2 * 3.1 * 3.1 * (math.Pi/4 - 0.5)
	if got := p.Outline.Area() - profile.Outline.Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("cleared %.6f mm2, want %.6f", got, want)
	}
}

// TestSharpNotch: without relief the corners are reported.
func TestSharpNotch(t *testing.T) {
	_, faults := Prepare(Part{Panel: notched(), MinThickness: 12, MaxThickness: 12}, Settings{Bits: []Bit{{Name: "six", Diameter: 6}}, Relief: ReliefDogbone, Overcut: 1})
	if !slices.ContainsFunc(faults, func(f geom.Diagnosis) bool { return f.Code == "outline-corner" }) {
		t.Errorf("%+v", faults)
	}
}

// TestNarrowNotch: a bit of 25 does not get into a notch of 24.
func TestNarrowNotch(t *testing.T) {
	_, faults := Prepare(Part{Panel: notched(), MinThickness: 12, MaxThickness: 12}, Settings{Bits: []Bit{{Name: "wide", Diameter: 25}}, Relief: ReliefDogbone, Overcut: 1})
	if !slices.ContainsFunc(faults, func(f geom.Diagnosis) bool { return f.Code == "bit-width" && f.IsError() }) {
		t.Errorf("%+v", faults)
	}
}

// TestOutlineRefused: why no bit cuts an outline out is said with the code of that reason.
func TestOutlineRefused(t *testing.T) {
	round := notched()
	l := slices.Clone(round.Outline)
	// The corner at 12, 44 becomes an arc of 2 with its middle at 10, 42, seen from the wood: inside.
	l = slices.Insert(l, 6, l[5])
	l[5].Point, l[6].Point = geom.Point{X: 10, Y: 44}, geom.Point{X: 12, Y: 42}
	l[5].Bulge = -math.Tan(math.Pi / 8)
	round.Outline = l
	for name, c := range map[string]struct {
		panel    geom.Panel
		diameter float64
		relief   Relief
		code     string
	}{
		"a round inside corner": {round, 6, ReliefDogbone, "bit-radius"},
		"no room for relief":    {notched(5, 6), 18, ReliefDogbone, "corner-relief"},
		"relief is none":        {notched(5, 6), 6, ReliefNone, "corner-relief"},
		"too narrow":            {notched(), 25, ReliefDogbone, "bit-width"},
	} {
		part := Part{Panel: c.panel, MinThickness: 12, MaxThickness: 12}
		s := Settings{Bits: []Bit{{Name: "one", Diameter: c.diameter}}, Relief: c.relief, Overcut: 1}
		if _, faults := Prepare(part, s); !slices.Equal(codes(faults), []string{c.code}) {
			t.Errorf("%s: %v", name, codes(faults))
		}
	}
}
