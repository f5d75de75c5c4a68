package prove

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/proof"
)

// summary gathers what became of a box at different thicknesses.
type summary struct {
	*Prover
	out *record.Proof
}

// number converts millimetres and rounds, so that the last bits of a computation
// never show.
func (p *Prover) number(mm float64) float64 {
	const steps = 1e6
	if math.IsNaN(mm) || math.Abs(mm) > farthest { // nothing there to measure
		return 0
	}
	return math.Round(mm/p.unit.MM()*steps)/steps + 0
}

// take adds one assembled box; the first is that of the mean.
func (s summary) take(box *proof.Box, first bool) {
	widen := func(r *record.Range, mm float64) {
		v := s.number(mm)
		if first {
			*r = record.Range{Mean: v, Min: v, Max: v}
		}
		r.Min, r.Max = math.Min(r.Min, v), math.Max(r.Max, v)
	}
	goes := first || box.GoesTogether() // else only the plays mean something
	for i, c := range box.Corners {
		if first {
			s.out.Corners = append(s.out.Corners,
				record.Corner{End: c.End, Side: c.Side, Goes: c.GoesTogether, Captured: c.Captured, Fingers: c.Fingers,
					Laps: c.Laps})
			if c.GoesTogether {
				s.out.Corners[i].Seat = "floor"
				if c.OnShoulder {
					s.out.Corners[i].Seat = "shoulder"
				}
			}
		}
		o := &s.out.Corners[i]
		widen(&o.Play, c.Play)
		if goes && c.GoesTogether {
			widen(&o.ShoulderGap, c.ShoulderGap)
			widen(&o.FloorGap, c.FloorGap)
			widen(&o.Open, c.Open)
			widen(&o.Recess, c.Recess)
			if c.Laps {
				widen(&o.Lap, c.Lap)
			}
		}
	}
	if len(box.Walls) > 0 {
		if first {
			s.out.Bottom = &record.Bottom{Goes: box.BottomGoesIn(), Blocked: box.Blocked}
			if box.BottomFit != proof.InGrooves {
				s.out.Bottom.Fit = box.BottomFit.String()
			}
		}
		b := s.out.Bottom
		hold, gap := math.Inf(1), 0.0
		for _, w := range box.Walls {
			hold = math.Min(hold, w.Engagement)
			if math.Abs(w.Gap) > math.Abs(gap) {
				gap = w.Gap
			}
		}
		widen(&b.Play, box.BottomPlay)
		widen(&b.Slack[0], box.SlackX)
		widen(&b.Slack[1], box.SlackY)
		widen(&b.Hold, hold)
		widen(&b.Height, box.BottomHeight)
		widen(&b.Gap, gap)
	}
	for i, d := range box.Dividers {
		if first {
			s.out.Dividers = append(s.out.Dividers,
				record.Divider{Name: d.Name, Walls: [2]string{d.Walls[0].Name, d.Walls[1].Name}, Goes: d.GoesIn,
					Lifts: d.Lifts})
		}
		o := &s.out.Dividers[i]
		widen(&o.Play, d.Play)
		widen(&o.Slack, d.Slack)
		widen(&o.Hold, math.Min(d.Walls[0].Engagement, d.Walls[1].Engagement))
		widen(&o.Height, d.Height)
	}
	for _, c := range box.Crossings {
		if first {
			s.out.Crossings = append(s.out.Crossings, record.Crossing{A: c.A, B: c.B, Goes: c.GoesTogether})
		}
		if i := slices.IndexFunc(s.out.Crossings,
			func(o record.Crossing) bool { return o.A == c.A && o.B == c.B }); i >= 0 {
			widen(&s.out.Crossings[i].Play, c.Play)
		}
	}
	for i, f := range box.DrawerFronts {
		if first {
			s.out.DrawerFronts = append(s.out.DrawerFronts, record.DrawerFront{Holes: f.Holes})
		}
		widen(&s.out.DrawerFronts[i].Gap, f.Gap)
		widen(&s.out.DrawerFronts[i].Covers, f.Covers)
	}
	if !goes {
		return
	}
	widen(&s.out.Width, math.Max(box.WidthFront, box.WidthBack))
	widen(&s.out.Taper, box.WidthFront-box.WidthBack)
	widen(&s.out.Depth, box.Depth)
	widen(&s.out.Height, box.Height)
	widen(&s.out.Diagonal, box.Diagonal)
	widen(&s.out.Rack, box.Racking)
	if first {
		for _, o := range box.Overlaps {
			if o.Volume > proof.MaxOverlap {
				s.out.Overlaps = append(s.out.Overlaps,
					record.Overlap{A: o.A, B: o.B, Volume: math.Round(o.Volume*100) / 100})
			}
		}
	}
}
