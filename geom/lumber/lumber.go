// Package lumber says of which boards parts of solid wood are made: how long, wide and thick these are before they are
// planed, of how many a wide part is glued up, and how much wood that is. Lengths are in millimeters, volumes in cubic
// millimeters. What is left to be cut off is common practice, no source.
package lumber

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// BoardFoot is the volume of a board of 12 x 12 x 1 in, the unit in which lumber is sold by the Wood Handbook's
// glossary (from memory).
const BoardFoot = 144 * geom.InchMM * geom.InchMM * geom.InchMM

// Ends is what a part is longer before its ends are cut: for snipe of the planer, and for checks.
func Ends(u geom.Unit) float64 { return u.Usual(50, 2) }

// Edges is what a board is wider before both its edges are jointed or sawn straight.
func Edges(u geom.Unit) float64 { return u.Usual(6, 1.0/4) }

// Trim is what a part that is glued up is wider than it will be sawn.
func Trim(u geom.Unit) float64 { return u.Usual(6, 1.0/4) }

// Planing is what boards are thicker before both faces are planed, with their cup and twist; least is what has to
// be left for that of boards that are flat.
func Planing(u geom.Unit) float64 { return u.Usual(5, 3.0/16) }

func least(u geom.Unit) float64 { return u.Usual(2, 1.0/16) }

// ShortestPlaned is the shortest piece that goes over a jointer, or through a planer, by itself.
func ShortestPlaned(u geom.Unit) float64 { return u.Usual(300, 12) }

// step is in which steps rough sizes are rounded up.
func step(u geom.Unit) float64 { return u.Usual(5, 1.0/4) }

// sold are the thicknesses in which rough boards are sold, in mm, and in quarters of an inch: 4/4 to 16/4.
var sold, quarters = []float64{20, 27, 34, 41, 54, 65, 80}, []float64{4, 5, 6, 8, 10, 12, 16}

// RoughFor is the thinnest of the boards that are sold which planes to a thickness; ok is false where none does.
func RoughFor(thick float64, u geom.Unit) (rough float64, ok bool) {
	list := sold
	if u == geom.Inch {
		list = nil
		for _, q := range quarters {
			list = append(list, q*geom.InchMM/4)
		}
	}
	i := slices.IndexFunc(list, func(r float64) bool { return r >= thick+Planing(u)-geom.Settle })
	if i < 0 {
		return 0, false
	}
	return list[i], true
}

// Planes reports whether a rough board planes to a thickness, and at which it does.
func Planes(rough, thick float64, u geom.Unit) (need float64, ok bool) {
	need = thick + least(u)
	return need, rough >= need-geom.Settle
}

// Boards are those of a stock as they are bought.
type Boards struct {
	Unit         geom.Unit
	Rough, Width float64
	Waste        float64 // what is cut away for knots, checks and ends, as a part of what is used
}

// Piece is what a part is sawn from: Strips boards of that size, which are glued edge to edge where they are several.
type Piece struct {
	Length, Width float64
	Strips        int
}

// Piece is that of a part with the grain along its length.
func (b Boards) Piece(length, width float64) (p Piece) {
	u := b.Unit
	p.Length, p.Width, p.Strips = b.up(length+Ends(u)), b.up(width+Edges(u)), 1
	for p.Width > b.Width+geom.Settle && p.Strips < maxStrips {
		p.Strips++
		p.Width = b.up((width+Trim(u))/float64(p.Strips) + Edges(u))
	}
	return p
}

// maxStrips is more than any part is glued of.
const maxStrips = 1000

func (b Boards) up(v float64) float64 {
	by := step(b.Unit)
	return math.Ceil(v/by-geom.Settle) * by
}

// Volume is how much rough wood so many parts take, with what is wasted of it.
func (b Boards) Volume(p Piece, parts int) float64 {
	return float64(parts*p.Strips) * p.Length * p.Width * b.Rough * (1 + b.Waste)
}

// Glued is the area of glued edges of so many parts that are sawn to a length and a thickness after that.
func (p Piece) Glued(thick float64, parts int) float64 {
	return float64(parts*(p.Strips-1)) * p.Length * thick
}
