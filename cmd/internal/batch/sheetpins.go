package batch

import (
	"cmp"
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// SheetPin is a registration hole of sheets: its radius in mm, and the bit that makes it. The
// zero value is none.
type SheetPin struct {
	Radius float64
	Bit    mill.Bit
}

// PinFor is the hole on which sheets of a stock with these parts are turned over: the widest
// of the parts' own, or one that their narrowest bit makes, of those that reach so deep if
// there are any; none where no router cuts them. It does not hang on the order of the parts.
func (b Batch) PinFor(stock joinery.Stock, parts []Part) (pin SheetPin) {
	var narrowest mill.Bit
	rank := func(c mill.Bit) int {
		if c.Reach > 0 && c.Reach < stock.Thickness.Max+mill.PinDepth {
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
				pin = SheetPin{r, p.Bits[c.Bit]}
			}
		}
		for _, bit := range p.Bits {
			if !bit.Engraves && (narrowest.Diameter == 0 || before(bit, narrowest)) {
				narrowest = bit
			}
		}
	}
	if pin.Radius == 0 && narrowest.Diameter > 0 {
		pin = SheetPin{max(mill.UsualPin(b.Units), b.Router.Register.Diameter, narrowest.Diameter) / 2, narrowest}
	}
	return pin
}

// turnedSheets are the stocks of which a router cuts parts on both faces, each as one sheet
// with all of its parts, wherever these will lie: what it has on its layers the sheets have.
func (b Batch) turnedSheets() (list []router.Sheet) {
	for _, stock := range b.Stocks {
		if stock.Length == 0 {
			continue
		}
		sheet := router.Sheet{Stock: stock.Name, Thickness: stock.Thickness.Mean, FromSpoilboard: b.Router.FromSpoilboard}
		var parts []Part
		sawn := false
		faces := make(map[geom.Face]bool)
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				if p.Stock.Name != stock.Name {
					continue
				}
				sawn = sawn || !d.Setup.Cutter.Kind.FollowsDrawing()
				for _, f := range p.Work.Faces {
					faces[f] = true
				}
				parts = append(parts, p)
				sheet.Parts = append(sheet.Parts, router.Placed{Part: p.Drawn(b.Router)})
			}
		}
		if len(faces) < 2 || !slices.ContainsFunc(parts, func(p Part) bool { return len(p.Bits) > 0 }) {
			continue
		}
		if pin := b.PinFor(stock, parts); !sawn && b.Sheets.TurnOn != job.TurnOnStops && pin.Radius > 0 {
			sheet.Pins, sheet.PinBit = []geom.Loop{geom.Circle(geom.Point{}, pin.Radius)}, pin.Bit
			sheet.PinDepth = b.Router.PinBelow(stock.Thickness.Mean, stock.Thickness.Max)
		}
		list = append(list, sheet)
	}
	return list
}
