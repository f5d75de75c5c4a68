// Package strength says whether a drawer bears its load: its bottom, which sags, and the
// slides, which carry box and load. Lengths are in millimeters, weights in kilograms.
package strength

import (
	"math"

	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
	"drawerwright/geom/wood"
)

// MaxSag is the part of its shorter span by which a bottom may sag before it shows and
// rubs; common practice, no source.
const MaxSag = 1.0 / 200

// Bottom is how a bottom bears its load. The zero value is one that is not known.
type Bottom struct {
	Sag      plate.Sag // under the load, in mm and N/mm2
	Lasting  float64   // mm: the simply supported sag when the load stays for years
	SagLimit float64   // mm, by [MaxSag]; 0 where nothing is known
	Enough   float64   // mean thickness of the stock, in mm, with which the bottom keeps it; 0 where none does
}

// BottomOf works out how far a drawer's bottom sags under an even load in kg. Its edges, in
// grooves or on screws, are held better than simply supported and worse than clamped. Of the
// ways in which it may lie the one that sags most counts. It is the zero value where the
// stiffness of its stock is not known, or beyond what the package plate takes.
func BottomOf(d joinery.Drawer, load float64) (b Bottom) {
	stock := d.Spec.Bottom
	if stock.Stiffness == 0 {
		return Bottom{}
	}
	b.SagLimit = MaxSag * math.Min(d.Inside.Width, d.Inside.Depth)
	for _, laid := range ways(d) {
		sag, err := plate.Of(laid, load)
		if err != nil {
			return Bottom{}
		}
		if sag.Simple > b.Sag.Simple {
			b.Sag = sag
		}
		b.Enough = math.Max(b.Enough, enough(stock, laid, load, b.SagLimit))
	}
	creep := stock.Creep
	if creep == 0 {
		creep = wood.UsualCreep
	}
	b.Lasting = b.Sag.Simple * creep
	return b
}

// SagsTooMuch reports whether the bottom sags more than its limit.
func (b Bottom) SagsTooMuch() bool { return b.Sag.Simple > b.SagLimit }

// MaxLoad is the load, in kg, under which the bottom keeps its limit, by what it does under
// another one: sag is in proportion to load.
func (b Bottom) MaxLoad(load float64) float64 { return load * b.SagLimit / b.Sag.Simple }

// ways are those in which the bottom may lie: its grain, or that of its face, from side to
// side; or, cut from a stock whose grain is of no matter, either way.
func ways(d joinery.Drawer) []plate.Bottom {
	stock := d.Spec.Bottom
	across := stock.StiffnessAcross
	if across == 0 {
		across = stock.Stiffness
	}
	b := plate.Bottom{Length: d.Inside.Width, Width: d.Inside.Depth, Thickness: stock.Thickness.Min,
		Along: stock.Stiffness, Across: across, Poisson: stock.Poisson, Shear: stock.Shear,
		ThroughAlong: stock.Through, ThroughAcross: stock.ThroughAcross}
	if stock.Grain != joinery.GrainNone || b.Along == b.Across {
		return []plate.Bottom{b}
	}
	turned := b
	turned.Length, turned.Width = b.Width, b.Length
	return []plate.Bottom{b, turned}
}
