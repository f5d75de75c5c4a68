package prove

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/proof"
)

// summary gathers what became of a box at different thicknesses.
type summary struct {
	*Worker
	out *record.Proof
}

// found is a length that was measured on the drawings, to a millionth of the report's unit: no
// drawing says more.
func (p *Prover) found(mm float64) record.Length {
	const steps = 1e6
	if math.IsNaN(mm) || math.Abs(mm) > farthest { // nothing there to measure
		return 0
	}
	return record.Length((math.Round(mm/p.unit.MM()*steps)/steps + 0) * p.unit.MM())
}

// assembled is a box whose measures are added; the first is that of the mean.
type assembled struct {
	summary
	box   *proof.Box
	first bool
}

// take adds one assembled box; the first is that of the mean.
func (s summary) take(box *proof.Box, first bool) {
	a := assembled{s, box, first}
	goes := first || box.GoesTogether() // else only the plays mean something
	a.corners(goes)
	if len(box.BottomJoints) > 0 {
		a.bottom()
	}
	a.dividers()
	a.insert()
	a.drawerFronts()
	if goes {
		a.outside()
	}
	if first {
		a.overlaps()
	}
}

// widen makes a range hold a measure, in millimeters.
func (a assembled) widen(r *record.Range, mm float64) {
	v := a.found(mm)
	if a.first {
		*r = record.Range{Mean: v, Min: v, Max: v}
	}
	r.Min, r.Max = min(r.Min, v), max(r.Max, v)
}

func (a assembled) corners(goes bool) {
	for i, c := range a.box.Corners {
		if a.first {
			a.out.Corners = append(a.out.Corners,
				record.Corner{End: c.End, Side: c.Side, Fits: c.GoesTogether, Interlocked: c.Captured, Fingers: c.Fingers,
					Laps: c.Laps})
			if c.GoesTogether {
				a.out.Corners[i].Seat = "floor"
				if c.OnShoulder {
					a.out.Corners[i].Seat = "shoulder"
				}
			}
		}
		o := &a.out.Corners[i]
		a.widen(&o.Clearance, c.Clearance)
		if goes && c.GoesTogether {
			a.widen(&o.ShoulderGap, c.ShoulderGap)
			a.widen(&o.FloorGap, c.FloorGap)
			a.widen(&o.OpenGap, c.Open)
			a.widen(&o.Recess, c.Recess)
			if c.Laps {
				a.widen(&o.Lap, c.Lap)
			}
		}
	}
}

func (a assembled) bottom() {
	box := a.box
	if a.first {
		a.out.Bottom = &record.Bottom{Fits: box.BottomGoesIn(), BlockedBy: box.Blocked}
		if box.BottomFit != proof.InGrooves {
			a.out.Bottom.BottomFit = box.BottomFit.String()
		}
	}
	b := a.out.Bottom
	hold, gap := math.Inf(1), 0.0
	for _, w := range box.BottomJoints {
		hold = math.Min(hold, w.Engagement)
		if math.Abs(w.Gap) > math.Abs(gap) {
			gap = w.Gap
		}
	}
	a.widen(&b.Clearance, box.GrooveClearance)
	a.widen(&b.BottomClearance[0], box.ClearanceX)
	a.widen(&b.BottomClearance[1], box.ClearanceY)
	a.widen(&b.Engagement, hold)
	a.widen(&b.Height, box.BottomHeight)
	a.widen(&b.Gap, gap)
}

// dividers are those of the box, with the places where two cross.
func (a assembled) dividers() {
	for i, d := range a.box.Dividers {
		if a.first {
			a.out.Dividers = append(a.out.Dividers,
				record.Divider{Name: d.Name, Between: [2]string{d.Joints[0].Name, d.Joints[1].Name}, Fits: d.GoesIn,
					Removable: d.Lifts})
		}
		o := &a.out.Dividers[i]
		a.widen(&o.Clearance, d.Clearance)
		a.widen(&o.EndClearance, d.EndClearance)
		a.widen(&o.Engagement, math.Min(d.Joints[0].Engagement, d.Joints[1].Engagement))
		a.widen(&o.Height, d.Height)
	}
	for _, c := range a.box.Crossings {
		if a.first {
			a.out.Crossings = append(a.out.Crossings, record.Crossing{A: c.A, B: c.B, Fits: c.GoesTogether})
		}
		if i := slices.IndexFunc(a.out.Crossings,
			func(o record.Crossing) bool { return o.A == c.A && o.B == c.B }); i >= 0 {
			a.widen(&a.out.Crossings[i].Clearance, c.Clearance)
		}
	}
}

func (a assembled) insert() {
	n := a.box.Insert
	if n == nil {
		return
	}
	if a.first {
		a.out.Insert = &record.Insert{Fits: n.GoesIn(), Removable: n.Lifts}
	}
	for axis, v := range n.Clearance {
		a.widen(&a.out.Insert.Clearance[axis], v)
	}
	a.widen(&a.out.Insert.Height, n.Height)
}

func (a assembled) drawerFronts() {
	for i, f := range a.box.DrawerFronts {
		if a.first {
			a.out.DrawerFronts = append(a.out.DrawerFronts, record.DrawerFront{ScrewHoles: f.Holes})
		}
		a.widen(&a.out.DrawerFronts[i].Gap, f.Gap)
		a.widen(&a.out.DrawerFronts[i].MinOverlap, f.Covers)
	}
}

func (a assembled) outside() {
	box := a.box
	a.widen(&a.out.Width, math.Max(box.WidthFront, box.WidthBack))
	a.widen(&a.out.Taper, box.WidthFront-box.WidthBack)
	a.widen(&a.out.Depth, box.Depth)
	a.widen(&a.out.Height, box.Height)
	a.widen(&a.out.Diagonal, box.Diagonal)
	a.widen(&a.out.Rack, box.Racking)
}

func (a assembled) overlaps() {
	for _, o := range a.box.Overlaps {
		if o.Volume > proof.MaxOverlap {
			a.out.Overlaps = append(a.out.Overlaps,
				record.Overlap{A: o.A, B: o.B, Volume: math.Round(o.Volume*100) / 100})
		}
	}
}
