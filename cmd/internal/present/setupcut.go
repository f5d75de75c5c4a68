package present

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// CutStep is one cut of a setting, or what is sawn or bored apart.
type CutStep struct {
	Work         string           `json:"work"`
	Kind         string           `json:"kind"`
	Face         string           `json:"face"` // down on the table, of a part on end against the fence; by hand and of bores, the one worked from
	Edges        []string         `json:"edges"`
	Width        record.Length    `json:"width"`
	Depth        record.Length    `json:"depth"` // of a bore; of what is cut out of an edge, its height
	Through      bool             `json:"through"`
	Metric       bool             `json:"metric,omitempty"` // a bore of a metric bit in a job in inches
	Passes       []record.Length  `json:"passes"`           // fence distances
	Stops        [2]record.Length `json:"stops"`            // from the left and the right end; 0 runs through
	Places       []Spot           `json:"places"`           // seen on the face, from the left end and the lower edge, or the edge that they are cut out of
	Parts        []record.Pieces  `json:"parts"`
	PartsText    string           `json:"parts_text"`     // the same in words
	Note         string           `json:"note,omitempty"` // how it is held otherwise, and why; why it is refused
	Alternatives string           `json:"alternatives,omitempty"`
	Cautions     []Caution        `json:"cautions"`

	Faces []record.Length `json:"-"` // where the fence's face is for each pass, right of the near side of the cutter

	bottom bool // its parts lie in their boxes: their lower edge on a drawing is the front edge
	byHand bool // of mortises
}

// Spot is the middle of a bore with its diameter, or of a mortise, or what is cut out of an edge.
type Spot struct {
	X      record.Length `json:"x"`
	Y      record.Length `json:"y"`
	Width  record.Length `json:"width"`
	Height record.Length `json:"height"`
}

// step is a cut as the sheet lists it.
func (m maker) step(c setup.Cut) CutStep {
	out := CutStep{Work: string(c.Holding), Kind: c.Name(), Face: c.Face.String(), Edges: edgesOf(c.Edges, c.End),
		Width: record.Length(c.Width), Depth: record.Length(c.Height), Through: c.Through,
		Passes: []record.Length{}, Stops: [2]record.Length{record.Length(c.Stops[0]), record.Length(c.Stops[1])},
		Places: []Spot{}, PartsText: m.who(c.Boards), Cautions: slices.Clone(ofWork[c.Holding])}
	for _, p := range c.Passes {
		out.Passes = append(out.Passes, record.Length(p))
	}
	for _, at := range c.Step.Faces() {
		out.Faces = append(out.Faces, record.Length(at))
	}
	for _, r := range c.Places {
		out.Places = append(out.Places, Spot{record.Length(r.Center().X), record.Length(r.Center().Y),
			record.Length(r.Width()), record.Length(r.Height())})
	}
	if c.Holding == setup.Bored || c.Holding == setup.Mortised {
		_, out.Metric = words.Drill(c.Width, m.unit)
	}
	for _, p := range c.Boards {
		out.Parts = append(out.Parts, record.Pieces{Part: p.Name, Count: p.Count})
		out.bottom = p.Role == joinery.Bottom
	}
	if c.Holding == setup.HandSawn && c.Edge != geom.FingerCut {
		out.Cautions = append(out.Cautions, ofWork[setup.Chopped]...)
	}
	if c.Stops != [2]float64{} && c.Holding == setup.Along {
		out.Cautions = append(out.Cautions, stopped...)
	}
	kind := m.Cutter.Kind
	if c.Refused != nil {
		out.Note = upper(c.Refused.Fact().In(m.unit))
		out.Alternatives = job.InsteadText(c.Step, kind, m.unit) + m.inStrip(c)
		return out
	}
	var notes []string
	if c.Instead != nil {
		why := upper(c.Instead.Fact().In(m.unit))
		if c.Holding == setup.OnEnd {
			notes = append(notes, why+": so it is stood on end.")
		} else {
			notes = append(notes, why+": so it lies flat. The cutter's height is the depth of the rabbet, and by as much as a board is thicker its tongue is thicker.")
		}
	}
	if c.Clamped {
		notes = append(notes, "Clamp it to the miter gauge: it is too short to be held by hand.")
	}
	if c.Supported {
		notes = append(notes, "Support its far end level with the table: it is long enough to tip.")
	}
	if c.Holding == setup.Mortised {
		out.mortised(kind)
		notes = append(notes, tenonFit)
	}
	if c.Holding == setup.Fingers || c.Holding == setup.HandSawn {
		notes = append(append(notes, m.jigNotes(c)...), m.fingerRows(c)...)
	}
	out.Note = strings.Join(notes, " ")
	return out
}

// inStrip says how grooves are cut before short or narrow parts are cut off their board.
func (m maker) inStrip(c setup.Cut) string {
	if !slices.Contains(c.Alternatives, setup.ByStrip) {
		return ""
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(m.unit) }
	unit := m.unit.String()
	fence := text(c.Fence)
	if len(c.Passes) > 1 {
		fence = ""
		for i, p := range c.Passes {
			if i > 0 {
				fence += ", "
			}
			fence += text(p)
		}
	}
	board := "as wide as the parts and at least %s long, parts end to end with a saw kerf between them"
	if c.Refused.Limit == setup.LimitMinWidthAlongFence {
		board = "as long as the parts and at least %s wide, the edge for the groove straight and against the fence"
	}
	return fmt.Sprintf(". That board comes first of all: "+board+"; cutter %s %s high, fence at %s %s. Cut the parts off "+
		"it then, and make their other cuts after that",
		geom.LengthOf(c.Refused.Allowed).Text(m.unit), text(c.Height), unit, fence, unit)
}

// fingerRows describe the rows of fingers that are not as high as the others.
func (m maker) fingerRows(c setup.Cut) (notes []string) {
	for _, s := range m.FingerRows {
		cut := func(d record.CutDrawer) bool {
			return slices.Contains(s.Drawers, d.Name) && slices.ContainsFunc(c.Boards,
				func(b setup.Piece) bool { return slices.Contains(d.Parts, b.Name) })
		}
		if slices.ContainsFunc(m.Drawers, cut) {
			notes = append(notes, fmt.Sprintf("%s: %s.", strings.Join(s.Drawers, ", "), fingerRow(s, m.unit)))
		}
	}
	return notes
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// who says which parts a cut is for: all of a role by its name, where several are.
func (m maker) who(pieces []setup.Piece) string {
	var parts []string
	for _, p := range pieces {
		parts = append(parts, fmt.Sprintf("%d x %s", p.Count, p.Name))
	}
	if len(pieces) < 3 {
		return strings.Join(parts, ", ")
	}
	named := make(map[string]bool)
	var roles []joinery.Role
	n := 0
	for _, p := range pieces {
		named[p.Name] = true
		n += p.Count
		if !slices.Contains(roles, p.Role) {
			roles = append(roles, p.Role)
		}
	}
	for _, b := range m.Boards {
		if slices.Contains(roles, b.Role) && !named[b.Name] {
			return strings.Join(parts, ", ")
		}
	}
	var plural []string
	for _, r := range roles {
		plural = append(plural, r.String()+"s")
	}
	all := plural[len(plural)-1]
	if len(plural) > 1 {
		all = strings.Join(plural[:len(plural)-1], ", ") + " and " + all
	}
	return fmt.Sprintf("all %s (%d)", all, n)
}

// edgesOf names edges as a person at the machine sees them: an end by its name, where it has one.
func edgesOf(e setup.Edges, end setup.End) (list []string) {
	switch {
	case e.Left && e.Right:
		list = append(list, "both ends")
	case e.Left || e.Right:
		list = append(list, "the "+cmp.Or(string(end), "nearer end"))
	}
	if e.Lower {
		list = append(list, "lower edge")
	}
	if e.Upper {
		list = append(list, "upper edge")
	}
	return list
}

// End is the end of the part that lies at the fence, where it has a name.
func (c CutStep) End() string {
	for _, end := range []setup.End{setup.FrontEnd, setup.RearEnd} {
		if slices.Contains(c.Edges, "the "+string(end)) {
			return string(end)
		}
	}
	return ""
}

// Place is the machine of what is sawn or bored apart, as a heading.
func (c CutStep) Place(kind string) string {
	hand := joinery.CutterKind(kind) == joinery.Hand
	switch {
	case c.Work == string(setup.Sawn) && hand:
		return "back saw and coping saw"
	case c.Work == string(setup.Sawn):
		return "band saw, jigsaw or hand saw"
	case (c.Work == mortisedEnd || c.Work == string(setup.Mortised)) && hand:
		return "brace or hand drill, and chisels"
	case c.Work == mortisedEnd || c.Work == string(setup.Mortised):
		return "plunge router with a mortising jig, or a horizontal mortiser"
	case c.Work == "bored-end":
		return "doweling jig, or a drill by lines of a marking gauge"
	case hand:
		return "brace or hand drill"
	}
	return "drill press"
}

// otherFace is the face opposite to one, by name.
var otherFace = map[string]string{geom.Inside.String(): geom.Outside.String(),
	geom.Outside.String(): geom.Inside.String()}

// How says how a part is held and moved for a cut, without a full stop.
func (c CutStep) How(u geom.Unit) string {
	mm := func(v record.Length) string { return words.Length(v.MM(), u) }
	width, edges := mm(c.Width), strings.Join(c.Edges, ", ")
	turns := " in turn"
	if len(c.Edges) == 1 && c.Edges[0] != "both ends" {
		turns = ""
	}
	deep := mm(c.Depth) + " deep"
	if c.Through {
		deep = "through"
	}
	switch setup.Holding(c.Work) {
	case setup.Across:
		return fmt.Sprintf("%s, %s wide: flat, the %s face down, %s against the fence%s, fed by a miter gauge or a "+
			"sliding table", c.Kind, width, c.Face, edges, turns)
	case setup.Along:
		if c.Stops != [2]record.Length{} {
			return fmt.Sprintf("%s, %s wide: flat, the %s face down, %s along the fence between two stops, "+
				"from %s before the left end to %s before the right one", c.Kind, width, c.Face, edges, mm(c.Stops[0]), mm(c.Stops[1]))
		}
		return fmt.Sprintf("%s, %s wide: flat, the %s face down, %s along the fence", c.Kind, width, c.Face, edges)
	case setup.AtEnd:
		return fmt.Sprintf("%s, %s from the end: flat, the %s face down, %s against the sacrificial fence%s, "+
			"fed by a miter gauge or a sliding table", c.Kind, width, c.Face, edges, turns)
	case setup.AtEdge:
		return fmt.Sprintf("%s, %s from the edge: flat, the %s face down, %s along the sacrificial fence", c.Kind, width, c.Face, edges)
	case setup.OnEnd:
		return fmt.Sprintf("%s in the %s face: stood on %s in turn, the %s face against the tall fence", c.Kind,
			otherFace[c.Face], edges, c.Face)
	case setup.Fingers:
		return fmt.Sprintf("fingers: on end in a finger jig, %s, the lower edge toward the pin", edges)
	case setup.Knifed:
		return fmt.Sprintf("%s, %s wide in the %s face, from %s: knife both walls deep along a square, saw just inside the lines to the gauged depth, chisel the waste from both edges, level the floor with a router plane, pare the walls until the part goes in", c.Kind, width, c.Face, edges)
	case setup.Shoulder:
		return fmt.Sprintf("%s at %s: gauge what stays from the %s face, knife the shoulder along a square, saw it down to the gauge line, then take the waste off with a chisel or a rabbet plane", c.Kind, edges, c.Face)
	case setup.Plowed:
		return fmt.Sprintf("%s, %s wide in the %s face: plow plane with its fence along the %s, short strokes from the far end first; pare the other wall until the bottom goes in", c.Kind, width, c.Face, edges)
	case setup.Chopped:
		return fmt.Sprintf("%s, %s wide in the %s face, stopped %s and %s from the ends: gauge both walls from the %s, knife the stops, chop the ends with a mortise chisel, then chisel and router plane between them", c.Kind, width, c.Face, mm(c.Stops[0]), mm(c.Stops[1]), edges)
	case setup.HandSawn:
		return handSawn(c.Kind, edges)
	case setup.Sawn:
		return fmt.Sprintf("%s, %s wide and %s high%s: marked as the drawing has them, sawn beside the line, filed or pared to it", c.Kind, width, mm(c.Depth), c.from(u))
	case setup.Bored:
		return fmt.Sprintf("holes, diameter %s, %s, from the %s face%s", c.drill(u), deep, c.Face, c.at(u))
	case setup.Mortised:
		return fmt.Sprintf("mortises, %s wide and %s long up the side, %s, from the %s face%s; %s", c.drill(u),
			mm(c.Places[0].Height), deep, c.Face, c.at(u), c.cleared())
	case mortisedEnd:
		return fmt.Sprintf("mortises in both ends, %s wide, %s: middles %s from the outside face and, over the lower "+
			"edge, %s: %s; %s", c.drill(u), deep, mm(c.Places[0].X), u, c.lengths(u), c.cleared())
	case setup.Opened:
		return fmt.Sprintf("openings, %s wide and %s high, %s%s: bored at both ends, the rest sawn out and filed", width, mm(c.Places[0].Height), deep, c.at(u))
	}
	var heights []string
	for _, p := range c.Places {
		heights = append(heights, words.Place(p.Y.MM(), u))
	}
	return fmt.Sprintf("holes in both ends, diameter %s, %s: %s from the outside face, %s %s over the lower edge", c.drill(u), deep, mm(c.Places[0].X), strings.Join(heights, ", "), u)
}

// from says out of which edge something is cut, and where its middle is.
func (c CutStep) from(u geom.Unit) string {
	var list []string
	for _, p := range c.Places {
		list = append(list, words.Place(p.X.MM(), u))
	}
	edge := "upper edge"
	if slices.Contains(c.Edges, "lower edge") {
		edge = "lower edge"
	}
	return fmt.Sprintf(", out of the %s, their middles %s %s from the left end", edge, strings.Join(list, ", "), u)
}

// orderOf says why settings follow each other as they do.
func orderOf(s setup.WorkPlan, k joinery.CutterKind) string {
	if len(s.Settings) == 0 {
		return ""
	}
	if k == joinery.Hand {
		return "In this order: cuts across the grain first, so that the plow cleans what breaks out at their ends; a knife line before each saw cut, so that nothing tears" + last("gauge", s) + "."
	}
	said := "In this order: cuts across the grain first, so that those along it clean what breaks out at their ends; "
	switch n := s.Changes(); n {
	case 0:
		said += "all at one height"
	case 1:
		said += "the height is changed once"
	default:
		said += fmt.Sprintf("the height is changed %d times, as seldom as that allows", n)
	}
	return said + last("fence", s) + "."
}

// last says of cuts that take edges away, and of holes, where there are any, why they come last.
func last(device string, s setup.WorkPlan) string {
	var kinds []string
	add := func(c setup.Cut) {
		if name := c.Name(); !slices.Contains(kinds, name) {
			kinds = append(kinds, name)
		}
	}
	for _, s := range s.Settings {
		for _, c := range s.Cuts {
			if c.Holding == setup.Fingers || c.Holding == setup.HandSawn {
				add(c)
			}
		}
	}
	for _, c := range s.Separate {
		add(c)
	}
	if len(kinds) == 0 {
		return ""
	}
	return fmt.Sprintf("; %s last, when no %s needs the edges that they take", words.And(kinds), device)
}

// Gauge is a marking gauge at a distance, with what is marked with it.
type Gauge struct {
	At    record.Length `json:"at"`
	Marks []string      `json:"marks"`
}

// gauges are the settings of marking gauges, each once, and what they mark.
func (m maker) gauges(s setup.WorkPlan) []Gauge {
	list := []Gauge{}
	mark := func(mm float64, what string) {
		at := record.Length(mm)
		for i := range list {
			if caliper(list[i].At, m.unit) == caliper(at, m.unit) {
				if !slices.Contains(list[i].Marks, what) {
					list[i].Marks = append(list[i].Marks, what)
				}
				return
			}
		}
		list = append(list, Gauge{at, []string{what}})
	}
	for _, set := range s.Settings {
		for _, c := range set.Cuts {
			switch c.Holding {
			case setup.Knifed:
				mark(c.Fence, "the nearer wall of the dados, from the end")
				mark(c.Fence+c.Width, "their other wall")
				mark(c.Height, "the depth of the dados, from the inside face")
			case setup.Shoulder:
				mark(c.Fence, "what the rabbets leave, from the "+c.Face.String()+" face")
				mark(c.Height, "the shoulder of the rabbets, from the end")
			case setup.Plowed:
				mark(c.Fence, "the plow's fence, to the iron")
				mark(c.Height, "the plow's depth stop")
			case setup.Chopped:
				mark(c.Fence, "the nearer wall of the grooves, from the edge")
				mark(c.Fence+c.Width, "the other wall of the grooves")
				mark(c.Height, "the depth of the grooves")
			case setup.HandSawn:
				mark(c.Height, "the floor of the "+c.Name()+", from the end")
			}
		}
	}
	for _, d := range m.Drawers {
		for _, b := range d.Bored {
			if len(b.Lengths) > 0 {
				mark(b.FromOutside, "the middle of the mortises, from the outside face and, in the sides, from the end")
			}
		}
	}
	return list
}

// handSawn says how fingers, tails or pins are sawn and chopped.
func handSawn(kind, edges string) string {
	switch kind {
	case "tails":
		return fmt.Sprintf("tails at %s: gauge their floor all round; mark the flanks with the template or a bevel "+
			"and square them across the end; saw on the waste side, square to the face, cope the waste out, chop to the "+
			"gauge line from both faces", edges)
	case "pins":
		return fmt.Sprintf("pins at %s, after the tails: gauge their floor on both faces; stand the part upright, lay "+
			"the tails that go in on its end, their gauge line on its inside face, knife around them and square the lines "+
			"down both faces; saw on the waste side, so that the line stays, cope the waste out, chop from both "+
			"faces, pare until the tails go in by light taps", edges)
	}
	return fmt.Sprintf("fingers at %s: mark with a knife as the drawing has them, the second part from the first; saw on the waste side, cope the waste out, pare to the line from both faces", edges)
}
