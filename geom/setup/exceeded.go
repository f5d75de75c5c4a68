package setup

import (
	"cmp"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Limit names a limit of a machine, as the job's entry does.
type Limit string

// Entry is the name of the entry of a machine: a router table does not rip.
func (l Limit) Entry(k joinery.CutterKind) string {
	if l == LimitRip && k == joinery.RouterTable {
		return "fence-capacity"
	}
	return string(l)
}

const (
	LimitHeight             Limit = "max-height"
	LimitReach              Limit = "reach" // of the bit, an entry of the cutter
	LimitWidth              Limit = "max-width"
	LimitRip                Limit = "rip-capacity"
	LimitCrosscut           Limit = "crosscut-capacity"
	LimitMaxOnSled          Limit = "max-length-on-sled"
	LimitMaxStop            Limit = "max-stop" // of cuts that take sheets apart
	LimitMinOnEnd           Limit = "min-length-on-end"
	LimitMaxOnEnd           Limit = "max-length-on-end"
	LimitMinAlongFence      Limit = "min-length-along-fence"
	LimitMinWidthOnEnd      Limit = "min-width-on-end"
	LimitMinWidthAlongFence Limit = "min-width-along-fence"
)

// Exceeded is a limit that a way to cut would break: what is measured, and the limit.
type Exceeded struct {
	Limit             Limit
	Measured, Allowed float64
	IsMin             bool // the least that is allowed, not the most
}

// facts say what is measured and what is allowed.
var facts = map[Limit]string{
	LimitHeight:             "the cutter would stand %s over the table, %s is the most",
	LimitReach:              "the cut is %s deep, the bit reaches %s",
	LimitWidth:              "the cutter is %s wide, the machine carries %s at the most",
	LimitRip:                "the fence would stand %s away, it opens to %s",
	LimitCrosscut:           "the cut is %s long, the sled takes %s",
	LimitMaxOnSled:          "the part is %s long, the sled takes parts up to %s",
	LimitMinOnEnd:           "it would stand %s high; nothing lower than %s is stood on end",
	LimitMaxOnEnd:           "it would stand %s high; nothing higher than %s is stood on end",
	LimitMinAlongFence:      "the part is %s long; nothing shorter than %s is pushed along the fence",
	LimitMinWidthOnEnd:      "it would stand on an end %s wide; nothing narrower than %s is stood on end",
	LimitMinWidthAlongFence: "the part is %s wide; nothing narrower than %s is pushed along the fence",
}

// Fact says what is measured against which limit.
func (b Exceeded) Fact() geom.Sentence {
	return geom.Sentencef(facts[b.Limit], geom.Millimeters(b.Measured), geom.Millimeters(b.Allowed))
}

// Further reports whether more is missing than of another.
func (b Exceeded) Further(o Exceeded) bool {
	return math.Abs(b.Measured-b.Allowed) > math.Abs(o.Measured-o.Allowed)
}

// Needed is the limit that a machine would have to have, rounded to the printed step of a unit, in
// mm.
func (b Exceeded) Needed(u geom.Unit) float64 {
	if b.IsMin {
		return geom.LengthOf(b.Measured).RoundDown(u).MM()
	}
	return geom.LengthOf(b.Measured).RoundUp(u).MM()
}

// Alternative is another way to make a cut that a machine cannot.
type Alternative string

const (
	ByOther    Alternative = "other-machine" // the other machine with a fence, whose limits it keeps
	ByRouter   Alternative = "router"        // a CNC router
	ByHand     Alternative = "hand"
	ByStrip    Alternative = "strip"    // cut into a longer board, from which the parts are cut afterward
	ByGuide    Alternative = "guide"    // a hand-held router along a clamped straightedge
	ByCorner   Alternative = "corner"   // another corner, whose fronts have plain ends
	ByLower    Alternative = "lower"    // the cutter no higher than the machine goes, for all cuts of the drawer
	ByNarrower Alternative = "narrower" // a narrower cutter in more passes
)

// beyond is the first limit that a way to hold a board for a cut breaks.
func (m Machine) beyond(s Step, cutter joinery.Cutter, board Board) (b Exceeded, broken bool) {
	most := func(l Limit, v, limit float64) bool {
		if !broken && v > limit+settle {
			b, broken = Exceeded{Limit: l, Measured: v, Allowed: limit}, true
		}
		return broken
	}
	least := func(l Limit, v, limit float64) bool {
		if !broken && v < limit-settle {
			b, broken = Exceeded{Limit: l, Measured: v, Allowed: limit, IsMin: true}, true
		}
		return broken
	}
	most(LimitWidth, s.Cutter, m.MaxWidth)
	most(LimitHeight, s.Height, m.MaxHeight)
	if cutter.Reach > 0 {
		most(LimitReach, s.Height, cutter.Reach)
	}
	for _, p := range s.Passes {
		most(LimitRip, p, m.RipCapacity)
	}
	along, across := board.Panel.Length(), board.Panel.Width() // of the part, by the edge that guides it
	if s.Edges.Lower || s.Edges.Upper {
		along, across = across, along
	}
	switch s.Holding {
	case Across, AtEnd:
		most(LimitCrosscut, across, m.CrosscutCapacity)
		most(LimitMaxOnSled, along, m.MaxOnSled)
	case Along, AtEdge:
		least(LimitMinAlongFence, across, m.MinAlongFence)
		least(LimitMinWidthAlongFence, along, m.MinWidthAlongFence)
	case OnEnd, Fingers:
		least(LimitMinOnEnd, along, m.MinOnEnd)
		most(LimitMaxOnEnd, along, m.MaxOnEnd)
		if s.Holding == OnEnd {
			least(LimitMinWidthOnEnd, min(across, cmp.Or(board.EndWidth, across)), m.MinWidthOnEnd)
		}
	}
	return b, broken
}
