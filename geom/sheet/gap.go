package sheet

import (
	"drawerwright/geom/hold"
	"drawerwright/geom/mill"
)

// CutPart is a part that a router cuts, with the bits of its drawer.
type CutPart struct {
	Work mill.Operations
	Bits []mill.Bit
}

// Band is how wide a band, in mm, the bit that cuts the part out is drawn to take about it;
// 0 where no bit does.
func (p CutPart) Band() float64 {
	for _, c := range p.Work.Cuts {
		if c.Operation == mill.Profile && c.Bit >= 0 {
			return p.Bits[c.Bit].Diameter + mill.SlotRoom
		}
	}
	return 0
}

// Needs is what the cuts of a router take of sheets, in mm.
type Needs struct {
	Reach float64 // of cuts and bits past their parts
	Band  float64 // the widest that is cut about a part
	Mixed bool    // parts are held in different ways, or cut out with different bits
	Tabs  bool    // some are held by tabs
}

// NeedsOf are those of a router that cuts all of some parts.
func NeedsOf(parts []CutPart) (n Needs) {
	type way struct {
		kind hold.Kind
		band float64
	}
	ways := make(map[way]bool)
	for _, p := range parts {
		held, band := HeldBy(p.Work), p.Band()
		ways[way{held, band}] = true
		n.Reach, n.Band = max(n.Reach, p.Work.Reach), max(n.Band, band)
		n.Tabs = n.Tabs || held == hold.Tabs
	}
	n.Mixed = len(ways) > 1
	return n
}

// Gap is the least between two parts: the bit that cuts one out leaves some wood before
// the next.
func (n Needs) Gap() float64 { return n.Reach + mill.MinWaste }

// Drawn is how far past its part anything is drawn.
func (n Needs) Drawn() float64 { return max(n.Reach, n.Band) }

// Apart is the gap at which no band meets another, with waste between that holds.
func (n Needs) Apart() float64 { return 2*n.Band + mill.MinWaste }

// Least is the gap that the parts of a stock need. Where they are held in different ways
// each keeps its band: a slot would take the neighbor's skin away, and no line is cut by
// two bits.
func (n Needs) Least() float64 {
	if n.Mixed {
		return max(n.Gap(), n.Apart())
	}
	return n.Gap()
}
