package joinery

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// asks are the problems whose hint may name no change, with the reason.
var asks = map[string]string{}

// TestHintsHold: whoever does what a hint says, with the numbers as printed, is rid of
// the complaint, and nothing comes that was not there and is not announced.
func TestHintsHold(t *testing.T) {
	followed, asked := make(map[string]int), make(map[string]int)
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		if rapid.Bool().Draw(t, "fitted") {
			anyFittings(t, &s)
		}
		s.Units = rapid.SampledFrom([]geom.Unit{geom.Millimetre, geom.Inch}).Draw(t, "units")
		_, before := Build(s)
		for _, p := range before {
			if p.Hint == "" {
				t.Fatalf("%s has no hint: %s", p.Code, p.Message)
			}
			if len(p.Remedies) == 0 {
				asked[p.Code]++
			}
			for _, r := range p.Remedies {
				if !strings.Contains(p.Hint, r.text(s)) {
					t.Fatalf("%q does not say %q", p.Hint, r.text(s))
				}
				ends := r.Ends()
				within := slices.Clone(ends[0]) // somewhere between them
				for i, c := range r.Changes {
					if !math.IsInf(c.Max, 1) && c.Min > 0 {
						within[i] = c.Min + rapid.Float64Range(0, 1).Draw(t, "share")*(c.Max-c.Min)
					}
				}
				for _, lengths := range append(ends, within) {
					for i, c := range r.Changes {
						if c.Word == "" && (c.Min > c.Max || i < len(ends) && asPrinted(s, c.Min) != c.Min) {
							t.Fatalf("%q: %g to %g is not what is printed", r.text(s), c.Min, c.Max)
						}
					}
					followed[p.Code]++
					_, after := Build(r.Follow(s, lengths))
					if counted(after)[p.about()] >= counted(before)[p.about()] {
						t.Fatalf("%q\n%q\nfollowed with %v does not end it", p.Message, p.Hint, lengths)
					}
					for _, q := range after {
						if counted(after)[q.about()] > counted(before)[q.about()] && !slices.ContainsFunc(r.Then, func(o Problem) bool { return o.about() == q.about() }) {
							t.Fatalf("%q\n%q\nfollowed with %v leads into %q: %q", p.Message, p.Hint, lengths, q.Code, q.Message)
						}
					}
				}
			}
		}
	})
	if os.Getenv("HINTS") != "" {
		t.Logf("followed %v\nasked %v", followed, asked)
	}
}

// asPrinted is a length as a reader of its text has it.
func asPrinted(s Spec, mm float64) float64 {
	if math.IsInf(mm, 1) {
		return mm
	}
	l, err := geom.ParseLength(geom.LengthOf(mm).Text(s.Units), s.Units)
	if err != nil {
		return math.NaN()
	}
	return l.MM()
}
