package present

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Stack is what a shop measures with parts held together before glue: both sides and
// a front side by side, the dry-fitted box, its diagonals.
type Stack struct {
	SidesAndFront  record.Length `json:"sides_and_front"`
	OutsideWidth   record.Length `json:"outside_width"`
	OutsideDepth   record.Length `json:"outside_depth"`
	Diagonal       record.Length `json:"diagonal"`
	DiagonalsApart record.Length `json:"diagonals_apart_at_most"`
}

// StackOf are those of a drawer.
func StackOf(d batch.Drawer) Stack {
	s := d.Spec
	box := joinery.Size{Width: d.Outside.Width, Depth: s.Depth} // over the ends of the sides
	diagonal := testcut.Diagonals(box)
	return Stack{
		SidesAndFront: record.Length(2*s.Sides.Thickness.Mean + s.Front.Thickness.Mean), OutsideWidth: record.Length(d.Outside.Width), OutsideDepth: record.Length(d.Outside.Depth),
		Diagonal: record.Length(diagonal), DiagonalsApart: record.Length(s.Limits.Diagonal),
	}
}

func stackText(out *bytes.Buffer, s Stack, u geom.Unit) {
	t := NewTable(Words(""), Words(""), Words(""))
	t.Add("two sides and a front, side by side", caliper(s.SidesAndFront, u),
		u.String()+", or the stock is not what was measured")
	t.Add("outside width, dry fitted", caliper(s.OutsideWidth, u), u.String())
	t.Add("both diagonals, over the ends of the sides", caliper(s.Diagonal, u),
		fmt.Sprintf("%s, and no more than %s apart", u, caliper(s.DiagonalsApart, u)))
	t.print(out, "")
	fmt.Fprintln(out, Squaring)
}

// Squaring is how a box is squared before the glue takes.
const Squaring = "To square a box, clamp across the longer diagonal until the two are equal."
