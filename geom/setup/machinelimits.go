package setup

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Machine is how far a machine with a fence goes, in millimeters: a saw or a router
// table. What no setup may exceed is here and nowhere else.
type Machine struct {
	MaxHeight        float64 // of the cutter over the table
	MaxWidth         float64 // of the cutter: what its arbor or collet carries
	RipCapacity      float64 // how far the fence opens
	CrosscutCapacity float64 // the longest crosscut on the sled or miter gauge
	MaxOnSled        float64 // the longest part that lies across the sled
	MaxStop          float64 // how far from the blade the stop on the sled is; 0 where nothing is cut off
	// MinOnEnd and MaxOnEnd are the shortest and the longest part that is stood on
	// its end or edge against the fence, by how high it stands.
	MinOnEnd, MaxOnEnd float64
	// MinWidthOnEnd is the narrowest part that is stood on its end: one that is narrower
	// tips along the fence. Of a router table, which holds parts on end in a jig, it is 0.
	MinWidthOnEnd float64
	// MinAlongFence is the shortest part that is pushed along the fence by hand; across, a
	// shorter one is clamped to the sled. MinWidthAlongFence is the narrowest: over the
	// cutter a narrower one has too little wood for a push block and for the table.
	MinAlongFence, MinWidthAlongFence float64
	// PassDepth is how deep one pass goes at most, as a part of the bit's diameter; 0 for a
	// saw, which takes what its height allows in one.
	PassDepth float64
}

// DefaultMachine is a cautious machine of a small shop: common practice, no source. Its
// limits are round numbers of the shop's unit. A job writes down what its own machines do.
func DefaultMachine(k joinery.CutterKind, u geom.Unit) Machine {
	const in = geom.InchMM
	switch {
	case k == joinery.Saw && u == geom.Inch:
		return Machine{MaxHeight: 1.5 * in, MaxWidth: 13.0 / 16 * in, RipCapacity: 30 * in, CrosscutCapacity: 24 * in, MaxOnSled: 60 * in, MaxStop: 36 * in, MinOnEnd: 6 * in, MaxOnEnd: 24 * in, MinWidthOnEnd: 2.25 * in, MinAlongFence: 8 * in, MinWidthAlongFence: 1.5 * in}
	case k == joinery.Saw:
		return Machine{MaxHeight: 40, MaxWidth: 21, RipCapacity: 760, CrosscutCapacity: 600, MaxOnSled: 1600, MaxStop: 900, MinOnEnd: 150, MaxOnEnd: 600, MinWidthOnEnd: 60, MinAlongFence: 200, MinWidthAlongFence: 40}
	case k == joinery.RouterTable && u == geom.Inch:
		return Machine{MaxHeight: 1 * in, MaxWidth: 1 * in, RipCapacity: 12 * in, CrosscutCapacity: 12 * in, MaxOnSled: 36 * in, MinOnEnd: 6 * in, MaxOnEnd: 20 * in, MinAlongFence: 8 * in, MinWidthAlongFence: 1.5 * in, PassDepth: 0.5}
	case k == joinery.RouterTable:
		return Machine{MaxHeight: 25, MaxWidth: 25, RipCapacity: 300, CrosscutCapacity: 300, MaxOnSled: 900, MinOnEnd: 150, MaxOnEnd: 500, MinAlongFence: 200, MinWidthAlongFence: 40, PassDepth: 0.5}
	}
	return Machine{}
}

// OnEnd is how long a part may be that is stood on its end, and how wide it is at least.
func (m Machine) OnEnd() joinery.OnEnd {
	return joinery.OnEnd{Length: geom.Interval{Min: m.MinOnEnd, Max: m.MaxOnEnd}, MinWidth: m.MinWidthOnEnd}
}

// Machines are those of a shop. A kind that is missing is [DefaultMachine]'s in
// millimeters.
type Machines map[joinery.CutterKind]Machine

// Of is the machine of a kind: the one in m, else the usual one.
func (m Machines) Of(k joinery.CutterKind) Machine {
	if own, ok := m[k]; ok {
		return own
	}
	return DefaultMachine(k, geom.Millimeter)
}
