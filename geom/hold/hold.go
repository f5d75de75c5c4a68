// Package hold plans the bridges that hold parts in their sheet while a router cuts them
// out, once it is known where the parts lie, and the slots between these bridges, common to
// neighbors, so that no slot takes off another part's bridge.
//
// Lengths are nanometers, the origin is the sheet's lower left corner. All parts are the
// boxes about their outlines, and so are the bands that bits take about them. [PlaceTabs] plans,
// [Check] checks drawn slots without knowing how they were planned.
package hold

import "drawerwright/geom"

// Box is an upright rectangle.
type Box struct{ X0, Y0, X1, Y1 int64 }

func (b Box) grown(by int64) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

// Point of a sheet.
type Point struct{ X, Y int64 }

// Kind says how a part is held.
type Kind uint8

const (
	Loose     Kind = iota // by nothing that is drawn: it is cut out all round
	OnionSkin             // by an onion skin all round it, which no slot may enter
	Tabs                  // by tabs
)

// The sides of a box, in the order in which an outline has them.
const (
	Bottom = iota
	Right
	Top
	Left
)

// Stretch is a piece of a side: of its x for the bottom and the top, else of its y.
type Stretch = geom.IntervalOf[int64]

// Part is a part as it lies on its sheet.
type Part struct {
	Box  Box
	Kind Kind
	// Slot is how wide a band the bit that cuts it out takes about it.
	Slot int64
	// Free are the stretches of each side on which a tab may stand.
	Free [4][]Stretch
}

// Sheet is parts on a sheet, in the sizes of their bridges.
type Sheet struct {
	Size    Box
	Parts   []Part
	Tab     int64 // how wide a bridge is
	Spacing int64 // from one bridge to the next, about
	Web     int64 // narrower strips of waste hold nothing and are cut away
}

// Frame is the sheet round the parts, as an end of a bridge; other pieces of waste are
// Frame-1, Frame-2 and so on.
const Frame = -1

// Bridge is what is left of the band between a part and another part or waste.
type Bridge struct {
	Box      Box
	From, To int // parts, or To is Frame or less
}

// Slot is cut right through, its outline counter-clockwise. Part is one that it runs along.
type Slot struct {
	Outline []Point
	Part    int
}

// Plan is how the parts of a sheet are held.
type Plan struct {
	Bridges []Bridge
	Slots   []Slot
	Count   []int // of bridges of each part
	// Unheld are the parts with fewer bridges than their size asks for, or with no way
	// from bridge to bridge to the frame, in order.
	Unheld []int
	// NeedsTabs is set where the sheet has too many places for a plan: all with tabs are short.
	NeedsTabs bool
}

// PlaceTabs plans the bridges of a sheet. Without parts that are held by tabs there is nothing
// to plan.
func PlaceTabs(s Sheet) Plan {
	plan := Plan{Count: make([]int, len(s.Parts))}
	tabs := false
	for _, p := range s.Parts {
		tabs = tabs || p.Kind == Tabs
	}
	if !tabs {
		return plan
	}
	g, ok := newGrid(s, nil)
	if !ok {
		plan.NeedsTabs = true
		for i, p := range s.Parts {
			if p.Kind == Tabs {
				plan.Unheld = append(plan.Unheld, i)
			}
		}
		return plan
	}
	pl := newPlanner(s, g)
	pl.spread()
	pl.connect()
	plan.Bridges = pl.bridges
	for i, p := range s.Parts {
		plan.Count[i] = len(pl.of[i])
		if p.Kind == Tabs && (plan.Count[i] < s.MinTabs(i) || !pl.tied(i)) || p.Kind == OnionSkin && !pl.tied(i) {
			plan.Unheld = append(plan.Unheld, i)
		}
	}
	if len(plan.Unheld) == 0 {
		plan.Slots = pl.slots()
	}
	return plan
}
