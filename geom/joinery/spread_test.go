package joinery

import (
	"strings"
	"testing"
)

// TestSpreadIsNoMistake: what only boards that differ bring out of its limits, no
// setting mends: it is for the outcome (package fit) to say, not for the layout.
func TestSpreadIsNoMistake(t *testing.T) {
	uneven := func(least, most float64) Stock { return sheet("uneven", least, 12, most) }
	for name, s := range map[string]Spec{
		"width":            saw(460, 140, 500, 6.35, uneven(11.5, 12.5), sheet("hardboard", 5.9)),
		"lap":              doubled(func(s *Spec) { s.Sides = uneven(11.7, 12.3) }),
		"depth":            doubled(func(s *Spec) { s.Front = uneven(11.4, 12.6) }),
		"tongue-clearance": unevenRouted(sheet("uneven", 12, 11.8, 12.2)),
	} {
		d, problems := Build(s)
		for _, p := range problems {
			if p.Subject.Check != nil || p.IsError() {
				t.Errorf("%s: %+v", name, p)
			}
		}
		out := 0
		for _, c := range d.Fit {
			if c.Verdict != c.Verdicts.Within {
				out++
			}
		}
		if out == 0 {
			t.Errorf("%s: nothing leaves its limits: %+v", name, d.Fit)
		}
	}
}

// unevenRouted is cut on a router that measures depths from the top.
func unevenRouted(front Stock) Spec {
	s := saw(460, 140, 500, 3, sheet("birch", 12), sheet("hardboard", 5.9))
	s.Cutter.Kind, s.DadoClearance, s.GrooveClearance, s.Front, s.Back = Router, DefaultDadoClearance, DefaultGrooveClearance, front, front
	return s
}

// TestAdviceKeepsSpread: with a spread of -0.07 to 0.06 a tongue of 6 wants a stack of
// 6 + 0.1 + 0.07 to 6 + 0.4 - 0.06, and 6.15 is warned of, 6.17 is not.
func TestAdviceKeepsSpread(t *testing.T) {
	play := CheckID{Code: CheckTongueClearance, Part: Front}
	spread := Spreads{play: {Min: -0.07, Max: 0.06}}
	for width, warned := range map[float64]bool{6.15: true, 6.17: false, 6.34: false, 6.35: true} {
		s := saw(460, 140, 500, width, sheet("birch", 12), sheet("hardboard", 5.9))
		s.Spreads = spread
		_, problems := Build(s)
		told := false
		for _, p := range problems {
			if p.Code != "tongue-clearance" {
				continue
			}
			told = true
			if p.Subject.Check != play || !strings.HasSuffix(advice(p), "cutter 6.17 to 6.34") || !strings.Contains(fact(p), "likely") {
				t.Errorf("%g: %+v", width, p)
			}
		}
		if told != warned {
			t.Errorf("%g: %+v", width, problems)
		}
	}
}
