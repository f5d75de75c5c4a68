// Package nest lays rectangular pieces out on sheets, so that they cost as little as
// possible, and says how close to the least that is.
//
// Lengths are whole numbers of a unit that the caller chooses; the origin is a sheet's
// lower left corner, x along its length, y across it. [Lay] lays out, [Check] checks a
// layout without knowing how it was made and [Layout] says how many any needs at least.
package nest

import (
	"math"

	"drawerwright/geom"
)

// Method is how pieces are cut from a sheet.
type Method uint8

const (
	// Guillotine layouts come apart by cuts from edge to edge, as saws make them.
	Guillotine Method = iota
	// Free layouts are for routers, which cut round each piece.
	Free
)

func (w Method) String() string { return [...]string{"guillotine", "free"}[w] }

// First is how the first cuts of a guillotine layout run, where that is asked for.
type First uint8

const (
	// FirstAny leaves it to the search.
	FirstAny First = iota
	// FirstAlongX rips a sheet into strips along its length before anything is cut across.
	FirstAlongX
	// FirstAlongY cuts it across first.
	FirstAlongY
)

// allows reports whether first cuts may leave strips that run along x, and along y.
func (f First) allows() [2]bool { return [...][2]bool{{true, true}, {true, false}, {false, true}}[f] }

// Piece is a size that is wanted so many times.
type Piece struct {
	Name          string
	Length, Width int64
	Count         int
	MayRotate     bool // it may lie the other way round
	// Match is above 0 for pieces that have to look alike: all with one number come
	// from sheets of one batch.
	Match int
	// Set is above 0 for pieces that keep their order: those with one number, each
	// wanted as often, lie side by side across their width, in the order of the list.
	Set int
}

// Sheet is a size that pieces are cut from.
type Sheet struct {
	Name          string
	Length, Width int64
	Trim          Trim
	Count         int     // in stock; 0 for as many as it takes
	Price         float64 // of one; only their proportions count
	Offcut        bool    // from the shelf: used before any other
	Batch         string  // that it was made in, for pieces that match
}

// Trim is what is cut off each edge before pieces are cut.
type Trim struct{ Left, Right, Bottom, Top int64 }

// Rules of a layout.
type Rules struct {
	Method Method
	Stages int   // of guillotine cuts, the first one with trims not counted; 0 for any number
	First  First // of guillotine cuts, where there is anything to cut that way
	Kerf   int64 // between pieces: a blade's, or a bit's with the gap that it is given
}

// Layout is pieces on sheets.
type Layout struct {
	Sheets     []LaidSheet
	Remaining  []int   // of each piece, how many there was no sheet for
	Cost       float64 // of the sheets; offcuts are free
	LowerBound float64 // what no layout of all pieces can cost less than; 0 where some are left
	Count      int     // sheets that are no offcuts
	MinSheets  int     // of these, what no layout can do with less
	Completed  bool    // the search ended by itself, not by its context
}

// Optimal reports whether no layout costs less.
func (l Layout) Optimal() bool { return l.Cost <= l.LowerBound*(1+1e-9) }

// Missing is how many pieces no sheet holds.
func (l Layout) Missing() (n int) {
	for _, of := range l.Remaining {
		n += of
	}
	return n
}

// Used is how many sheets of a size are used.
func (l Layout) Used(size int) (n int) {
	for _, s := range l.Sheets {
		if s.Sheet == size {
			n++
		}
	}
	return n
}

// LaidSheet is a sheet with pieces.
type LaidSheet struct {
	Sheet      int // index of its size
	Placements []Placement
}

// Placement is a piece, its lower left corner at X, Y from that of the sheet.
type Placement struct {
	Piece   int // index
	X, Y    int64
	Rotated bool
}

// Size of a piece as it lies, along x and y.
func (p Placement) Size(pieces []Piece) (x, y int64) {
	if q := pieces[p.Piece]; p.Rotated {
		return q.Width, q.Length
	} else {
		return q.Length, q.Width
	}
}

// Limits of what is laid out: sums and areas stay within whole numbers.
const (
	maxLength = 1 << 40 // a kilometer in nanometers
	maxPieces = 1_000_000
)

// Settings that diagnoses are about. Of pieces and sheets the subject's item says which.
const (
	SettingPieces geom.Setting = "pieces"
	SettingSheets geom.Setting = "sheets"
	SettingRules  geom.Setting = "rules"
)

// Why something cannot be laid out.
const (
	CodeNoSheets geom.Code = "nest-no-sheets"
	CodeRange    geom.Code = "nest-range" // a size, trim, price, count, kerf or stage out of range
	CodeSet      geom.Code = "nest-set"   // pieces that make no set
	CodeMatch    geom.Code = "nest-match" // too many sheets to choose batches from
)

// refused is the diagnosis of a layout that cannot be made: of one of the pieces or the
// sheets, or with 0 of the rules.
func refused(code geom.Code, s geom.Setting, item int, format string, args ...any) error {
	return geom.Diagnosis{Code: code, Level: geom.LevelError, Subject: geom.Subject{Setting: s, Item: item},
		Fact: geom.Sentencef(format, args...)}
}

func checked(pieces []Piece, sheets []Sheet, r Rules) error {
	if len(sheets) == 0 {
		return geom.Diagnosis{Code: CodeNoSheets, Level: geom.LevelError, Fact: geom.Sentencef("there are no sheets")}
	}
	if r.Kerf < 0 || r.Kerf > maxLength || r.Stages < 0 || r.Stages == 1 || r.First > FirstAlongY {
		return refused(CodeRange, SettingRules, 0, "kerf %d, stages %d or first cuts %d are out of range",
			r.Kerf, r.Stages, r.First)
	}
	for i, s := range sheets {
		t := s.Trim
		if s.Length <= 0 || s.Width <= 0 || s.Length > maxLength || s.Width > maxLength || s.Count < 0 || !(s.Price >= 0) || math.IsInf(s.Price, 0) ||
			min(t.Left, t.Right, t.Bottom, t.Top) < 0 || s.Length <= t.Left || s.Length-t.Left <= t.Right || s.Width <= t.Bottom || s.Width-t.Bottom <= t.Top {
			if t.Left+t.Right >= s.Length || t.Bottom+t.Top >= s.Width {
				return refused(CodeRange, SettingSheets, i, "sheet %s: trims leave nothing of it", s.Name)
			}
			return refused(CodeRange, SettingSheets, i,
				"sheet %s: its size, trim, price or count is out of range", s.Name)
		}
	}
	total := 0
	for i, p := range pieces {
		if p.Length <= 0 || p.Width <= 0 || p.Length > maxLength || p.Width > maxLength || p.Count < 0 || p.Count > maxPieces {
			return refused(CodeRange, SettingPieces, i, "piece %s: its size or count is out of range", p.Name)
		}
		if total += p.Count; total > maxPieces {
			return refused(CodeRange, SettingPieces, i, "over %d pieces", maxPieces)
		}
	}
	return nil
}
