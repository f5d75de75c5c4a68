package report

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// Fit is one measure of a finished joint or box: nominal, and the range that the
// caliper readings allow, with the verdict on it. Limit holds the least and the
// greatest that are right. Worst and Likely are with the errors of machine and boards
// too: everything at its worst at once, and the root of the sum of squares.
type Fit struct {
	Drawer  string     `json:"drawer"`
	Check   string     `json:"check"` // tongue-play, recess, lap, bottom-play, bottom-flush, outside-width, outside-depth; recess-inner, shoulder-gap, bottom-slack, bottom-slack-deep, outside-height, diagonal, slide-clearance
	Part    string     `json:"part"`  // empty for the whole box
	Words   string     `json:"words"` // the check, for people
	Nominal float64    `json:"nominal"`
	Min     float64    `json:"min"`
	Max     float64    `json:"max"`
	Limit   [2]float64 `json:"limit"`
	Verdict string     `json:"verdict"`

	// ForecastLimit is for Worst, Likely and Drawn: that of the depth lets lengths be off.
	ForecastLimit [2]float64 `json:"forecast_limit"`
	Worst         [2]float64 `json:"worst"`
	WorstVerdict  string     `json:"worst_verdict"`
	Likely        [2]float64 `json:"likely"`
	LikelyVerdict string     `json:"likely_verdict"`
	// Largest is what has the largest part in the likely range; absent where nothing
	// moves the measure.
	Largest *Contributor `json:"largest,omitempty"`
	// Drawn is of random boxes, where they were asked for.
	Drawn *Drawn `json:"drawn,omitempty"`

	listed bool // among the checks of the drawer itself, which the cut list prints
}

// Contributor is a source of error: by how much it moves the measure either way, its
// part of the variance, and the likely range either way of its middle, as it is and
// with this source half as large.
type Contributor struct {
	Source string  `json:"source"`
	Half   float64 `json:"half"`
	Part   float64 `json:"part"`
	Now    float64 `json:"likely_half"`
	Halved float64 `json:"likely_half_with_it_halved"`
}

// Drawn is what random boxes measure: the range of all but 0.27 % of them, and the
// part of them that is within the limits.
type Drawn struct {
	Mean   float64    `json:"mean"`
	Sigma  float64    `json:"sigma"`
	Common [2]float64 `json:"common"`
	Within float64    `json:"within"`
}

// fitOf is a measure for the report.
func fitOf(drawer string, m fit.Measure, n func(float64) float64) Fit {
	r := m.Stack.Result()
	c := m.Check
	f := Fit{Drawer: drawer, Check: c.Code, Part: string(c.Part), Words: c.Name, Nominal: n(c.Nominal), Min: n(c.Min), Max: n(c.Max),
		Limit: [2]float64{n(c.Least), n(c.Most)}, Verdict: string(c.Verdict), Worst: [2]float64{n(r.Worst.Min), n(r.Worst.Max)}, Likely: [2]float64{n(r.Likely.Min), n(r.Likely.Max)},
		WorstVerdict: string(m.Forecast.Over(r.Worst.Min, r.Worst.Max)), LikelyVerdict: string(m.Forecast.Over(r.Likely.Min, r.Likely.Max)),
		ForecastLimit: [2]float64{n(m.Forecast.Least), n(m.Forecast.Most)}, listed: !m.Beside}
	if len(r.Shares) > 0 {
		s := r.Shares[0]
		f.Largest = &Contributor{Source: m.Stack.Sources[s.Source].Name, Half: n(s.Half), Part: thousandth(s.Part), Now: n((r.Likely.Max - r.Likely.Min) / 2), Halved: n(s.Halved)}
	}
	return f
}

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

// Foreseen are the measures of a drawer, and what its parts must measure when they
// are held together before glue.
type Foreseen struct {
	Drawer string `json:"drawer"`
	Fit    []Fit  `json:"fit"`
	Stack  Stack  `json:"stack"`
}

// Forecasts works out what the boxes of a batch will do, with some random boxes of
// each drawer; none where draws is 0.
func Forecasts(b batch.Batch, draws int, seed uint64) Forecast {
	n := func(mm float64) float64 { return number(mm, b.Units) }
	f := Forecast{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Draws: draws, Seed: seed, Boards: boards(b, n), Drawers: []Foreseen{}}
	for _, d := range b.Drawers {
		one := Foreseen{Drawer: d.Spec.Name, Stack: StackOf(d, b.Units), Fit: []Fit{}}
		measures := d.Measures()
		var stacks []fit.Stack
		var limits []fit.Range
		for _, m := range measures {
			one.Fit = append(one.Fit, fitOf(d.Spec.Name, m, n))
			stacks, limits = append(stacks, m.Stack), append(limits, fit.Range{Min: m.Forecast.Least, Max: m.Forecast.Most})
		}
		for i, drawn := range fit.Draw(stacks, limits, draws, seed) {
			one.Fit[i].Drawn = &Drawn{Mean: n(drawn.Mean), Sigma: n(drawn.Sigma), Common: [2]float64{n(drawn.Common.Min), n(drawn.Common.Max)}, Within: drawn.Within}
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

// ForecastText prints a forecast. Drawers of which everything is the same stand
// together.
func ForecastText(f Forecast, u geom.Unit) []byte {
	var out bytes.Buffer
	if f.Job != "" {
		fmt.Fprintf(&out, "%s: what the boxes will do\n\n", f.Job)
	}
	var rows [][]string
	for _, b := range f.Boards {
		rows = append(rows, []string{b.Stock, caliper(b.Mean, u), caliper(b.Least, u), caliper(b.Most, u), b.Source()})
	}
	table(&out, []string{"stock", ">thickness " + u.String(), ">least", ">most", "by"}, rows)
	var bodies []string
	names := make(map[string][]string)
	for _, d := range f.Drawers {
		body := foreseenText(d, u)
		if names[body] == nil {
			bodies = append(bodies, body)
		}
		names[body] = append(names[body], d.Drawer)
	}
	for _, body := range bodies {
		fmt.Fprintf(&out, "\n%s\n%s", words.Some(names[body]), body)
	}
	fmt.Fprint(&out, "\nworst: everything off by its most at once. likely: the root of the sum of squares; about 0.27 % are beyond.\n")
	if f.Draws > 0 {
		fmt.Fprintf(&out, "right: the part of %d random boxes (seed %d) that is within the limits.\n", f.Draws, f.Seed)
	}
	return out.Bytes()
}

func foreseenText(d Foreseen, u geom.Unit) string {
	var out bytes.Buffer
	var rows [][]string
	span := func(r [2]float64) string { return between(r[0], r[1], u) }
	head := []string{"measure", ">as set " + u.String(), ">limits", ">likely", "verdict", ">worst", "verdict"}
	drawn := false
	for _, f := range d.Fit {
		row := []string{f.Words, caliper(f.Nominal, u), span(f.ForecastLimit), span(f.Likely), f.LikelyVerdict, span(f.Worst), f.WorstVerdict}
		if f.Drawn != nil {
			drawn = true
			row = append(row, percent(f.Drawn.Within))
		}
		rows = append(rows, row)
	}
	if drawn {
		head = append(head, ">right")
	}
	table(&out, head, rows)
	fmt.Fprintln(&out)
	rows = nil
	for _, f := range d.Fit {
		if c := f.Largest; c != nil && c.Now > 0 {
			rows = append(rows, []string{f.Words, c.Source, "+-" + caliper(c.Half, u), fmt.Sprintf("%.0f %%", 100*c.Part), "+-" + caliper(c.Now, u), "+-" + caliper(c.Halved, u)})
		}
	}
	table(&out, []string{"measure", "moved most by", ">alone " + u.String(), ">of the variance", ">likely", ">with it halved"}, rows)
	fmt.Fprintln(&out)
	stackText(&out, d.Stack, u)
	return out.String()
}

// percent does not call 100 % what is not all.
func percent(part float64) string {
	switch {
	case part == 1 || part == 0:
		return fmt.Sprintf("%.0f %%", 100*part)
	case part > 0.9995:
		return "> 99.9 %"
	case part < 0.0005:
		return "< 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*part)
}
