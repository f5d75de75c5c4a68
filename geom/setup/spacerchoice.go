package setup

import (
	"math"

	"drawerwright/geom"
)

// Chosen are the stacks of a shop's spacers for fence and height.
type Chosen struct {
	Fence, Height Stack
	One           bool // one stack serves for both
}

// Choose makes a group's setting up of a shop's spacers: one stack for both where there is
// one, else two; else those that come nearest. It finds none without spacers.
func (g Group) Choose(spacers []float64) (c Chosen, found bool) {
	if s, ok := g.One(spacers); ok {
		return Chosen{s, s, true}, true
	}
	f, ok := stackIn(spacers, g.Fence, g.AtFence)
	h, high := stackIn(spacers, g.Height, g.AtHeight)
	return Chosen{Fence: f, Height: h}, ok && high
}

func stackIn(spacers []float64, r geom.Interval, wished float64) (Stack, bool) {
	if list := Stacks(spacers, r, wished, 1); len(list) > 0 {
		return list[0], true
	}
	return Nearest(spacers, wished)
}

// farOff is how far spacers may be off a setting to be of use for it, in mm; common
// practice, no source.
const farOff = 0.5

// ChooseFor are the stacks nearest to a fence distance and a cutter height that are given,
// in mm; none where they are of no use for it.
func ChooseFor(spacers []float64, fence, height float64) (c Chosen, found bool) {
	f, ok := Nearest(spacers, fence)
	h, high := Nearest(spacers, height)
	if !ok || !high || math.Abs(f.Height-fence) > farOff || math.Abs(h.Height-height) > farOff {
		return Chosen{}, false
	}
	return Chosen{f, h, math.Abs(fence-height) < sameSetting}, true
}
