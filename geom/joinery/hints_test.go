package joinery

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A hint that names numbers is followed to the letter. Each pattern's numbers are
// in millimetres; a range is tried at both of its ends.
var hints = []struct {
	pattern *regexp.Regexp
	follow  func(s *Spec, v float64, word string)
}{
	{regexp.MustCompile(`write (groove-play: [\d.]+ mm and )?a groove-cutter of ([\d.]+) mm to ([\d.]+) mm`), func(s *Spec, v float64, word string) {
		s.Cutter.Groove = v
		if word != "" {
			s.GroovePlay, _ = strconv.ParseFloat(strings.Fields(word)[1], 64)
		}
	}},
	{regexp.MustCompile(`^a cutter ([\d.]+) mm to ([\d.]+) mm wide`), func(s *Spec, v float64, _ string) { s.Cutter.Width = v }},
	{regexp.MustCompile(`dado-play of ([\d.]+) mm to ([\d.]+) mm`), func(s *Spec, v float64, _ string) { s.DadoPlay = v }},
	{regexp.MustCompile(`groove-play of ([\d.]+) mm to ([\d.]+) mm`), func(s *Spec, v float64, _ string) { s.GroovePlay = v }},
	{regexp.MustCompile(`make the (\w+) ([\d.]+) mm or more`), func(s *Spec, v float64, word string) {
		*map[string]*float64{"width": &s.Width, "height": &s.Height, "depth": &s.Depth}[word] = v
	}},
	{regexp.MustCompile(`a bottom of ([\d.]+) mm to ([\d.]+) mm gives`), func(s *Spec, v float64, _ string) { s.Bottom = sheet("followed", v) }},
	{regexp.MustCompile(`^([\d.]+) mm to ([\d.]+) mm is right for grooves`), func(s *Spec, v float64, _ string) { s.BottomSlack = v }},
	{regexp.MustCompile(`^a cutter-height of ([\d.]+) mm or less leaves`), func(s *Spec, v float64, _ string) { s.CutterHeight = v }},
	{regexp.MustCompile(`^a cutter-height of ([\d.]+) mm makes them alike`), func(s *Spec, v float64, _ string) { s.CutterHeight = v }},
	{regexp.MustCompile(`^a fence-distance of ([\d.]+) mm for this drawer`), func(s *Spec, v float64, _ string) { s.FenceDistance = v }},
	{regexp.MustCompile(`^write a fence-distance of about ([\d.]+) mm`), func(s *Spec, v float64, _ string) { s.FenceDistance = v }},
}

// TestHintsHold: whoever does what a hint says is rid of the complaint, and is
// not led into an error that was not there.
func TestHintsHold(t *testing.T) {
	followed := 0
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		_, before := Build(s)
		for _, p := range before {
			for _, h := range hints {
				m := h.pattern.FindStringSubmatch(p.Hint)
				if m == nil {
					continue
				}
				word := ""
				for _, group := range m[1:] {
					v, err := strconv.ParseFloat(group, 64)
					if err != nil {
						word = group
						continue
					}
					changed := s
					h.follow(&changed, v, word)
					followed++
					_, after := Build(changed)
					for _, q := range after {
						if q.Code == p.Code && q.Part == p.Part {
							t.Fatalf("%q\nfollowed with %g gives %q again: %q", p.Message+" | "+p.Hint, v, q.Code, q.Message+" | "+q.Hint)
						}
						if q.Part == string(Bottom) && strings.Contains(p.Hint, "with a bottom") || strings.Contains(p.Hint, "but then") {
							continue // announced
						}
						if q.Error && !slices.ContainsFunc(before, func(o Problem) bool { return o.Code == q.Code }) {
							t.Fatalf("%q\nfollowed with %g leads into %q: %q", p.Message+" | "+p.Hint, v, q.Code, q.Message)
						}
					}
				}
			}
		}
	})
	if followed == 0 {
		t.Error("no hint was followed")
	}
}
