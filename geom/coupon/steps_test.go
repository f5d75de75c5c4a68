package coupon

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"drawerwright/geom"
)

var (
	slotRE  = regexp.MustCompile(`^Slot (\d), (.*) wide: (?:with shims of (.*) in place )?set the stop so that the cut begins (.*) from the datum end; (.*)$`)
	combRE  = regexp.MustCompile(`begins about (.*) from the datum end, and cut the last of 6 slits.*one more spacer of (.*) between`)
	routeRE = regexp.MustCompile(`slot (\d) ([0-9.]+ (?:mm|in))`)
)

// read gives a length as it is printed, in mm.
func read(t *testing.T, text string) float64 {
	t.Helper()
	l, err := geom.ParseLength(text, geom.Millimeter)
	if err != nil {
		t.Fatal(err)
	}
	return l.MM()
}

// TestSawStepsMakeThePanel: whoever sets the stop and the shims as printed cuts what
// the panel shows, as far as print tells: half of 0.01 mm, half of 0.001 in.
func TestSawStepsMakeThePanel(t *testing.T) {
	narrow := sawMM
	narrow.Tongue = 5.5 // the series begins at the cutter's own width
	for _, a := range []Asked{sawMM, narrow, sawInch} {
		c := must(t, a)
		printed := 0.005 * a.Unit.MM()
		if a.Unit == geom.Inch {
			printed = 0.0005 * in
		}
		var cuts [][2]float64
		for _, s := range c.Steps {
			if m := slotRE.FindStringSubmatch(s); m != nil {
				from, to, shims := read(t, m[4]), 0.0, 0.0
				if m[3] != "" {
					shims = read(t, m[3])
				}
				// Without the shims the datum end is as much further from the cutter.
				if to = from + a.Cutter + shims; strings.Contains(m[5], "one pass") != (shims == 0) {
					t.Errorf("%s: one pass with shims, or two without", s)
				}
				cuts = append(cuts, [2]float64{from, to})
			}
			if m := combRE.FindStringSubmatch(s); m != nil {
				for n := 5; n >= 0; n-- { // spacers
					from := read(t, m[1]) - float64(n)*read(t, m[2])
					cuts = append(cuts, [2]float64{from, from + a.Cutter})
				}
			}
		}
		if len(cuts) != len(c.Panel.Pockets) {
			t.Fatalf("%d cuts: %q", len(cuts), c.Steps)
		}
		for i, p := range c.Panel.Pockets {
			b := p.Outline.Bounds()
			if got := cuts[i]; math.Abs(got[1]-got[0]-b.Width()) > printed+1e-9 || math.Abs(got[0]-b.Min.X) > 6*printed {
				t.Errorf("cut %d is %v, want %g to %g", i, got, b.Min.X, b.Max.X)
			}
		}
	}
}

// TestRouterSteps: the widths that are printed are those that are drawn.
func TestRouterSteps(t *testing.T) {
	for _, a := range []Asked{routerMM, routerIn} {
		c := must(t, a)
		found := routeRE.FindAllStringSubmatch(strings.Join(c.Steps, "\n"), -1)
		if len(found) != 9 {
			t.Fatalf("%d widths: %q", len(found), c.Steps)
		}
		for i, m := range found {
			if got := read(t, m[2]); m[1][0] != byte('1'+i) || !near(got, c.Slots[i].Width) {
				t.Errorf("%s %s, want %+v", m[1], m[2], c.Slots[i])
			}
		}
	}
}

// TestReadingsAreNamed: both machines ask for the same readings. On the saw of 5.93 a
// tooth is 10 - 5.93, and the cut is 10 less it; on the router of 6 the tooth is
// 10 - 6.05, and the bit 9.95 less it.
func TestReadingsAreNamed(t *testing.T) {
	for _, c := range []struct {
		a    Asked
		says []string
	}{
		{sawMM, []string{"coupon-1 to coupon-9", "fits", "tooth. It is meant to be 4.07 mm", "is 10.00 mm less the tooth", "40.00 mm more than the mean tooth"}},
		{routerMM, []string{"coupon-1 to coupon-9", "fits", "tooth. It is meant to be 3.95 mm", "is 9.95 mm less the tooth", "40.00 mm more than the mean tooth"}},
	} {
		all := strings.Join(must(t, c.a).Steps, "\n")
		for _, s := range c.says {
			if !strings.Contains(all, s) {
				t.Errorf("%q is not in %s", s, all)
			}
		}
	}
}
