package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// mortisedEnd is the work of mortises in ends, as "bored-end" is that of holes.
const mortisedEnd = "mortised-end"

// tenonFit is how a mortise is tried.
const tenonFit = "Cut one in scrap first: a tenon goes in by hand and does not fall out; else take another bit."

// lowestTight is why the mortises of an end are not of one length.
const lowestTight = "The lowest is as long as its tenon and sets the height; those over it leave room to bring the " +
	"edges level."

// fromEdges is from where mortises are placed, so that a board's thickness puts no step into a corner.
const fromEdges = "Measure all of them from the lower edge and from the outside face."

// notInEnds is why a machine that follows drawings leaves the mortises in the ends.
const notInEnds = "The drawings have the mortises in the sides; boards lie flat on the router, which does not reach " +
	"their ends."

// bores are the holes and mortises in ends of parts, which no face shows.
func (m maker) bores() []CutStep {
	list := []CutStep{}
	for _, d := range m.Drawers {
		for _, b := range d.Bored {
			_, metric := words.Drill(b.Diameter, m.unit)
			step := CutStep{Metric: metric, Work: "bored-end", Kind: "holes", Face: geom.Outside.String(),
				Edges: []string{"both ends"}, Width: record.Length(b.Diameter), Depth: record.Length(b.Depth),
				Passes: []record.Length{}, Places: []Spot{}, Parts: append([]record.Pieces{}, b.Parts...),
				Cautions: ofWork[setup.Bored]}
			if len(b.Lengths) > 0 {
				step.Work, step.Kind, step.Note = mortisedEnd, "mortises", fromEdges+" "+tenonFit
				if len(b.Lengths) > 1 {
					step.Note = lowestTight + " " + step.Note
				}
				if step.mortised(m.Cutter.Kind); m.Cutter.Kind.FollowsDrawing() {
					step.Note = notInEnds + " " + step.Note
				}
			}
			for i, y := range b.Heights {
				high := b.Diameter
				if len(b.Lengths) > 0 {
					high = b.Lengths[i]
				}
				step.Places = append(step.Places, Spot{record.Length(b.FromOutside), record.Length(y), record.Length(b.Diameter),
					record.Length(high)})
			}
			var who []string
			for _, p := range b.Parts {
				who = append(who, fmt.Sprintf("%d x %s", p.Count, p.Part))
			}
			step.PartsText = strings.Join(who, ", ")
			if n := len(list) - 1; n >= 0 && list[n].How(m.unit) == step.How(m.unit) { // front and back are bored alike
				list[n].Parts, list[n].PartsText = append(list[n].Parts, step.Parts...), list[n].PartsText+", "+step.PartsText
				continue
			}
			list = append(list, step)
		}
	}
	return list
}

// mortised says whether mortises are made by hand, and what can hurt there.
func (c *CutStep) mortised(kind joinery.CutterKind) {
	c.Cautions = ofWork[setup.Mortised]
	if c.byHand = kind == joinery.Hand; c.byHand {
		c.Cautions = slices.Concat(ofWork[setup.Bored], ofWork[setup.Chopped])
	}
}

// cleared is how a mortise is made.
func (c CutStep) cleared() string {
	if c.byHand {
		return "holes in a row by a drill as wide, and the walls between them pared"
	}
	return "a bit as wide as the mortise, plunged in steps no deeper than half of that"
}

// lengths are where the middles of mortises in an end are, and how long each is.
func (c CutStep) lengths(u geom.Unit) string {
	var list []string
	for _, p := range c.Places {
		list = append(list, words.Place(p.Y.MM(), u)+" ("+words.Place(p.Height.MM(), u)+" long)")
	}
	return strings.Join(list, ", ")
}

// drill is the bit for a hole.
func (c CutStep) drill(u geom.Unit) string {
	size, _ := words.Drill(c.Width.MM(), u)
	return size
}

// MetricBits is said once on a sheet in inches that has holes of whole millimeters.
const MetricBits = "Where a hole is in mm its hardware is metric: take a metric bit."

// at lists the middles of holes.
func (c CutStep) at(u geom.Unit) string {
	var list []string
	for _, p := range c.Places {
		list = append(list, words.Place(p.X.MM(), u)+" and "+words.Place(p.Y.MM(), u))
	}
	edge := "lower edge"
	if c.bottom {
		edge = "front edge"
	}
	return fmt.Sprintf("; middles from the left end and from the %s, seen on that face, %s: %s", edge, u,
		strings.Join(list, "; "))
}
