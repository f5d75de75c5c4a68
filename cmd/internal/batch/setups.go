package batch

import (
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
			list = append(list, setup.Board{Name: p.Name, Role: p.Role, Count: p.Quantity, Turned: p.Label == "right", Panel: p.Panel, Thickness: p.Stock.Thickness, Joint: d.Spec.Joint})
		}
	}
	return list
}

// beyond warns of cuts that are no setup of the drawer's machine, and notes them at the drawer.
func (b Batch) beyond(j *job.Job, drawer int, d *Drawer) (problems []proposal) {
	cutter := d.Setup.Cutter
	told := make(map[string]bool)
	for _, board := range Boards([]Drawer{*d}) {
		for _, s := range setup.Process(board, cutter, b.Machines) {
			if s.Refused == nil {
				continue
			}
			d.Refused = append(d.Refused, s)
			fact := geom.Sentencef("the %s of the %s cannot be cut on this %s: %s", s.Name(),
				board.Role, cutter.Kind.Machine(), s.Refused.Fact())
			if told[fact.In(b.Units)] {
				continue
			}
			told[fact.In(b.Units)] = true
			also := job.BesideText(s)
			ask := also
			if ask.IsEmpty() {
				ask = geom.Sentencef("%s", job.InsteadText(s, cutter.Kind))
			}
			problems = append(problems, proposal{Diagnosis: geom.Diagnosis{
				Code: "setup-limit", Level: geom.LevelWarning, Subject: geom.Subject{Setting: joinery.SettingCutter, Part: string(board.Role)}, Fact: fact,
				Measured: geom.Millimeters(s.Refused.Measured), Limit: geom.Millimeters(s.Refused.Allowed),
				Ask: ask,
			}, ways: families(j.SetupWays(drawer, s)...), also: also})
		}
	}
	return problems
}
