package sheet

import (
	"cmp"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// PinWeb is the least wood about the hole of a registration pin, in mm; common practice, no
// source.
const PinWeb = 3.0

// pinNear is within how much, in mm, a distance is that of a pin: sizes that are worked
// out in two ways.
const pinNear = 1e-6

// Pin is a registration hole of sheets: its radius in mm, and the bit that makes it. The
// zero value is none.
type Pin struct {
	Radius float64
	Bit    mill.Bit
}

// PinFor is the hole on which sheets with these parts are turned over: the widest of the
// parts' own, or one of a usual diameter, of the one that is asked for, or of their narrowest
// bit's, whichever is widest, made by that bit; none where no router cuts them. Of the bits
// those that reach through the thickest board into the spoilboard come first, if there are
// any. It does not hang on the order of the parts. Lengths are mm; asked is 0 for none.
func PinFor(parts []CutPart, thickest, asked float64, u geom.Unit) (pin Pin) {
	var narrowest mill.Bit
	rank := func(c mill.Bit) int {
		if c.Reach > 0 && c.Reach < thickest+mill.PinDepth {
			return 1
		}
		return 0
	}
	before := func(a, c mill.Bit) bool {
		return cmp.Or(cmp.Compare(rank(a), rank(c)), cmp.Compare(a.Diameter, c.Diameter), cmp.Compare(a.Reach, c.Reach),
			cmp.Compare(a.Tool, c.Tool), cmp.Compare(a.Name, c.Name)) < 0
	}
	for _, p := range parts {
		for _, c := range p.Work.Cuts {
			_, r, round := c.Outline.AsCircle()
			if !round || c.Operation != mill.Registering {
				continue
			}
			if r > pin.Radius || r == pin.Radius && before(p.Bits[c.Bit], pin.Bit) {
				pin = Pin{r, p.Bits[c.Bit]}
			}
		}
		for _, bit := range p.Bits {
			if !bit.Engraves && (narrowest.Diameter == 0 || before(bit, narrowest)) {
				narrowest = bit
			}
		}
	}
	if pin.Radius == 0 && narrowest.Diameter > 0 {
		pin = Pin{max(mill.UsualPin(u), asked, narrowest.Diameter) / 2, narrowest}
	}
	return pin
}

// Reaches reports whether the pin's bit reaches deep enough, in mm; one whose reach is not
// known does.
func (p Pin) Reaches(deep geom.Length) bool {
	reach := geom.LengthOf(p.Bit.Reach)
	return p.Radius == 0 || reach <= 0 || reach >= deep
}

// Depth is how deep a registration hole goes below the face of the thickest board, in mm.
func Depth(thickest float64) float64 { return thickest + mill.PinDepth }

// MinFromEdge is how far the middle of the hole stays from the end of the shortest sheet
// at the least, in mm.
func (p Pin) MinFromEdge() float64 { return p.Radius + PinWeb }

// TooNear reports whether a distance from the end is less than that.
func (p Pin) TooNear(fromEdge float64) bool { return fromEdge < p.MinFromEdge()-pinNear }

// Beyond is how far the parts stay from the middle of the hole at the least, in mm, where
// things are drawn so far past them.
func (p Pin) Beyond(drawn float64) float64 { return p.Radius + PinWeb + drawn }

// Standing is where pins stand on a sheet, in mm: how far from the ends of the shortest one,
// and whether there is a third one in the middle of the upper edge.
type Standing struct {
	Radius, FromEdge float64
	Three            bool
	Short            [2]float64 // by how much sheets may be shorter and narrower
}

// pinStep is how far apart, in mm, the places are that are tried for pins.
const pinStep = 5.0

// Places are the middles of a sheet's registration holes: the same from both ends, so that
// each stands on a pin when the sheet has been turned over end for end. Two are at a third of
// the width, or near it where they are clear of some areas, so that a sheet that was turned
// the wrong way lies visibly off. ok is false where there is no such place; a radius of 0 has
// no pins.
func (s Standing) Places(length, width float64, blocked []geom.Rect) (list []geom.Point, ok bool) {
	if s.Radius == 0 {
		return nil, true
	}
	x := s.Short[0] + s.FromEdge
	room := s.Radius + PinWeb
	clear := func(q geom.Point) bool {
		for _, k := range blocked {
			if q.X > k.Min.X-room && q.X < k.Max.X+room && q.Y > k.Min.Y-room && q.Y < k.Max.Y+room {
				return false
			}
		}
		return true
	}
	for n := range int(width / pinStep) {
		for _, sign := range []float64{1, -1} {
			y := width/3 + float64(sign*float64(n)*pinStep)
			off := math.Abs(2*y - width) // how far off it lies when it is turned top to bottom
			a, b := geom.Point{X: x, Y: y}, geom.Point{X: length - x, Y: y}
			if y < room+s.Short[1] || y > width-room-s.Short[1] || off < 4*s.Radius || !clear(a) || !clear(b) {
				continue
			}
			list = []geom.Point{a, b}
			if s.Three {
				third := geom.Point{X: length / 2, Y: width - s.Short[1] - s.FromEdge}
				return append(list, third), clear(third)
			}
			return list, true
		}
	}
	return nil, false
}
