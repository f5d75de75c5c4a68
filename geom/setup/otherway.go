package setup

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// OtherFenced is the machine with a fence that makes what one of a kind refuses.
func OtherFenced(k joinery.CutterKind) joinery.CutterKind {
	if k == joinery.RouterTable {
		return joinery.Saw
	}
	return joinery.RouterTable
}

// UsualBits are the bits and plough irons, in mm, that a shop has at hand, the widest first;
// common practice, no source.
func UsualBits(u geom.Unit) []float64 {
	if u == geom.Inch {
		return []float64{geom.InchMM / 4, 3 * geom.InchMM / 16, geom.InchMM / 8}
	}
	return []float64{6, 4, 3}
}

// PlainEnds are the corners whose fronts have plain ends, so that nothing has to be stood on
// end or cut across at a machine, the stronger first.
var PlainEnds = []joinery.Joint{joinery.Rabbet, joinery.Butt}
