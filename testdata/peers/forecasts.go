package main

import (
	"fmt"
	"time"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// forecasts measures what 1,000 different drawers take, from panels to the worst case
// and root of squares of each measure and to the verdict on one setup; and random boxes.
func forecasts() {
	const drawers = 1000
	var list []joinery.Drawer
	for i := range drawers {
		ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(11.9+float64(i%7)*0.05, 12.1)}
		d, problems := joinery.Build(joinery.Spec{Name: fmt.Sprint(i), Count: 1, Units: geom.Millimeter, Width: 300 + float64(i), Height: 120, Depth: 500,
			Sides: ply, Front: ply, Back: ply, Bottom: joinery.Stock{Name: "thin", Thickness: joinery.Measure(5.9, 6)}, Joint: joinery.DadoRabbet,
			Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn, BottomClearance: 2})
		for _, p := range problems {
			if p.IsError() {
				check(fmt.Errorf("%s", p.Fact.In(geom.Millimeter)))
			}
		}
		list = append(list, d)
	}
	measures := func(d joinery.Drawer) []fit.Measure {
		return fit.Measures(d, fit.MeasuredBoards(d.Spec), fit.SawAccuracy, nil)
	}
	draw := func(d joinery.Drawer, n int) {
		var stacks []fit.Stack
		var limits []geom.Interval
		for _, m := range measures(d) {
			stacks, limits = append(stacks, m.Stack), append(limits, geom.Interval{Min: m.LowerLimit, Max: m.UpperLimit})
		}
		fit.SampleBoxes(stacks, limits, n, 1)
	}
	plain := best(3, func() {
		var needs []setup.Requirement
		for _, d := range list {
			for _, m := range measures(d) {
				m.Stack.Result()
			}
			needs = append(needs, setup.RequirementOf(d))
		}
		setup.GroupSettings(needs)
	})
	row("what the boxes of 1,000 drawers will do, without draws", plain, "", "the goal is 0.5 s")
	start := time.Now()
	for _, d := range list {
		draw(d, 10_000)
	}
	row("the same with 10,000 random boxes of each", time.Since(start), "", "the goal is 5 s")
	row("1,000,000 random boxes of one drawer, all measures",
		best(2, func() { draw(list[0], 1_000_000) }), "", "the goal is 1 s")
}
