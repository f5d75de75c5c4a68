// Package supplies says what drawers take beside board: slides, packing and shims, hardware,
// edge banding and glue. Lengths are in millimeters, weights in kilograms, costs in the shop's money.
package supplies

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// Kind is what a supply is.
type Kind string

const (
	Slides   Kind = "slide"
	Packing  Kind = "packing" // between a cabinet's side and a slide, level with the face frame
	Shim     Kind = "shim"    // between a cabinet's side and a slide, where a wider opening takes the box of another
	Hardware Kind = "hardware"
	Offcut   Kind = "offcut" // a piece that the shop cuts of what is left over, and does not buy
	Banding  Kind = "banding"
	Glue     Kind = "glue"
)

// Drawer is one kind of drawer with what it runs on.
type Drawer struct {
	joinery.Drawer
	Slide       opening.Slide   // the zero value for none
	SlideLength float64         // mm
	Packing     float64         // mm, the thickness of what its slides are packed out with at each side
	Shim        float64         // mm, the thickness of its shims at each side
	Banded      []Banded        // its parts with edge banding
	Strips      []opening.Strip // that it runs on
	GluedUp     float64         // mm2 of edges of boards that its parts are glued up of, of all boxes
}

// Banded is a part with edge banding.
type Banded struct {
	Stock     string  // that it is for
	Edge      float64 // mm of one piece
	Thickness float64 // mm, of the banding
	Price     float64 // a meter
	Pieces    int
}

// Supply is one thing to buy or to cut. Of Slide, Item, Strip and Banded that of its Kind is set;
// packing and shims have the Slide behind which they go.
type Supply struct {
	Kind        Kind
	Slide       opening.Slide
	SlideLength float64 // mm
	Thickness   float64 // mm, of packing and shims, which are as long and as high as the slide
	Item        joinery.Item
	Strip       opening.Strip // of a kind that is the name of its part
	Banded      Banded
	// Quantity is a number of pieces, or pairs of slides that go in pairs; of banding it is mm,
	// what is trimmed off with it; of glue kilograms.
	Quantity float64
	Area     float64 // mm2 of joints that glue is for
	Cost     float64 // 0 where there is no price
}

// For is what drawers take, in their order: slides, what goes behind them, hardware, banding, and glue last. The
// same thing may stand in it several times, once for each drawer that takes it.
func For(drawers []Drawer) (list []Supply) {
	glue := 0.0
	for _, d := range drawers {
		n := float64(d.Spec.Count)
		for _, s := range d.Strips {
			list = append(list, Supply{Kind: Kind(s.Part), Strip: s, Quantity: float64(s.Pieces()) * n})
		}
		if k := d.Slide.Kind; k != "" && k != opening.NoSlide && len(d.Strips) == 0 {
			list = append(list, Supply{Kind: Slides, Slide: d.Slide, SlideLength: d.SlideLength, Quantity: n})
		}
		glue += float64(d.GlueArea()*n) + d.GluedUp
	}
	for _, d := range drawers {
		list = append(list, d.behindSlides()...)
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

// behindSlides is what goes between the slides of a drawer and the cabinet, a piece at each
// side; nothing where the slide's height, which is that of the pieces, is
// not known, or guides of wood stand there.
func (d Drawer) behindSlides() (list []Supply) {
	if d.Slide.Height == 0 || len(d.Strips) > 0 {
		return nil
	}
	for _, p := range []struct {
		kind  Kind
		thick float64
	}{{Packing, d.Packing}, {Shim, d.Shim}} {
		if p.thick > 0 {
			list = append(list, Supply{Kind: p.kind, Slide: d.Slide, SlideLength: d.SlideLength, Thickness: p.thick,
				Quantity: float64(2 * d.Spec.Count)})
		}
	}
	return list
}
