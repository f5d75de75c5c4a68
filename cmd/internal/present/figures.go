package present

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
	"drawerwright/geom/sheet"
)

// TestPiece is said before the settings of a machine: what the test piece is made from, which cuts it gets, and how it
// is measured.
func TestPiece(c Machine, u geom.Unit) string {
	if !joinery.CutterKind(c.Machine).Fenced() {
		return "Cut a test piece first, from waste of the same boards: one end as that of a side, another as that " +
			"of a box front. Push the two together and measure."
	}
	groove := ""
	if slices.ContainsFunc(c.Settings, func(s Setting) bool {
		return slices.ContainsFunc(s.Cuts, func(c CutStep) bool { return c.Work == string(setup.Along) })
	}) {
		groove = ", and the groove along its lower edge"
	}
	return fmt.Sprintf("Cut a test piece first, from waste of the same board, as wide as a side and at least %s "+
		"long: one end as that of a side, the other as that of a box front%s. Then saw it through in the middle "+
		"with a handsaw, push the two ends together and measure.",
		words.Either(u, fmt.Sprintf("%g mm", sheet.GuidedEdge), "12 in"), groove)
}

// Figure is a number that is set, to be read at arm's length; Words where a fence or jig takes its
// place. Of is what it is set for, where that is not all of a setting.
type Figure struct{ Name, Value, Words, Of string }

// standsOut reports whether as much of the cutter stands out of a sacrificial fence for all cuts of a setting.
func (s Setting) standsOut() bool {
	return !slices.ContainsFunc(s.Cuts, func(c CutStep) bool { return len(c.Passes) > 1 || c.Width != s.Cuts[0].Width })
}

// Figures are what a setting sets, in the order of its heading.
func (s Setting) Figures(machine string, u geom.Unit) []Figure {
	mm := func(v record.Length) string { return words.Length(v.MM(), u) }
	if joinery.CutterKind(machine) == joinery.Hand {
		return []Figure{{Name: "gauge or fence", Value: mm(s.Fence)}, {Name: "depth or shoulder", Value: mm(s.Height)}}
	}
	fence := Figure{Name: "fence", Value: mm(s.Fence)}
	switch {
	case s.Jig():
		fence = Figure{Name: "fence", Words: "finger jig"}
	case s.touches():
		fence.Name = "sacrificial fence"
	case s.Fence == 0:
		if fence = (Figure{Name: "fence", Words: "sacrificial fence"}); s.standsOut() {
			fence = Figure{Name: "out of sacrificial fence", Value: mm(s.Cuts[0].Width)}
		}
	}
	list := []Figure{fence}
	for _, f := range s.laterFences(u) {
		list = append(list, Figure{Name: "then fence", Value: f.Value, Of: f.Of})
	}
	return append(list, Figure{Name: "height", Value: mm(s.Height)},
		Figure{Name: CutterName(machine), Value: mm(s.Cutter)})
}

// SpacersText says which of the shop's spacers come nearest to a setting; empty without any.
func (s Setting) SpacersText(u geom.Unit) string {
	if s.Spacers == nil || s.Fence <= 0 {
		return ""
	}
	stack := func(pieces []record.Length) string {
		sum := record.Length(0)
		for _, v := range pieces {
			sum += v
		}
		if len(pieces) < 2 {
			return caliper(sum, u)
		}
		return SettingList(pieces, " + ", u) + " = " + caliper(sum, u)
	}
	return fmt.Sprintf("Nearest of the shop's spacers: fence %s; height %s.", stack(s.Spacers.Fence),
		stack(s.Spacers.Height))
}

// RefusedText says what is no setup of a machine, and what makes it.
func (c CutStep) RefusedText() string {
	return fmt.Sprintf("%s of %s. %s; %s.", upper(c.Kind), c.PartsText, c.Note, c.Alternatives)
}
