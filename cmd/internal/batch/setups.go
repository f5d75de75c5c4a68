package batch

import (
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
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
			list = append(list, setup.Board{Name: p.Name, Role: p.Role, Count: p.Quantity, Turned: p.Label == "right",
				Panel: p.Panel, Thickness: p.Stock.Thickness, Joint: d.Spec.Joint, EndWidth: d.EndWidth(p.Role)})
		}
	}
	return list
}

// refusedCut is a cut that a machine refuses, with the boards of a drawer of which that is said.
type refusedCut struct {
	step  setup.Step
	roles []joinery.Role
}

// refused are the cuts of a drawer that its machine does not make; of boards of which the same is
// said, one.
func (b Batch) refused(d *Drawer) (list []refusedCut) {
	for _, board := range Boards([]Drawer{*d}) {
		for _, s := range setup.Process(board, d.Setup.Cutter, b.Machines) {
			if s.Refused == nil {
				continue
			}
			d.Refused = append(d.Refused, s)
			i := slices.IndexFunc(list, func(r refusedCut) bool {
				return r.step.Name() == s.Name() && *r.step.Refused == *s.Refused
			})
			if i < 0 {
				i, list = len(list), append(list, refusedCut{step: s})
			}
			if !slices.Contains(list[i].roles, board.Role) {
				list[i].roles = append(list[i].roles, board.Role)
			}
		}
	}
	return list
}

// codeSetupLimit is that of cuts beyond a limit of the machine.
const codeSetupLimit = "setup-limit"

// beyond warns of cuts that are no setup of the drawer's machine, and notes them at the drawer.
func (b Batch) beyond(j *job.Job, drawer int, d *Drawer) (problems []proposal) {
	cutter := d.Setup.Cutter
	for _, r := range b.refused(d) {
		s := r.step
		var roles []string
		for _, role := range r.roles {
			roles = append(roles, "the "+role.String())
		}
		also := job.BesideText(s)
		ask := also
		if ask.IsEmpty() {
			ask = geom.Sentencef("%s", job.InsteadText(s, cutter.Kind, b.Units))
		}
		problems = append(problems, proposal{Diagnosis: geom.Diagnosis{
			Code: codeSetupLimit, Level: geom.LevelWarning,
			Subject: geom.Subject{Setting: joinery.SettingCutter, Part: string(r.roles[0])},
			Fact: geom.Sentencef("the %s of %s cannot be cut on this %s: %s", s.Name(), words.And(roles),
				cutter.Kind.Machine(), s.Refused.Fact()),
			Measured: geom.Millimeters(s.Refused.Measured), Limit: geom.Millimeters(s.Refused.Allowed),
			Ask: ask,
		}, ways: families(j.SetupWays(drawer, s)...), also: also})
	}
	return problems
}

// noteLower notes at drawers that a lower cutter makes all that their machine does not reach, where
// that was tried.
func (b Batch) noteLower(all []Problem) {
	lower := make(map[int]bool)
	for _, p := range all {
		if p.Code != codeSetupLimit || !slices.ContainsFunc(b.Drawers[p.Drawer].Refused, tooHigh) {
			continue
		}
		sets := slices.ContainsFunc(p.Ways, func(w Way) bool {
			return slices.ContainsFunc(w.Edits, func(e job.Edit) bool {
				return e.Path[len(e.Path)-1] == string(joinery.SettingCutterHeight)
			})
		})
		before, known := lower[p.Drawer]
		lower[p.Drawer] = sets && (before || !known)
	}
	for drawer, holds := range lower {
		refused := b.Drawers[drawer].Refused
		for i, s := range refused {
			if holds && tooHigh(s) {
				refused[i].Alternatives = append([]setup.Alternative{setup.ByLower}, s.Alternatives...)
			}
		}
	}
}

// tooHigh reports whether a cut is refused because the machine's cutter does not go as high.
func tooHigh(s setup.Step) bool { return s.Refused.Limit == setup.LimitHeight }
