package packet

import (
	"fmt"

	"drawerwright/cmd/internal/batch"
)

// outLeft and outBelow are columns of the table below the steps of drawers: where drawer fronts stand on their boxes.
const outLeft, outBelow = "out left", "out below"

// hangFront is how a drawer front comes on to its box; none where the drawer has none.
func hangFront(d batch.Drawer) (list []string) {
	front := d.Spec.DrawerFront
	if front == nil {
		return nil
	}
	place := fmt.Sprintf("With the box lying on its back, set the drawer front on the box front as the columns %s and "+
		"%s in the packet's chapter Assembly have it, and clamp it.", outLeft, outBelow)
	if d.Spec.Planned {
		place = "With the box on its slides and closed, set the drawer front on shims or a block so that its lower " +
			"edge is at the height that the packet's chapter Slides gives, with equal gaps at left and right; " +
			"double-sided tape holds it while the drawer is pulled open."
	}
	list = append(list, "Hang the drawer front last. "+place,
		"Drive the screws from inside the box, with their washers, not quite tight; a pilot hole must not come out at "+
			"the face. The holes in the box front are wider than the screws: shift the drawer front until all gaps "+
			"are even, then tighten.")
	if front.Handles > 0 {
		list = append(list, "Screw knob or handle on from inside: where the box front has a wide hole behind it, the "+
			"screw's head lies in there; where it has none, do this before the drawer front is hung.")
	}
	return list
}
