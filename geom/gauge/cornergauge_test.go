package gauge

import (
	"math"
	"testing"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

func TestCornerGauge(t *testing.T) {
	dado := Row{Kind: fit.DadoDepth, Target: 6, Min: 5.9, Max: 6.1}
	if r, found := (Limits{Rows: []Row{{Kind: fit.TongueThick, Target: 5.5}, dado}}).CutDepth(); !found || r != dado {
		t.Errorf("%+v, %v", r, found)
	}
	if r, found := (Limits{Rows: []Row{{Kind: fit.TongueThick}}}).CutDepth(); found {
		t.Errorf("there is no dado, and %+v", r)
	}
	read := Limits{Rows: []Row{{Kind: fit.TongueThick, Min: 5.8, Max: 6}}}
	if least, most, found := read.Tongue(joinery.Spec{}); !found || least != 5.8 || most != 6 {
		t.Errorf("as it is read: %g to %g, %v", least, most, found)
	}
	front := joinery.Stock{Name: "front", Thickness: joinery.Thickness{Mean: 12, Min: 11.95, Max: 12.05}}
	spec := joinery.Spec{Front: front, Back: front}
	deep := Limits{Rows: []Row{{Kind: fit.RabbetDeep, Min: 5.9, Max: 6.2}}}
	// 12.05 - 6.2 and 11.95 - 5.9: right in the thickest and in the thinnest board
	least, most, found := deep.Tongue(spec)
	if !found || math.Abs(least-5.85) > 1e-9 || math.Abs(most-6.05) > 1e-9 {
		t.Errorf("by the rabbet: %g to %g, %v", least, most, found)
	}
	if spec.Back.Name = "other"; true {
		if _, _, found := deep.Tongue(spec); found {
			t.Error("box front and back differ, and one gauge serves for both")
		}
	}
}
