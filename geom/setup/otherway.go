package setup

import (
	"slices"

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

// UsualBits are the bits and plow irons, in mm, that a shop has at hand, the widest first;
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

// Substitute is what a drawer is cut with instead: another machine with a cutter of a width in mm,
// or, where that has no kind, another corner.
type Substitute struct {
	Kind  joinery.CutterKind
	Width float64
	Joint joinery.Joint
}

// Substitutes are what makes a step that the machine refuses, a list for each alternative that
// changes the drawer: of those that are alike, in the order in which a shop would take them. Bits
// are the usual ones of a unit.
func (s Step) Substitutes(c joinery.Cutter, u geom.Unit) (lists [][]Substitute) {
	with := func(k joinery.CutterKind, widths ...float64) (list []Substitute) {
		for _, w := range widths {
			list = append(list, Substitute{Kind: k, Width: w})
		}
		return list
	}
	for _, a := range s.Alternatives {
		switch a {
		case ByOther:
			lists = append(lists, with(OtherFenced(c.Kind), c.Width))
		case ByRouter:
			lists = append(lists, with(joinery.Router, UsualBits(u)...))
		case ByHand:
			lists = append(lists, with(joinery.Hand, UsualBits(u)...))
		case ByCorner:
			var list []Substitute
			for _, joint := range PlainEnds {
				list = append(list, Substitute{Joint: joint})
			}
			lists = append(lists, list)
		}
	}
	return lists
}

// Besides are those of a step's alternatives with which the drawer stays as it is.
func (s Step) Besides() []Alternative {
	return slices.DeleteFunc(slices.Clone(s.Alternatives),
		func(a Alternative) bool { return a != ByStrip && a != ByGuide })
}
