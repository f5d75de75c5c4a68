package advice

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// ThickerBottom are remedies with a bottom of the same stock from a thickness in mm on, the
// first of which that holds will do: in grooves made for them, in those of a saw's own cutter
// for grooves, which may be the same cutter in more passes, or without grooves.
func ThickerBottom(s joinery.Spec, least float64) []geom.Remedy {
	c := geom.Change{Setting: joinery.SettingBottom, Min: geom.LengthOf(least).RoundUp(s.Units).MM()}
	ways := upTo(s, c)
	if s.Cutter.Kind.Fenced() && s.Cutter.Groove == 0 && s.BottomFit.Grooved() {
		ways = append(ways, upTo(s, c, geom.Change{Setting: joinery.SettingGrooveCutter, Min: s.Cutter.Width, Max: s.Cutter.Width})...)
	}
	for _, fit := range []joinery.BottomFit{joinery.BottomApplied, joinery.BottomCleats} {
		if s.BottomFit.Grooved() {
			ways = append(ways, upTo(s, c, geom.Change{Setting: joinery.SettingBottomFit, Word: string(fit)})...)
		}
	}
	return ways
}

// narrowing are how much more than the least thickness is tried, the most first; common
// practice, no source.
var narrowing = []float64{0.5, 0.25, 0.1, 0}

// upTo are remedies with a change from a length on to half as much again, or to less of that:
// the first that holds will do.
func upTo(spec joinery.Spec, c geom.Change, more ...geom.Change) (family []geom.Remedy) {
	for _, part := range narrowing {
		c.Max = math.Max(c.Min, geom.LengthOf(c.Min+float64(c.Min*part)).RoundDown(spec.Units).MM())
		family = append(family, geom.Remedy{Changes: append([]geom.Change{c}, more...)})
	}
	return family
}
