package joinery

import (
	"math"

	"drawerwright/geom"
)

// What cutters are to be had; all common practice, no source. A hint names no other.
var (
	// soldBits are usual diameters of straight bits, and widths of plow irons, in mm:
	// metric ones, those of inches from 1/8 to 3/4, and those made for sheets that are
	// thinner than their name, 7/32, 31/64 and 23/32.
	soldBits = []float64{3, 3.175, 4, 4.7625, 5, 5.55625, 6, 6.35, 7.9375, 8, 9.525, 10, 12, 12.303125, 12.7, 14, 15.875, 16, 18, 18.25625, 19.05, 20}
)

const (
	// widestBlade is the slot of the thickest saw blade, in mm; minStack that of a dado
	// stack without chippers, which shims make wider by as little as one likes.
	widestBlade, minStack = 3.6, 6.0
)

// toBeHad reports whether what a change asks for can be bought or set: all but the width of
// a cutter, of which there are some and no others.
func (l *layout) toBeHad(c geom.Change) bool {
	if c.Setting != SettingCutter && c.Setting != SettingGrooveCutter || c.Min == 0 || c.Max >= l.Cutter.Width && c.Min <= l.Cutter.Width {
		return true
	}
	if l.Cutter.Kind == Saw {
		return c.Min <= widestBlade && c.Max >= narrowestBlade || c.Max >= minStack
	}
	_, found := BitIn(c.Min, c.Max)
	return found
}

// SoldBit is the widest usual bit, or plow iron, up to a width in mm.
func SoldBit(most float64) (bit float64, found bool) {
	for _, d := range soldBits {
		if d <= most {
			bit, found = d, true
		}
	}
	return bit, found
}

// BitIn is the usual bit in a range of widths that is nearest its middle, in mm.
func BitIn(least, most float64) (bit float64, found bool) {
	middle := (least + most) / 2
	for _, d := range soldBits {
		if d >= least-settle && d <= most+settle && (!found || math.Abs(d-middle) < math.Abs(bit-middle)) {
			bit, found = d, true
		}
	}
	return bit, found
}

// IsStack reports whether a saw cuts slots of such widths, in mm, with a dado stack that is
// shimmed, and not with a blade.
func IsStack(least, most float64) bool { return most >= minStack && least > widestBlade }
