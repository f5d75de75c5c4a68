package fit

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// settled is what rounding leaves open of a measure, in mm.
const settled = 1e-9

var (
	allJoints   = joinery.Joints
	allMachines = []struct {
		kind joinery.CutterKind
		from joinery.DepthFrom
	}{{joinery.Saw, ""}, {joinery.Router, joinery.FromTop}, {joinery.Router, joinery.FromSpoilboard}}
	allBottoms = []joinery.BottomFit{joinery.BottomAuto, joinery.BottomGroovedIn, joinery.BottomFlush, joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied, joinery.BottomCleats}
)

// read is a stock with readings about a thickness.
func read(t *rapid.T, name string, thick float64) joinery.Stock {
	off := rapid.Float64Range(-0.3, 0.3)
	return joinery.Stock{Name: name, Thickness: joinery.Measure(thick+off.Draw(t, name), thick+off.Draw(t, name), thick+off.Draw(t, name)), Grain: joinery.GrainNone}
}

// anyDrawers are those that can be built of a job with every corner on every machine.
func anyDrawers(t *rapid.T) (list []joinery.Drawer) {
	s := anySpec(t)
	for _, s.Joint = range allJoints {
		for machine := range allMachines {
			list = append(list, built(s, machine)...)
		}
	}
	return list
}

// anyDrawer is one of them, or none.
func anyDrawer(t *rapid.T) []joinery.Drawer {
	s := anySpec(t)
	s.Joint = rapid.SampledFrom(allJoints).Draw(t, "joint")
	return built(s, rapid.IntRange(0, len(allMachines)-1).Draw(t, "machine"))
}

// built is the drawer of a job on a machine, if it can be built.
func built(s joinery.Spec, machine int) []joinery.Drawer {
	m := allMachines[machine]
	if s.Joint != joinery.RabbetedFront {
		s.Lip = joinery.Lip{}
	}
	if s.Joint == joinery.Dovetail { // by hand alone, which has one plow iron
		m.kind, s.Cutter.Groove = joinery.Hand, 0
	}
	if s.Cutter.Kind, s.DepthFrom = m.kind, m.from; s.Cutter.Kind == joinery.Router || s.Cutter.Kind == joinery.Hand {
		s.Cutter.Width = bit
	}
	d, problems, _ := joinery.LayOut(s)
	if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
		return nil
	}
	return []joinery.Drawer{d}
}

// bit is a router's, smaller than any slot here.
const bit = 3.0

// anySpec draws jobs for a saw, of which most can be built.
func anySpec(t *rapid.T) joinery.Spec {
	thick := rapid.Float64Range(11, 19).Draw(t, "sides")
	ends := thick + rapid.SampledFrom([]float64{0, 1.5}).Draw(t, "ends")
	s := joinery.Spec{Name: "any", Count: 1, Width: rapid.Float64Range(150, 900).Draw(t, "w"), Height: rapid.Float64Range(80, 300).Draw(t, "h"), Depth: rapid.Float64Range(150, 700).Draw(t, "d"),
		Sides: read(t, "sides", thick), Front: read(t, "front", ends), Bottom: read(t, "bottom", rapid.Float64Range(4, 12).Draw(t, "bottom")),
		BottomFit: rapid.SampledFrom(allBottoms).Draw(t, "fit"),
		Cutter:    joinery.Cutter{Kind: joinery.Saw, Width: ends/2 + rapid.Float64Range(0.1, 0.9).Draw(t, "play")}, GrooveEnds: joinery.GrooveThrough,
		BottomClearance: rapid.Float64Range(0.5, 3).Draw(t, "slack"), DadoClearance: 0.2, GrooveClearance: 0.2, GlueSpace: rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "room")}
	s.Back = s.Front
	if rapid.Bool().Draw(t, "other back") {
		s.Back = read(t, "back", ends)
	}
	if rapid.Bool().Draw(t, "own fence") {
		s.FenceDistance = ends/2 + rapid.Float64Range(-0.8, 0.8).Draw(t, "fence")
		s.Cutter.Width = s.FenceDistance + rapid.Float64Range(0.1, 0.9).Draw(t, "own clearance")
	}
	if rapid.Bool().Draw(t, "own height") {
		s.CutterHeight = thick/2 + rapid.Float64Range(-1, 1).Draw(t, "height")
	}
	if s.BottomFit == joinery.BottomFlush { // else its tongue seldom suits the groove
		f := s.FenceDistance
		if f == 0 {
			f = s.Front.Thickness.Mean / 2
		}
		s.Bottom = read(t, "flush", 2*f+rapid.SampledFrom([]float64{0, -0.4}).Draw(t, "flush"))
	}
	if s.BottomFit == joinery.BottomFielded {
		s.Bottom = read(t, "fielded", s.Cutter.Width+rapid.Float64Range(1.2, 5).Draw(t, "thicker than its groove"))
	}
	if rapid.IntRange(0, 2).Draw(t, "groove cutter") == 0 {
		s.Cutter.Groove = rapid.SampledFrom([]float64{2.4, 3.2, 6.35, s.Cutter.Width}).Draw(t, "blade")
		s.Bottom = read(t, "other bottom", rapid.Float64Range(3, 12).Draw(t, "any bottom"))
	}
	if rapid.Bool().Draw(t, "flat") {
		s.OnEnd = joinery.OnEnd{Length: geom.Interval{Min: 2000, Max: 3000}} // longer than any front here
		if rapid.Bool().Draw(t, "long rabbets") {                            // longer than the cutter is wide
			s.CutterHeight = s.Cutter.Width + rapid.Float64Range(0.1, 1).Draw(t, "longer by")
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "housed") == 0 {
		s.BackJoint, s.BackSetback = joinery.Housed, rapid.Float64Range(6, 20).Draw(t, "setback")
	}
	switch rapid.IntRange(0, 3).Draw(t, "divided") {
	case 0:
		thick := s.Cutter.Width - 0.5
		s.Dividers = []joinery.Divider{{Stock: read(t, "dividers", thick), Direction: joinery.Across, Count: 1}, {Stock: read(t, "more", thick), Direction: joinery.Across, At: []float64{60}}}
	case 1:
		s.Insert = &joinery.Insert{Stock: read(t, "strips", 5), Columns: []float64{0, 0}, Rows: []float64{0, 0}, WallClearance: rapid.Float64Range(0.5, 4).Draw(t, "about the insert")}
	}
	if rapid.Bool().Draw(t, "lips") { // of a front that has them
		by := func(what string) float64 { return rapid.SampledFrom([]float64{0, 4, 12}).Draw(t, what) }
		s.Lip = joinery.Lip{Top: by("top"), Bottom: by("bottom")}
		if s.Lip.Left = by("left"); s.Lip.Left > 0 {
			s.Lip.Right = s.Lip.Left + by("right")
		}
	}
	return s
}

func anyAccuracy(t *rapid.T) Accuracy {
	by := rapid.SampledFrom([]float64{0, 0.02, 0.1, 0.4})
	return Accuracy{by.Draw(t, "cutter"), by.Draw(t, "cut"), by.Draw(t, "fence"), by.Draw(t, "height"), by.Draw(t, "length"), nil}
}

// anySlide is a slide that counts the width outside or inside, or none.
func anySlide(t *rapid.T) *SlideFit {
	return rapid.SampledFrom([]*SlideFit{nil, {Min: 399, Max: 400}, {Min: 369, Max: 371, InsideCounts: true}}).Draw(t, "slide")
}

// kinds counts what was built, so that no test passes by refusing.
type kinds map[string]int

func (k kinds) add(d joinery.Drawer) {
	s := d.Spec
	k[fmt.Sprintf("%v{%v %v}", s.Joint, s.Cutter.Kind, s.DepthFrom)]++
	k[string(s.BottomFit)]++
	k[string(s.BackJoint)]++
	if d.Setup.BottomHeight > 0 {
		k["flat bottom"]++
	}
	if s.Lip.Ends() {
		k["lips"]++
	}
	if s.Lip.Bottom > 0 {
		k["lower lip"]++
	}
	if d.Setup.FlatTongues && d.Setup.RabbetPasses > 1 {
		k["flat tongues in passes"]++
	}
	for _, c := range d.Fit {
		k[string(c.Code)]++
		k[fmt.Sprintf("%s of a %s", c.Code, s.Joint)]++
	}
}

func (k kinds) check(t *testing.T) {
	t.Helper()
	for _, j := range allJoints {
		if k[fmt.Sprintf("outside-depth of a %s", j)] == 0 {
			t.Errorf("no %s tells its depth: %v", j, k)
		}
		for _, m := range allMachines {
			if j == joinery.Dovetail {
				m.kind = joinery.Hand
			}
			if k[fmt.Sprint(j, m)] == 0 {
				t.Errorf("no %s on %v was built: %v", j, m, k)
			}
		}
	}
	for _, b := range allBottoms {
		if k[string(b)] == 0 {
			t.Errorf("no bottom %s was built: %v", b, k)
		}
	}
	for _, what := range []string{"dado", "divider-clearance", "bottom-flush", "back-clearance",
		"finger-clearance", "lap", "flat bottom", "lips", "lower lip", "flat tongues in passes"} {
		if k[what] == 0 {
			t.Errorf("no %s was built: %v", what, k)
		}
	}
}

// asTheSlideHasIt is a check of the package joinery, with the limits that a slide leaves of an outside width.
func asTheSlideHasIt(c joinery.Check, slide *SlideFit) joinery.Check {
	if c.Code == "outside-width" && slide != nil && !slide.InsideCounts &&
		slide.Min <= c.UpperLimit && slide.Max >= c.LowerLimit {
		c.LowerLimit, c.UpperLimit = math.Max(c.LowerLimit, slide.Min), math.Min(c.UpperLimit, slide.Max)
		c.Verdict = c.VerdictOn(c.Min, c.Max)
	}
	return c
}

// TestAsJoinery: every check of the package joinery is there, as set, and where
// nothing but the boards is off the worst case is its range over the readings. Of
// the depth of a dado-rabbet joinery tells the range of no reading.
func TestAsJoinery(t *testing.T) {
	seen := kinds{}
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawers(t) {
			seen.add(d)
			slide := anySlide(t)
			list := Measures(d, MeasuredBoards(d.Spec), Accuracy{}, slide)
			if len(list) < len(d.Fit) {
				t.Fatalf("%d measures for %d checks", len(list), len(d.Fit))
			}
			for i, m := range list {
				r := m.Stack.Result()
				if i < len(d.Fit) && m.Check != asTheSlideHasIt(d.Fit[i], slide) {
					t.Fatalf("measure %d is of %+v, not %+v", i, m.Check, d.Fit[i])
				}
				if math.Abs(r.Nominal-m.Nominal) > settled {
					t.Fatalf("%s %s is %.9f as set, joinery %.9f", m.Code, m.Part, r.Nominal, m.Nominal)
				}
				if m.Code == "outside-depth" && d.Spec.Joint == joinery.DadoRabbet {
					continue
				}
				if math.Abs(r.Worst.Min-m.Min) > settled || math.Abs(r.Worst.Max-m.Max) > settled {
					t.Fatalf("%s %s: worst %.9f to %.9f, over the readings %.9f to %.9f", m.Code, m.Part,
						r.Worst.Min, r.Worst.Max, m.Min, m.Max)
				}
			}
		}
	})
	seen.check(t)
}

// anyOff is a place in the tolerance box: a corner of it or any.
func anyOff(t *rapid.T, from []Source) []float64 {
	off := make([]float64, len(from))
	corner := rapid.Bool().Draw(t, "corner")
	for i, s := range from {
		switch {
		case !corner:
			off[i] = rapid.Float64Range(-s.Minus, s.Plus).Draw(t, s.Name)
		case rapid.Bool().Draw(t, s.Name):
			off[i] = s.Plus
		default:
			off[i] = -s.Minus
		}
	}
	return off
}

// TestMonotone: from any place in the tolerance box, raising a source moves a measure
// the way that its term says or not at all, and one without a term never does. So
// the worst case is the worst: no place is beyond.
func TestMonotone(t *testing.T) {
	seen, moved := kinds{}, map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawers(t) {
			seen.add(d)
			list := Measures(d, MeasuredBoards(d.Spec), anyAccuracy(t), anySlide(t))
			off := anyOff(t, list[0].Stack.Sources)
			by := rapid.SampledFrom([]float64{0.003, 0.05, 0.5}).Draw(t, "by")
			for _, m := range list {
				r, at := m.Stack.Result(), m.Stack.Value(off)
				if at < r.Worst.Min-settled || at > r.Worst.Max+settled {
					t.Fatalf("%s %s is %.9f, worst %.9f to %.9f", m.Code, m.Part, at, r.Worst.Min, r.Worst.Max)
				}
				sign := make([]float64, len(off))
				for _, term := range m.Stack.Terms {
					if sign[term.Source] != 0 {
						t.Fatalf("%s %s has %q twice", m.Code, m.Part, m.Stack.Sources[term.Source].Name)
					}
					sign[term.Source] = term.Sign
				}
				for i := range off {
					was := off[i]
					off[i] += by
					by := m.Stack.Value(off) - at
					off[i] = was
					if math.Abs(by) > settled {
						moved[string(m.Code)] = true
						if by*sign[i] <= 0 {
							t.Fatalf("%s %s: raising %q moves it by %g, its term has the sign %g",
								m.Code, m.Part, m.Stack.Sources[i].Name, by, sign[i])
						}
					}
				}
			}
		}
	})
	seen.check(t)
	for _, code := range []string{"tongue-clearance", "recess", "recess-inner", "groove-clearance", "bottom-flush", "outside-width", "outside-depth", "lap", "back-clearance", "finger-clearance", "divider-clearance",
		"shoulder-gap", "bottom-clearance", "bottom-clearance-depth", "groove-step", "back-over-bottom", "outside-height", "diagonal", "slide-clearance"} {
		if !moved[code] {
			t.Errorf("nothing moves %s", code)
		}
	}
}

// TestLessAccurate: where anything may be off by more, no worst case gets narrower,
// and what is as set stays.
func TestLessAccurate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawer(t) {
			a, more, slide := anyAccuracy(t), anyAccuracy(t), anySlide(t)
			wide := Accuracy{a.Cutter + more.Cutter, a.Cut + more.Cut, a.Fence + more.Fence, a.Height + more.Height, a.Length + more.Length, nil}
			boards := MeasuredBoards(d.Spec)
			less := Measures(d, boards, wide, slide)
			for i, m := range Measures(d, boards, a, slide) {
				fine, coarse := m.Stack.Result(), less[i].Stack.Result()
				if coarse.Worst.Min > fine.Worst.Min+settled || coarse.Worst.Max < fine.Worst.Max-settled || coarse.Nominal != fine.Nominal {
					t.Fatalf("%s %s: %+v, less accurate %+v", m.Code, m.Part, fine, coarse)
				}
			}
		}
	})
}

// TestDrawBox: the measures of any box can be drawn together, with what dividers add,
// and what is drawn keeps within the worst case.
func TestDrawBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawer(t) {
			var stacks []Stack
			var limits []geom.Interval
			for _, m := range Measures(d, MeasuredBoards(d.Spec), AccuracyOf(d.Spec.Cutter.Kind), anySlide(t)) {
				w := m.Stack.Result().Worst
				stacks, limits = append(stacks, m.Stack), append(limits, geom.Interval{Min: w.Min - settled, Max: w.Max + settled})
			}
			list, right := SampleBoxes(stacks, limits, 20, 1)
			for i, drawn := range list {
				if drawn.Within != 1 {
					t.Fatalf("measure %d: %g of the draws within the worst case %v", i, drawn.Within, limits[i])
				}
			}
			if right != 1 {
				t.Fatalf("%g of the boxes are within all worst cases", right)
			}
		}
	})
}

// TestBoxesOfABlock: what a block of boxes measures is, to the last bit, what each box does by itself.
func TestBoxesOfABlock(t *testing.T) {
	together := 0
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawers(t) {
			list := Measures(d, MeasuredBoards(d.Spec), anyAccuracy(t), anySlide(t))
			off := make([]lanes, len(list[0].Stack.Sources))
			boxes := make([][]float64, block)
			for j := range boxes {
				boxes[j] = anyOff(t, list[0].Stack.Sources)
				for k, v := range boxes[j] {
					off[k][j] = v
				}
			}
			for _, m := range list {
				if m.Stack.together != nil {
					together++
				}
				values := new(lanes)
				m.Stack.lanes(off, values)
				for j, box := range boxes {
					if want := m.Stack.Value(box); values[j] != want {
						t.Fatalf("%s %s is %g together, %g by itself", m.Code, m.Part, values[j], want)
					}
				}
			}
		}
	})
	if together == 0 {
		t.Error("no measure is worked out for a block")
	}
}
