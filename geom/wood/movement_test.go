package wood

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(got, want, within float64) bool { return math.Abs(got-want) <= within }

// The Wood Handbook's own example (p. 13-17): a flatsawn board of white fir,
// 232 mm wide, from 8 to 11 %, changes by 1.7 mm (original) to 233.7. C_T
// 0.00245 and the 8 % are from memory: 232 * 0.00245 * 3 = 1.7052.
func TestHandbookExample(t *testing.T) {
	got, limited, err := Change(232, 0.00245, 8, 11)
	if err != nil || limited || !near(got, 1.7052, 1e-9) || !near(got, 1.7, 0.05) || !near(232+got, 233.7, 0.05) {
		t.Errorf("%g, %v, %v", got, limited, err)
	}
}

// A flatsawn red oak board of 11.25 in, 4 points: 11.25 * 0.00369 * 4 = 0.16605
// in. The inputs are secondary, the product computed. Others: 100 mm and 4
// points by table 13-5, original coefficients, products computed.
func TestChangeBySpecies(t *testing.T) {
	if got, _, err := Change(11.25, 0.00369, 8, 12); err != nil || !near(got, 0.16605, 1e-9) {
		t.Errorf("red oak: %g, %v", got, err)
	}
	for name, want := range map[string]float64{
		"red oak": 1.476, "white oak": 1.460, "sugar maple": 1.412, "red maple": 1.156, "yellow birch": 1.352,
		"paper birch": 1.216, "beech": 1.724, "cherry": 0.992, "walnut": 1.096, "white ash": 1.096,
		"red alder": 1.024, "basswood": 1.320, "butternut": 0.892,
	} {
		s, ok := Find(name)
		c, err := s.Coefficient(Flatsawn)
		if !ok || err != nil {
			t.Fatalf("%s: %v, %v", name, ok, err)
		}
		if got, limited, err := Change(100, c, 12, 8); err != nil || limited || !near(got, -want, 1e-9) {
			t.Errorf("%s: %g, %v, %v; want %g", name, got, limited, err, -want)
		}
	}
}

// Where the equation reaches: 6 to 14 % inclusive (original), an estimate up to
// fiber saturation, nothing beyond.
func TestChangeRange(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		limited  bool
	}{{6, 14, false}, {14, 6, false}, {5.9, 10, true}, {10, 14.1, true}, {0, 30, true}} {
		if _, limited, err := Change(100, 0.002, c.from, c.to); err != nil || limited != c.limited {
			t.Errorf("%+v: limited %v, %v", c, limited, err)
		}
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, bad := range [][4]float64{
		{0, 0.002, 8, 9}, {-1, 0.002, 8, 9}, {nan, 0.002, 8, 9}, {inf, 0.002, 8, 9}, {1e308, 0.002, 8, 9},
		{100, 0, 8, 9}, {100, -0.002, 8, 9}, {100, nan, 8, 9}, {100, inf, 8, 9}, {100, 0.2, 8, 9},
		{100, 0.002, -1, 9}, {100, 0.002, 8, 31}, {100, 0.002, nan, 9}, {100, 0.002, 8, inf},
	} {
		if got, _, err := Change(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("%v: %g and no error", bad, got)
		}
	}
}

// G 0.63 at 12 %: 1000 * 0.63 * 1.12 = 705.6, the Handbook's 706 (computed,
// formula from memory).
func TestDensity(t *testing.T) {
	if got, err := Density(0.63, 12); err != nil || !near(got, 705.6, 1e-9) {
		t.Errorf("%g, %v", got, err)
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, bad := range [][2]float64{{0, 12}, {-0.6, 12}, {630, 12}, {nan, 12}, {inf, 12}, {0.6, -1}, {0.6, 31}, {0.6, nan}} {
		if got, err := Density(bad[0], bad[1]); err == nil {
			t.Errorf("%v: %g and no error", bad, got)
		}
	}
}

// A red oak board worked at 50 % and 20 C, through 30 and 65 %: moistures 9.27,
// 6.19, 12.00 (see TestEMCAtTwentyCelsius), so flatsawn it shrinks by 0.00369 *
// 3.08 = 0.01137 and swells by 0.00369 * 2.73 = 0.01007; quartersawn by 0.00158
// times the same.
func TestSeasonalMovement(t *testing.T) {
	oak, _ := Find("red oak")
	const rounding = 0.011 * 0.00369 // of two moistures to 0.005 each
	for cut, c := range map[Cut]float64{Flatsawn: 0.00369, Quartersawn: 0.00158} {
		s, err := SeasonalMovement(oak, cut, Air{0.50, 0.30, 0.65, 20})
		if err != nil || s.Limited || !near(s.Shrink, c*3.08, rounding) || !near(s.Swell, c*2.73, rounding) {
			t.Errorf("cut %d: %+v, %v", cut, s, err)
		}
	}
	// Worked drier than it will ever stand, it only swells; 25 % is 5.4, below 6.
	s, err := SeasonalMovement(oak, Flatsawn, Air{0.25, 0.40, 0.60, 20})
	if err != nil || s.Shrink != 0 || s.Swell <= 0 || !s.Limited {
		t.Errorf("%+v, %v", s, err)
	}
	// 40 % is 7.7, within; 85 % is 18, beyond 14: one side alone makes it limited.
	if s, err := SeasonalMovement(oak, Flatsawn, Air{0.50, 0.40, 0.85, 20}); err != nil || !s.Limited {
		t.Errorf("%+v, %v", s, err)
	}
	for _, bad := range []struct {
		s                   Species
		cut                 Cut
		now, dry, damp, deg float64
	}{
		{oak, Flatsawn, 0.5, 0.6, 0.4, 20}, {oak, Cut(7), 0.5, 0.4, 0.6, 20}, {Species{}, Flatsawn, 0.5, 0.4, 0.6, 20},
		{oak, Flatsawn, math.NaN(), 0.4, 0.6, 20}, {oak, Flatsawn, 0.5, 0.4, 60, 20}, {oak, Flatsawn, 0.5, math.NaN(), 0.6, 20},
		{oak, Flatsawn, 0.5, 0.4, 0.6, math.Inf(-1)},
	} {
		if s, err := SeasonalMovement(bad.s, bad.cut, Air{bad.now, bad.dry, bad.damp, bad.deg}); err == nil {
			t.Errorf("%+v: %+v and no error", bad, s)
		}
	}
}

// A year's whole movement does not depend on the day of work, and a wider year
// moves more.
func TestSeasonAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(species).Draw(t, "species")
		dry := rapid.Float64Range(0.1, 0.4).Draw(t, "dry")
		damp := rapid.Float64Range(0.5, 0.9).Draw(t, "damp")
		deg := rapid.Float64Range(5, 35).Draw(t, "temperature")
		year := func(now float64) float64 {
			m, err := SeasonalMovement(s, Flatsawn, Air{now, dry, damp, deg})
			if err != nil || m.Shrink < 0 || m.Swell < 0 || m.Shrink+m.Swell == 0 {
				t.Fatalf("%+v, %v", m, err)
			}
			return m.Shrink + m.Swell
		}
		one, other := year(rapid.Float64Range(dry, damp).Draw(t, "now")), year(dry)
		if !near(one, other, 1e-12) {
			t.Fatalf("%g, and %g on the driest day", one, other)
		}
		if wider, err := SeasonalMovement(s, Flatsawn, Air{dry, dry, damp + 0.04, deg}); err != nil || wider.Swell <= other {
			t.Fatalf("a damper year moves %g, not more than %g; %v", wider.Swell, other, err)
		}
	})
}
