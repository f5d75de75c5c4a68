package sheet

import "drawerwright/geom/nest"

// Fits reports whether a piece lies on what the trims leave of a sheet, as its grain lets it.
func Fits(p nest.Piece, z nest.Sheet) bool {
	x, y := z.Length-z.Trim.Left-z.Trim.Right, z.Width-z.Trim.Bottom-z.Trim.Top
	return p.Length <= x && p.Width <= y || p.MayRotate && p.Width <= x && p.Length <= y
}

// MinSize is the least sheet, in nm, that holds each of some pieces with the trims of a size.
func MinSize(pieces []nest.Piece, like nest.Sheet) (length, width int64) {
	for _, p := range pieces {
		length, width = max(length, p.Length), max(width, p.Width)
	}
	t := like.Trim
	return length + t.Left + t.Right, width + t.Bottom + t.Top
}

// Enough is with how many sheets of one size, of which there are some, all pieces lie on sheets.
// It is tried, so that who has that many is not told again: lay lays the pieces out.
func Enough(sheets []nest.Sheet, size int, lay func([]nest.Sheet) (nest.Layout, error)) (n int, found bool) {
	if sheets[size].Count == 0 || sheets[size].Offcut {
		return 0, false
	}
	with := func(n int) (l nest.Layout, all bool) {
		list := append([]nest.Sheet(nil), sheets...)
		list[size].Count = n
		l, err := lay(list)
		return l, err == nil && l.Missing() == 0
	}
	free, all := with(0) // any number
	if !all {
		return 0, false
	}
	const tries = 3 // a count bounds the search another way than the lack of one
	least := free.Used(size)
	for n := least; n < least+tries; n++ {
		if _, all := with(n); all {
			return n, true
		}
	}
	return 0, false
}
