package fit

import "drawerwright/geom/joinery"

// Joint is what stands in a slot, as forms of what is off in its Stack's Sources. A page works them out for boards and
// errors that a person chooses.
type Joint struct {
	Measure
	Clearance Response
	// Slot is how wide the slot is, Tongue how thick what stands in it: no lengths where the clearance is one of
	// several slots, or of whole boards.
	Slot, Tongue Linear
}

// Joints are the joints of a drawer that can be built, one of each kind.
func Joints(d joinery.Drawer, boards Boards, a Accuracy) (list []Joint) {
	cuts := CutsOf(d)
	for _, m := range Measures(d, boards, a, nil) {
		law, known := m.Stack.together.(Response)
		if !known || m.Verdicts != joinery.ClearanceVerdicts {
			continue
		}
		j := Joint{Measure: m, Clearance: law}
		if slot, one := cuts.slot(m.CheckID); one {
			j.Slot, j.Tongue = slot, slot.less(law.Linear)
		}
		list = append(list, j)
	}
	return list
}

// slot is the width of the slot of a clearance; false where there is no single one.
func (c *Cuts) slot(of joinery.CheckID) (Linear, bool) {
	switch of.Code {
	case joinery.CheckTongueClearance:
		return c.Dado, true
	case joinery.CheckBackClearance:
		return c.BackDado, true
	case joinery.CheckGrooveClearance:
		return c.Groove, true
	case joinery.CheckFingerClearance:
		return c.FingerNotch, true
	case joinery.CheckDividerClearance:
		return c.DividerDado(of.Item), true
	}
	return Linear{}, false
}

// At is the joint with what is off: how wide its clearance is then, with the verdict on that.
func (j Joint) At(off []float64) joinery.Check {
	c := j.Check
	c.Nominal = j.Clearance.Value(off)
	c.Min, c.Max = c.Nominal, c.Nominal
	c.Verdict = c.VerdictOn(c.Min, c.Max)
	return c
}

// Level is where all boards are between the least and the most of their readings.
type Level int

// Levels, from thin to thick.
const (
	Least Level = iota
	_           // the mean
	Most
	Levels
)

// Numbered is how many of the boxes of every forecast, from its first, have a number by which a person asks for their
// errors.
const Numbered = 50

// Errors are the standard random numbers of each source in the numbered boxes; none of boards, and of what is off by
// nothing.
func Errors(from []Source) [][]float64 {
	all := make([][]float64, len(from))
	for k, s := range from {
		if !s.Cause.Board() && s.half() > 0 {
			all[k] = deviates(from, []int{k}, Numbered, Seed, 0)[0]
		}
	}
	return all
}

// Level is what a board is off at a level.
func (s Source) Level(l Level) float64 {
	switch l {
	case Least:
		return -s.Minus
	case Most:
		return s.Plus
	}
	return 0
}

// Spread is by what a random number of [Errors] is multiplied, and what is added to it.
func (s Source) Spread() (times, plus float64) {
	by := s.spread()
	return by.times, by.plus
}

// Off is what is off with boards at a level, and the machine as in a numbered box of its errors; as set in box 0.
func Off(from []Source, errors [][]float64, l Level, number int) []float64 {
	off := make([]float64, len(from))
	for k, s := range from {
		if s.Cause.Board() {
			off[k] = s.Level(l)
		} else if number > 0 && errors[k] != nil {
			times, plus := s.Spread()
			off[k] = float64(times*errors[k][number-1]) + plus
		}
	}
	return off
}
