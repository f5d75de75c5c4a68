package sheet_test

import (
	"testing"

	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// TestMinSize: pieces of 900 x 200 and 500 x 300, trims of 1 and 2 at the ends, 3 and 4 below and
// above: 903 x 307, which then holds both and nothing longer.
func TestMinSize(t *testing.T) {
	trim := nest.Trim{Left: 1, Right: 2, Bottom: 3, Top: 4}
	pieces := []nest.Piece{{Length: 900, Width: 200}, {Length: 500, Width: 300}}
	length, width := sheet.MinSize(pieces, nest.Sheet{Trim: trim})
	if length != 903 || width != 307 {
		t.Fatalf("%d x %d", length, width)
	}
	z := nest.Sheet{Length: length, Width: width, Trim: trim}
	for _, p := range pieces {
		if !sheet.Fits(p, z) {
			t.Errorf("%+v does not fit", p)
		}
	}
	for _, p := range []nest.Piece{{Length: 901, Width: 200}, {Length: 500, Width: 301}, {Length: 200, Width: 900}} {
		if sheet.Fits(p, z) {
			t.Errorf("%+v fits", p)
		}
	}
	if !sheet.Fits(nest.Piece{Length: 200, Width: 900, MayRotate: true}, z) {
		t.Error("a piece that may be rotated does not fit")
	}
}

// TestEnough: with any number of sheets the pieces take three of the second size; a count of three
// leaves one, four do. Of an offcut, or a size of which there is no count, nothing is asked for.
func TestEnough(t *testing.T) {
	sheets := []nest.Sheet{{Count: 1, Offcut: true}, {Count: 2}, {}}
	lay := func(list []nest.Sheet) (nest.Layout, error) {
		three := []nest.LaidSheet{{Sheet: 1}, {Sheet: 1}, {Sheet: 2}, {Sheet: 1}}
		if n := list[1].Count; n > 0 && n < 4 {
			return nest.Layout{Sheets: three, Remaining: []int{0, 1}}, nil
		}
		return nest.Layout{Sheets: three, Remaining: []int{0, 0}}, nil
	}
	if n, found := sheet.Enough(sheets, 1, lay); !found || n != 4 {
		t.Errorf("%d, %t", n, found)
	}
	if sheets[1].Count != 2 {
		t.Error("trying has changed the sheets")
	}
	for _, size := range []int{0, 2} {
		if n, found := sheet.Enough(sheets, size, lay); found {
			t.Errorf("size %d: %d", size, n)
		}
	}
}
