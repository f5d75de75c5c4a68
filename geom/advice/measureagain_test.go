package advice

import (
	"testing"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// TestMeasureAgain: of a bottom that was read once, and that a standard lets differ by more than its
// groove takes, more readings are named, with the odds of readings that are all as the one; of boards
// that were measured, or that fit all the same, none.
func TestMeasureAgain(t *testing.T) {
	once := spec("once")
	once.Bottom.Thickness = joinery.Thickness{Mean: 5.92, Min: 5.92, Max: 5.92}
	foreseen := func(bottom fit.Spread) Box {
		d, _, sound := joinery.LayOut(once)
		if !sound {
			t.Fatal("not sound")
		}
		boards := fit.MeasuredBoards(once)
		boards.Bottom = bottom
		return NewMemory().Box(d, Shop{Boards: boards, Accuracy: fit.AccuracyOf(joinery.Saw)})
	}
	b := foreseen(fit.Spread{Minus: 0.58, Plus: 0.38, Assumed: "a standard"})
	index, m := measure(t, b, joinery.CheckGrooveClearance)
	if !m.OutOfLimits() {
		t.Fatalf("%s: %s", m.Name, m.Verdict)
	}
	again, helps := b.MeasureAgain(index)
	if !helps || again.Stock != once.Bottom.Name || again.Differ < 0.9599 || again.Differ > 0.9601 {
		t.Errorf("%v %+v", helps, again)
	}
	read := foreseen(fit.Spread{})
	if _, now := measure(t, read, joinery.CheckGrooveClearance); now.Right != again.Right {
		t.Errorf("promised %s, and once it is read %s", again.Right, now.Right)
	}
	for name, spread := range map[string]fit.Spread{
		"measured": {Minus: 0.58, Plus: 0.38}, "alike": {Minus: 0.01, Plus: 0.01, Assumed: "a standard"}} {
		b := foreseen(spread)
		index, _ := measure(t, b, joinery.CheckGrooveClearance)
		if again, helps := b.MeasureAgain(index); helps {
			t.Errorf("%s: %+v", name, again)
		}
	}
}
