package job

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/setup"
)

// Way is entries of the job file written anew, which may end a problem, with the words for it.
type Way struct {
	Text  string
	Edits []Edit
}

// InsteadText says what makes a cut that a machine refuses.
func InsteadText(s setup.Step, k joinery.CutterKind, u geom.Unit) string {
	other := setup.OtherFenced(k)
	words := map[setup.Alternative]string{
		setup.ByLower: fmt.Sprintf("with all cuts at a cutter height of %s (%s)", highest(*s.Refused, u),
			lowered(*s.Refused, u)),
		setup.ByNarrower: "with a narrower cutter",
		setup.ByOther:    fmt.Sprintf("on a %s (kind: %s)", other.Machine(), other),
		setup.ByStrip:    besideWords[setup.ByStrip],
		setup.ByGuide:    besideWords[setup.ByGuide],
		setup.ByRouter:   fmt.Sprintf("on a CNC router (kind: %s)", joinery.Router),
		setup.ByHand:     fmt.Sprintf("by hand (kind: %s)", joinery.Hand),
		setup.ByCorner: fmt.Sprintf("or take a corner whose box fronts have plain ends (joint: %s or %s)", joinery.Rabbet,
			joinery.Butt),
	}
	var list []string
	for _, w := range s.Alternatives {
		list = append(list, words[w])
	}
	return "make them " + strings.Join(slices.Compact(list), "; ")
}

// BesideText is what makes such a cut in a drawer that stays as it is, which no entry says.
func BesideText(s setup.Step) geom.Sentence {
	var list []string
	for _, w := range s.Besides() {
		list = append(list, besideWords[w])
	}
	if len(list) == 0 {
		return geom.Sentence{}
	}
	return geom.Sentencef("make these cuts %s", strings.Join(list, ", or "))
}

// besideWords are the ways that no entry of the job file has.
var besideWords = map[setup.Alternative]string{
	setup.ByStrip: "in a board that is long and wide enough to be pushed, from which the parts are cut afterward",
	setup.ByGuide: "with a hand-held router along a straightedge that is clamped across the part",
}

// SetupWays are entries with which a cut that the machine refuses is one that a machine makes:
// another machine or corner for the drawer, or the limits of the shop's own machine. Of those that
// are alike one is wanted, the first that holds.
func (j *Job) SetupWays(drawer int, s setup.Step) (ways [][]Way) {
	write := func(key, value, why string) Way {
		return Way{Text: fmt.Sprintf("%s: write `%s: %s` for the drawer", why, key, value),
			Edits: []Edit{{Path: j.DrawerPath(drawer, key), Value: value}}}
	}
	if s.Refused.Limit == setup.LimitHeight {
		ways = append(ways, []Way{{Text: fmt.Sprintf("cut it all no higher than the machine goes: write `joinery: {%s}`",
			lowered(*s.Refused, j.Units)),
			Edits: []Edit{j.SettingEdit(drawer, joinery.SettingCutterHeight, highest(*s.Refused, j.Units))}}})
	}
	for _, alike := range s.Substitutes(j.Drawers[drawer].Cutter, j.Units) {
		var list []Way
		for _, o := range alike {
			if o.Kind == "" {
				list = append(list, write("joint", string(o.Joint), "take a corner whose box fronts have plain ends"))
				continue
			}
			width := "width"
			if o.Kind == joinery.Router {
				width = "diameter"
			}
			list = append(list, write("cutter", fmt.Sprintf("{kind: %s, %s: %s}", o.Kind, width,
				geom.LengthOf(o.Width).Text(j.Units)), "cut it "+machineAt[o.Kind]))
		}
		ways = append(ways, list)
	}
	return append(ways, []Way{j.ownLimit(drawer, *s.Refused)})
}

// highest is how high a machine's cutter goes, and lowered the entry of joinery that asks for no more.
func highest(b setup.Exceeded, u geom.Unit) string {
	return geom.LengthOf(b.Allowed).RoundDown(u).Text(u)
}

func lowered(b setup.Exceeded, u geom.Unit) string {
	return fmt.Sprintf("%s: %s", joinery.SettingCutterHeight, highest(b, u))
}

// ownLimit is the limit of a machine that makes the cut.
func (j *Job) ownLimit(drawer int, b setup.Exceeded) Way {
	value := geom.LengthOf(b.Needed(j.Units)).Text(j.Units)
	if b.Limit == setup.LimitReach {
		return Way{Text: "take a bit that reaches " + value,
			Edits: []Edit{{Path: j.CutterPath(drawer, string(b.Limit)), Value: value}}}
	}
	kind := j.Drawers[drawer].Cutter.Kind
	return Way{Text: fmt.Sprintf("where the maker of your machine allows it, write `%s: %s` under machines: %s",
		b.Limit.Entry(kind), value, kind), Edits: []Edit{{Path: []string{"machines", string(kind), b.Limit.Entry(kind)}, Value: value}}}
}

// machineAt is where a drawer is cut.
var machineAt = map[joinery.CutterKind]string{joinery.Saw: "on a table saw", joinery.RouterTable: "on a router table",
	joinery.Router: "on a CNC router", joinery.Hand: "by hand"}

// RouterWays are the entries that remedies of a panel's diagnosis write. A reach or a diameter is
// that of the only bit: of several, the shop chooses which it buys anew.
func (j *Job) RouterWays(drawer int, d geom.Diagnosis) (ways [][]Way) {
	for _, r := range d.Remedies {
		c := r.Changes[0] // package mill names one at a time
		path := []string{"router", string(c.Setting)}
		if c.Key != "" {
			path = append(path, c.Key)
		}
		if c.Setting == mill.SettingBits {
			if len(j.Drawers[drawer].Bits) != 1 {
				continue
			}
			path = j.CutterPath(drawer, c.Key)
		}
		value := c.Word
		if value == "" {
			value = geom.Millimeters(r.Ends()[0][0]).In(j.Units)
		}
		ways = append(ways, []Way{{RemedyText(r, joinery.Spec{Units: j.Units}), []Edit{{Path: path, Value: value}}}})
	}
	return ways
}

// LoadWay writes a load of a drawer.
func (j *Job) LoadWay(drawer int, value string) Way {
	return Way{"write a load of " + value + " or less", []Edit{{Path: j.DrawerPath(drawer, "load"), Value: value}}}
}
