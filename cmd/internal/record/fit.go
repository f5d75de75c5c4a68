package record

import (
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Fit is one measure of a finished joint or box, with boards and machine off as they
// usually are. Limits are the least and the greatest that are right.
type Fit struct {
	Drawer  string            `json:"drawer"`
	Check   joinery.CheckCode `json:"check"` // tongue-clearance, recess, lap, groove-clearance, bottom-flush, outside-width, outside-depth; recess-inner, shoulder-gap, bottom-clearance, bottom-clearance-depth, groove-step, back-over-bottom, outside-height, diagonal, slide-clearance
	Part    string            `json:"part"`  // empty for the whole box
	Name    string            `json:"name"`  // the check, for people
	Nominal Length            `json:"nominal"`
	Limits  [2]Length         `json:"limits"`
	// Likely is the range of all but 0.27 % of the boxes, Verdict what it is within the
	// limits; Odds the part of the boxes that keep them, and Of1000 the same in words.
	Likely  [2]Length     `json:"likely"`
	Verdict string        `json:"verdict"`
	State   joinery.State `json:"state"` // what the verdict asks for
	Odds    float64       `json:"odds"`
	Of1000  string        `json:"of_1000"`
	// Below and Above are the verdicts on what is below the limits and above them.
	Below string `json:"below"`
	Above string `json:"above"`
	// WorstCase is with everything off by its most at once.
	WorstCase [2]Length `json:"worst_case"`
	// Largest is what moves the measure most; absent where nothing does.
	Largest *Contributor `json:"largest,omitempty"`
	// Advice is what would help a measure that leaves its limits; empty for others.
	Advice string `json:"advice,omitempty"`
}

// Contributor is a source of error: by how much it moves the measure either way, its
// part of the sum of squares, and the root of that sum, as it is and with this source
// half as large.
type Contributor struct {
	Source        string  `json:"source"`
	PlusMinus     Length  `json:"plus_minus"`
	Share         float64 `json:"share"`
	RootSumSquare Length  `json:"root_sum_square"`
	IfHalved      Length  `json:"root_sum_square_if_halved"`
}

// FitOf is a measure of a drawer for the report.
func FitOf(d batch.Drawer, m fit.SimulatedMeasure) Fit {
	f := Fit{Drawer: d.Spec.Name, Advice: d.Advice[m.CheckID],
		Below: string(m.Verdicts.Below), Above: string(m.Verdicts.Above), Check: m.Code, Part: string(m.Part), Name: m.Name, Nominal: Length(m.Nominal),
		Limits: [2]Length{Length(m.LowerLimit), Length(m.UpperLimit)},
		Likely: [2]Length{Length(m.Min), Length(m.Max)}, Verdict: string(m.Verdict), State: m.State(),
		Odds:   Odds(m.Right),
		Of1000: m.Right.Of1000(), WorstCase: [2]Length{Length(m.Result.Worst.Min), Length(m.Result.Worst.Max)}}
	if len(m.Result.Shares) > 0 {
		s := m.Result.Shares[0]
		f.Largest = &Contributor{Source: s.Name, PlusMinus: Length(s.Half), Share: thousandth(s.Part),
			RootSumSquare: Length(m.Result.RootSumSquare), IfHalved: Length(s.Halved)}
	}
	return f
}

// FitAsSet is a measure as set, of which no forecast is made.
func FitAsSet(drawer string, c joinery.Check) Fit {
	return Fit{Drawer: drawer, Check: c.Code, Part: string(c.Part), Name: c.Name, Nominal: Length(c.Nominal),
		Limits: [2]Length{Length(c.LowerLimit), Length(c.UpperLimit)}, Verdict: string(c.Verdict), State: c.State(),
		Below: string(c.Verdicts.Below), Above: string(c.Verdicts.Above)}
}

// Short is the name of the measure without what explains its sign.
func (f Fit) Short() string { return fit.ShortName(f.Name) }

// Odds are a number for programs, with as many digits as the draws tell.
func Odds(o fit.Odds) float64 { return math.Round(o.Fraction*fit.Samples) / fit.Samples }
