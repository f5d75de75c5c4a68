package job

import (
	"fmt"
	"slices"

	"drawerwright/geom"
)

// dixon are the critical values of Dixon's Q, the gap beside an outlier by the range of all readings, for 4 to 10
// readings at 95 %, both sides (D. B. Rorabacher, Anal. Chem. 63, 1991, from memory). Fewer readings tell of none.
var dixon = []float64{0.829, 0.710, 0.625, 0.568, 0.526, 0.493, 0.466}

// leastGap is how far off a mistyped thickness is at least, in mm; common practice, no source.
const leastGap = 0.3

// outlier is the reading that stands apart from all others, which run from low to high; false where none does.
func outlier(readings []geom.Length) (apart, low, high geom.Length, found bool) {
	sorted := slices.Sorted(slices.Values(readings))
	last := len(sorted) - 1
	if len(sorted) < 4 {
		return 0, 0, 0, false
	}
	critical := dixon[min(len(sorted)-4, len(dixon)-1)]
	below, above := sorted[1]-sorted[0], sorted[last]-sorted[last-1]
	gap := max(below, above)
	if gap.MM() < leastGap || gap.MM() <= critical*(sorted[last]-sorted[0]).MM() {
		return 0, 0, 0, false
	}
	if below > above {
		return sorted[0], sorted[1], sorted[last], true
	}
	return sorted[last], sorted[0], sorted[last-1], true
}

// noOutlier warns of a reading of thickness that stands apart from the others.
func (r *reader) noOutlier(readings []geom.Length, at Position) {
	if apart, low, high, found := outlier(readings); found {
		r.add(Problem{Level: geom.LevelWarning, Code: CodeUnevenReadings,
			Hint: "look for mistyped digits and measure that place again; a sheet that is so is no stock for these " +
				"drawers",
			Message: fmt.Sprintf("one reading of thickness, %s, stands apart from the others, %s to %s",
				apart.Text(r.units), low.Text(r.units), high.Text(r.units))}, at)
	}
}

// doubted names the reading that is furthest from the one in the middle.
func doubted(readings []geom.Length, u geom.Unit) string {
	if len(readings) < 3 {
		return ""
	}
	sorted := slices.Sorted(slices.Values(readings))
	middle, last := sorted[len(sorted)/2], sorted[len(sorted)-1]
	if last-middle < middle-sorted[0] {
		last = sorted[0]
	}
	return last.Text(u) + " is furthest from the others: "
}

// usualThickness is one as it is written.
func usualThickness(u geom.Unit) string {
	if u == geom.Inch {
		return "0.472"
	}
	return "11.85"
}
