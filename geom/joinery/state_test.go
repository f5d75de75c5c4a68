package joinery

import "testing"

// TestState: what is set within its limits is in doubt and not wrong, in sign and words.
func TestState(t *testing.T) {
	for _, c := range []struct {
		nominal float64
		verdict Verdict
		sign    string
		words   string
	}{
		{0.25, GoesTogether, "✓", "goes together"}, {0.15, Tight, "⚠", "may come out tight"}, {0.1, Tight, "⚠", "may come out tight"},
		{0.07, Tight, "✕", "tight"}, {0.5, Loose, "✕", "loose"}, {-0.1, WillNot, "✕", "does not go in"},
	} {
		m := Check{Nominal: c.nominal, LowerLimit: 0.1, UpperLimit: 0.4, Verdict: c.verdict}
		if m.State().Sign() != c.sign || m.Words() != c.words {
			t.Errorf("%g %s is %s %s", c.nominal, c.verdict, m.State().Sign(), m.Words())
		}
	}
}
