package present

import (
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// Judged is the verdict on drawers of which it is the same.
type Judged struct {
	Drawers []string `json:"drawers"`
	Verdict string   `json:"verdict"` // goes together, or that of the measure that is most often wrong
	Odds    float64  `json:"odds"`    // the part of the boxes that keep all limits at once
	Text    string   `json:"said"`
}

// Verdicts are those on all drawers of a batch, as every output says them.
func Verdicts(b batch.Batch) []Judged {
	list := []Judged{}
	at := make(map[string]int)
	for _, d := range b.Drawers {
		said := d.Outcome.String()
		i, known := at[said]
		if !known {
			i = len(list)
			at[said] = i
			list = append(list, Judged{Verdict: string(d.Outcome.Verdict), Odds: record.Odds(d.Outcome.Right), Text: said})
		}
		list[i].Drawers = append(list[i].Drawers, d.Spec.Name)
	}
	return list
}

// String is a line of the verdict.
func (j Judged) String() string { return words.Some(j.Drawers) + ": " + j.Text }

// Basis says once what verdicts rest on.
var Basis = fmt.Sprintf("Verdicts are on boards and machine off as they usually are: %d random boxes of each drawer; likely is what all but 0.27 %% of them are.", fit.Samples)

// Forecast is what fit --json prints.
type Forecast struct {
	Tool    string            `json:"tool"`
	Job     string            `json:"job"`
	Units   string            `json:"units"`
	Draws   int               `json:"draws"`
	Seed    uint64            `json:"seed"`
	Boards  []Board           `json:"boards"`
	Drawers []SimulatedDrawer `json:"drawers"`
}

// Unit is that of the numbers in JSON.
func (f Forecast) Unit() geom.Unit { return record.UnitOf(f.Units) }

// Board says between which thicknesses the boards of a stock are, and by what
// standard where they were not measured at several places.
type Board struct {
	Stock   string        `json:"stock"`
	Mean    record.Length `json:"mean"`
	Min     record.Length `json:"least"`
	Max     record.Length `json:"most"`
	Assumed string        `json:"assumed,omitempty"`
}

// SimulatedDrawer are the verdict on a drawer and its measures, and what its parts must
// measure when they are held together before glue.
type SimulatedDrawer struct {
	Drawer  string       `json:"drawer"`
	Verdict string       `json:"verdict"`
	Odds    float64      `json:"odds"`
	Text    string       `json:"said"`
	Fit     []record.Fit `json:"fit"`
	Stack   Stack        `json:"stack"`
}

// Forecasts are what the boxes of a batch will do.
func Forecasts(b batch.Batch) Forecast {
	f := Forecast{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Draws: fit.Samples, Seed: fit.Seed,
		Boards: boards(b), Drawers: []SimulatedDrawer{}}
	for _, d := range b.Drawers {
		o := d.Outcome
		one := SimulatedDrawer{Drawer: d.Spec.Name, Verdict: string(o.Verdict), Odds: record.Odds(o.Right), Text: o.String(), Stack: StackOf(d), Fit: []record.Fit{}}
		for _, m := range o.Measures {
			one.Fit = append(one.Fit, record.FitOf(d.Spec.Name, m))
		}
		f.Drawers = append(f.Drawers, one)
	}
	return record.Settle(f, b.Units)
}

func boards(b batch.Batch) []Board {
	list := []Board{}
	seen := make(map[string]bool)
	for _, d := range b.Drawers {
		s := d.Spec
		for i, stock := range []string{s.Sides.Name, s.Front.Name, s.Back.Name, s.Bottom.Name} {
			if seen[stock] {
				continue
			}
			seen[stock] = true
			spread := [...]fit.Spread{d.Shop.Boards.Sides, d.Shop.Boards.Front, d.Shop.Boards.Back, d.Shop.Boards.Bottom}[i]
			mean := [...]float64{s.Sides.Thickness.Mean, s.Front.Thickness.Mean, s.Back.Thickness.Mean, s.Bottom.Thickness.Mean}[i]
			list = append(list, Board{stock, record.Length(mean), record.Length(mean - spread.Minus), record.Length(mean + spread.Plus), spread.Assumed})
		}
	}
	return list
}

// Source says by what the range of the thickness is known.
func (b Board) Source() string {
	if b.Assumed == "" {
		return "measured"
	}
	return "one reading; " + b.Assumed + " says between what boards are"
}
