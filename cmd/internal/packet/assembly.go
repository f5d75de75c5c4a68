package packet

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
	"drawerwright/preview/scene"
)

// assembly says in which order boxes of each kind of corner are put together, in the order in
// which the page of boxes opens them, backward.
func (m maker) assembly(ctx context.Context) error {
	m.Chapter("Assembly")
	m.Text("G and its tint: glue. Lines of dashes and dots: where each piece goes. Numbers: those of the cut list.")
	for _, group := range m.assembledAlike() {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err := m.assembleGroup(group); err != nil {
			return err
		}
	}
	m.hardware()
	return nil
}

// assembledAlike gathers drawers that are put together in the same steps: cleats stand elsewhere in boards of another
// thickness.
func (m maker) assembledAlike() [][]batch.Drawer {
	type key struct {
		joint, back        joinery.Joint
		fit                joinery.BottomFit
		ends               joinery.GrooveEnds
		solid              bool
		fasteners, hanging string
		dividers, insert   string
		dry, open          string
		walls, clamps      string
	}
	return setup.Together(m.batch.Drawers, func(d batch.Drawer) key {
		s := d.Spec
		return key{s.Joint, s.BackJoint, s.BottomFit, s.GrooveEnds, s.Bottom.Solid,
			string(s.Fastened()), strings.Join(hangFront(d), " "), lowerDividers(d), liftInsert(d),
			strings.Join(beforeGlue(d), " "), strings.Join(openEnds(d), " "),
			firstWalls(s), clamp(s)}
	})
}

// lowerDividers says how dividers come into their box; empty for one without.
func lowerDividers(d batch.Drawer) string {
	n, crossing := 0, false
	for _, p := range d.Parts {
		if p.Role == joinery.DividerRole {
			n += len(p.Placements)
			crossing = crossing || slices.ContainsFunc(p.Panel.EdgeCuts, func(c geom.EdgeCut) bool {
				return c.Kind == geom.CrossingCut
			})
		}
	}
	said := "Lower the dividers into their dados from above."
	switch {
	case n == 0:
		return ""
	case n == 1:
		said = "Lower the divider into its dados from above."
	case crossing:
		said = "Lower the dividers into their dados from above, those that cross each other as one."
	}
	loose := func(v joinery.Divider) bool { return v.Loose }
	switch fixed := func(v joinery.Divider) bool { return !v.Loose }; {
	case !slices.ContainsFunc(d.Spec.Dividers, loose):
		said += " A little glue into those dados first."
	case slices.ContainsFunc(d.Spec.Dividers, fixed):
		said += " A little glue into the dados of those that are not loose first."
	}
	if slices.ContainsFunc(d.Spec.Dividers, func(v joinery.Divider) bool { return v.Folders.Width > 0 }) {
		said += " Round the upper edges of the rails lightly with paper, and hang a folder on them: its hooks go " +
			"over both and slide. A drawer full of paper is heavy: see that its slides are rated for it, and fix the " +
			"cabinet to the wall, as a drawer that is pulled out can tip it over."
	}
	return said
}

// liftInsert says how an insert is put together and comes into its box; empty for one without.
func liftInsert(d batch.Drawer) string {
	if d.Spec.Insert == nil {
		return ""
	}
	return "Put the strips of the insert together in the box, those from front to back from above, into the slots " +
		"of the others: it goes in and out by hand. Lift it out, set a drop of glue into each slot, put it back in to " +
		"set square, and wipe off what comes out, so that it stays loose."
}

// assembleGroup prints the steps for drawers that are put together alike, with pictures of the first.
func (m maker) assembleGroup(group []batch.Drawer) error {
	d := group[0]
	t, err := m.take(d)
	if err != nil {
		return err
	}
	var all []string
	for _, g := range group {
		all = append(all, g.Spec.Name)
	}
	heading := fmt.Sprintf("%s: %s, bottom %s", names(all), d.Spec.Joint, bottoms[d.Spec.BottomFit])
	if d.Spec.DrawerFront != nil {
		heading += ", with a drawer front"
	}
	m.Heading(1, heading)
	m.Steps(m.steps(t))
	m.numbersOf(group)
	return nil
}

// numbersOf lists the numbers of the pieces of drawers that share pictures, where they differ, and where drawer
// fronts stand on their boxes; drawers of which that is the same together.
func (m maker) numbersOf(group []batch.Drawer) {
	var roles []string
	rows := make([]map[string]string, len(group))
	for i, d := range group {
		rows[i] = make(map[string]string)
		for _, p := range d.Parts {
			role := roleOf(*p.Part)
			if p.Role == joinery.Side && p.Label == "" {
				role = "sides"
			}
			if !slices.Contains(roles, role) {
				roles = append(roles, role)
			}
			rows[i][role] = numberOf(p)
		}
	}
	fronts := group[0].Spec.DrawerFront != nil
	if !fronts && !slices.ContainsFunc(rows, func(r map[string]string) bool { return !maps.Equal(r, rows[0]) }) {
		return // the pictures have those of all
	}
	columns := []present.Column{present.Words("numbers of")}
	for _, role := range roles {
		columns = append(columns, present.Numbers(role))
	}
	if fronts {
		columns = append(columns, present.In(outLeft, m.unit.String()), present.Numbers(outBelow))
	}
	of := func(i int) (cells []string) {
		for _, role := range roles {
			cells = append(cells, rows[i][role])
		}
		if f := group[i].Spec.DrawerFront; f != nil {
			cells = append(cells, m.number(f.OverhangLeft), m.number(f.OverhangBelow))
		}
		return cells
	}
	t := present.NewTable(columns...)
	t.UnitOnce = true
	all := make([]int, len(group))
	for i := range all {
		all[i] = i
	}
	alike := setup.Together(all, func(i int) string { return strings.Join(of(i), "\n") })
	for _, same := range alike {
		var drawers []string
		for _, i := range same {
			drawers = append(drawers, group[i].Spec.Name)
		}
		t.Add(append([]string{names(drawers)}, of(same[0])...)...)
	}
	m.Keep(float64(7 * (len(alike) + 1))) // whole, if it goes on a page
	m.table(t)
	if fronts {
		m.Small("Out left and below: how far the drawer front stands out beyond its box, seen from before it; " +
			"less than 0: it ends short of the box.")
	}
}

var bottoms = map[joinery.BottomFit]string{joinery.BottomAuto: "in grooves", joinery.BottomGroovedIn: "in grooves",
	joinery.BottomFlush: "flush, in grooves", joinery.BottomSlideIn: "slid in from behind",
	joinery.BottomFielded: "fielded, slid in from behind",
	joinery.BottomApplied: "applied from below", joinery.BottomCleats: "on cleats"}

// steps are the order of work for a box, with pictures of what comes on and of clamps as they are put on.
func (m maker) steps(t Taken) (list []paper.Step) {
	room, clamped := m.StepRoom(), false
	for i, s := range Steps(m.batch, t.drawer, t.box) {
		step := paper.Step{Number: i + 1, Words: s.Text}
		switch {
		case len(s.Pieces) > 0:
			step.Picture = t.scene(sceneKey{s.From, false}, func() paper.Scenery {
				return t.picture(s.Stage)
			}).Draw(room)
		case len(s.Clamps) > 0 && !clamped:
			step.Picture = t.scene(sceneKey{s.From, true}, func() paper.Scenery {
				return t.clamped(s)
			}).Draw(room)
		}
		list, clamped = append(list, step), len(s.Clamps) > 0
	}
	return list
}

// Steps are the steps in which a drawer of a batch is put together, with how its box stands in each: those of the
// packet and of the page of boxes.
func Steps(b batch.Batch, d batch.Drawer, box scene.Box) (list []scene.Step) {
	add := func(s scene.Stage, clamps []scene.Block, texts ...string) {
		for _, said := range texts {
			list = append(list, scene.Step{Text: said, Stage: s, Clamps: clamps})
			s = scene.Stage{Frame: s.Done()}
		}
	}
	for _, said := range beforeGlue(d) {
		add(scene.Stage{Frame: box.Apart()}, nil, said)
	}
	for _, s := range box.Stages(d.Drawer) {
		add(s, nil, told(b, d, s)...)
		if s.WallsClosed {
			closed, set := scene.Stage{Frame: s.Done()}, whenSet(d)
			add(closed, scene.Clamps(d.Drawer), clamp(d.Spec), inClamps, set[0])
			add(closed, nil, set[1:]...)
		}
	}
	return list
}

// told says what is done in a stage.
func told(b batch.Batch, d batch.Drawer, s scene.Stage) []string {
	switch {
	case s.First:
		return []string{firstWalls(d.Spec)}
	case s.WallsClosed:
		return []string{"Glue as before and put the right side on: " + closing(d.Spec) + "."}
	case s.Role == joinery.Bottom:
		return []string{bottomIn(b, d.Spec)}
	case s.Role == joinery.DividerRole:
		return []string{lowerDividers(d)}
	case s.Role == joinery.InsertRole:
		return []string{liftInsert(d)}
	}
	return hangFront(d)
}

// beforeGlue is what is done while the parts of a box are dry.
func beforeGlue(d batch.Drawer) (list []string) {
	if d.Spec.BottomFit == joinery.BottomCleats {
		side, end := cleatsAt(d)
		list = append(list, fmt.Sprintf("Glue and screw the cleats to the insides of sides, box front and back first, "+
			"level with the lower edges: on the sides %s from the front ends, on box front and back %s from either "+
			"end. Bore pilot holes, and see that no screw comes out on the other face.",
			geom.LengthOf(side).Text(d.Spec.Units), geom.LengthOf(end).Text(d.Spec.Units)))
	}
	dry := "Put the box together dry, bottom and all: joints close by hand or light taps. "
	if d.Spec.Joint == joinery.DadoRabbet {
		dry += openShoulder
		if s := d.Setup; d.Spec.BottomFit.Grooved() && s.CutterHeight > s.FenceDistance-leastSkin {
			dry += throughTongues
		}
	}
	return append(list, dry+"Measure the box by the form.",
		"Lay the walls out side by side, labels up, lower edges toward you, from the left: "+laidOut()+"; the "+
			"triangle on the labels is whole, and ends that lie side by side go together. Clamps and a wet cloth are "+
			"at hand. From the first glue to the last clamp there is the open time on the glue's label.")
}

// firstWalls says where glue goes and which walls come first.
func firstWalls(s joinery.Spec) string {
	where := map[joinery.Joint]string{
		joinery.DadoRabbet:    "in the dados of the side and on both tongues",
		joinery.DoubleRabbet:  "in the rabbets of the side and of box front and back",
		joinery.Rabbet:        "on floor and shoulder of the rabbets",
		joinery.Butt:          "on the ends of box front and back",
		joinery.BoxJoint:      "on every face of the fingers, thin",
		joinery.Dovetail:      "on the flanks of pins and tails, thin",
		joinery.RabbetedFront: "on floor and shoulder of the rabbets",
	}[s.Joint]
	switch s.Fastened() {
	case joinery.Tenons:
		where += " and on the walls of the mortises"
	case joinery.Dowels:
		where += " and in the holes for the dowels, which go into those ends first"
	}
	if s.BackJoint == joinery.Housed {
		where += ", and in the dados in which the back stands"
	}
	if s.BottomFit.Grooved() {
		where += ", short of the bottom's groove"
	}
	said := "Glue " + where + ". "
	if s.Fastened() == joinery.Tenons {
		said += "Push the tenons into the ends of box front and back first. "
	}
	if s.Joint.Interlocks() && s.BottomFit.Grooved() && !s.BottomFit.SlidesIn() {
		// Its grooves in front and back end in the fingers.
		return said + "Set the bottom dry into the grooves of box front and back, no glue in any groove, then put " +
			"the left side on all three."
	}
	said += "Put box front and back into the left side"
	if s.Lip != (joinery.Lip{}) {
		said += ", its edges level with the shoulders of the front's rabbets. No glue behind the lips, " +
			"where the front meets the cabinet"
	}
	return said + "."
}

// closing says how the last wall goes on.
func closing(s joinery.Spec) string {
	if s.BottomFit.Grooved() && !s.BottomFit.SlidesIn() {
		return "over box front, back and the bottom, whose groove stays dry"
	}
	return "over box front and back"
}

// backOnBottom sets the height of a back under which a bottom is slid in by the bottom itself: boards differ by more
// than the drawing leaves between the two.
const backOnBottom = "The bottom sets the back's height, before the glue takes: slide it in, press the back down on " +
	"it with a sheet of paper between, draw it out. Plane the back's upper edge level when the glue has set."

// bottomUnderBack is what is done instead where the back's ends hold it at its height.
const bottomUnderBack = "The %s set the back's height: slide the bottom in before the glue takes and draw it out. " +
	"Where it does not pass, the back comes off again and its lower edge is planed."

// bottomIn says how the bottom comes in and is held.
func bottomIn(b batch.Batch, s joinery.Spec) string {
	switch s.BottomFit {
	case joinery.BottomSlideIn, joinery.BottomFielded:
		held := present.SlideInSheet
		if s.Bottom.Solid {
			out := 0.0 // by which a bottom swells out behind its back
			for _, d := range b.Drawers {
				out = max(out, d.BottomOut)
			}
			held = present.SlideInSolid(record.Length(out), b.Units)
		}
		if s.BottomFit == joinery.BottomFielded {
			held = "Its rabbets are below. " + held
		}
		return "When the glue has set, slide the bottom in from behind, dry. " + held
	case joinery.BottomCleats:
		down := "screw it down; it holds the box square"
		if s.Bottom.Solid {
			down = "screw it down along the box front only, so that it can swell and shrink"
		}
		return "Once the box is square and the glue has set, lay the bottom on the cleats from above, as far from " +
			"every side, no glue under it, and " + down + "."
	case joinery.BottomApplied:
		return "Once the box is square, fasten the bottom from below all round; it holds the box square. " +
			present.EdgeScrews
	}
	return "Slide the bottom dry into the grooves: no glue there, so that it is free to move."
}

// clamp says which way a corner is clamped, or what is driven into it.
func clamp(s joinery.Spec) string {
	switch s.Joint {
	case joinery.DadoRabbet:
		return "Push box front and back outward, against the outer walls of their dados, and clamp from side to " +
			"side, bars below, pads over the joints, until the shoulders are closed."
	case joinery.BoxJoint:
		return "Clamp both ways, pads beside the fingers, until every finger is home."
	case joinery.Dovetail:
		return "Clamp from side to side, pads that press on the tails alone, until every tail is home; the tails " +
			"hold box front and back."
	case joinery.Butt:
		if s.Fastened() == joinery.Tenons {
			level := "Bring the lower edges level"
			if s.BottomFit.SlidesIn() { // under the back
				level = "Bring the lower edges of sides and box front level"
			}
			return level + " at the lowest tenon, then clamp across the box front and across the " +
				"back until the joints are closed."
		}
		if s.Fastened() == joinery.Dowels {
			return "Clamp across the box front and across the back until the joints are closed."
		}
		return "Countersink the holes in the outside faces of the sides, clamp across the box front and across the " +
			"back and drive the screws into their pilot holes."
	}
	front := "box front"
	if s.Lip.Ends() {
		front = "sides close behind the front's lips"
	}
	return "Clamp across the " + front + " and the back, and from front to back over the sides, until the joints are " +
		"closed."
}

// inClamps is what is measured before the glue takes.
const inClamps = "Check both diagonals at once, before the glue takes: clamp across the longer one until the two are " +
	"equal."

// openShoulder is what is done about a tongue that is too long, before there is any glue.
const openShoulder = "Trim a tongue whose shoulder stays open to the " +
	"setups' limits; no clamp closes it. "

// throughTongues is what is done where the bottom's groove is as deep as tongues are thick, but for a skin thinner than
// leastSkin, in mm.
const (
	throughTongues = "Pare off nibs that grooves leave. "
	leastSkin      = 0.5
)

// whenSet is what is done until the glue has set, in the clamps, and then.
func whenSet(d batch.Drawer) []string {
	var list []string
	switch held := d.Spec.Fastened(); {
	case !d.Spec.BottomFit.SlidesIn():
	case d.Spec.BackJoint != joinery.Housed && (held == joinery.Dowels || held == joinery.Tenons):
		list = append(list, fmt.Sprintf(bottomUnderBack, held))
	default:
		list = append(list, backOnBottom)
	}
	list = append(list,
		"Wipe off what glue has come out, inside as well, and leave the box on a flat surface, so that it does not "+
			"set in a twist.",
		"When the glue has set, measure once more and fill in the form.")
	return append(list, openEnds(d)...)
}

// openEnds says where the bottom's grooves show, and how many plugs of which size close them.
func openEnds(d batch.Drawer) []string {
	if len(d.OpenEnds) == 0 {
		return nil
	}
	var plugs []string
	wished, hidden := d.Spec.GrooveEnds == joinery.GroovePlugged, false
	for _, e := range d.OpenEnds {
		if !wished && d.Spec.DrawerFront != nil && e.At == joinery.Front && !e.InSides {
			hidden = true
			continue
		}
		plugs = append(plugs, fmt.Sprintf("at the %s %d x %s", e.At, e.Plug.Count, e.Plug.Name))
	}
	how := "Glue a plug into each open end of a groove, with no glue on the bottom, and pare it level"
	if !wished {
		how = "The bottom's grooves show as small holes at the corners"
		if hidden {
			how += "; the drawer front hides those in front"
		}
		if len(plugs) == 0 {
			return []string{how + "."}
		}
		how += "; where they are to be hidden, glue a plug into each, with no glue on the bottom, and pare it level"
	}
	return []string{how + ": " + strings.Join(plugs, ", ") + ". Cut plugs off a long strip by hand on a bench hook: " +
		"they are too short to be held at a saw."}
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

// hardware lists what goes into each box beside glue, boxes that take the same together.
func (m maker) hardware() {
	type need struct {
		name  string
		count int // in a box
	}
	drawers, all := make(map[need][]string), make(map[need]int)
	var order []need
	for _, d := range m.batch.Drawers {
		for _, h := range d.Hardware {
			n := need{h.Name, h.Count}
			if all[n] == 0 {
				order = append(order, n)
			}
			drawers[n], all[n] = append(drawers[n], d.Spec.Name), all[n]+h.Count*d.Spec.Count
		}
	}
	if len(order) == 0 {
		return
	}
	t := present.NewTable(present.Words("what"), present.Numbers("in a box"), present.Numbers("in all"),
		present.Words("drawers"))
	for _, n := range order {
		t.Add(n.name, fmt.Sprint(n.count), fmt.Sprint(all[n]), names(drawers[n]))
	}
	m.Heading(1, "Hardware")
	m.table(t)
}
