package batch

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// BySetting gathers drawers that one setting serves, as far as settings differ on paper,
// in order of appearance.
func BySetting(drawers []Drawer) [][]Drawer {
	return setup.Together(drawers, SettingKey)
}

// SettingKey is equal for drawers that one setting serves.
func SettingKey(d Drawer) joinery.Setup { return setup.Key(d.Setup, d.Spec.Units.Step()) }

// Boards are the parts of drawers that are cut at one machine.
func Boards(drawers []Drawer) (list []setup.Board) {
	for _, d := range drawers {
		for _, p := range d.Parts {
			list = append(list, setup.Board{Name: p.Name, Role: p.Role, Count: p.Quantity, Panel: p.Panel, Thickness: p.Stock.Thickness, Joint: d.Spec.Joint})
		}
	}
	return list
}

// beyond warns of cuts that are no setup of the drawer's machine.
func (b Batch) beyond(j *job.Job, drawer int, d Drawer) (problems []proposal) {
	cutter := d.Setup.Cutter
	told := make(map[string]bool)
	for _, board := range Boards([]Drawer{d}) {
		for _, s := range setup.Process(board, cutter, b.Machines) {
			if s.Refused == nil {
				continue
			}
			fact := geom.Sentencef("the %s of the %s are no setup of this %s: %s", StepName(s),
				board.Role, MachineName(cutter.Kind), s.Refused.Fact())
			if told[fact.In(b.Units)] {
				continue
			}
			told[fact.In(b.Units)] = true
			also := byTheWay(s)
			ask := also
			if ask.IsEmpty() {
				ask = geom.Sentencef("%s", WaysText(s, cutter.Kind))
			}
			problems = append(problems, proposal{Diagnosis: geom.Diagnosis{
				Code: "setup-limit", Level: geom.LevelWarning, Subject: geom.Subject{Setting: joinery.SettingCutter, Part: string(board.Role)}, Fact: fact,
				Measured: geom.Millimetres(s.Refused.Measured), Limit: geom.Millimetres(s.Refused.Allowed),
				Ask: ask,
			}, ways: setupWays(j, drawer, s), also: also})
		}
	}
	return problems
}

// MachineName is a machine in a sentence or a heading.
func MachineName(k joinery.CutterKind) string {
	return map[joinery.CutterKind]string{joinery.Saw: "table saw", joinery.RouterTable: "router table", joinery.Router: "CNC router", joinery.Hand: "hand work"}[k]
}

// StepName is what a step makes, in the plural.
func StepName(s setup.Step) string {
	switch {
	case len(s.EdgeCuts) > 0 && s.Edge == geom.PullCut:
		return "pulls"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.CrossingCut:
		return "slots for crossing dividers"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.NotchCut:
		return "notches"
	case len(s.EdgeCuts) > 0:
		return "fingers"
	case s.Holding == setup.Bored:
		return "holes"
	case s.Holding == setup.Opened:
		return "openings"
	}
	return s.Kind.String() + "s"
}

// WaysText says what makes a cut that the machine refuses.
func WaysText(s setup.Step, k joinery.CutterKind) string {
	other := setup.OtherFenced(k)
	words := map[setup.Alternative]string{
		setup.ByNarrower: "with a narrower cutter",
		setup.ByOther:    fmt.Sprintf("on a %s (kind: %s)", MachineName(other), other),
		setup.ByStrip:    wayWords[setup.ByStrip],
		setup.ByGuide:    wayWords[setup.ByGuide],
		setup.ByRouter:   fmt.Sprintf("on a CNC router (kind: %s)", joinery.Router),
		setup.ByHand:     fmt.Sprintf("by hand (kind: %s)", joinery.Hand),
		setup.ByCorner:   fmt.Sprintf("or take a corner whose fronts have plain ends (joint: %s or %s)", joinery.Rabbet, joinery.Butt),
	}
	var list []string
	for _, w := range s.Alternatives {
		list = append(list, words[w])
	}
	return "make them " + strings.Join(slices.Compact(list), "; ")
}
