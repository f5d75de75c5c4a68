package fit

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// forget lets every measure be drawn anew.
func forget() {
	keptMeasures.Lock()
	defer keptMeasures.Unlock()
	keptMeasures.by = nil
}

// drawnOf are the numbers that draws gave of a drawer's measures.
func drawnOf(list []Measure) (numbers []any) {
	o := judged(list)
	for _, m := range o.Measures {
		numbers = append(numbers, m.Min, m.Max, m.Right)
	}
	return append(numbers, o.Right)
}

// TestKeptMeasures: what was drawn for another drawer is, to the last bit, what is drawn for this one.
func TestKeptMeasures(t *testing.T) {
	kept := 0
	rapid.Check(t, func(t *rapid.T) {
		accuracy, slide := anyAccuracy(t), anySlide(t)
		var jobs [][]Measure
		for _, d := range anyDrawers(t) {
			jobs = append(jobs, Measures(d, MeasuredBoards(d.Spec), accuracy, slide))
			d.Outside.Height += 5 // and so its measures, where the boards do not move them
			jobs = append(jobs, Measures(d, MeasuredBoards(d.Spec), accuracy, slide))
		}
		var alone [][]any
		for _, j := range jobs {
			forget()
			alone = append(alone, drawnOf(j))
			kept -= len(keptMeasures.by)
		}
		forget()
		for i, j := range jobs {
			if got := drawnOf(j); !reflect.DeepEqual(got, alone[i]) {
				t.Fatalf("drawer %d after others: %v, alone: %v", i, got, alone[i])
			}
		}
		kept += len(keptMeasures.by)
	})
	if kept >= 0 {
		t.Error("no measure was drawn for two drawers at once")
	}
}

// TestKeys: measures that differ in anything of which draws depend have different keys.
func TestKeys(t *testing.T) {
	from := []Source{{Plus: 0.1}, {Plus: 0.2}, {Plus: 0.2}}
	limits := geom.Interval{Min: 1, Max: 2}
	stack := func(r Response, from ...Source) Stack {
		return Stack{Sources: from, Terms: r.Terms(), Value: r.Value, together: r}
	}
	a, b := length(1, 0), length(1, 1)
	keys := map[string]int{}
	for i, s := range []Stack{
		stack(straight(a), from...),
		stack(straight(length(1.5, 0)), from...),
		stack(straight(a.add(off(1))), from...),
		stack(straight(a.less(off(1))), from...),
		stack(straight(a.add(off(2))), from...),
		stack(straight(b), from...),
		stack(straight(a), Source{Plus: 0.2}),
		stack(straight(a), Source{Plus: 0.1, Minus: 0.1}),
		stack(straight(a), Source{Plus: 0.1, Shape: Normal}),
		stack(straight(a).lessLesser(fixed(1), off(1)), from...),
		stack(straight(a).plusProud(off(1)), from...),
		stack(straight(a).plusProud(off(1)).plusProud(off(2)), from...),
		{Sources: from, Terms: append(straight(a).Terms(), straight(b).Terms()...), together: diagonal{straight(a), b}},
		{Sources: from, Terms: append(straight(b).Terms(), straight(a).Terms()...), together: diagonal{straight(b), a}},
	} {
		for _, in := range []geom.Interval{limits, {Min: 1, Max: 3}, {Min: 0, Max: 2}} {
			key := keyOf(s, in, Samples, Seed)
			if was, taken := keys[key]; taken || key == "" {
				t.Errorf("stack %d with the limits %v has the key of stack %d", i, in, was)
			}
			keys[key] = i
		}
	}
	// Neither other draws are kept, nor a source that its own measure does not draw.
	cancels := straight(length(1, 0, 1)).lessLesser(length(0, 1), length(0.1, 1))
	for _, key := range []string{
		keyOf(stack(straight(a), from...), limits, Samples+1, Seed),
		keyOf(stack(straight(a), from...), limits, Samples, Seed+1),
		keyOf(Stack{Sources: from, Value: straight(a).Value}, limits, Samples, Seed),
		keyOf(stack(cancels, from...), limits, Samples, Seed),
	} {
		if key != "" {
			t.Errorf("%q is kept", key)
		}
	}
}

// TestRightTogether: boxes that keep a limit below and one above, each of a measure of its own, are those that keep
// both of one measure.
func TestRightTogether(t *testing.T) {
	const n = 3*chunk + 77
	s := linear(5, []float64{1, 1}, Source{Minus: 0.1, Plus: 0.3}, either(0.3))
	low, high := geom.Interval{Min: 4.9, Max: 9}, geom.Interval{Min: 0, Max: 5.3}
	one := drawn([]Stack{s}, []geom.Interval{{Min: low.Min, Max: high.Max}}, n, 11)[0]
	if _, right := SampleBoxes([]Stack{s, s}, []geom.Interval{low, high}, n, 11); right != one.Within || right > 0.95 {
		t.Errorf("%g of the boxes keep both limits, %g of the draws", right, one.Within)
	}
}

// TestKeptAreBounded: a page that is open all day does not fill the memory.
func TestKeptAreBounded(t *testing.T) {
	forget()
	for i := range 3 * keptMost {
		keep(string(appendNumbers(nil, float64(i))), drawnMeasure{})
	}
	if n := len(keptMeasures.by); n == 0 || n > keptMost {
		t.Errorf("%d measures are kept", n)
	}
	forget()
}
