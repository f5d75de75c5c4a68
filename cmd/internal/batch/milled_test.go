package batch

import (
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/joinery"
)

// TestManyAreShownAsDesigned: a job of more kinds of drawer than memory has room for shows milled solids only where it
// asks for them.
func TestManyAreShownAsDesigned(t *testing.T) {
	d := Drawer{}
	d.Spec.Cutter.Kind = joinery.Router
	few, many := Batch{Drawers: make([]Drawer, job.MaxMilled)}, Batch{Drawers: make([]Drawer, job.MaxMilled+1)}
	if !few.Milled(d) || many.Milled(d) {
		t.Errorf("few: %v, many: %v", few.Milled(d), many.Milled(d))
	}
	if many.Preview = job.PreviewMilled; !many.Milled(d) {
		t.Error("it is asked for")
	}
}
