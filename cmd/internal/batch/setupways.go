package batch

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// setupWays are entries with which a cut that the machine refuses is one that a machine
// makes: another machine or corner for the drawer, or the limits of the shop's own machine.
func setupWays(j *job.Job, drawer int, s setup.Step) (ways [][]Way) {
	c := j.Drawers[drawer].Cutter
	write := func(key, value, why string) Way {
		return Way{Text: fmt.Sprintf("%s: write `%s: %s` for the drawer", why, key, value), Edits: []job.Edit{{Path: j.DrawerPath(drawer, key), Value: value}}}
	}
	tool := func(kind joinery.CutterKind, key string, widths ...string) (family []Way) {
		for _, w := range widths {
			family = append(family,
				write("cutter", fmt.Sprintf("{kind: %s, %s: %s}", kind, key, w), "cut it "+machineAt[kind]))
		}
		return family
	}
	var bits []string
	for _, mm := range setup.UsualBits(j.Units) {
		bits = append(bits, geom.LengthOf(mm).Text(j.Units))
	}
	for _, w := range s.Alternatives {
		switch w {
		case setup.ByOther:
			ways = append(ways, tool(setup.OtherFenced(c.Kind), "width", geom.LengthOf(c.Width).Text(j.Units)))
		case setup.ByRouter:
			ways = append(ways, tool(joinery.Router, "diameter", bits...))
		case setup.ByHand:
			ways = append(ways, tool(joinery.Hand, "width", bits...))
		case setup.ByCorner:
			var family []Way
			for _, joint := range setup.PlainEnds {
				family = append(family, write("joint", string(joint), "take a corner whose fronts have plain ends"))
			}
			ways = append(ways, family)
		}
	}
	return append(ways, []Way{ownLimit(j, drawer, *s.Refused)})
}

// ownLimit is the limit of a machine that makes the cut.
func ownLimit(j *job.Job, drawer int, b setup.Exceeded) Way {
	value := geom.LengthOf(b.Measured).RoundUp(j.Units).Text(j.Units)
	if b.IsMin {
		value = geom.LengthOf(b.Measured).RoundDown(j.Units).Text(j.Units)
	}
	if b.Limit == setup.LimitReach {
		return Way{Text: "take a bit that reaches " + value, Edits: []job.Edit{{Path: j.CutterPath(drawer, string(b.Limit)), Value: value}}}
	}
	kind := j.Drawers[drawer].Cutter.Kind
	return Way{Text: fmt.Sprintf("where the maker of your machine allows it, write `%s: %s` under machines: %s", b.Limit.Entry(kind), value, kind),
		Edits: []job.Edit{{Path: []string{"machines", string(kind), b.Limit.Entry(kind)}, Value: value}}}
}

// byTheWay is what makes such a cut in a drawer that stays as it is, which no entry says.
func byTheWay(s setup.Step) geom.Sentence {
	var list []string
	for _, w := range s.Alternatives {
		if w == setup.ByStrip || w == setup.ByGuide {
			list = append(list, wayWords[w])
		}
	}
	if len(list) == 0 {
		return geom.Sentence{}
	}
	return geom.Sentencef("make these cuts %s", strings.Join(list, ", or "))
}

// machineAt is where a drawer is cut.
var machineAt = map[joinery.CutterKind]string{joinery.Saw: "on a table saw", joinery.RouterTable: "on a router table", joinery.Router: "on a CNC router", joinery.Hand: "by hand"}

// wayWords are the ways that no entry of the job file has.
var wayWords = map[setup.Alternative]string{
	setup.ByStrip: "in a strip that is long enough to be pushed, from which the parts are cut afterwards",
	setup.ByGuide: "with a hand-held router along a straightedge that is clamped across the part",
}
