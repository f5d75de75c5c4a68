package reference

import (
	"errors"
	"strings"

	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/coupon"
)

// unseen are the codes that no job of a shop leads to, with the reason. They are not listed.
var unseen = map[string]string{
	"groove-height": "it names a measure of a test cut, and no message",
	"joint":         "the reader of the job knows all corners", "thickness": "the reader of the job refuses such a board",
	"winding":   "the program draws all outlines itself",
	"falls-out": "the program draws all plates itself", "meets": "the program draws all plates itself",
	"outside": "the program draws all plates itself", "shape": "the program draws all plates itself",
	"neck":           "no part is as narrow: the reader and the joints ask for more",
	"web":            "joints and fittings are only as deep as leaves wood, or go through",
	"open-mouth":     "joints leave wider notches than any kerf",
	"outline-corner": "joints make notches with room for reliefs",
	"bit-width":      "joints make cuts for the bits that there are",
	"nest-no-sheets": "sheets are looked at before", "nest-range": "the reader of the job or list refuses it",
	"nest-set": "the reader of the list refuses it", "nest-match": "the reader of the job refuses as many sizes of sheets",
	"sheets": "a fault of the program", "sheet-cut": "a fault of the program",
}

// board is what a coupon is cut from that can be made, in mm.
var board = coupon.Asked{Thickness: 12, Tongue: 6, Cutter: 6, Depth: 6, Unit: geom.Millimeter}

// otherCommands are the codes that are not about a job file, with the command that prints them
// and what it asks for.
var otherCommands = map[string]struct {
	command string
	ask     func() error
}{
	"list": {"layout", func() error {
		_, err := list.Read("list.csv", strings.NewReader("name,length,width\nside,500,wide\n"), geom.Millimeter)
		return err
	}},
	"coupon-size":   {"coupon", couponOf(func(a *coupon.Asked) { a.Tongue = 0.5 })},
	"coupon-web":    {"coupon", couponOf(func(a *coupon.Asked) { a.Depth = 11 })},
	"coupon-cutter": {"coupon", couponOf(func(a *coupon.Asked) { a.Cutter = 9 })},
	"coupon-length": {"coupon", couponOf(func(a *coupon.Asked) { a.Tongue, a.Cutter = 60, 55 })},
}

func couponOf(change func(*coupon.Asked)) func() error {
	return func() error {
		a := board
		change(&a)
		_, err := coupon.Make(a)
		return err
	}
}

// diagnosed is the diagnosis that an error holds.
func diagnosed(err error) (d geom.Diagnosis, found bool) {
	var p list.Problem
	if errors.As(err, &p) {
		return p.Diagnosis, true
	}
	return d, errors.As(err, &d)
}
