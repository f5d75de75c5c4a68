package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestScrewsAndDrills: in an inch shop screws have gauges, whose thickness is 0.060 + 0.013
// n inches (common practice, no source), and go through their holes with a 64th of room at
// most three; holes are whole 64ths. In a metric shop both are in millimeters.
func TestScrewsAndDrills(t *testing.T) {
	for _, s := range [][2]screw{cornerScrew, bottomScrew} {
		for i, thick := range []func(string) float64{
			func(name string) float64 { return number(t, name) },
			func(name string) float64 {
				return (0.060 + 0.013*number(t, strings.TrimPrefix(name, "#"))) * geom.InchMM
			},
		} {
			if room := s[i].hole - thick(s[i].name); room < 0.15 || room > 0.55 {
				t.Errorf("a screw %s has %.2f mm of room in its hole", s[i].name, room)
			}
		}
	}
	for _, fasteners := range AllFasteners {
		for _, fit := range []BottomFit{BottomApplied, BottomSlideIn} {
			for _, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
				s := routedBox(func(s *Spec) {
					s.Joint, s.Fasteners, s.BottomFit, s.Units = Butt, fasteners, fit, u
					s.DrawerFront = &DrawerFront{Stock: s.Front, Width: 420, Height: 140, OverhangLeft: 10, OverhangBelow: 10, Handles: 1}
				})
				d, problems := Build(s)
				if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
					t.Fatal(problems)
				}
				whole := func(mm float64, what string) {
					grid := 0.5
					if u == geom.Inch {
						grid = geom.InchMM / 64
					}
					if n := mm / grid; math.Abs(n-math.Round(n)) > 1e-6 {
						t.Errorf("%s, %s, %s: %s is %g mm, no drill's size", fasteners, fit, u, what, mm)
					}
				}
				for _, p := range d.Parts {
					for _, k := range p.Panel.Pockets {
						if _, r, round := k.Outline.AsCircle(); round {
							whole(2*r, string(p.Role)+"'s hole")
						}
					}
				}
				for _, b := range d.Bores {
					whole(b.Diameter, "bore")
				}
				if len(d.Hardware) < 2 {
					t.Errorf("%s, %s: hardware %v", fasteners, u, d.Hardware)
				}
				var said []string // who buys it looks for a screw by its size, and for what screws a knob on
				for _, i := range d.Hardware {
					said = append(said, i.Name)
				}
				all := strings.Join(said, "\n")
				thick := geom.LengthOf(s.Front.Thickness.Mean).Text(u)
				knob := "knob, with its screw for a drawer front " + thick + " thick"
				if !strings.Contains(all, "large washer for screw") || strings.Contains(all, "with washer") ||
					!strings.Contains(all, knob) {
					t.Errorf("%s: hardware\n%s", u, all)
				}
				for _, i := range d.Hardware {
					if strings.HasPrefix(i.Name, "knob") || strings.Contains(i.Name, "washer") {
						continue // no length to buy
					}
					metric := !strings.Contains(i.Name, " in")
					if metric == (u == geom.Inch) || strings.Contains(i.Name, "0.") {
						t.Errorf("%s: %s", u, i.Name)
					}
				}
			}
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	l, err := geom.ParseLength(text, geom.Millimeter)
	if err != nil {
		t.Fatal(err)
	}
	return l.MM()
}
