package testcut

import "math"

// What a shop notices and sets, in mm; common practice, no source.
const (
	tiny     = 0.01 // a move that no shop makes
	settable = 0.05 // the least that one makes where a setting can be left
	noticed  = 0.05 // by how much a cutter is wider or narrower than stated for a shop to do something about it
)

// Tiny reports whether a length is one that no shop sets or sees.
func Tiny(mm float64) bool { return math.Abs(mm) < tiny }

// CutterOff reports whether the cutter is not as wide as stated, by more than a shop notices
// and than readings are off, or than the setup sheet allows. It does not know where readings contradict each other.
func (a Advice) CutterOff() bool {
	return !a.WithinLimits && len(a.Conflicts) == 0 &&
		(a.SlotLimits != nil || math.Abs(a.Cutter.Value-a.Stated) > max(noticed, 3*a.Cutter.Sigma))
}

// Printed is the move between two settings in whole steps of what is printed of them, in
// mm, so that what is between them is what is said. A setting that can be left is left where
// it would be moved by less than a shop sets.
func (m Move) Printed(step float64) Move {
	printed := func(mm float64) float64 { return math.Round(mm/step) * step }
	m.From, m.To = printed(m.From), printed(m.To)
	if m.By = m.To - m.From; m.Action == Leave && m.Better && math.Abs(m.By) < settable {
		m.Better, m.Sure = false, true
	}
	return m
}

// EitherWay reports whether a measure may be out of its limits on either side, by what is
// known of it, or is Unsettled: there is no verdict on it yet.
func (j Predicted) EitherWay() bool {
	return j.Unsettled || j.Nominal-2*j.Sigma < j.LowerLimit && j.Nominal+2*j.Sigma > j.UpperLimit
}
