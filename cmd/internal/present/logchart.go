package present

import (
	"bytes"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// chartApart is the room between two charts, in mm.
const chartApart = 8

// Charts are the control charts of the quantities of which a log has enough cuts.
func Charts(l *record.Learned, u geom.Unit) (list []paper.Chart) {
	for _, q := range l.Quantities {
		if len(q.Chart.Values) < fit.EnoughCuts {
			continue
		}
		c := paper.Chart{Title: logName(q), Said: q.Drift, Values: q.Chart.Values, Mean: q.Chart.Mean, Sigma: q.Chart.Sigma,
			Marked: make(map[int]bool), Unit: u}
		for _, s := range q.Chart.Signals {
			c.Marked[s.At] = true
		}
		list = append(list, c)
	}
	return list
}

// LogChart draws the control charts of a log as SVG, one below the other; nil where it has too few cuts of everything.
func LogChart(l *record.Learned, u geom.Unit) ([]byte, error) {
	var list []drawing.Drawing
	for _, c := range Charts(l, u) {
		list = append(list, c.Draw(paper.WholeChart))
	}
	if len(list) == 0 {
		return nil, nil
	}
	var all drawing.Drawing
	for _, d := range list {
		all.Width, all.Height = max(all.Width, d.Width), all.Height+d.Height+chartApart
	}
	top := all.Height
	for _, d := range list {
		top -= d.Height + chartApart
		all.Put(d, geom.Point{Y: top + chartApart/2}, 1)
	}
	var out bytes.Buffer
	err := all.WriteSVG(&out, "Control charts of "+l.File)
	return out.Bytes(), err
}
