package sheets

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/sheet"
)

// leaves finds a cut of a sheet that leaves the shortest sheet of its size, or is in an
// area to keep out of, as it is drawn. Layouts keep clear of both: this looks at what came
// of them, and knows nothing of trims.
func (s *Stock) leaves(one Sheet, drawn []Drawing) error {
	if !s.Routed || len(drawn) == 0 {
		return nil
	}
	z := s.Sheets[one.Sheet]
	length, width := geom.Length(z.Length).MM(), geom.Length(z.Width).MM()
	whole := drawn[0].Part
	shortest := geom.Rect{Max: geom.Point{X: length - s.Short[0], Y: width - s.Short[1]}}
	stray, found := sheet.StrayOf(sheet.CutPart{Work: whole.Work, Bits: whole.Bits}, shortest, s.blocked(length))
	if !found {
		return nil
	}
	b := stray.Bounds
	at := fmt.Sprintf("sheet %d: a %s from x %.2f, y %.2f to x %.2f, y %.2f mm", one.Number,
		stray.Cut.Operation, b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
	if stray.KeptOut {
		return fmt.Errorf("%s is in an area to keep out of", at)
	}
	return fmt.Errorf("%s leaves the shortest sheet", at)
}
