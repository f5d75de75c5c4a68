package packet

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// holds are how parts are held for the kinds of work, as drawings show them.
var holds = map[setup.Holding]paper.Hold{setup.Across: paper.Flat, setup.Along: paper.Flat, setup.AtEnd: paper.AtEnd, setup.AtEdge: paper.AtEnd, setup.OnEnd: paper.OnEnd, setup.Fingers: paper.OnJig}

// setups prints every setting with a drawing of each cut.
func (m maker) setups() {
	s := m.sheet
	m.Chapter("Setups")
	unit := m.unit.String()
	for _, c := range s.Machines {
		m.Heading(1, fmt.Sprintf("%s, %s: %s", upper(joinery.CutterKind(c.Machine).Machine()),
			c.CutsWith(m.unit), names(c.Drawers)))
		m.Text("One setting for everything? " + c.OneSetup.Text)
		for _, choice := range c.OneSetup.Minimal {
			if choice.Spacers != nil {
				m.Text(choice.Spacers.Text)
			}
		}
		m.Text(present.TestPiece)
		if len(c.Refused) > 0 {
			m.Heading(2, "Not on this machine")
			for _, r := range c.Refused {
				m.Item(0, "!", r.RefusedText())
			}
		}
		if len(c.Gauges) > 0 {
			t := present.NewTable(present.In("gauge", unit), present.Words("marks"))
			for _, g := range c.Gauges {
				t.Add(m.setTo(g.At), strings.Join(g.Marks, "; "))
			}
			m.table(t)
		}
		if c.Order != "" {
			m.Text(c.Order)
		}
		step := 0
		for i, set := range c.Settings {
			m.setting(i+1, c.Machine, set, &step)
		}
		if len(c.Files) > 0 {
			m.files(c)
		}
		m.checks(c.Checks, c.ChecksText)
		m.apart(c, step)
	}
}

// files are the drawings that a router cuts, in order.
func (m maker) files(c present.Machine) {
	t := present.NewTable(present.Numbers("pieces"), present.Words("part"), present.Words("face"),
		present.Words("drawing"))
	for _, f := range c.Files {
		t.Add(fmt.Sprint(f.Count), f.Part, f.Face+", "+f.How(), f.File)
	}
	m.table(t)
}

// apart are what is sawn and bored afterward.
func (m maker) apart(c present.Machine, step int) {
	place, said := "", false
	for _, s := range c.Separate {
		if at := s.Place(c.Machine); at != place {
			place = at
			m.Heading(2, upper(at))
		}
		if s.Metric && !said {
			said = true
			m.Text(present.MetricBits)
		}
		step++
		m.step(s, step)
	}
}

// step is a step in words.
func (m maker) step(c present.CutStep, step int) {
	m.Item(0, fmt.Sprintf("%d.", step), c.How(m.unit)+".")
	m.Item(1, "", c.PartsText)
	if c.Note != "" {
		m.Item(1, "", c.Note)
	}
	for _, caution := range c.Cautions {
		m.Item(1, "!", caution.Cited())
	}
}

func (m maker) setting(n int, machine string, s present.Setting, step *int) {
	m.Heading(2, upper(strings.ToLower(s.Heading(n, machine, m.unit))))
	if said := s.Buried(machine); said != "" {
		m.Text(said)
	}
	if said := s.SpacersText(m.unit); said != "" {
		m.Text(said)
	}
	if len(s.Steps) > 1 {
		m.Text(s.Raised(m.unit))
	}
	for _, c := range s.Cuts {
		*step++
		if hold, drawn := holds[setup.Holding(c.Work)]; drawn {
			passes := c.Passes
			if len(passes) == 0 {
				passes = []record.Length{s.Fence}
			}
			fence := passes[0]
			if hold == paper.AtEnd && len(passes) == 1 { // the rest of the cutter is buried
				fence = c.Width - s.Cutter
			}
			d := paper.Operator(paper.Cut{Hold: hold, Cutter: s.Cutter.MM(), Height: s.Height.MM(), Fence: fence.MM(),
				Thickness: m.first(c).Panel.Thickness}, m.caliper)
			m.Keep(d.Height + 18)
			m.step(c, *step)
			m.Figure(d, "Seen by the operator, who feeds away from himself with the fence at his right; "+
				m.unit.String()+".")
			m.Scale(paper.OperatorScale)
		} else {
			m.step(c, *step)
		}
		if len(c.Passes) > 1 {
			m.Item(1, "", c.Fences(m.unit))
		}
	}
	m.checks(s.Checks, s.ChecksText)
}

func (m maker) checks(list []present.Check, said []string) {
	if len(list) > 0 {
		m.table(present.CheckTable(list, m.unit).Renamed("what", "measure on the test piece"))
		m.Small("Every combination of readings within these limits is right.")
	}
	for _, s := range said {
		m.Text(s)
	}
}

// setTo prints a length that something is set to.
func (m maker) setTo(l record.Length) string { return words.Number(l.MM(), m.unit) }

// first is the first part of a step.
func (m maker) first(c present.CutStep) batch.Part {
	for _, d := range m.batch.Drawers {
		for _, p := range d.Parts {
			if p.Name == c.Parts[0].Part {
				return p
			}
		}
	}
	return batch.Part{} // never: steps are of the batch's parts
}
