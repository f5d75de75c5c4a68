// Package wood holds what a drawer maker looks up about the material: how a
// solid board moves with the moisture of the air, how heavy and how stiff wood
// and sheets are, and by how much a sheet may differ from its nominal thickness.
//
// The usual way in is [Find] or [FindSheet], then [SeasonalMovement] or
// [Sheet.Stiffness].
//
// The main source is the Wood Handbook of the US Forest Products Laboratory
// (FPL-GTR-190 of 2010 and FPL-GTR-282 of 2021). Beside every table stands what
// its numbers rest on:
//
//	original   read in the source itself
//	secondary  read in a text that quotes the source
//	from memory  confirmed in no document
//	computed   worked out from one of the others
//	common practice  a habit of the trade, without a source
//
// All of them are averages: single boards differ by ten percent and more.
// Functions return errors for values out of range, and never NaN.
package wood

import "fmt"

// inRange says what is wrong with a value outside low..high; NaN is outside.
func inRange(what string, value, low, high float64, unit string) error {
	if value >= low && value <= high {
		return nil
	}
	return fmt.Errorf("%s is %g, not from %g to %g%s", what, value, low, high, unit)
}
