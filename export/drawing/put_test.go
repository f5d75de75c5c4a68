package drawing

import (
	"reflect"
	"testing"

	"drawerwright/geom"
)

// TestPutIsAdd: a drawing that is given away comes to stand where a copy of it would.
func TestPutIsAdd(t *testing.T) {
	label := func() Drawing {
		d := Drawing{Width: 40, Height: 20}
		d.Line(Thin, geom.Point{X: 1, Y: 2}, geom.Point{X: 3, Y: 4})
		d.Loops(Medium, 1, geom.Rectangle(0, 0, 40, 20), geom.Rectangle(5, 5, 10, 10))
		d.Words(3, 4, 2, Bold, "side")
		return d
	}
	at := geom.Point{X: 7, Y: 11}
	var added, put Drawing
	for _, scale := range []float64{1, 0.25} {
		added.Add(label(), at, scale)
		put.Put(label(), at, scale)
	}
	if !reflect.DeepEqual(added, put) {
		t.Errorf("added %+v, put %+v", added, put)
	}
}
