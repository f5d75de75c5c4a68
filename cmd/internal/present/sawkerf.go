package present

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// littleKerf is by how much a kerf may be wider than planned before it is no matter, in mm: what blades of one label
// differ by (common practice, no source).
const littleKerf = 0.5

// widestKerf is how wide a kerf may be before the last piece of a board comes out too small, and the cut of that
// piece. What is left of a board shares its rest among its cuts; a part that is left is said of elsewhere.
func widestKerf(k record.SheetStock) (most float64, at int) {
	type along struct {
		board  string
		length bool // it is divided along its length
	}
	cuts := make(map[along]int)
	most = k.Kerf.MM() + littleKerf
	for i, c := range k.Cuts {
		if c.Trim || c.Yields == nil {
			continue
		}
		of, got := c.Workpiece, c.Yields
		way := along{of.Name, got.Length < of.Length}
		whole, piece := of.Width.MM(), got.Width.MM()
		if way.length {
			whole, piece = of.Length.MM(), got.Length.MM()
		}
		rest := whole - piece // all of it dust
		if c.Remainder != nil {
			cuts[way]++
			rest -= k.Kerf.MM()
		}
		if n := cuts[way]; n > 0 && (c.Remainder == nil || c.Remainder.Waste) && k.Kerf.MM()+rest/float64(n) < most {
			most, at = k.Kerf.MM()+rest/float64(n), i+1
		}
	}
	return most, at
}

// kerfNote is what is measured before the first cut where a kerf that is a little wider spoils a piece.
func kerfNote(k record.SheetStock, u geom.Unit) string {
	most, at := widestKerf(k)
	if at == 0 {
		return ""
	}
	return fmt.Sprintf("Measure the kerf in waste first: the plan is for %s, and with more than %s cut %d has too "+
		"little board.", of(k.Kerf).Text(u), geom.LengthOf(most).RoundDown(u).Text(u), at)
}
