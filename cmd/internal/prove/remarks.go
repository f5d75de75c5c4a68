package prove

import (
	"fmt"
	"maps"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/proof"
)

// lost says what should hold a box and does not any more: a pocket that has come
// through its board, a tongue that nothing holds or glue does not reach, a bottom
// that drops out of its groove. Pieces that are cut away are in nobody's way.
func (w *Worker) lost(d record.Drawer, box *proof.Box, panels []panel, thick map[string]float64, o Options) []string {
	var list []string
	say := func(format string, args ...any) {
		if text := fmt.Sprintf(format, args...); !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, p := range panels {
		t, known := thick[p.part.Stock]
		if !known {
			continue
		}
		for _, c := range p.cuts {
			if deep := c.deep(t, p.thickness, o); !c.through && proof.ComesThrough(deep, t) {
				say("the %s on %s of %s is %s deep in a board of %s", c.operation, c.layer, p.part.Name, w.text(deep),
					w.text(t))
			}
		}
	}
	meant := proof.Meant{Bridged: joinery.HopelessGap, Open: w.mm(d.MaxOpen), Loose: d.LooseDividers,
		Captured: func(end string) bool { return w.captures(d, end) }}
	for _, l := range box.Losses(meant) {
		say("%s", w.lossText(l))
	}
	return list
}

// captures reports whether an end is meant to be held by tongues, fingers or dados:
// then the fit has a check of its play.
func (w *Worker) captures(d record.Drawer, end string) bool {
	if end == string(joinery.Back) && w.hasCheck(d, joinery.CheckBackPlay, "") {
		return true
	}
	return w.hasCheck(d, joinery.CheckTonguePlay, "") || w.hasCheck(d, joinery.CheckFingerPlay, "")
}

// outOfLimits compares the box at the mean with the limits of the drawer's fit;
// of several corners it names the worst.
func (s summary) outOfLimits(d record.Drawer) bool {
	before := len(s.out.Remarks)
	text := func(v float64) string { return s.text(s.mm(v)) }
	judge := func(f record.Fit, values map[string]float64) {
		worst, which := s.rounding(), ""
		for _, what := range slices.Sorted(maps.Keys(values)) {
			v := values[what]
			if off := s.mm(max(f.Limit[0]-v, v-f.Limit[1])); off > worst {
				worst, which = off, what
			}
		}
		if which != "" {
			s.out.Remarks = append(s.out.Remarks,
				fmt.Sprintf("%s is %s; %s to %s is usual", which, text(values[which]), text(f.Limit[0]),
					text(f.Limit[1])))
		}
	}
	corners := func(f record.Fit, format string, value func(record.Corner) float64) map[string]float64 {
		values := make(map[string]float64)
		for _, c := range s.out.Corners {
			// A back without a check of its own is the front's twin, if it is not housed.
			if c.End == f.Part || c.End == "back" && !s.hasCheck(d, f.Check, "back") &&
				!s.hasCheck(d, joinery.CheckBackPlay, "") {
				values[fmt.Sprintf(format, c.End, c.Side)] = value(c)
			}
		}
		return values
	}
	for _, f := range s.fits[d.Name] {
		switch f.Check {
		case joinery.CheckTonguePlay:
			judge(f, corners(f, "the play of the %s in the %s", func(c record.Corner) float64 { return c.Play.Mean }))
		case joinery.CheckFingerPlay:
			values := make(map[string]float64)
			for _, c := range s.out.Corners {
				if c.Fingers {
					values[fmt.Sprintf("the play of the fingers of %s and %s", c.End, c.Side)] = c.Play.Mean
				}
			}
			judge(f, values)
		case joinery.CheckBackPlay:
			judge(f, corners(f, "the play of the %s in the %s", func(c record.Corner) float64 { return c.Play.Mean }))
		case joinery.CheckDividerPlay:
			values := make(map[string]float64)
			for _, p := range s.out.Dividers {
				values["the play of "+p.Name+" in its dados"] = p.Play.Mean
			}
			judge(f, values)
		case fit.ShoulderGap:
			f.Limit = [2]float64{0, -f.Limit[0]} // of the room; what is open is reported below
			judge(f, corners(f, "the room between the tongue of the %s and the floor of its dado in the %s",
				func(c record.Corner) float64 { return c.FloorGap.Mean }))
		case joinery.CheckRecess:
			judge(f, corners(f, "the recess of the %s at the %s",
				func(c record.Corner) float64 { return c.Recess.Mean }))
		case joinery.CheckLap:
			judge(f, corners(f, "the lap of the %s at the %s", func(c record.Corner) float64 { return c.Lap.Mean }))
		case joinery.CheckBottomFlush:
			if s.out.Bottom != nil {
				judge(f, map[string]float64{"the bottom's height above the edges": s.out.Bottom.Height.Mean})
			}
		case joinery.CheckBottomPlay:
			if s.out.Bottom != nil {
				judge(f, map[string]float64{"the play of the bottom": s.out.Bottom.Play.Mean})
			}
		case joinery.CheckOutsideWidth:
			judge(f, map[string]float64{"the width": s.out.Width.Mean})
		case joinery.CheckOutsideDepth:
			judge(f, map[string]float64{"the depth": s.out.Depth.Mean})
		}
	}
	open := record.Corner{}
	for _, c := range s.out.Corners {
		if c.ShoulderGap.Mean > open.ShoulderGap.Mean {
			open = c
		}
	}
	if s.mm(open.ShoulderGap.Mean-d.MaxOpen) > tick {
		s.out.Remarks = append(s.out.Remarks,
			fmt.Sprintf("between %s and %s a shoulder stays open by %s", open.End, open.Side,
				text(open.ShoulderGap.Mean)))
	}
	s.gaps(d, text)
	return len(s.out.Remarks) > before
}

// gaps reports what else one would see open.
func (s summary) gaps(d record.Drawer, text func(float64) string) {
	say := func(v float64, format string, args ...any) {
		if s.mm(v-d.MaxOpen) > tick {
			s.out.Remarks = append(s.out.Remarks, fmt.Sprintf(format, append(args, text(v))...))
		}
	}
	for _, c := range s.out.Corners {
		say(c.Open.Mean, "the %s stays off the shoulder of the %s by %s", c.End, c.Side)
	}
	if b := s.out.Bottom; b != nil {
		gap := b.Gap.Mean
		if b.Fit == proof.SlidIn.String() { // the back ends at the upper edge of the grooves
			gap -= b.Play.Mean
		}
		say(gap, "between the bottom and an edge over it a gap stays open by %s")
		say(-b.Gap.Mean, "the bottom lifts the back by %s")
	}
	for _, f := range s.out.DrawerFronts {
		say(f.Gap.Mean, "between drawer front and front a gap stays open by %s")
	}
}

// rounding is what the depths in layer names may be off by in a measure that hangs
// on two of them, in millimetres.
func (s summary) rounding() float64 {
	unit := geom.Millimetre
	if s.report.DXF.Units == geom.Inch.String() {
		unit = geom.Inch
	}
	return unit.Step() + sameDepth
}

// hasCheck reports whether the drawer's fit has a check of a part; of any, where none
// is named.
func (p *Prover) hasCheck(d record.Drawer, check joinery.CheckCode, part string) bool {
	return slices.ContainsFunc(p.fits[d.Name], func(f record.Fit) bool {
		return f.Check == check && (part == "" || f.Part == part)
	})
}
