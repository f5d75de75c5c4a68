// Package opening goes from a measured hole in a cabinet to boxes: which slide fits
// its depth, how its height is divided into rows, how large fronts and boxes become,
// and where the slides stand on the cabinet's sides. [Solve] is the one entry: a
// [Bank] goes in, a [Plan] comes out, with every [geom.Diagnosis].
//
// All lengths are in millimeters. Heights are over the datum, which is the lower
// edge of the opening unless the bank says otherwise; rows count from the top.
package opening

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Fronts says how drawer fronts stand to the opening.
type Fronts string

const (
	Inset   Fronts = "inset"   // within it
	Overlay Fronts = "overlay" // before it
	NoFront Fronts = "none"    // the boxes show
)

// Opening is the hole as it was measured: each size as one reading or several, of
// which the smallest counts.
type Opening struct {
	Width, Height, Depth []float64
	Diagonals            []float64 // of the face: none or two
	// FrameOverhang is how far a face frame stands in before each side of the cabinet.
	FrameOverhang   float64
	FaceFrame       bool
	Fronts          Fronts
	ClearanceBehind float64 // room to keep free behind the boxes
	// WebFrame is how wide the rails of web frames are under its boxes, DustPanel how thick a panel in them; 0
	// without.
	WebFrame, DustPanel float64
	// Sides is the stock of the cabinet's sides; nil where it is not known.
	Sides *joinery.Stock
}

// Counted is the size that counts.
func (o Opening) Counted() joinery.Size {
	return joinery.Size{Width: least(o.Width), Height: least(o.Height), Depth: least(o.Depth)}
}

func least(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	return slices.Min(list)
}

// Graduation says how free rows grow from the top down.
type Graduation string

const (
	Equal      Graduation = "equal"
	Arithmetic Graduation = "arithmetic" // each is higher than the one above by Step
	Geometric  Graduation = "geometric"  // each is Ratio times as high as the one above
)

// Row is one drawer of a bank.
type Row struct {
	Front float64 // height of its front; 0 is free
}

// Edges are lengths at the four sides of an opening.
type Edges struct{ Left, Right, Top, Bottom float64 }

// Bank is an opening with the drawers that share it.
type Bank struct {
	Unit       geom.Unit // in which lengths are round
	Opening    Opening
	Slide      Slide
	Rows       []Row // from the top down; at least one
	Graduation Graduation
	Step       float64
	Ratio      float64
	// FrontGap is between one front and the next. Edge is the gap between inset fronts and
	// the opening, or how far overlay fronts cover the cabinet beside it.
	FrontGap float64
	Edge     Edges
	// BoxHeights are the heights that boxes are made in; empty for any.
	BoxHeights []float64
	// LineBoring is the pitch of holes in the cabinet's sides on which the slides have
	// to come; 0 for none.
	LineBoring float64
	Sides      joinery.Stock
	Front      *joinery.Stock // of the drawer fronts; nil without
	// Lipped is the stock of box fronts whose lips cover the cabinet; nil of others. Lip is how thick the lips
	// are: the boxes stand out before the cabinet by it.
	Lipped *joinery.Stock
	Lip    float64
	// Aim is by how much wider boxes are made than the slide asks for, so that most come
	// out between its Minus and Plus; below 0 narrower.
	Aim float64
	// Solve tells what is made in another way: banks of one Make differ in their openings
	// and rows alone, so that one size of box can serve them. Common is what this one
	// gives up for that.
	Make   string
	Common Common
}

// Conventions for fronts, in mm, round in the unit of a job; common practice, no source.

// UsualFrontGap is between fronts.
func UsualFrontGap(u geom.Unit) float64 { return u.Usual(3, 1.0/8) }

// UsualReveal is between an inset front and the opening.
func UsualReveal(u geom.Unit) float64 { return u.Usual(2.5, 3.0/32) }

// UsualOverlay is how far a front lies over the cabinet beside the opening.
func UsualOverlay(u geom.Unit) float64 { return u.Usual(12, 1.0/2) }

// maxSpread is how far readings of one size may differ, in mm, before the opening
// is called uneven; common practice, no source.
const maxSpread = 1.0

// Readings of one size that differ by more are not of one opening: one is mistyped or misread, or the
// opening is no place for a drawer; common practice, no source.
const doubtfulSpread, doubtfulSpreadInch = 6.0, 1.0 / 4

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle

// OutOfSquare is how far a corner of the face is out of square, in mm over the
// opening's height, from its two diagonals: with width w, height h and diagonals p
// and q, p^2 - q^2 = 4 w s, where s is what the upper edge is shifted.
func (o Opening) OutOfSquare() float64 {
	w := least(o.Width)
	if len(o.Diagonals) != 2 || w <= 0 {
		return 0
	}
	p, q := o.Diagonals[0], o.Diagonals[1]
	return math.Abs(p-q) * (p + q) / (4 * w)
}
