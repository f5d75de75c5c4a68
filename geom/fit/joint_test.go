package fit

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// TestJoints: of any drawer, with boards at a level and the machine as in a numbered box, a joint is its measure to the
// last bit, slot and tongue differ by it, and it is judged as a range without width is.
func TestJoints(t *testing.T) {
	slots, seen := map[joinery.CheckCode]int{}, kinds{}
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawers(t) {
			seen.add(d)
			boards, a := MeasuredBoards(d.Spec), anyAccuracy(t)
			all, joints := Measures(d, boards, a, nil), Joints(d, boards, a)
			level := Level(rapid.IntRange(0, int(Levels)-1).Draw(t, "level"))
			from := all[0].Stack.Sources
			off := Off(from, Errors(from), level, rapid.IntRange(0, Numbered).Draw(t, "box"))
			other := func(m Measure) bool { return m.Verdicts != joinery.ClearanceVerdicts }
			clearances := slices.DeleteFunc(slices.Clone(all), other)
			if len(joints) != len(clearances) {
				t.Fatalf("%d joints, %d clearances", len(joints), len(clearances))
			}
			for i, m := range clearances {
				j, want := joints[i], m.Stack.Value(off)
				c := j.At(off)
				if c.CheckID != m.CheckID || c.Nominal != want || c.Verdict != verdictOn(m, want) {
					t.Fatalf("%s of %v is %v: %s", m.Name, want, c.Nominal, c.Verdict)
				}
				if j.Slot.At0 == 0 {
					continue
				}
				slots[m.Code]++
				if wide := slotOf(d, m.CheckID); math.Abs(j.Slot.At0-wide) > exact {
					t.Fatalf("%s in a slot of %g, laid out %g", m.Name, j.Slot.At0, wide)
				}
				slot, tongue := j.Slot.Value(off), j.Tongue.Value(off)
				if math.Abs(slot-tongue-want) > exact || slot <= 0 || tongue <= 0 {
					t.Fatalf("%s of %g, a slot of %g, a tongue of %g", m.Name, want, slot, tongue)
				}
			}
		}
	})
	seen.check(t)
	for _, c := range []joinery.CheckCode{joinery.CheckTongueClearance, joinery.CheckBackClearance,
		joinery.CheckGrooveClearance, joinery.CheckDividerClearance, joinery.CheckFingerClearance} {
		if slots[c] == 0 {
			t.Errorf("no slot of a %s", c)
		}
	}
}

// slotOf is how wide the slot of a clearance is laid out.
func slotOf(d joinery.Drawer, id joinery.CheckID) float64 {
	switch id.Code {
	case joinery.CheckTongueClearance:
		return d.Dimensions.Corner.Dado
	case joinery.CheckBackClearance:
		return d.Dimensions.Corner.BackDado
	case joinery.CheckGrooveClearance:
		return d.Dimensions.Seat.Groove
	case joinery.CheckFingerClearance:
		return notchOf(d)
	}
	return d.Dimensions.DividerDados[id.Item-1]
}

// notchOf is how wide the notches between two fingers are, of whichever wall has such.
func notchOf(d joinery.Drawer) float64 {
	for _, p := range d.Parts {
		all := p.Panel.Outline.Bounds()
		for _, e := range p.Panel.EdgeCuts {
			n, socket := e.Area.Bounds(), e.Kind == geom.FingerCut || e.Kind == geom.PinCut
			if socket && n.Min.Y > all.Min.Y && n.Max.Y < all.Max.Y {
				return n.Max.Y - n.Min.Y
			}
		}
	}
	return 0
}

// verdictOn is the verdict on one clearance, by its limits.
func verdictOn(m Measure, mm float64) joinery.Verdict {
	switch {
	case mm <= settle:
		return joinery.WillNot
	case m.LowerLimit-mm > settle:
		return joinery.Tight
	case mm-m.UpperLimit > settle:
		return joinery.Loose
	}
	return joinery.GoesTogether
}

// TestOff: a numbered box has the errors of the same box of the forecast, and boards stand where a person puts them.
func TestOff(t *testing.T) {
	boards := Boards{Sides: Spread{Minus: 0.1, Plus: 0.2}, Front: Spread{Minus: 0.05}, Bottom: Spread{Plus: 0.3}}
	from := Joints(sixMillimeters(t, nil), boards, SawAccuracy)[0].Stack.Sources
	used := []int{}
	for k, s := range from {
		if s.half() > 0 {
			used = append(used, k)
		}
	}
	forecast := deviates(from, used, Samples, Seed, 0)
	for _, number := range []int{0, 1, 2, Numbered} {
		for level, want := range []func(Source) float64{
			func(s Source) float64 { return -s.Minus },
			func(s Source) float64 { return 0 },
			func(s Source) float64 { return s.Plus },
		} {
			off := Off(from, Errors(from), Level(level), number)
			for i, k := range used {
				s := from[k]
				is := want(s)
				switch {
				case s.Cause.Board():
				case number == 0:
					is = 0
				default:
					by := s.spread()
					is = float64(by.times*forecast[i][number-1]) + by.plus
				}
				if off[k] != is {
					t.Errorf("level %d, box %d: %s is off by %g, want %g", level, number, s.Name, off[k], is)
				}
			}
		}
	}
}
