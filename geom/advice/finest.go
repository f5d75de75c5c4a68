package advice

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// OneReading is the stock of a cause of which there is a single reading, so that a standard
// says between what its boards are.
func (d *Box) OneReading(c fit.Cause) (stock string, assumed bool) {
	b, s := d.Shop.Boards, d.Spec
	switch c {
	case fit.OfSides:
		return s.Sides.Name, b.Sides.Assumed != "" && s.Sides.Thickness.Min == s.Sides.Thickness.Max
	case fit.OfFront:
		return s.Front.Name, b.Front.Assumed != "" && s.Front.Thickness.Min == s.Front.Thickness.Max
	case fit.OfBack:
		return s.Back.Name, b.Back.Assumed != "" && s.Back.Thickness.Min == s.Back.Thickness.Max
	case fit.OfBottom:
		return s.Bottom.Name, b.Bottom.Assumed != "" && s.Bottom.Thickness.Min == s.Bottom.Thickness.Max
	}
	return "", false
}

// Finest is what a shop keeps anything within at the best, in mm; common practice, no source.
func Finest(k joinery.CutterKind) float64 {
	if k == joinery.Hand {
		return 0.1
	}
	return 0.03
}
