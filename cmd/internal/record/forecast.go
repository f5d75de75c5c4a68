package record

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Judged is the verdict on drawers of which it is the same.
type Judged struct {
	Drawers []string `json:"drawers"`
	Verdict string   `json:"verdict"` // goes together, or that of the measure that is most often wrong
	Odds    float64  `json:"odds"`    // the part of the boxes that keep all limits at once
	Text    string   `json:"text"`
}

// VerdictsOf are those on all drawers of a batch, as every output says them.
func VerdictsOf(b batch.Batch) []Judged {
	list := []Judged{}
	at := make(map[string]int)
	for _, d := range b.Drawers {
		said := d.Outcome.String()
		i, known := at[said]
		if !known {
			i = len(list)
			at[said] = i
			list = append(list, Judged{Verdict: string(d.Outcome.Verdict), Odds: Odds(d.Outcome.Right), Text: said})
		}
		list[i].Drawers = append(list[i].Drawers, d.Spec.Name)
	}
	return list
}

// String is a line of the verdict.
func (j Judged) String() string { return words.Some(j.Drawers) + ": " + j.Text }

// Forecast is what the boxes of a job will do, which fit --json prints.
type Forecast struct {
	Tool    string            `json:"tool"`
	Job     string            `json:"job"`
	Units   string            `json:"units"`
	Draws   int               `json:"draws"`
	Seed    uint64            `json:"seed"`
	Boards  []Board           `json:"boards"`
	Drawers []SimulatedDrawer `json:"drawers"`
	Log     *Learned          `json:"log,omitempty"` // what the shop's log tells
}

// Board says between which thicknesses the boards of a stock are, and by what
// standard where they were not measured at several places.
type Board struct {
	Stock   string `json:"stock"`
	Mean    Length `json:"mean"`
	Min     Length `json:"min"`
	Max     Length `json:"max"`
	Assumed string `json:"assumed,omitempty"`
}

// SimulatedDrawer are the verdict on a drawer and its measures, and what its parts must
// measure when they are held together before glue.
type SimulatedDrawer struct {
	Drawer  string  `json:"drawer"`
	Verdict string  `json:"verdict"`
	Odds    float64 `json:"odds"`
	Text    string  `json:"text"`
	Fit     []Fit   `json:"fit"`
	Stack   Stack   `json:"stack"`
}

// ForecastOf is that of a batch.
func ForecastOf(b batch.Batch) Forecast {
	f := Forecast{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Draws: fit.Samples, Seed: fit.Seed,
		Boards: BoardsOf(b), Drawers: []SimulatedDrawer{}, Log: LearnedOf(b)}
	for _, d := range b.Drawers {
		o := d.Outcome
		one := SimulatedDrawer{Drawer: d.Spec.Name, Verdict: string(o.Verdict), Odds: Odds(o.Right), Text: o.String(),
			Stack: StackOf(d), Fit: []Fit{}}
		for _, m := range o.Measures {
			one.Fit = append(one.Fit, FitOf(d, m))
		}
		f.Drawers = append(f.Drawers, one)
	}
	return Settle(f, b.Units)
}

// BoardsOf are the boards that the forecast reckons with, in order of first use.
func BoardsOf(b batch.Batch) []Board {
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
			mean := [...]float64{s.Sides.Thickness.Mean, s.Front.Thickness.Mean, s.Back.Thickness.Mean,
				s.Bottom.Thickness.Mean}[i]
			list = append(list, Board{stock, Length(mean), Length(mean - spread.Minus), Length(mean + spread.Plus),
				spread.Assumed})
		}
	}
	return list
}

// Stack is what a shop measures with parts held together before glue: both sides and
// a front side by side, the dry-fitted box, its diagonals.
type Stack struct {
	SidesAndFront Length `json:"sides_and_front"`
	// SidesAndFrontRange is between what they measure with boards as thick as the forecast reckons with.
	SidesAndFrontRange    [2]Length `json:"sides_and_front_range"`
	OutsideWidth          Length    `json:"outside_width"`
	OutsideDepth          Length    `json:"outside_depth"`
	Diagonal              Length    `json:"diagonal"`
	MaxDiagonalDifference Length    `json:"max_diagonal_difference"`
}

// StackOf are those of a drawer.
func StackOf(d batch.Drawer) Stack {
	s := d.Spec
	box := joinery.Size{Width: d.Outside.Width, Depth: d.DiagonalDepth()} // over the ends of the sides
	diagonal := testcut.Diagonals(box)
	three := 2*s.Sides.Thickness.Mean + s.Front.Thickness.Mean
	sides, front := d.Shop.Boards.Sides, d.Shop.Boards.Front
	return Stack{
		SidesAndFront: Length(three), SidesAndFrontRange: [2]Length{Length(three - 2*sides.Minus - front.Minus),
			Length(three + 2*sides.Plus + front.Plus)}, OutsideWidth: Length(d.Outside.Width),
		OutsideDepth: Length(d.Outside.Depth),
		Diagonal:     Length(diagonal), MaxDiagonalDifference: Length(s.Limits.Diagonal),
	}
}
