package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Bit is one of a router's bits.
type Bit struct {
	Diameter float64
	Reach    float64 // how deep it can cut; 0 when not said
}

// bits are those that a router can choose from, the widest first; the only cutter of
// other machines, and of a router with one bit.
func (l *layout) bits() []Bit {
	if len(l.Bits) == 0 || !l.Cutter.Kind.FollowsDrawing() {
		return []Bit{{Diameter: l.Cutter.Width}}
	}
	list := slices.Clone(l.Bits)
	slices.SortStableFunc(list, func(a, b Bit) int {
		switch {
		case a.Diameter > b.Diameter:
			return -1
		case a.Diameter < b.Diameter:
			return 1
		}
		return 0
	})
	return list
}

// slotBits are the bits that get into a slot of a width, with room, and reach a depth of
// it in the thickest boards; the narrowest of all where none does.
func (l *layout) slotBits(width, depth float64, boards ...Stock) []Bit {
	all := l.bits()
	list := slices.DeleteFunc(slices.Clone(all), func(b Bit) bool {
		gets := b.Diameter+notchRoom <= width+settle || l.SlotRoom == 0 && nearly(b.Diameter, width)
		return !gets || b.Reach > 0 && b.Reach < l.deepest(depth, boards)-settle
	})
	if len(list) == 0 {
		return all[len(all)-1:]
	}
	return list
}

// deepest is how deep a cut goes in the thickest of boards.
func (l *layout) deepest(depth float64, boards []Stock) float64 {
	more := 0.0
	if l.fromSpoilboard() {
		for _, s := range boards {
			more = max(more, s.Thickness.Max-s.Thickness.Mean)
		}
	}
	return depth + more
}

// widest is the widest of some bits with which something comes out, else the narrowest.
func widest(bits []Bit, fits func(diameter float64) bool) float64 {
	for _, b := range bits {
		if fits(b.Diameter) {
			return b.Diameter
		}
	}
	return bits[len(bits)-1].Diameter
}

// outlineBit keeps the bit that cuts a panel out to those with which its outline would be
// laid out as it is.
func (l *layout) outlineBit(p *geom.Panel, same func(diameter float64) bool) {
	if len(l.Bits) == 0 || !l.Cutter.Kind.FollowsDrawing() {
		return
	}
	if d := widest(l.bits(), same); p.Bit == 0 || d < p.Bit {
		p.Bit = d
	}
}

// cutWith is what a pocket says of its bit: nothing where there is one bit alone.
func (l *layout) cutWith(diameter float64) float64 {
	if len(l.Bits) == 0 || !l.Cutter.Kind.FollowsDrawing() {
		return 0
	}
	return diameter
}

// corner is the radius that the cutter of the grooves leaves in the end of a stopped one.
func (l *layout) corner() float64 {
	if l.Cutter.Kind.Rounds() {
		return l.grooveBit / 2
	}
	return 0
}

// chooseGrooveBit makes the corners with the widest bit for the grooves with which all of
// them can stop where they have to, and makes every groove of the box with it.
func (l *layout) chooseGrooveBit(make func()) {
	if !l.BottomFit.Grooved() {
		make()
		return
	}
	list := l.slotBits(l.groove, l.h, l.Sides, l.Front, l.Back)
	for i, b := range list {
		hardware, problems := slices.Clone(l.drawer.Hardware), len(l.problems)
		bores, fasteners := len(l.drawer.Bores), len(l.fasteners)
		l.grooveBit, l.unsuited = b.Diameter, false
		if make(); !l.unsuited || i == len(list)-1 {
			return
		}
		l.drawer.Hardware, l.problems = hardware, l.problems[:problems]
		l.drawer.Bores, l.fasteners = l.drawer.Bores[:bores], l.fasteners[:fasteners]
	}
}

// roundsWithin notes whether the round that the bit leaves at the end of a groove, from
// its end on, is gone with a cut across it that reaches so far from there.
func (l *layout) roundsWithin(room float64) {
	if l.Cutter.Kind.FollowsDrawing() && l.corner() > room+settle {
		l.unsuited = true
	}
}

// sameNotch reports whether a bit gets into a notch of a width as it is.
func sameNotch(width float64) func(float64) bool {
	return func(d float64) bool { return d+notchRoom <= width+settle }
}

// sameRound reports whether a bit gets round an inner corner of a radius as it is.
func sameRound(radius float64) func(float64) bool {
	return func(d float64) bool { return d/2*roundRoom <= radius+settle }
}

// nearly reports whether two computed sizes are the same.
func nearly(a, b float64) bool { return math.Abs(a-b) < settle }
