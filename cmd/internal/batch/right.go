package batch

import (
	"math"

	"drawerwright/geom/joinery"
)

// Right is between what the cuts of dado-and-rabbet corners may be that are cut at one
// setting, so that they are right for all of its drawers, in mm. A range whose Least is
// over its Most is one that nothing is right for.
type Right struct {
	Slot                float64 // width of a dado, as it should come out
	Dado, Place, Tongue joinery.Range
}

// RightOf tells it of drawers that have the same setup; ok is false where a corner is
// another one.
func RightOf(drawers []Drawer) (r Right, ok bool) {
	d := drawers[0]
	f, w, play := d.Setup.FenceDistance, d.Setup.Cutter.Width, d.Spec.Limits.TonguePlay
	r.Place = joinery.Range{Least: 0, Most: math.Inf(1)}
	for _, d := range drawers {
		if d.Spec.Joint != joinery.DadoRabbet {
			return Right{}, false
		}
		for _, t := range []float64{d.Spec.Front.Thickness.Mean, d.Spec.Back.Thickness.Mean} {
			r.Place.Least, r.Place.Most = math.Max(r.Place.Least, (t-d.Spec.Limits.Recess)/2), math.Min(r.Place.Most, (t+d.Spec.Limits.Recess)/2)
		}
	}
	r.Slot = w
	r.Dado = joinery.Range{Least: f + play.Least, Most: f + play.Most}
	if d.Setup.Cutter.Kind.MadeToFit() {
		r.Slot = d.Spec.DadoWidth(f, d.Spec.DadoPlay)
		r.Tongue = joinery.Range{Least: r.Slot - play.Most, Most: r.Slot - play.Least}
		return r, true
	}
	r.Tongue = joinery.Range{Least: math.Max(r.Place.Least, w-play.Most), Most: math.Min(r.Place.Most, w-play.Least)}
	return r, true
}
