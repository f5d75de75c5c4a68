// Package setup finds the fence distances and cutter heights that serve drawers,
// makes them up from spacer blocks, and says how each cut of a saw or a router
// table is set up. Lengths are in millimeters.
package setup

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Cost is what a setting does to a drawer: how its front and back stand, the play
// of their tongues, what one pass leaves at the outside of their rabbets, and the
// part of the sides' thickness that is cut away.
type Cost struct {
	Recess    [2]float64 // of front and back; proud below 0
	Clearance [2]float64 // of their tongues; not a number of a router, which makes its slots to fit
	Sliver    [2]float64 // 0 where one pass is enough
	Depth     float64    // of the cuts, as a part of the sides' thickness
}

// Requirement is what a drawer asks of a setting: between which fence distances and which
// cutter heights its corners come out within the limits.
type Requirement struct {
	Fence, Height geom.Interval
	// AtFence and AtHeight are where it would be best: what it was worked out with, where
	// that does.
	AtFence, AtHeight float64
	// Impossible says why no fence distance does for this drawer with this cutter; empty
	// where one does.
	Impossible string
	spec       joinery.Spec
	flat       bool // fronts lie flat for their rabbets
}

// minDeep and maxDeep are the part of a board's thickness that the cuts of a corner may take: less
// holds badly, more leaves little wood behind; common practice, no source.
const minDeep, maxDeep = 1.0 / 3, 0.6

// same is how far from each other two settings are that no shop tells apart.
const same = 0.05

// RequirementOf is what a drawer needs. A corner with tongues is free within its limits;
// any other keeps the setting that it was worked out with.
func RequirementOf(d joinery.Drawer) Requirement {
	s, at := d.Spec, d.Setup
	n := Requirement{AtFence: at.FenceDistance, AtHeight: at.CutterHeight, spec: s, flat: at.FlatTongues}
	if s.Joint != joinery.DadoRabbet {
		n.Fence = geom.Interval{Min: at.FenceDistance - same/2, Max: at.FenceDistance + same/2}
		n.Height = geom.Interval{Min: at.CutterHeight - same/2, Max: at.CutterHeight + same/2}
		return n
	}
	n.fence(at.FenceDistance)
	n.height(at.CutterHeight)
	return n
}

// fence asks for fronts that are flush and tongues that go in: 2 f - T within the
// recess of either end, w - f within the play.
func (n *Requirement) fence(own float64) {
	s := n.spec
	flush := geom.Interval{Min: 0, Max: math.Inf(1)}
	middle := 0.0
	for _, t := range n.tongued() {
		flush = flush.Intersect(geom.Interval{Min: joinery.FenceForRecess(-s.Limits.Flush, t), Max: joinery.FenceForRecess(s.Limits.Flush, t)})
		flush = flush.Intersect(geom.Interval{Min: joinery.MinHolding, Max: t - 1})
		middle += joinery.FenceForRecess(0, t) / float64(len(n.tongued()))
	}
	goes := geom.Interval{Min: s.Cutter.Width - s.Limits.TongueClearance.Max, Max: s.Cutter.Width - s.Limits.TongueClearance.Min}
	if s.Cutter.Kind.MadeToFit() { // slots are made to fit, but not under the bit
		goes = geom.Interval{Min: s.DadoWidth(0, 0) - s.Limits.TongueClearance.Max, Max: math.Inf(1)}
	}
	n.Fence = flush.Intersect(goes)
	switch {
	case empty(flush):
		n.Impossible = "box front and back are too different in thickness to be both flush"
	case empty(n.Fence):
		n.Impossible = "the cutter does not suit the thickness"
	}
	if n.AtFence = clamp(middle, n.Fence); within(own, n.Fence) { // the job has chosen one that is right
		n.AtFence = own
	}
}

// height asks for cuts that are deep enough to hold and leave enough behind.
func (n *Requirement) height(own float64) {
	s := n.spec
	t := s.Sides.Thickness.Mean
	n.Height = geom.Interval{Min: float64(minDeep * t), Max: float64(maxDeep*t) - s.GlueSpace}
	for _, t := range n.tongued() { // their grooves
		n.Height = n.Height.Intersect(geom.Interval{Min: 0, Max: maxDeep * t})
	}
	if n.AtHeight = clamp(t/2, n.Height); within(own, n.Height) {
		n.AtHeight = own
	}
	if empty(n.Height) && n.Impossible == "" {
		n.Impossible = "box front or back are too thin for grooves as deep as the sides' dados"
	}
}

// tongued are the thicknesses of the ends that stand on tongues.
func (n *Requirement) tongued() []float64 {
	s := n.spec
	if s.BackJoint == joinery.Housed || s.Back.Same(s.Front) {
		return []float64{s.Front.Thickness.Mean}
	}
	return []float64{s.Front.Thickness.Mean, s.Back.Thickness.Mean}
}

// Cost is what a setting does to this drawer.
func (n *Requirement) Cost(fence, height float64) Cost {
	s := n.spec
	c := Cost{Depth: height / s.Sides.Thickness.Mean}
	for i, t := range [2]float64{s.Front.Thickness.Mean, s.Back.Thickness.Mean} {
		c.Recess[i], c.Clearance[i] = joinery.RecessAt(fence, t), math.NaN()
		if s.Cutter.Kind.Fenced() {
			c.Clearance[i] = joinery.TongueClearanceAt(fence, s.Cutter.Width)
			if c.Sliver[i] = max(0, t-fence-s.Cutter.Width); n.flat {
				c.Sliver[i] = max(0, height-s.Cutter.Width)
			}
		}
		if i == 1 && s.BackJoint == joinery.Housed || s.Joint != joinery.DadoRabbet {
			c.Recess[i], c.Clearance[i], c.Sliver[i] = 0, math.NaN(), 0
		}
	}
	return c
}

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle

func empty(r geom.Interval) bool { return r.Min > r.Max+settle }

func clamp(v float64, r geom.Interval) float64 {
	if empty(r) {
		return v
	}
	return r.Clamp(v)
}
