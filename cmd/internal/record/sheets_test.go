package record

import (
	"testing"

	"drawerwright/geom/nest"
)

// TestBestPossible: only where no sheet has a price is a layout the best by area alone; sheets that cost nothing
// may lie beside others that do.
func TestBestPossible(t *testing.T) {
	byArea := "best possible by the sheets' area, for they have no prices"
	for _, c := range []struct {
		sizes []SheetSize
		want  string
	}{
		{[]SheetSize{{}, {}}, byArea},
		{[]SheetSize{{}, {}, {Offcut: true, Price: 3}}, byArea},
		{[]SheetSize{{Price: 60}, {}}, "best possible"},
		{[]SheetSize{{}}, "best possible"},
	} {
		if got := saidOf(nest.Layout{}, 0, c.sizes); got != c.want {
			t.Errorf("%+v: %s", c.sizes, got)
		}
	}
}
