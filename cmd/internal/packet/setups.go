package packet

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/report"
	"drawerwright/export/paper"
	"drawerwright/geom/setup"
)

// holds are how parts are held for the kinds of work, as drawings show them.
var holds = map[setup.Work]paper.Hold{setup.Across: paper.Flat, setup.Along: paper.Flat, setup.AtEnd: paper.AtEnd, setup.OnEnd: paper.OnEnd, setup.Fingers: paper.OnJig}

// setups prints every setting with a drawing of each cut.
func (m maker) setups() {
	s := m.sheet
	m.Chapter("Setups")
	unit := m.unit.String()
	for _, c := range s.Machines {
		m.Heading(1, fmt.Sprintf("%s, %s %s %s: %s", upper(report.MachineName(c.Machine)), report.CutterName(c.Machine), m.reported(c.Cutter), unit, names(c.Drawers)))
		m.Text("One setting for everything? " + c.OneSetup.Said)
		for _, choice := range c.OneSetup.Fewest {
			if choice.Spacers != nil {
				m.Text(choice.Spacers.Said)
			}
		}
		m.Text("Cut a test piece of the same boards first, a side's and a front's end, push it together and measure.")
		step := 0
		for i, set := range c.Settings {
			m.setting(i+1, set, &step)
		}
		if len(c.Files) == 0 {
			continue
		}
		var rows [][]string
		for _, f := range c.Files {
			how := "face up"
			if f.Turn {
				how = "turned over on its two holes"
			}
			rows = append(rows, []string{fmt.Sprint(f.Count), f.Part, f.Face + ", " + how, f.File})
		}
		m.Table([]string{">pieces", "part", "face", "drawing"}, rows)
		m.checks(c.Checks)
	}
}

func (m maker) setting(n int, s report.Setting, step *int) {
	unit := m.unit.String()
	head := fmt.Sprintf("Setting %d: no fence", n)
	if s.Height > 0 {
		head = fmt.Sprintf("Setting %d: height %s %s, fence %s %s", n, m.reported(s.Height), unit, m.reported(s.Fence), unit)
	}
	m.Heading(2, head)
	switch {
	case s.Height == 0:
	case s.Fence == 0:
		m.Text("The fence is a sacrificial one, in which part of the cutter is buried: every distance counts from its face.")
	default:
		m.Text("The fence distance is from its face to the near side of the cutter.")
	}
	if p := s.Spacers; p != nil && s.Fence > 0 {
		m.Text(fmt.Sprintf("Nearest of the shop's spacers: fence %s; height %s.", m.stack(p.Fence), m.stack(p.Height)))
	}
	if len(s.Steps) > 1 {
		m.Text("Raise the bit in steps: " + m.list(s.Steps, ", ") + " " + unit + "; every part passes at each.")
	}
	for _, c := range s.Cuts {
		*step++
		if hold, drawn := holds[setup.Work(c.Work)]; drawn {
			passes := c.Passes
			if len(passes) == 0 {
				passes = []float64{s.Fence}
			}
			mm := m.unit.MM()
			drawer, part := m.first(c)
			d := paper.Operator(paper.Cut{Hold: hold, Cutter: drawer.Setup.Cutter.Width, Height: s.Height * mm, Fence: passes[0] * mm, Thickness: part.Panel.Thickness}, m.caliper)
			m.Keep(d.Height + 18)
			m.Item(0, fmt.Sprintf("%d.", *step), c.How(m.unit)+".")
			m.Item(1, "", c.Pieces())
			m.Figure(d, "Seen by the operator, who feeds away from himself with the fence at his right; "+unit+".")
		} else {
			m.Item(0, fmt.Sprintf("%d.", *step), c.How(m.unit)+".")
			m.Item(1, "", c.Pieces())
		}
		if len(c.Passes) > 1 {
			m.Item(1, "", fmt.Sprintf("%d passes, the fence at %s %s.", len(c.Passes), m.list(c.Passes, ", "), unit))
		}
		for _, caution := range c.Cautions {
			m.Item(1, "!", cited(caution))
		}
	}
	m.checks(s.Checks)
}

func (m maker) checks(list []report.Check) {
	if len(list) == 0 {
		return
	}
	var rows [][]string
	for _, c := range list {
		rows = append(rows, []string{c.What, m.reported(c.Is), m.reported(c.Least) + " to " + m.reported(c.Most)})
	}
	m.Table([]string{"measure on the test piece", ">" + m.unit.String(), ">right"}, rows)
}

func (m maker) list(values []float64, between string) string {
	all := make([]string, len(values))
	for i, v := range values {
		all[i] = m.reported(v)
	}
	return strings.Join(all, between)
}

func (m maker) stack(pieces []float64) string {
	sum := 0.0
	for _, v := range pieces {
		sum += v
	}
	if len(pieces) < 2 {
		return m.reported(sum)
	}
	return m.list(pieces, " + ") + " = " + m.reported(sum)
}

// first is the first part of a step, and its drawer.
func (m maker) first(c report.CutStep) (batch.Drawer, batch.Part) {
	for _, d := range m.batch.Drawers {
		for _, p := range d.Parts {
			if p.Name == c.Parts[0].Part {
				return d, p
			}
		}
	}
	return batch.Drawer{}, batch.Part{} // never: steps are of the batch's parts
}
