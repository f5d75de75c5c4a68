package viewer

import (
	"encoding/json"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"

	"pgregory.net/rapid"
)

// valueOf works a form out as the script does.
func (f form) valueOf(off func(source int) float64) float64 {
	v := f.At
	for _, s := range f.By {
		v += float64(s[1] * off(int(s[0])))
	}
	for _, b := range f.Bends {
		v += float64(b.Times * min(b.A.valueOf(off), b.B.valueOf(off)))
	}
	return v
}

// offOf is what is off for a choice, as the script has it.
func (d data) offOf(b box, level fit.Level, number int) func(source int) float64 {
	return func(source int) float64 {
		from := b.Off[source]
		errors, machine := d.Draws[source]
		switch {
		case machine && number > 0:
			return float64(from[0]*errors[number-1]) + from[1]
		case !machine && level == fit.Least:
			return from[0]
		case !machine && level == fit.Most:
			return from[1]
		}
		return 0
	}
}

// TestMeasured: what the data says of any drawer, worked out as the script does, is what the package fit says for the
// same boards and the same numbered box: lengths to the last bit, and verdicts.
func TestMeasured(t *testing.T) {
	var made, jammed, loose int
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(-0.4, 0.4)
		stock := func(name string, mm float64) joinery.Stock {
			read := joinery.Measure(mm+thick.Draw(t, name), mm+thick.Draw(t, name))
			return joinery.Stock{Name: name, Thickness: read, Grain: joinery.GrainNone}
		}
		corners := []joinery.Joint{joinery.DadoRabbet, joinery.DoubleRabbet, joinery.BoxJoint}
		bottoms := []joinery.BottomFit{joinery.BottomGroovedIn, joinery.BottomSlideIn}
		s := joinery.Spec{Name: "any", Count: 1, Width: 460, Height: 140, Depth: 500,
			Sides: stock("sides", 12), Front: stock("front", 12), Bottom: stock("bottom", 6),
			Joint:     rapid.SampledFrom(corners).Draw(t, "joint"),
			Cutter:    joinery.Cutter{Kind: joinery.Saw, Width: rapid.Float64Range(6.1, 6.9).Draw(t, "cutter")},
			BottomFit: rapid.SampledFrom(bottoms).Draw(t, "fit"), GrooveEnds: joinery.GrooveThrough,
			BottomClearance: 2, DadoClearance: 0.2, GrooveClearance: 0.2,
			Dividers: []joinery.Divider{{Stock: stock("dividers", 6), Direction: joinery.Across, Count: 1}}}
		s.Back = s.Front
		d, problems, _ := joinery.LayOut(s)
		if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
			return
		}
		made++
		joints := fit.Joints(d, fit.MeasuredBoards(s), fit.SawAccuracy)
		text, err := Data(scene.Scene{Boxes: []scene.Box{{Joints: func() []fit.Joint { return joints }}}})
		if err != nil {
			t.Fatal(err)
		}
		var back data
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		b, sources := back.Boxes[0], joints[0].Stack.Sources
		errors := fit.Errors(sources)
		for level := range fit.Levels {
			for number := range fit.Numbered + 1 {
				off, is := fit.Off(sources, errors, level, number), back.offOf(b, level, number)
				for i, j := range joints {
					told, want := b.Joints[i], j.At(off)
					if got := told.Clearance.valueOf(is); got != want.Nominal {
						t.Fatalf("%s, level %d, box %d: %v, want %v", j.Name, level, number, got, want.Nominal)
					}
					for what, pair := range map[*form]fit.Linear{told.Slot: j.Slot, told.Tongue: j.Tongue} {
						if what != nil && what.valueOf(is) != pair.Value(off) {
							t.Fatalf("%s, box %d: slot or tongue %v, want %v", j.Name, number, what.valueOf(is), pair)
						}
					}
					one := told.Said[told.Verdicts[int(level)*(fit.Numbered+1)+number]-'0']
					jams := want.Verdict == joinery.WillNot
					if one != (said{string(want.State()), want.State().Sign(), want.Words(), jams}) {
						t.Fatalf("%s of %v: %+v, want %s", j.Name, want.Nominal, one, want.Verdict)
					}
					if jams {
						jammed++
					} else if want.Verdict == joinery.Loose {
						loose++
					}
				}
			}
		}
	})
	if made < 10 || jammed == 0 || loose == 0 {
		t.Errorf("%d drawers, %d jammed and %d loose joints: too few", made, jammed, loose)
	}
}
