package batch

import (
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/sheet"
)

// PinFor is the hole on which sheets of a stock with these parts are turned over.
func (b Batch) PinFor(stock joinery.Stock, parts []sheet.CutPart) sheet.Pin {
	return sheet.PinFor(parts, stock.Thickness.Max, b.Router.Register.Diameter, b.Units)
}

// CutPart is the part as a router cuts it from a sheet.
func (p Part) CutPart() sheet.CutPart { return sheet.CutPart{Work: p.Work(), Bits: p.Bits} }

// turnedSheets are the stocks of which a router cuts parts on both faces, each as one sheet
// with all of its parts, wherever these will lie: what it has on its layers the sheets have.
func (b Batch) turnedSheets() (list []router.Sheet) {
	for _, stock := range b.Stocks {
		if stock.Length == 0 {
			continue
		}
		whole := router.Sheet{Stock: stock.Name, Thickness: stock.Thickness.Mean, FromSpoilboard: b.Router.FromSpoilboard}
		var parts []sheet.CutPart
		sawn := false
		faces := make(map[geom.Face]bool)
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				if p.Stock.Name != stock.Name {
					continue
				}
				sawn = sawn || !d.Setup.Cutter.Kind.FollowsDrawing()
				for _, f := range p.Work().Faces {
					faces[f] = true
				}
				parts = append(parts, p.CutPart())
				whole.Parts = append(whole.Parts, router.Placement{Part: p.Drawn(b.Router)})
			}
		}
		if len(faces) < 2 || !slices.ContainsFunc(parts, func(p sheet.CutPart) bool { return len(p.Bits) > 0 }) {
			continue
		}
		if pin := b.PinFor(stock, parts); !sawn && b.Sheets.FlipOn != job.FlipOnStops && pin.Radius > 0 {
			whole.Pins, whole.PinBit = []geom.Loop{geom.Circle(geom.Point{}, pin.Radius)}, pin.Bit
			whole.PinDepth = b.Router.PinBelow(stock.Thickness.Mean, stock.Thickness.Max)
		}
		list = append(list, whole)
	}
	return list
}
