package starter

import (
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
)

// SlideTaken is the length of slide that a job of the answers takes, in their unit, as "550 mm". It
// is empty where that is not known: without a depth that can be read, of a box, or where no slide fits.
// A job of the answers has no clearance behind and no drawer fronts that take up depth.
func (a Answers) SlideTaken() string {
	sides, err := job.SplitSize(a[Size], 3)
	if err != nil || a[Measured] != Opening || a.Wrong(Slide) != "" || a.Wrong(Units) != "" {
		return ""
	}
	var depths []float64
	for _, text := range job.SplitReadings(sides[2]) {
		l, err := geom.ParseLength(text, a.unit())
		if err != nil {
			return ""
		}
		depths = append(depths, l.MM())
	}
	s := a.slide()
	if own, err := geom.ParseLength(a[SlideLength], a.unit()); err == nil {
		s.Lengths = []float64{own.MM()}
	}
	length, ok := s.Length(slices.Min(depths)-s.ClearanceBehind, a.unit())
	if !ok || length <= 0 {
		return ""
	}
	return geom.LengthOf(length).Text(a.unit())
}
