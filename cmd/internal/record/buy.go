package record

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Buy is one thing to buy. Quantities of glue are grams, of banding meters, in inch jobs
// ounces and feet.
type Buy struct {
	Kind     string  `json:"kind"` // board, test piece, slide or strips of wooden runners, packing, shim, hardware, offcut, banding, glue
	Name     string  `json:"name"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
	Cost     float64 `json:"cost,omitempty"`
}

// ToBuy is what a batch takes by its layouts on sheets.
func ToBuy(b batch.Batch, p sheets.Plan) []Buy {
	laid := SheetsOf(p).Stocks
	cuts, _ := CutListOf(b)
	return toBuy(b, material(b, laid), laid, p, lumberOf(b, cuts))
}

// toBuy is the board by the sheets of its layout, by the volume of rough boards, or by area where the job does not give
// their size, what a test cut takes that no offcut gives, and everything else.
func toBuy(b batch.Batch, material []Stock, laid []SheetStock, p sheets.Plan, rough []Lumber) []Buy {
	list := []Buy{}
	for _, m := range material {
		i := slices.IndexFunc(laid, func(k SheetStock) bool { return k.Stock == m.Stock })
		k := slices.IndexFunc(rough, func(l Lumber) bool { return l.Stock == m.Stock })
		switch {
		case i >= 0:
			list = append(list, sheetsToBuy(laid[i], b.Units)...)
		case k >= 0:
			list = append(list, roughToBuy(b, rough[k]))
		default:
			_, unit := words.Area(0, b.Units)
			list = append(list, Buy{"board", m.Stock, m.Area.In(b.Units), unit, m.Cost})
		}
	}
	pieces := p.TestPieces(b.Drawers)
	for _, kind := range slices.Sorted(maps.Keys(pieces)) {
		if t := pieces[kind]; t.Offcut == "" {
			side := func(mm float64) string { return words.Size(mm, b.Units) }
			list = append(list, Buy{"test piece", fmt.Sprintf("%s, at least %s x %s %s", t.Stock, side(geom.LengthOf(t.Length).RoundUp(b.Units).MM()), side(geom.LengthOf(t.Width).RoundUp(b.Units).MM()), b.Units), 1, "piece", 0})
		}
	}
	for _, x := range batch.ToBuy(b) {
		list = append(list, Buy{x.Kind, x.Name, math.Round(x.Quantity*100) / 100, x.Unit, Money(x.Cost)})
	}
	return list
}

// roughToBuy is the wood of a stock that is bought in rough boards.
func roughToBuy(b batch.Batch, l Lumber) Buy {
	of, _ := b.LumberOf(l.Stock)
	return Buy{"board", fmt.Sprintf("%s, rough boards %s thick", l.Stock, words.Tape(l.Thickness.MM(), b.Units)+" "+
		b.Units.String()), l.Quantity, l.Unit, Money(l.Quantity * of.Price)}
}

// sheetsToBuy are the sheets of a layout by size and batch; offcuts are there.
func sheetsToBuy(k SheetStock, u geom.Unit) (list []Buy) {
	side := func(l Length) string { return words.Size(l.MM(), u) }
	for _, z := range UsedSizes(k) {
		if z.Offcut {
			continue
		}
		size := k.AsWritten(z)
		name := fmt.Sprintf("%s, %s x %s %s", k.Stock, side(size[0]), side(size[1]), u)
		if along, ok := k.GrainAlong(z); ok && k.GrainAcross { // the other order than a dealer's
			name += fmt.Sprintf(", grain along the %s", side(along))
		}
		if z.Batch != "" {
			name += ", batch " + z.Batch
		}
		unit := "sheets"
		if z.Used == 1 {
			unit = "sheet"
		}
		list = append(list, Buy{"board", name, float64(z.Used), unit, Money(z.Price * float64(z.Used))})
	}
	return list
}
