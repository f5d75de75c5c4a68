package packet

import (
	"drawerwright/cmd/internal/batch"
)

// hangFront is how a drawer front comes on to its box; none where the drawer has none.
func hangFront(d batch.Drawer) (list []string) {
	front := d.Spec.DrawerFront
	if front == nil {
		return nil
	}
	place := "With the box lying on its back, set the drawer front on the box front where the table of drawer fronts " +
		"has it, and clamp it."
	if d.Spec.Planned {
		place = "With the box on its slides and closed, set the drawer front on shims or a block so that its lower " +
			"edge is at the height that the chapter Slides gives, with equal gaps at left and right; double-sided " +
			"tape holds it while the drawer is pulled open."
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
