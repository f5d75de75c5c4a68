package setup_test

import (
	"math/rand/v2"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// anySpec is a random box, of sizes from tiny to 1500 wide.
func anySpec(r *rand.Rand) joinery.Spec {
	number := func(from, to float64) float64 { return from + r.Float64()*(to-from) }
	odds := func(n int) bool { return r.IntN(n) == 0 }
	ends := number(9, 19)
	s := joinery.Spec{Name: "any", Count: 1, Width: number(80, 700), Height: number(40, 260), Depth: number(80, 650), Units: geom.Millimeter,
		Sides: stock("sides", number(9, 19)), Front: stock("front", ends, ends+number(0, 0.2)), Bottom: stock("bottom", number(3, 12)),
		Joint:           joinery.Joints[r.IntN(6)],
		Cutter:          joinery.Cutter{Kind: []joinery.CutterKind{joinery.Saw, joinery.RouterTable, joinery.Hand}[r.IntN(3)]},
		GrooveEnds:      joinery.GrooveThrough,
		BottomFit:       []joinery.BottomFit{joinery.BottomAuto, joinery.BottomGroovedIn, joinery.BottomFlush, joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied}[r.IntN(6)],
		BottomClearance: number(0.5, 3), DadoClearance: 0.2, GrooveClearance: 0.2,
	}
	s.Cutter.Width = s.Front.Thickness.Mean/2 + number(0.1, 0.4)
	if odds(2) {
		s.Bottom = stock("bottom", s.Cutter.Width-number(0.1, 0.5))
	}
	if odds(8) {
		s.Width = number(700, 1500)
	}
	if s.Back = s.Front; odds(4) {
		s.Back = stock("back", ends+number(-0.2, 0.2))
	}
	if odds(4) {
		s.BackJoint, s.BackSetback = joinery.Housed, number(8, 20)
	}
	if s.Cutter.Kind.Stops() && odds(2) {
		s.GrooveEnds = joinery.GrooveStopped
	}
	if s.Cutter.Kind.Fenced() && odds(4) {
		s.Cutter.Groove = number(2, 6)
	}
	if s.Cutter.Kind == joinery.RouterTable && odds(3) {
		s.Cutter.Reach = number(5, 25)
	}
	if odds(3) {
		s.GlueSpace = 0.2
	}
	if odds(3) {
		s.BottomHeight = number(3, 20)
	}
	if odds(3) {
		s.Fasteners = joinery.AllFasteners[1+r.IntN(2)]
	}
	if odds(3) {
		s.BottomHeight = 14
		s.Undermount = &joinery.Undermount{BottomRecess: number(10, 13), NotchWidth: number(5, 45), NotchHeight: number(8, 13), HookDiameter: 6, HookDepth: 10, HookHeight: number(27, 35), HookIn: 7}
	}
	for range r.IntN(3) {
		d := joinery.Divider{Direction: []joinery.GrainDirection{joinery.Across, joinery.Along}[r.IntN(2)], Stock: stock("divider", s.Cutter.Width-0.2), Count: 1 + r.IntN(2), Loose: odds(3)}
		s.Dividers = append(s.Dividers, d)
	}
	if odds(3) {
		s.Pull.Shape = []joinery.PullShape{joinery.PullHole, joinery.PullHalf, joinery.PullSlot, joinery.PullHandHold}[r.IntN(4)]
	}
	if s.Cutter.Kind == joinery.Hand && odds(3) {
		s.Joint = joinery.Dovetail
	}
	return s
}

// anyMachines are usual ones, or some with limits of their own.
func anyMachines(r *rand.Rand) setup.Machines {
	if r.IntN(2) == 0 {
		return nil
	}
	number := func(from, to float64) float64 { return from + r.Float64()*(to-from) }
	out := setup.Machines{}
	for _, k := range []joinery.CutterKind{joinery.Saw, joinery.RouterTable} {
		m := setup.DefaultMachine(k, geom.Millimeter)
		m.MaxHeight, m.MaxWidth, m.RipCapacity, m.CrosscutCapacity, m.MaxOnSled = number(4, 30), number(5,
			25), number(3, 400), number(60, 400), number(200, 1600)
		m.MinOnEnd, m.MaxOnEnd, m.MinAlongFence = number(50, 250), number(250, 900), number(50, 400)
		m.MinWidthAlongFence = number(20, 80)
		if k == joinery.Saw {
			m.MinWidthOnEnd = number(20, 180)
		}
		out[k] = m
	}
	return out
}
