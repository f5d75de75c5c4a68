package packet

import (
	"slices"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/paper"
	"drawerwright/geom/fit"
)

// log has the control charts of the cutter and the fence of a job that takes its accuracy from the log, and of what
// else drifts: first whether anything does.
func (m maker) log() {
	l := record.LoggedOf(m.batch)
	if l == nil || !l.Asked {
		return
	}
	l.Quantities = slices.DeleteFunc(l.Quantities, func(q record.Quantity) bool {
		return q.Drift == "" && !slices.Contains([]fit.Cause{fit.OfCutter, fit.OfFence}, fit.Cause(q.What))
	})
	var list []paper.Figure
	for _, c := range present.Charts(l, m.unit) {
		c.Said = "" // it stands over the charts, and is longer than one is wide
		list = append(list, paper.Figure{Drawing: c.Draw(paper.SmallChart)})
	}
	if len(list) == 0 {
		return
	}
	m.Section("Log of test cuts")
	drifts := present.DriftLines(l)
	if len(drifts) == 0 {
		m.Text("Nothing drifts by the log " + l.File + ".")
	}
	for _, said := range drifts {
		m.Item(0, "!", said)
	}
	m.Figures(list)
}
