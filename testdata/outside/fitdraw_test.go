package outside

import (
	"encoding/json"
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// sawnBox is a dado-rabbet made on a saw, with glue room.
func sawnBox(t *testing.T, width, depth, glueRoom float64) joinery.Drawer {
	t.Helper()
	ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(12), Grain: joinery.GrainNone}
	thin := joinery.Stock{Name: "thin", Thickness: joinery.Measure(6), Grain: joinery.GrainNone}
	d, problems, _ := joinery.LayOut(joinery.Spec{Name: "sawn", Count: 1, Width: width, Height: 90, Depth: depth, Sides: ply, Front: ply, Back: ply, Bottom: thin,
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn,
		BottomClearance: 2, GlueSpace: glueRoom})
	for _, p := range problems {
		if p.IsError() {
			t.Fatalf("%s: %s", p.Code, p.Fact.In(geom.Millimeter))
		}
	}
	return d
}

// stackOf finds a measure of a list.
func stackOf(t *testing.T, list []fit.Measure, code joinery.CheckCode) fit.Stack {
	t.Helper()
	for _, m := range list {
		if m.Code == code {
			return m.Stack
		}
	}
	t.Fatalf("no measure %s", code)
	return fit.Stack{}
}

// TestDrawnAsScipy: what is not linear comes out as scipy draws it, from spreads and
// a generator of its own: the width of a box whose tongues stop at a floor or at a
// shoulder, whichever is first; its diagonal with errors of a quarter of its size; and
// a product. Mean, standard deviation and quantiles agree within four standard errors
// of the two draws.
func TestDrawnAsScipy(t *testing.T) {
	const draws, errors = 200_000, 4
	d := sawnBox(t, 80, 90, 0.2)
	boards := fit.MeasuredBoards(d.Spec)
	boards.Sides = fit.Spread{Minus: 0.9, Plus: 0.4}
	list := fit.Measures(d, boards, fit.Accuracy{Cutter: 0.1, Cut: 0.2, Fence: 0.1, Height: 0.9, Length: 20}, nil)
	width := stackOf(t, list, "outside-width")
	at := func(name string) int {
		for i, s := range width.Sources {
			if s.Name == name {
				return i
			}
		}
		t.Fatalf("no source %q", name)
		return 0
	}
	height, side := at("cutter height"), at("thickness of the left side")
	stacks := map[string]fit.Stack{
		"outside-width": width,
		"diagonal":      stackOf(t, list, "diagonal"),
		"product": {Sources: width.Sources, Terms: []fit.Term{{Source: height, Sign: 1}, {Source: side, Sign: 1}},
			Value: func(off []float64) float64 { return (4 + off[height]) * (3 + off[side]) }},
	}
	job, err := json.Marshal(map[string]any{"sources": width.Sources, "draws": draws, "width": 80, "depth": 90, "left": 12, "right": 12, "height": d.Setup.CutterHeight, "room": 0.2})
	if err != nil {
		t.Fatal(err)
	}
	answers := lines[struct {
		Name                string
		Mean, Sigma, Fourth float64
		Parts, At           []float64
		Beyond              [2][2]float64
	}](t, string(job), python, "fitdraw.py")
	if len(answers) != len(stacks) {
		t.Fatalf("%d answers for %d measures", len(answers), len(stacks))
	}
	for _, a := range answers {
		s := stacks[a.Name]
		// One draw for each quantile, of the same boxes: what part is below it.
		var same []fit.Stack
		var below []geom.Interval
		for _, q := range a.At {
			same, below = append(same, s), append(below, geom.Interval{Min: math.Inf(-1), Max: q})
		}
		drawn, _ := fit.SampleBoxes(same, below, draws, 5)
		is := func(what string, got, want, by float64) {
			t.Helper()
			if !(math.Abs(got-want) <= errors*by) {
				t.Errorf("%s: %s is %.6f, scipy's %.6f; the standard error is %.2g", a.Name, what, got, want, by)
			}
		}
		is("mean", drawn[0].Mean, a.Mean, a.Sigma*math.Sqrt(2.0/draws))
		is("sigma", drawn[0].Sigma, a.Sigma, math.Sqrt(2*(a.Fourth-math.Pow(a.Sigma, 4))/draws)/(2*a.Sigma))
		for i, p := range a.Parts {
			is("part below a quantile", drawn[i].Within, p, math.Sqrt(2*p*(1-p)/draws))
		}
		// Told to a thousandth of the worst case's width.
		worst := s.Result().Worst
		bin := (worst.Max - worst.Min) / 1000
		for i, end := range []float64{drawn[0].Common.Min, drawn[0].Common.Max} {
			if low, high := a.Beyond[i][0]-bin, a.Beyond[i][1]+bin; end < low || end > high {
				t.Errorf("%s: all but 0.27 %% end at %.4f, scipy's at %.4f to %.4f", a.Name, end, low, high)
			}
		}
	}
}

// TestOddsAsScipy: the part of whole boxes that keep the limits of width, depth and
// diagonals at once, and the place in a slide's window that is aimed at, with boxes that
// scipy draws. The best of all places is best by chance too, by the four standard errors
// that are allowed.
func TestOddsAsScipy(t *testing.T) {
	t.Parallel()
	const draws, errors = 200_000, 4
	for name, c := range map[string]struct {
		boards fit.Spread
		by     fit.Accuracy
		window geom.Interval
	}{
		"an ordinary shop":     {fit.Spread{Minus: 0.1, Plus: 0.1}, fit.SawAccuracy, geom.Interval{Min: -0.5}},
		"boards that are thin": {fit.Spread{Minus: 0.6}, fit.SawAccuracy, geom.Interval{Min: -0.5, Max: 0.1}},
		"height by guess":      {fit.Spread{Minus: 0.1, Plus: 0.3}, fit.Accuracy{Cutter: 0.1, Cut: 0.2, Fence: 0.1, Height: 0.9, Length: 0.3}, geom.Interval{Min: -1}},
	} {
		d := sawnBox(t, 400, 450, 0.2)
		boards := fit.MeasuredBoards(d.Spec)
		boards.Sides = c.boards
		list := fit.Measures(d, boards, c.by, nil)
		var stacks []fit.Stack
		var limits []geom.Interval
		named := map[string][2]float64{}
		for _, m := range list {
			switch m.Code {
			case "outside-width", "outside-depth", "diagonal":
				r := geom.Interval{Min: m.Nominal - 0.25, Max: m.Nominal + 0.35}
				stacks, limits = append(stacks, m.Stack), append(limits, r)
				named[string(m.Code)] = [2]float64{r.Min, r.Max}
			}
		}
		width := stackOf(t, list, "outside-width")
		aim := fit.Aim(width, c.window)
		job, err := json.Marshal(map[string]any{"sources": width.Sources, "draws": draws, "width": 400, "depth": 450, "left": 12, "right": 12, "height": d.Setup.CutterHeight, "room": 0.2,
			"limits": named, "window": [2]float64{c.window.Min, c.window.Max}, "aim": aim})
		if err != nil {
			t.Fatal(err)
		}
		answers := lines[struct {
			Name  string
			Mean  float64
			Parts []float64
		}](t, string(job), python, "fitdraw.py")
		if len(answers) != 2 || answers[0].Name != "right" || answers[1].Name != "aim" {
			t.Fatalf("%s: %+v", name, answers)
		}
		_, right := fit.SampleBoxes(stacks, limits, draws, 5)
		p := answers[0].Mean
		if by := errors * math.Sqrt(2*p*(1-p)/draws); math.Abs(right-p) > by || p == 1 || p == 0 {
			t.Errorf("%s: %.5f of the boxes are right, of scipy's %.5f; four standard errors are %.5f",
				name, right, p, by)
		}
		kept, best := answers[1].Parts[0], answers[1].Parts[1]
		// The aim is found from fit.Draws boxes, and keeps to the middle within two of their
		// standard errors.
		if by := 2*math.Sqrt(best*(1-best)/fit.Samples) + errors*math.Sqrt(2*best*(1-best)/draws); best-kept > by || best == 1 {
			t.Errorf("%s: aimed at %.3f, %.5f of scipy's boxes run, of the best place %.5f; allowed are %.5f", name, aim, kept, best, by)
		}
	}
}
