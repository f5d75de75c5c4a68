package strength

import "drawerwright/geom/opening"

// MaxLoaded is the part of a slide's rating that box and load together may reach; common
// practice, no source: three quarters to four fifths.
const MaxLoaded = 0.8

// Overloads reports whether box and load, in kg, are too much for a slide. Without a rating
// or a load there is nothing to judge. A box of unknown weight counts as 0.
func Overloads(s opening.Slide, box, load float64) bool {
	return load > 0 && s.Load > 0 && box+load > s.Load*MaxLoaded
}

// SlideRoom is the load, in kg, that a slide takes beside the box.
func SlideRoom(s opening.Slide, box float64) float64 { return s.Load*MaxLoaded - box }
