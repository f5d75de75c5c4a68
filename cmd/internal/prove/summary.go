package prove

import (
	"math"

	"drawerwright/cmd/internal/report"
	"drawerwright/geom/proof"
)

// summary gathers what became of a box at different thicknesses.
type summary struct {
	*Prover
	out *report.Proof
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
	widen := func(r *report.Range, mm float64) {
		v := s.number(mm)
		if first {
			*r = report.Range{Mean: v, Min: v, Max: v}
		}
		r.Min, r.Max = math.Min(r.Min, v), math.Max(r.Max, v)
	}
	goes := first || box.Goes() // else only the plays mean something
	for i, c := range box.Corners {
		if first {
			s.out.Corners = append(s.out.Corners, report.Corner{End: c.End, Side: c.Side, Goes: c.Goes, Captured: c.Captured, Laps: c.Laps})
			if c.Goes {
				s.out.Corners[i].Seat = "floor"
				if c.OnShoulder {
					s.out.Corners[i].Seat = "shoulder"
				}
			}
		}
		o := &s.out.Corners[i]
		widen(&o.Play, c.Play)
		if goes && c.Goes {
			widen(&o.ShoulderGap, c.ShoulderGap)
			widen(&o.FloorGap, c.FloorGap)
			widen(&o.Recess, c.Recess)
			if c.Laps {
				widen(&o.Lap, c.Lap)
			}
		}
	}
	if len(box.Walls) > 0 {
		if first {
			s.out.Bottom = &report.Bottom{Goes: box.BottomGoes()}
		}
		b := s.out.Bottom
		hold := math.Inf(1)
		for _, w := range box.Walls {
			hold = math.Min(hold, w.Hold)
		}
		widen(&b.Play, box.BottomPlay)
		widen(&b.Slack[0], box.SlackX)
		widen(&b.Slack[1], box.SlackY)
		widen(&b.Hold, hold)
		widen(&b.Stand, box.BottomStand)
	}
	if !goes {
		return
	}
	widen(&s.out.Width, math.Max(box.WidthFront, box.WidthBack))
	widen(&s.out.Taper, box.WidthFront-box.WidthBack)
	widen(&s.out.Depth, box.Depth)
	widen(&s.out.Height, box.Height)
	widen(&s.out.Diagonal, box.Diagonal)
	widen(&s.out.Rack, box.Rack)
	if first {
		for _, o := range box.Overlaps {
			if o.Volume > proof.MostOverlap {
				s.out.Overlaps = append(s.out.Overlaps, report.Overlap{A: o.A, B: o.B, Volume: math.Round(o.Volume*100) / 100})
			}
		}
	}
}
