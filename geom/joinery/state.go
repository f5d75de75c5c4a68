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
	within := c.Limits().Grow(geom.Settle)
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
func (c Check) Words() string { return c.State().Words(c.Verdict) }

// Words are a verdict in a state.
func (s State) Words(v Verdict) string {
	switch {
	case s != StateDoubt:
		return string(v)
	case v == WillNot:
		return "may not go in"
	}
	return "may come out " + string(v)
}

// comesOut says of the part or box that it is about how a measure comes out; as is its verdict in words
// that go with that.
func (c Check) comesOut(as string) string {
	if c.State() == StateDoubt {
		return "may come out " + as
	}
	return "comes out " + as
}
