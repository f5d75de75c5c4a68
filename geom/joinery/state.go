package joinery

import "drawerwright/geom"

// State is what a verdict asks for, everywhere with the same sign.
type State string

const (
	StateRight State = "right"
	StateDoubt State = "doubt" // right as it is set, and wrong in some boxes
	StateWrong State = "wrong"
)

// Sign stands before a verdict.
func (s State) Sign() string {
	switch s {
	case StateRight:
		return "✓"
	case StateDoubt:
		return "⚠"
	}
	return "✕"
}

// State is that of a measure.
func (c Check) State() State {
	within := geom.Interval{Min: c.LowerLimit, Max: c.UpperLimit}.Grow(geom.Settle)
	switch {
	case c.Verdict.Right():
		return StateRight
	case c.Nominal < within.Min || c.Nominal > within.Max:
		return StateWrong
	}
	return StateDoubt
}

// Words are the verdict on a measure: of one that is set right and comes out wrong in some boxes,
// that it may.
func (c Check) Words() string {
	switch {
	case c.State() != StateDoubt:
		return string(c.Verdict)
	case c.Verdict == WillNot:
		return "may not go in"
	}
	return "may come out " + string(c.Verdict)
}
