package report

import (
	"fmt"
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/fit"
)

// Fit is one measure of a finished joint or box, with boards and machine off as they
// usually are. Limit holds the least and the greatest that are right.
type Fit struct {
	Drawer  string     `json:"drawer"`
	Check   string     `json:"check"` // tongue-play, recess, lap, bottom-play, bottom-flush, outside-width, outside-depth; recess-inner, shoulder-gap, bottom-slack, bottom-slack-deep, outside-height, diagonal, slide-clearance
	Part    string     `json:"part"`  // empty for the whole box
	Words   string     `json:"words"` // the check, for people
	Nominal float64    `json:"nominal"`
	Limit   [2]float64 `json:"limit"`
	// Likely is the range of all but 0.27 % of the boxes, Verdict what it is within the
	// limits; Odds the part of the boxes that keep them, and Of1000 the same in words.
	Likely  [2]float64 `json:"likely"`
	Verdict string     `json:"verdict"`
	Odds    float64    `json:"odds"`
	Of1000  string     `json:"of_1000"`
	// Worst is with everything off by its most at once.
	Worst [2]float64 `json:"worst"`
	// Largest is what moves the measure most; absent where nothing does.
	Largest *Contributor `json:"largest,omitempty"`
	// Drawn is of other random boxes, where they were asked for.
	Drawn *Drawn `json:"drawn,omitempty"`
}

// Contributor is a source of error: by how much it moves the measure either way, its
// part of the sum of squares, and the root of that sum, as it is and with this source
// half as large.
type Contributor struct {
	Source string  `json:"source"`
	Half   float64 `json:"half"`
	Part   float64 `json:"part"`
	Root   float64 `json:"root"`
	Halved float64 `json:"root_with_it_halved"`
}

// Drawn is what random boxes measure: the range of all but 0.27 % of them, and the
// part of them that is within the limits.
type Drawn struct {
	Mean   float64    `json:"mean"`
	Sigma  float64    `json:"sigma"`
	Common [2]float64 `json:"common"`
	Odds   float64    `json:"odds"`
	Of1000 string     `json:"of_1000"`
}

// fitOf is a measure for the report.
func fitOf(drawer string, m fit.Foreseen, n func(float64) float64) Fit {
	f := Fit{Drawer: drawer, Check: m.Code, Part: string(m.Part), Words: m.Name, Nominal: n(m.Nominal), Limit: [2]float64{n(m.Least), n(m.Most)},
		Likely: [2]float64{n(m.Min), n(m.Max)}, Verdict: string(m.Verdict), Odds: odds(m.Right), Of1000: m.Right.Of1000(), Worst: [2]float64{n(m.Result.Worst.Min), n(m.Result.Worst.Max)}}
	if len(m.Result.Shares) > 0 {
		s := m.Result.Shares[0]
		f.Largest = &Contributor{Source: m.Stack.Sources[s.Source].Name, Half: n(s.Half), Part: thousandth(s.Part), Root: n(m.Result.Root), Halved: n(s.Halved)}
	}
	return f
}

// odds are a number for programs, with as many digits as the draws tell.
func odds(o fit.Odds) float64 { return math.Round(o.Part*fit.Draws) / fit.Draws }

// Judged is the verdict on drawers of which it is the same.
type Judged struct {
	Drawers []string `json:"drawers"`
	Verdict string   `json:"verdict"` // goes together, or that of the measure that is most often wrong
	Odds    float64  `json:"odds"`    // the part of the boxes that keep all limits at once
	Said    string   `json:"said"`
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
			list = append(list, Judged{Verdict: string(d.Outcome.Verdict), Odds: odds(d.Outcome.Right), Said: said})
		}
		list[i].Drawers = append(list[i].Drawers, d.Spec.Name)
	}
	return list
}

// String is a line of the verdict.
func (j Judged) String() string { return words.Some(j.Drawers) + ": " + j.Said }

// Basis says once what verdicts rest on.
var Basis = fmt.Sprintf("Verdicts are on boards and machine off as they usually are: %d random boxes of each drawer; likely is what all but 0.27 %% of them are.", fit.Draws)

// Forecast is what fit --json prints.
type Forecast struct {
	Tool    string     `json:"tool"`
	Job     string     `json:"job"`
	Units   string     `json:"units"`
	Draws   int        `json:"draws"`
	Seed    uint64     `json:"seed"`
	Boards  []Board    `json:"boards"`
	Drawers []Foreseen `json:"drawers"`
}

// Board says between which thicknesses the boards of a stock are, and by what
// standard where they were not measured at several places.
type Board struct {
	Stock   string  `json:"stock"`
	Mean    float64 `json:"mean"`
	Least   float64 `json:"least"`
	Most    float64 `json:"most"`
	Assumed string  `json:"assumed,omitempty"`
}

// Foreseen are the verdict on a drawer and its measures, and what its parts must
// measure when they are held together before glue. Drawn are the odds by other random
// boxes, where they were asked for.
type Foreseen struct {
	Drawer  string   `json:"drawer"`
	Verdict string   `json:"verdict"`
	Odds    float64  `json:"odds"`
	Said    string   `json:"said"`
	Drawn   *float64 `json:"drawn_odds,omitempty"`
	Fit     []Fit    `json:"fit"`
	Stack   Stack    `json:"stack"`
}

// Forecasts are what the boxes of a batch will do. With other draws than those of the
// verdicts, their figures stand beside them.
func Forecasts(b batch.Batch, draws int, seed uint64) Forecast {
	n := func(mm float64) float64 { return number(mm, b.Units) }
	f := Forecast{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Draws: draws, Seed: seed, Boards: boards(b, n), Drawers: []Foreseen{}}
	for _, d := range b.Drawers {
		o := d.Outcome
		one := Foreseen{Drawer: d.Spec.Name, Verdict: string(o.Verdict), Odds: odds(o.Right), Said: o.String(), Stack: StackOf(d, b.Units), Fit: []Fit{}}
		for _, m := range o.Measures {
			one.Fit = append(one.Fit, fitOf(d.Spec.Name, m, n))
		}
		if draws > 0 && (draws != fit.Draws || seed != fit.Seed) {
			list, right := o.Draw(draws, seed)
			one.Drawn = &right
			for i, v := range list {
				o := fit.Odds{Part: v.Within, All: o.Measures[i].Right.All}
				one.Fit[i].Drawn = &Drawn{Mean: n(v.Mean), Sigma: n(v.Sigma), Common: [2]float64{n(v.Common.Min), n(v.Common.Max)}, Odds: v.Within, Of1000: o.Of1000()}
			}
		}
		f.Drawers = append(f.Drawers, one)
	}
	return f
}

func boards(b batch.Batch, n func(float64) float64) []Board {
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
			list = append(list, Board{stock, n(mean), n(mean - spread.Minus), n(mean + spread.Plus), spread.Assumed})
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
