package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// Weight of a rectangle of the stock in kg, 0 where it is not known.
func (s *Stock) Weight(length, width int64) float64 {
	return float64(length) * float64(width) * s.weight()
}

// Grained reports whether its sheets have a grain, along their length.
func (s *Stock) Grained() bool { return s.Stock.Grain != "" && s.Stock.Grain != joinery.GrainNone }

// Remaining is how many pieces no sheet holds.
func (s *Stock) Remaining() int { return s.Layout.Missing() }

// Used is how many sheets of each size are used.
func (s *Stock) Used() []int {
	used := make([]int, len(s.Sheets))
	for _, l := range s.Layout.Sheets {
		used[l.Sheet]++
	}
	return used
}

// Offcuts are those of a shelf that a plan uses, and those that it leaves, their sides
// rounded down to whole millimeters or 32nds of an inch.
func (p Plan) Offcuts() (used, left []list.Offcut) {
	side := func(l int64) int64 { return int64(sheet.OffcutSide(geom.Length(l), p.Units)) }
	for _, s := range p.Stocks {
		stock := cmp.Or(s.LotOf, s.Name)
		for _, one := range s.Laid {
			size := s.Sheets[one.Sheet]
			if size.Offcut {
				used = append(used, list.Offcut{Stock: s.Name, Name: size.Name, Length: size.Length, Width: size.Width, Batch: size.Batch})
			}
			for k, o := range one.Offcuts {
				for n := range one.Count {
					left = append(left, list.Offcut{Stock: stock, Name: p.OffcutName(s.Name, one, n, k),
						Length: side(o.Length), Width: side(o.Width), Batch: size.Batch})
				}
			}
		}
	}
	return used, left
}

// OffcutName is what the k-th offcut of the n-th of sheets that are cut alike is called,
// on its label and on a shelf: by the job and the stock, since each stock has a sheet 1.
func (p Plan) OffcutName(stock string, one Sheet, n, k int) string {
	return strings.TrimSpace(fmt.Sprintf("%s %d-%d", strings.TrimSpace(p.Title+" "+stock), one.Number+n, k+1))
}

// Fits reports whether a piece could lie on any of the sheets, with those of its set beside it, if there were enough.
func (s *Stock) Fits(piece int) bool { return s.hold(nest.Whole(s.Pieces, piece, s.Rules.Kerf)) }

// FitsAlone is Fits without those of its set.
func (s *Stock) FitsAlone(piece int) bool { return s.hold(s.Pieces[piece]) }

func (s *Stock) hold(p nest.Piece) bool {
	return slices.ContainsFunc(s.Sheets, func(z nest.Sheet) bool { return sheet.Fits(p, z) })
}

// PieceSheets tells for each piece the numbers of the sheets that it comes from, as often
// as it is laid.
func (s *Stock) PieceSheets() [][]int {
	of := make([][]int, len(s.Pieces))
	for _, one := range s.Laid {
		for n := range one.Count {
			for _, p := range one.Placements {
				of[p.Piece] = append(of[p.Piece], one.Number+n)
			}
		}
	}
	return of
}
