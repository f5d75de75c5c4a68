package main

import (
	"log"
	"testing"
	"time"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// plans measures the way from a measured opening to the panels of its boxes,
// without files.
func plans() {
	row("a bank of 12 drawers, from opening to panels", perPlan(1, 12), "-", "the goal is 5 ms")
	row("1,000 different openings, from opening to panels", perPlan(1000, 1), "-", "the goal is 1 s")
}

// perPlan is the time that so many openings of so many rows take.
func perPlan(openings, rows int) time.Duration {
	slide, _ := opening.BuiltIn(opening.SideMount, geom.Millimeter)
	sides := joinery.Stock{Name: "birch", Thickness: joinery.Measure(12.21, 12.16, 12.24)}
	bottom := joinery.Stock{Name: "board", Thickness: joinery.Measure(5.9)}
	r := testing.Benchmark(func(b *testing.B) {
		for b.Loop() {
			for i := range openings {
				plan, problems := opening.Solve(opening.Bank{
					Opening: opening.Opening{Width: []float64{400 + 0.3*float64(i)}, Height: []float64{130 * float64(rows)}, Depth: []float64{540}, Fronts: opening.NoFront},
					Slide:   slide, Rows: make([]opening.Row, rows), Graduation: opening.Equal, Sides: sides,
				})
				for _, p := range problems {
					if p.IsError() {
						log.Fatal("peers: ", p)
					}
				}
				for _, row := range plan.Rows {
					joinery.Build(joinery.Spec{Name: "d", Count: 1, Width: row.Box.Width, Height: row.Box.Height, Depth: row.Box.Depth,
						Sides: sides, Front: sides, Back: sides, Bottom: bottom, Joint: joinery.DadoRabbet,
						Cutter: joinery.Cutter{Kind: joinery.Router, Width: 6}, GrooveEnds: joinery.GrooveStopped, BottomFit: joinery.BottomAuto,
						BottomClearance: joinery.UsualBottomClearance(geom.Millimeter), DadoClearance: joinery.DefaultDadoClearance, GrooveClearance: joinery.DefaultGrooveClearance})
				}
			}
		}
	})
	return time.Duration(r.NsPerOp())
}
