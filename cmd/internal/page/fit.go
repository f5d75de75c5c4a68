package page

import (
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// fitted is what the measures of a drawer come out as, drawn.
type fitted struct {
	Drawer   string         `json:"drawer"`
	Said     string         `json:"said"` // of all measures together
	Signs    []sign         `json:"signs"`
	Measures []drawnMeasure `json:"measures"`
}

// sign is what a sign of the drawings is.
type sign struct {
	Word    string         `json:"word"`
	Picture drawing.Marked `json:"picture"`
}

// drawnMeasure is one of them: what is said beside its drawing, and in words what it shows.
type drawnMeasure struct {
	Name    string         `json:"name"` // as in the table
	Title   string         `json:"title"`
	Verdict string         `json:"verdict"`
	Odds    string         `json:"odds"`
	Mark    joinery.State  `json:"mark"`
	Help    string         `json:"help,omitempty"`
	Said    string         `json:"said"`
	Picture drawing.Marked `json:"picture"`
}

// anyDrawer is where what is advised of a measure is done.
var anyDrawer = []string{"drawers", "0"}

func fitOf(d record.SimulatedDrawer, u geom.Unit) *fitted {
	out := &fitted{Drawer: d.Drawer, Measures: []drawnMeasure{}}
	for _, s := range paper.ForecastSigns() {
		out.Signs = append(out.Signs, sign{s.Word, s.Marked()})
	}
	for _, f := range d.Fit {
		row := present.FitRow(f, u)
		out.Measures = append(out.Measures, drawnMeasure{Name: f.Name, Title: row.Name, Verdict: row.Verdict,
			Odds: row.Odds, Mark: f.State,
			Help: present.PlusMinus(job.FormText(row.Help, anyDrawer)), Said: present.FitText(f, u),
			Picture: row.Draw().Marked()})
	}
	return out
}

// strip is the verdict on a job that can be built: the word, what follows it, and the measure to
// watch.
type strip struct {
	Word    string        `json:"word"`
	Mark    joinery.State `json:"mark"` // the sign beside the word
	Said    string        `json:"said"`
	Watch   string        `json:"watch,omitempty"`
	Drawer  string        `json:"drawer,omitempty"` // whose measure that is
	Check   string        `json:"check,omitempty"`  // the code of problems with it
	Measure string        `json:"measure,omitempty"`
	Off     bool          `json:"off"` // that it leaves its limits
}

// marks are the signs of the words of verdicts.
var marks = map[string]joinery.State{record.Fits: joinery.StateRight, record.MayNotFit: joinery.StateDoubt,
	record.Overloaded: joinery.StateDoubt, record.DoesNotFit: joinery.StateWrong,
	record.CannotBeCut: joinery.StateWrong}

// stripOf is the strip of a verdict.
func stripOf(v record.Verdict) *strip {
	return &strip{Word: v.Word, Mark: marks[v.Word], Said: strings.TrimPrefix(v.Text, v.Word+": "),
		Watch:  present.PlusMinus(v.Watched.Text),
		Drawer: v.Watched.Drawer, Measure: v.Watched.Measure, Check: string(v.Watched.Check), Off: v.Watched.Off}
}
