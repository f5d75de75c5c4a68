package breakdown

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// board is one in hand with what is to be done to it.
type board struct {
	nest.CutTree
	mark  string // what is written on it: the sheet's number, and a letter of the strip
	name  string // its mark with what it is for
	short string
	count int
	edge  [2]int64 // along x and y, what is to be trimmed off its first edge
	over  [2]int64 // what is beyond its last section and is no part of the layout
	// halved says that its end was made where it was cut in two: beyond the last section is an allowance at most.
	halved [2]bool
	after  int // the last cut that it was in hand for, -1 for none
	of     *sheet
}

// sheet is what the boards of one have in common.
type sheet struct {
	Sheet
	cut *Laid
}

// Laid is what cuts make of a layout: allowances move pieces, and make offcuts smaller.
type Laid struct {
	Called  []string   // what placed pieces are called as boards
	Places  [][2]int64 // where their lower left corners lie
	Offcuts []nest.Offcut
	Named   Named
}

// strip names a board that is cut further: by a letter, and by the pieces that it holds.
func (b *board) strip() {
	b.mark = b.of.Name + letters(b.of.cut.Named.Strips)
	name, short := b.of.Names(b.Placed())
	b.name, b.short = "strip "+b.mark+" for "+name, b.mark+" for "+short
	b.of.cut.Named.Strips++
}

// whole is the size of a board with what is still to be trimmed off.
func (b board) whole(axis geom.Axis) int64 {
	return b.Size(axis) + b.edge[axis] + b.over[axis]
}

func (b board) hand() Workpiece {
	return Workpiece{Name: b.name, Short: b.short, Length: b.whole(geom.AlongX), Width: b.whole(geom.AlongY)}
}

// next is the axis along which a board is cut next, and its sections along it; none
// where it is done.
func (b board) next() (axis geom.Axis, sections []nest.CutTree) {
	if len(b.Sections) > 0 {
		return b.Axis, parts(b.CutTree)
	}
	if b.Piece >= 0 {
		for _, way := range [...]geom.Axis{b.ShorterSide(), 1 - b.ShorterSide()} {
			if b.edge[way] > 0 || b.over[way] > 0 {
				return way, []nest.CutTree{b.CutTree}
			}
		}
	}
	return geom.AlongX, nil
}

// offcut is what trims leave of the end of a board from a place on, which reaches so far along an axis. An allowance
// may be in the sheet's trim.
func (b board) offcut(axis geom.Axis, from, rest int64) (clean [2]int64) {
	at, z := [2]int64{b.X, b.Y}, b.of.Size
	clean = [2]int64{b.Length, b.Width}
	at[axis], clean[axis] = from, rest-b.over[axis]
	for i, end := range [...]int64{z.Length - z.Trim.Right, z.Width - z.Trim.Top} {
		clean[i] = max(0, min(clean[i], end-at[i]))
	}
	if min(clean[0], clean[1]) > 0 {
		o := nest.Offcut{X: at[0], Y: at[1], Length: clean[0], Width: clean[1]}
		b.of.cut.Offcuts = append(b.of.cut.Offcuts, o)
	}
	return clean
}

// settled is a board without sections that are all of it.
func (b board) settled() board {
	for len(b.Sections) == 1 && b.Sections[0].Size(b.Axis) == b.whole(b.Axis) {
		b.CutTree = b.Sections[0]
	}
	return b
}

// done reports whether a board is a piece, to which nothing is done.
func (b board) done() bool {
	_, more := b.next()
	return len(more) == 0 && b.Piece >= 0
}

// given is a board as it is in hand once it is cut off.
func (b board) given() Workpiece {
	h := b.hand()
	if b.done() {
		h.Piece = true
		b.of.cut.Called[b.Piece], b.of.cut.Places[b.Piece] = b.mark, [2]int64{b.X, b.Y}
		name, short := b.of.Names(b.Placed())
		h.Name, h.Short = b.mark+" "+name, b.mark+" "+short
	}
	return h
}

// numbered marks the nth piece that comes off a board: 1A2 is the second of strip 1A, 1-2 of sheet 1.
func (b board) numbered(n int) string {
	if b.mark == b.of.Name {
		b.of.cut.Named.Pieces++
		return fmt.Sprintf("%s-%d", b.mark, b.of.cut.Named.Pieces)
	}
	return fmt.Sprint(b.mark, n)
}

// letters count strips: A to Z, AA and so on, without I and O, which look like 1 and 0.
func letters(n int) (text string) {
	const known = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	for n++; n > 0; n = (n - 1) / len(known) {
		text = known[(n-1)%len(known):][:1] + text
	}
	return text
}
