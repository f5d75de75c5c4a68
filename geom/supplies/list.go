// Package supplies says what drawers take beside board: slides, hardware, edge banding and
// glue. Lengths are in millimeters, weights in kilograms, costs in the shop's money.
package supplies

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// Kind is what a supply is.
type Kind string

const (
	Slides   Kind = "slide"
	Hardware Kind = "hardware"
	Offcut   Kind = "offcut" // a piece that the shop cuts of what is left over, and does not buy
	Banding  Kind = "banding"
	Glue     Kind = "glue"
)

// Drawer is one kind of drawer with what it runs on.
type Drawer struct {
	joinery.Drawer
	Slide       opening.Slide // the zero value for none
	SlideLength float64       // mm
	Banded      []Banded      // its parts with edge banding
}

// Banded is a part with edge banding.
type Banded struct {
	Stock     string  // that it is for
	Edge      float64 // mm of one piece
	Thickness float64 // mm, of the banding
	Price     float64 // a meter
	Pieces    int
}

// Supply is one thing to buy or to cut. Of Slide, Item and Banded that of its Kind is set.
type Supply struct {
	Kind        Kind
	Slide       opening.Slide
	SlideLength float64 // mm
	Item        joinery.Item
	Banded      Banded
	// Quantity is a number of pieces, or pairs of slides that go in pairs; of banding it is mm,
	// what is trimmed off with it; of glue kilograms.
	Quantity float64
	Area     float64 // mm2 of joints that glue is for
	Cost     float64 // 0 where there is no price
}

// For is what drawers take, in their order: slides, hardware, banding, and glue last. The
// same thing may stand in it several times, once for each drawer that takes it.
func For(drawers []Drawer) (list []Supply) {
	glue := 0.0
	for _, d := range drawers {
		n := float64(d.Spec.Count)
		if k := d.Slide.Kind; k != "" && k != opening.NoSlide {
			list = append(list, Supply{Kind: Slides, Slide: d.Slide, SlideLength: d.SlideLength, Quantity: n})
		}
		glue += float64(d.GlueArea() * n)
	}
	for _, d := range drawers {
		for _, h := range d.Hardware {
			one := Supply{Kind: Hardware, Item: h, Quantity: float64(h.Count * d.Spec.Count)}
			if h.Offcut {
				one.Kind = Offcut
			}
			list = append(list, one)
		}
	}
	for _, d := range drawers {
		for _, b := range d.Banded {
			run := b.Edge * float64(b.Pieces) * BandingWaste
			list = append(list, Supply{Kind: Banding, Banded: b, Quantity: run, Cost: run / 1000 * b.Price})
		}
	}
	return append(list, Supply{Kind: Glue, Area: glue, Quantity: GlueFor(glue)})
}
