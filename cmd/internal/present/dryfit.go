package present

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

func stackText(out *Printed, s record.Stack, u geom.Unit) {
	t := NewTable(Words(""), Words(""), Words(""))
	t.Add("two sides and a box front, side by side", caliper(s.SidesAndFront, u),
		fmt.Sprintf("%s, %s, or the stock is not what was measured", u,
			words.Within(s.SidesAndFrontRange[0].MM(), s.SidesAndFrontRange[1].MM(), u)))
	t.Add("outside width, dry fitted", caliper(s.OutsideWidth, u), u.String())
	t.Add("both diagonals, over the ends of the sides", caliper(s.Diagonal, u),
		fmt.Sprintf("%s, and no more than %s apart", u, caliper(s.MaxDiagonalDifference, u)))
	t.Print(out, "")
	fmt.Fprintln(out, Squaring)
}

// Squaring is how a box is squared before the glue takes.
const Squaring = "To square a box, clamp across the longer diagonal until the two are equal."
