package joinery

import "fmt"

// What the double rabbet does when boards differ from their mean. Its cuts are
// all made from the inside face.
//
// On a saw, and on a router that measures from the top, every cut is h deep. A
// side of thickness t keeps a lip of t - h outside its rabbet, whose floor meets
// the front's shoulder, Ts - h from the front's end: the inside faces stand where
// they should, and what the side is thicker or thinner comes out at its outside
// face. A front keeps a lip of t - h likewise, before the side's end, and the box
// is deeper or shallower by what it differs.
//
// With depths measured from the spoilboard, every board keeps its mean thickness
// less h under the cuts: the lips, and with them the outside of the box, are as
// computed, and what a board is thicker stands inside the box. A thick front would
// then meet the shoulder of the side's rabbet before its lip meets the side's end.

// lapRoom is how much longer the sides' rabbets are than front and back need, so
// that the thickest of them does not keep the corner from closing.
func (l *layout) lapRoom() float64 {
	if !l.fromSpoilboard() {
		return 0
	}
	front, back := l.Front.Thickness, l.Back.Thickness
	return max(front.Max-front.Mean, back.Max-back.Mean)
}

// lap is Ts - t: how far the outside face of a side stands back from the end of
// the front or the back, negative when it is proud. factor is how it changes with t.
func (l *layout) lap(r Role, factor float64) Check {
	return l.check(Check{CheckID: CheckID{Code: CheckLap, Part: r}, Name: fmt.Sprintf("sides at the %s's ends (proud below 0)", r), Nominal: 0,
		LowerLimit: -l.Limits.Flush, UpperLimit: l.Limits.Flush, Verdicts: RecessVerdicts}, l.Sides.Thickness, factor)
}

// lappedWidth is the front's length, and what sides stand proud of its ends.
func (l *layout) lappedWidth() Check {
	width := func(thickness float64) float64 {
		proud := 0.0
		if !l.fromSpoilboard() {
			proud = max(0, thickness-l.Ts)
		}
		return l.Width + float64(2*proud)
	}
	t := l.Sides.Thickness
	return l.judge(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width, Min: width(t.Min), Max: width(t.Max),
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts})
}

// lappedDepth is the side's length and the lips of front and back, of those that have one.
func (l *layout) lappedDepth() Check {
	least, most := l.Depth, l.Depth
	if !l.fromSpoilboard() {
		for _, r := range []Role{Front, Back} {
			if stock, _ := l.stockOf(r); r == Front || l.BackJoint != Housed { // which laps over nothing
				t := stock.Thickness
				least, most = least+(t.Min-t.Mean), most+(t.Max-t.Mean)
			}
		}
	}
	return l.judge(l.depthOf(l.Depth, least, most))
}

// laps are where the sides stand at the ends of front and back.
func (l *layout) laps() {
	factor := -1.0
	if l.fromSpoilboard() {
		factor = 0
	}
	for _, r := range l.ends() {
		l.lap(r, factor)
	}
}
