package hold

import (
	"testing"

	"pgregory.net/rapid"
)

// TestBridgesKeepClear: each bridge stands, with its whole width, on a stretch of each of
// its parts' sides where a tab may stand; none stands over a mouth, a notch or a pull, of
// its own part or of the one beside it.
func TestBridgesKeepClear(t *testing.T) {
	stood := 0
	rapid.Check(t, func(t *rapid.T) {
		for _, s := range laid(t) {
			for i := range s.Parts { // mouths and notches, somewhere in the stretches
				q := &s.Parts[i]
				for side, list := range q.Free {
					var left []Stretch
					for _, f := range list {
						from := rapid.Int64Range(f.Min, f.Max).Draw(t, "from")
						to := min(f.Max, from+rapid.Int64Range(1, 80).Draw(t, "wide")*mm)
						left = append(left, Stretch{Min: f.Min, Max: from}, Stretch{Min: to, Max: f.Max})
					}
					q.Free[side] = left
				}
			}
			for _, b := range PlaceTabs(s).Bridges {
				for _, i := range []int{b.From, b.To} {
					if i < 0 {
						continue
					}
					stood++
					if !s.Parts[i].clear(b.Box) {
						t.Fatalf("the bridge %+v stands on no stretch of part %d: %+v", b, i, s.Parts[i])
					}
				}
			}
		}
	})
	if stood == 0 {
		t.Error("no bridges")
	}
}

// clear reports whether a bridge touches the part on one of its stretches alone.
func (p Part) clear(b Box) bool {
	side, on := -1, Stretch{}
	switch {
	case b.Y1 == p.Box.Y0:
		side, on = Bottom, Stretch{Min: b.X0, Max: b.X1}
	case b.X0 == p.Box.X1:
		side, on = Right, Stretch{Min: b.Y0, Max: b.Y1}
	case b.Y0 == p.Box.Y1:
		side, on = Top, Stretch{Min: b.X0, Max: b.X1}
	case b.X1 == p.Box.X0:
		side, on = Left, Stretch{Min: b.Y0, Max: b.Y1}
	default:
		return false
	}
	for _, f := range p.Free[side] {
		if f.Min <= on.Min && on.Max <= f.Max {
			return true
		}
	}
	return false
}
