package hold

import "math"

// MinTabs hold a part, whatever its size: on one it swings.
const MinTabs = 2

const (
	// roundsDown is a part of a spacing that is not counted when a part's bridges are: [Sheet.MinTabs] rounds.
	roundsDown = 0.49
	maxSpacing = 5000.0 // mm: more than any part is long
)

// MinTabs is how many bridges the size of a part asks for: one for each spacing along half
// its outline, and [MinTabs] at least.
func (s Sheet) MinTabs(part int) int {
	b := s.Parts[part].Box
	return max(MinTabs, int(math.Round(float64(b.X1-b.X0+b.Y1-b.Y0)/float64(s.Spacing))))
}

// SpacingFor is the spacing, in mm, at which a part with half an outline in mm asks for no
// more bridges than it has.
func SpacingFor(half float64, has int) float64 {
	return math.Min(half/(float64(has)+roundsDown), maxSpacing)
}
