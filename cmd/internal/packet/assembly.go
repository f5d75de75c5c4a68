package packet

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// assembly says in which order boxes of each kind of corner are put together.
func (m maker) assembly() {
	m.Chapter("Assembly")
	said := make(map[[6]string]bool)
	for _, d := range m.batch.Drawers {
		s := d.Spec
		kind := [6]string{string(s.Joint), string(s.BackJoint), string(s.BottomFit), string(s.GrooveEnds),
			fmt.Sprint(s.Bottom.Solid), strings.Join(hangFront(d), " ")}
		if said[kind] {
			continue
		}
		said[kind] = true
		heading := fmt.Sprintf("%s, bottom %s", s.Joint, bottoms[s.BottomFit])
		if s.DrawerFront != nil {
			heading += ", with a drawer front"
		}
		m.Heading(1, heading)
		for i, step := range steps(m.report, d) {
			m.Item(0, fmt.Sprintf("%d.", i+1), step)
		}
	}
	m.Heading(1, "What to measure")
	unit := m.unit.String()
	t := present.NewTable(present.Words("drawer"), present.In("two sides and a box front", unit),
		present.In("width, dry", unit), present.In("depth, dry", unit), present.In("both diagonals",
			unit), present.In("apart at most", unit))
	t.UnitOnce = true
	for _, d := range m.batch.Drawers {
		k := record.StackOf(d)
		t.Add(d.Spec.Name, m.reported(k.SidesAndFront), m.reported(k.OutsideWidth), m.reported(k.OutsideDepth),
			m.reported(k.Diagonal), m.reported(k.MaxDiagonalDifference))
	}
	m.table(t)
	m.Small("Two sides and a box front: their thicknesses, the three boards held together in one caliper; another " +
		"reading says that the stock is not what was measured. Apart at most: the job's limit for the box in its " +
		"clamps. " +
		"Diagonals: over the " +
		"ends of the sides. " + present.Squaring)
	m.drawerFronts()
	m.hardware()
}

var bottoms = map[joinery.BottomFit]string{joinery.BottomAuto: "in grooves", joinery.BottomGroovedIn: "in grooves",
	joinery.BottomFlush: "flush, in grooves", joinery.BottomSlideIn: "slid in from behind",
	joinery.BottomApplied: "applied from below", joinery.BottomCleats: "on cleats"}

// steps are the order of work for a box.
func steps(r record.Report, d batch.Drawer) []string {
	s := d.Spec
	return slices.Concat(beforeGlue(d), glue(s), []string{joinWalls(r, s), clamp(s)}, squareUp(d), hangFront(d))
}

// beforeGlue is what is done while the parts of a box are dry.
func beforeGlue(d batch.Drawer) (list []string) {
	if d.Spec.BottomFit == joinery.BottomCleats {
		side, end := cleatsAt(d)
		list = append(list, fmt.Sprintf("Glue and screw the cleats to the insides of sides, box front and back first, level with "+
			"the lower edges: on the sides %s from the front ends, on box front and back %s from either end. Bore pilot "+
			"holes, and see that no screw comes out on the other face.",
			geom.LengthOf(side).Text(d.Spec.Units), geom.LengthOf(end).Text(d.Spec.Units)))
	}
	return append(list,
		"Put the box together dry, bottom and all: every joint has to close by hand or with light taps. Measure "+
			"width, depth and both diagonals; the table below has the numbers.",
		"Lay the parts out with their inside faces up, the triangle on their labels in one piece; have clamps set "+
			"and a wet cloth at hand.")
}

// glue says where glue goes, and where none.
func glue(s joinery.Spec) []string {
	dry := "None in the groove: the bottom stays dry, free to move, where it stands in one."
	if s.BottomFit == joinery.BottomCleats {
		dry = "None under the bottom: screws hold it."
	}
	where := map[joinery.Joint]string{
		joinery.DadoRabbet:   "in the dados of the sides and on the tongues of the box front and the back",
		joinery.DoubleRabbet: "in the rabbets of the sides and of the box front and the back",
		joinery.Rabbet:       "on floor and shoulder of the rabbets",
		joinery.Butt:         "on the ends of the box front and the back",
		joinery.BoxJoint:     "on every face of the fingers, thin",
	}[s.Joint]
	list := []string{"Glue " + where + ". " + dry}
	if s.BackJoint == joinery.Housed {
		list = append(list, "The back stands in dados of its own: glue in those too.")
	}
	return list
}

// joinWalls puts the walls together, and says when the bottom comes and how it is held.
func joinWalls(r record.Report, s joinery.Spec) string {
	switch s.BottomFit {
	case joinery.BottomSlideIn:
		held := present.SlideInSheet
		if s.Bottom.Solid {
			held = present.SlideInSolid(r)
		}
		return "Put box front and back into one side, then the other side on. " +
			"The bottom comes when the glue has set: slide it in from behind. " + held
	case joinery.BottomCleats:
		down := "screw it down; it holds the box square"
		if s.Bottom.Solid {
			down = "screw it down along the box front only, so that it can swell and shrink"
		}
		return "Put box front and back into one side, then the other side on. The bottom comes last: once the box is " +
			"square and the glue has set, lay it on the cleats from above, as far from every side, and " + down + "."
	case joinery.BottomApplied:
		return "Put box front and back into one side, then the other side on. The bottom comes last: once the box is " +
			"square, fasten it from below all round; it holds the box square."
	}
	if s.Joint == joinery.BoxJoint { // whose grooves in front and back end in the fingers
		return "Set the bottom dry into the grooves of the box front and the back, then put one side on all three, then " +
			"the other."
	}
	return "Put box front and back into one side, slide the bottom dry into the groove, then the other side on."
}

// clamp says which way a corner is clamped, or what is driven into it.
func clamp(s joinery.Spec) string {
	switch s.Joint {
	case joinery.DadoRabbet:
		return "Clamp across the box front and across the back, from side to side, pads over the joints, until the " +
			"shoulders are closed: the dados pull box front and back square to the sides."
	case joinery.BoxJoint:
		return "Clamp both ways, pads beside the fingers, until every finger is home."
	case joinery.Butt:
		return fmt.Sprintf("Clamp across the box front and across the back and drive the %s.", s.Fasteners)
	}
	return "Clamp across the box front and the back, and from front to back over the sides, until the joints are " +
		"closed."
}

// squareUp is what is done to a box in its clamps, and when the glue has set.
func squareUp(d batch.Drawer) []string {
	list := []string{
		"Check both diagonals at once, before the glue takes: equal is square. Where they differ, clamp across the " +
			"longer one until the two are equal.",
		"Wipe off what glue has come out, inside as well, and leave the box on a flat surface, so that it does not " +
			"set in a twist.",
		"When the glue has set, measure once more and write it on the drawer's form.",
	}
	if slices.ContainsFunc(d.Hardware, func(i joinery.Item) bool { return i.Offcut }) {
		list = append(list, "Glue a plug into each open end of a groove, with none on the bottom, and pare it "+
			"level. Cut plugs off a long strip by hand on a bench hook: they are too short to be held at a saw.")
	}
	return list
}

// cleatsAt is how far cleats begin from the front end of a side, and from the ends of the
// front.
func cleatsAt(d batch.Drawer) (side, end float64) {
	at := make(map[string]geom.Vec3)
	for _, p := range d.Parts {
		key := string(p.Role) + p.Label
		if p.Role == joinery.CleatRole || p.Role == joinery.Front || p.Role == joinery.Side && p.Label != "right" {
			at[strings.TrimSuffix(key, "left")] = p.Placements[0].Origin
		}
	}
	cleat, front := string(joinery.CleatRole), string(joinery.Front)
	return at[cleat+"side"].Y - at[string(joinery.Side)].Y, at[front].X - at[cleat+"end"].X
}

// hardware lists what goes into each box beside glue.
func (m maker) hardware() {
	t := present.NewTable(present.Words("drawer"), present.Words("what"), present.Numbers("in a box"),
		present.Numbers("in all"))
	for _, d := range m.batch.Drawers {
		for _, h := range d.Hardware {
			t.Add(d.Spec.Name, h.Name, fmt.Sprint(h.Count), fmt.Sprint(h.Count*d.Spec.Count))
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	m.Heading(1, "Hardware")
	m.table(t)
}
