package gauge_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
)

// anyDrawer draws one that can be built, with a slide or without.
func anyDrawer(t *rapid.T) gauge.Drawer {
	number := func(what string, least, most float64) float64 {
		return math.Round(rapid.Float64Range(least, most).Draw(t, what)*100) / 100
	}
	stock := func(name string, mean float64) joinery.Stock {
		spread := rapid.SampledFrom([]float64{0, 0.02, 0.05, 0.1, 0.3}).Draw(t, name+" spread")
		return joinery.Stock{Name: name, Thickness: joinery.Measure(mean-spread, mean+spread)}
	}
	s := joinery.Spec{Name: "a", Count: 1, Units: geom.Millimeter, Width: number("width", 250, 900), Height: number("height", 80, 200), Depth: number("depth", 250, 600),
		Joint: joinery.DadoRabbet, GrooveEnds: joinery.GrooveThrough, BottomClearance: number("slack", 1, 4), Limits: joinery.DefaultLimits,
		BottomFit: rapid.SampledFrom([]joinery.BottomFit{joinery.BottomAuto, joinery.BottomGroovedIn, joinery.BottomFlush, joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied}).Draw(t, "bottom fit")}
	s.Sides = stock("sides", number("sides", 11, 16))
	s.Front = s.Sides
	if rapid.Bool().Draw(t, "another front") {
		s.Front = stock("front", number("front", 11, 16))
	}
	s.Back = s.Front
	switch rapid.IntRange(0, 3).Draw(t, "back") {
	case 0:
		s.BackJoint, s.BackSetback = joinery.Housed, number("setback", 8, 20)
	case 1:
		s.Back = stock("back", s.Front.Thickness.Mean+number("thicker back", -0.1, 0.1))
	}
	s.Bottom = stock("bottom", number("bottom", 5, 12))
	s.GlueSpace = rapid.SampledFrom([]float64{0, 0, 0.2, 0.5}).Draw(t, "glue space")
	s.Limits.ShoulderGap = rapid.SampledFrom([]float64{0.25, 0.9}).Draw(t, "shoulder")
	s.Limits.Flush = rapid.SampledFrom([]float64{0.25, 0.4}).Draw(t, "recess")
	s.Cutter.Kind = rapid.SampledFrom([]joinery.CutterKind{joinery.Saw, joinery.RouterTable, joinery.Router, joinery.Hand}).Draw(t, "machine")
	if s.Cutter.Kind.MadeToFit() {
		s.Cutter.Width = 4
		s.DadoClearance, s.GrooveClearance = number("dado clearance", 0.15, 0.35), number("groove clearance", 0.1, 0.4)
		s.DepthFrom = rapid.SampledFrom([]joinery.DepthFrom{joinery.FromTop, joinery.FromSpoilboard}).Draw(t, "depth from")
	} else {
		s.Cutter.Width = math.Round((s.Front.Thickness.Mean/2+number("play", 0.12, 0.38))*100) / 100
	}
	built, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Skip(p.Fact.In(geom.Millimeter)) // a draw that cannot be built has no limits
		}
	}
	d := gauge.Drawer{Drawer: built, Boards: fit.MeasuredBoards(s), Accuracy: fit.AccuracyOf(s.Cutter.Kind)}
	plus, minus := number("slide plus", 0, 1), number("slide minus", 0.2, 1.6)
	switch rapid.IntRange(0, 2).Draw(t, "slide") {
	case 1:
		d.Slide = &fit.SlideFit{Min: s.Width - minus, Max: s.Width + plus}
	case 2:
		w := built.Inside.Width
		d.Slide = &fit.SlideFit{Min: w - minus, Max: w + plus, InsideCounts: true}
	}
	return d
}

// maxOff is by how much a measure may be over its limit through rounding, in mm.
const maxOff = 2e-5

// seen counts what the draws were, so that none of it is left out.
type seen map[string]int

// TestEveryCombinationIsRight is the rule of a setup sheet: 10,000 boxes and more, each
// of readings within the limits and of boards within their range, are within all limits,
// their slides' included; and no limit can be moved out by 0.02 mm without a box that is
// not, but for those that are as far out as the shop's accuracy lets them be.
func TestEveryCombinationIsRight(t *testing.T) {
	const boxes = 200 // of each of the 100 draws
	count := seen{}
	rapid.Check(t, func(t *rapid.T) {
		d := anyDrawer(t)
		set := gauge.Find([]gauge.Drawer{d})
		if len(set.TooNarrow) > 0 {
			if len(set.Rows) > 0 {
				t.Fatalf("there are limits, though %v leave nothing", set.TooNarrow)
			}
			count["none"]++
			return
		}
		broken := func(code joinery.CheckCode) bool {
			return slices.ContainsFunc(set.OutOfLimits, func(m gauge.Measure) bool { return m.Code == code })
		}
		if len(set.OutOfLimits) > 0 {
			count["broken"]++
		}
		count["sets"]++
		count[string(d.Spec.Cutter.Kind)]++
		if len(set.SortBoards) > 0 {
			count["sorted"]++
		}
		list := choices(d, set)
		middle := make([]float64, len(list))
		for i, c := range list {
			if c.least > c.most+1e-9 {
				t.Fatalf("%s is %g to %g", c.name, c.least, c.most)
			}
			middle[i] = (c.least + c.most) / 2
		}
		for _, r := range set.Rows {
			if r.Target < r.Min-maxOff || r.Target > r.Max+maxOff {
				t.Fatalf("%s should be %g and is right from %g to %g", r.Kind, r.Target, r.Min, r.Max)
			}
		}
		// Any combinations.
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		for n := range boxes {
			v := make([]float64, len(list))
			for i, c := range list {
				part := min(max(2*random.Float64()-0.5, 0), 1) // at an end every other time
				v[i] = c.least + part*(c.most-c.least)
			}
			for _, m := range boxOf(d, set, v).measures(d.Slide) {
				if (m.value < m.least-maxOff || m.value > m.most+maxOff) && !broken(joinery.CheckCode(m.what)) {
					t.Fatalf("box %d: %s is %g, right is %g to %g; %v", n, m.what, m.value, m.least, m.most, set.Rows)
				}
			}
			count["boxes"]++
		}
		// The worst combination of each measure, and the same with one limit moved out.
		measures := len(boxOf(d, set, middle).measures(d.Slide))
		all := func(list []choice) (over float64, what string) {
			over = math.Inf(-1)
			for m := range measures {
				for _, up := range []bool{false, true} {
					if o, w := worst(d, set, list, m, up); o > over && !broken(joinery.CheckCode(w)) {
						over, what = o, w
					}
				}
			}
			return over, what
		}
		if over, what := all(list); over > maxOff {
			t.Fatalf("the worst %s is over by %g: %v", what, over, set.Rows)
		}
		if len(set.OutOfLimits) > 0 { // its other end may be what holds a limit back
			return
		}
		row := rapid.IntRange(0, len(set.Rows)-1).Draw(t, "row")
		up := rapid.Bool().Draw(t, "up")
		reading := slices.IndexFunc(fit.Readings(d.Drawer, d.Accuracy),
			func(r fit.Reading) bool { return r.Kind == set.Rows[row].Kind })
		cap := 3*fit.Readings(d.Drawer, d.Accuracy)[reading].Error - 1e-4
		moved := slices.Clone(list)
		for i := range moved {
			if moved[i].row == row && up {
				moved[i].most += 0.02
			} else if moved[i].row == row {
				moved[i].least -= 0.02
			}
		}
		r := set.Rows[row]
		if over, _ := all(moved); over <= maxOff && (up && r.Max-r.Target < cap || !up && r.Target-r.Min < cap) {
			t.Fatalf("%s, right from %g to %g about %g, could be moved out (up: %t); %v", r.Kind, r.Min,
				r.Max, r.Target, up, set.Rows)
		}
		count["moved"]++
	})
	t.Log(count)
	for _, k := range []string{"saw", "router-table", "router", "hand", "sorted", "broken"} {
		if count[k] == 0 {
			t.Errorf("no draw was of %s: %v", k, count)
		}
	}
	if count["boxes"] < 10_000 {
		t.Errorf("only %d boxes", count["boxes"])
	}
}

// TestOneSettingForAll: the limits of drawers that are cut at one setting are right for
// each of them: those of one, met in one set, or narrower.
func TestOneSettingForAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDrawer(t)
		other := d
		other.Spec.Width += 100
		other.Spec.Depth += 50
		// Set so near to the first that it prints alike.
		other.Spec.FenceDistance, other.Spec.CutterHeight = d.Setup.FenceDistance+0.008, d.Setup.CutterHeight-0.008
		built, problems, _ := joinery.LayOut(other.Spec)
		for _, p := range problems {
			if p.IsError() {
				t.Skip(p.Fact.In(geom.Millimeter)) // a draw that cannot be built has no limits
			}
		}
		other.Drawer = built
		other.Slide = &fit.SlideFit{Min: other.Spec.Width - 0.5, Max: other.Spec.Width + 0.5}
		together := gauge.Find([]gauge.Drawer{d, other})
		if len(together.TooNarrow)+len(together.OutOfLimits) > 0 {
			return
		}
		if over, what := worstOfAll(together, d, other); over > maxOff {
			t.Fatalf("%s is over by %g: %v", what, over, together.Rows)
		}
	})
}

// worstOfAll is the measure of drawers that is furthest out of its limits at the worst, by
// the rows of one set.
func worstOfAll(together gauge.Limits, drawers ...gauge.Drawer) (over float64, what string) {
	over = math.Inf(-1)
	for _, one := range drawers {
		// What is off the list is off this drawer's.
		set := together
		set.Rows = slices.Clone(set.Rows)
		reads := fit.Readings(one.Drawer, one.Accuracy)
		for i, r := range set.Rows {
			at := slices.IndexFunc(reads, func(o fit.Reading) bool { return o.Kind == r.Kind })
			if by := reads[at].Target; r.Relative && !math.IsNaN(by) {
				set.Rows[i] = gauge.Row{Kind: r.Kind, Target: by, Min: by + r.Min, Max: by + r.Max}
			}
		}
		list := choices(one, set)
		v := make([]float64, len(list))
		for m := range boxOf(one, set, v).measures(one.Slide) {
			for _, up := range []bool{false, true} {
				if o, w := worst(one, set, list, m, up); o > over {
					over, what = o, w
				}
			}
		}
	}
	return over, what
}

// TestNearestRow: a back that is 0.03 thicker than the front has a row of its own. Of a second
// drawer, whose rabbets are 0.008 less deep, that of the back is as good as the same as that of
// either row; it counts in the one that is nearest, and is right within that.
func TestNearestRow(t *testing.T) {
	s := joinery.Spec{Name: "a", Count: 1, Units: geom.Millimeter, Width: 250, Height: 80, Depth: 250,
		Joint: joinery.DadoRabbet, GrooveEnds: joinery.GrooveThrough, BottomClearance: 4, Limits: joinery.DefaultLimits,
		Sides: board("sides", 11), Front: board("sides", 11), Back: board("back", 11.03), Bottom: board("bottom", 5),
		Cutter: joinery.Cutter{Kind: joinery.Router, Width: 4}, DadoClearance: 0.35, GrooveClearance: 0.4}
	var drawers []gauge.Drawer
	for _, fence := range []float64{5.5, 5.508} {
		s.FenceDistance = fence
		d, problems, _ := joinery.LayOut(s)
		for _, p := range problems {
			if p.IsError() {
				t.Fatal(p)
			}
		}
		drawers = append(drawers, gauge.Drawer{Drawer: d, Boards: fit.MeasuredBoards(s), Accuracy: fit.AccuracyOf(s.Cutter.Kind)})
	}
	for _, list := range [][]gauge.Drawer{drawers, {drawers[1], drawers[0]}} {
		set, rabbets := gauge.Find(list), 0
		for _, r := range set.Rows {
			if r.Kind == fit.RabbetDeep {
				rabbets++
			}
		}
		if rabbets != 2 {
			t.Errorf("%d rows of rabbets, want that of the front and that of the back: %v", rabbets, set.Rows)
		}
		if over, what := worstOfAll(set, list...); over > maxOff {
			t.Errorf("%s is over by %g: %v", what, over, set.Rows)
		}
	}
}

// board is a stock all of whose boards are of one thickness, in mm.
func board(name string, mm float64) joinery.Stock {
	return joinery.Stock{Name: name, Thickness: joinery.Measure(mm)}
}
