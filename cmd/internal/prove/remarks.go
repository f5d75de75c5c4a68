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
func (t *trial) lost(box *proof.Box) []string {
	var list []string
	say := func(format string, args ...any) {
		if text := fmt.Sprintf(format, args...); !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, p := range t.panels {
		board, known := t.thick[p.part.Stock]
		if !known {
			continue
		}
		for _, c := range p.cuts {
			if deep := c.deep(board, p.thickness, t.o); !c.through && proof.ComesThrough(deep, board) {
				say("the %s on %s of %s is %s deep in a board of %s", c.operation, c.layer, p.part.Name, t.text(deep),
					t.text(board))
			}
		}
	}
	meant := proof.Meant{Bridged: joinery.HopelessGap, Open: t.drawer.MaxOpen.MM(), Loose: t.drawer.LooseDividers,
		Captured: func(end string) bool { return t.captures(t.drawer, end) }}
	for _, f := range t.drawer.Folders {
		meant.Folders = append(meant.Folders,
			proof.Folders{Rails: f.Rails, Width: f.Width.MM(), Below: f.Below.MM(), Above: f.Above.MM()})
	}
	for _, l := range box.Losses(meant) {
		say("%s", t.lossText(l))
	}
	return list
}

// captures reports whether an end is meant to be held by tongues, fingers or dados:
// then the fit has a check of its play.
func (w *Worker) captures(d record.Drawer, end string) bool {
	if end == string(joinery.Back) && w.hasCheck(d, joinery.CheckBackClearance, "") {
		return true
	}
	return w.hasCheck(d, joinery.CheckTongueClearance, "") || w.hasCheck(d, joinery.CheckFingerClearance, "")
}

// outOfLimits compares the box at the mean with the limits of the drawer's fit;
// of several corners it names the worst.
func (s summary) outOfLimits(d record.Drawer) bool {
	before := len(s.out.Remarks)
	for _, f := range s.fitOf(d) {
		values := s.measured(d, f)
		if f.Check == fit.ShoulderGap {
			f.Limits = [2]record.Length{0, -f.Limits[0]} // of the room; what is open is reported below
		}
		s.judge(f, values)
	}
	open := record.Corner{}
	for _, c := range s.out.Corners {
		if c.ShoulderGap.Mean > open.ShoulderGap.Mean {
			open = c
		}
	}
	if (open.ShoulderGap.Mean - d.MaxOpen).MM() > tick {
		s.out.Remarks = append(s.out.Remarks,
			fmt.Sprintf("between %s and %s a shoulder stays open by %s", open.End, open.Side,
				s.given(open.ShoulderGap.Mean)))
	}
	s.gaps(d)
	return len(s.out.Remarks) > before
}

// given prints a length of the report.
func (s summary) given(v record.Length) string { return s.text(v.MM()) }

// judge names the value that is furthest beyond the limits of a check.
func (s summary) judge(f record.Fit, values map[string]record.Length) {
	worst, which := s.rounding(), ""
	for _, what := range slices.Sorted(maps.Keys(values)) {
		v := values[what]
		if off := max(f.Limits[0]-v, v-f.Limits[1]).MM(); off > worst {
			worst, which = off, what
		}
	}
	if which != "" {
		s.out.Remarks = append(s.out.Remarks,
			fmt.Sprintf("%s is %s; %s to %s is right", which, s.given(values[which]), s.given(f.Limits[0]),
				s.given(f.Limits[1])))
	}
}

// cornerMeasures are the checks of corners one by one: what each measures, of an end and a
// side.
var cornerMeasures = map[joinery.CheckCode]struct {
	what  string
	value func(record.Corner) record.Length
}{
	joinery.CheckTongueClearance: {"the clearance of the %s in the %s",
		func(c record.Corner) record.Length { return c.Clearance.Mean }},
	joinery.CheckBackClearance: {"the clearance of the %s in the %s",
		func(c record.Corner) record.Length { return c.Clearance.Mean }},
	fit.ShoulderGap: {"the room between the tongue of the %s and the floor of its dado in the %s",
		func(c record.Corner) record.Length { return c.FloorGap.Mean }},
	joinery.CheckRecess: {"the recess of the %s at the %s", func(c record.Corner) record.Length { return c.Recess.Mean }},
	joinery.CheckLap:    {"the lap of the %s at the %s", func(c record.Corner) record.Length { return c.Lap.Mean }},
}

// measured is what the box has of a check, by what is measured.
func (s summary) measured(d record.Drawer, f record.Fit) map[string]record.Length {
	values := make(map[string]record.Length)
	if m, ok := cornerMeasures[f.Check]; ok {
		for _, c := range s.out.Corners {
			// A back without a check of its own is the front's twin, if it is not housed.
			if c.End == f.Part || c.End == "back" && !s.hasCheck(d, f.Check, "back") &&
				!s.hasCheck(d, joinery.CheckBackClearance, "") {
				values[fmt.Sprintf(m.what, c.End, c.Side)] = m.value(c)
			}
		}
		return values
	}
	bottom := s.out.Bottom
	switch f.Check {
	case joinery.CheckFingerClearance:
		for _, c := range s.out.Corners {
			if c.Fingers {
				values[fmt.Sprintf("the clearance of the fingers of %s and %s", c.End, c.Side)] = c.Clearance.Mean
			}
		}
	case joinery.CheckDividerClearance:
		for _, p := range s.out.Dividers {
			values["the clearance of "+p.Name+" in its dados"] = p.Clearance.Mean
		}
	case joinery.CheckInsertClearance, joinery.CheckInsertClearanceDepth:
		if n := s.out.Insert; n != nil && f.Check == joinery.CheckInsertClearance {
			values["the clearance of the insert from side to side"] = n.Clearance[0].Mean
		} else if n != nil {
			values["the clearance of the insert from front to back"] = n.Clearance[1].Mean
		}
	case joinery.CheckBottomFlush:
		if bottom != nil {
			values["the bottom's height above the edges"] = bottom.Height.Mean
		}
	case joinery.CheckGrooveClearance:
		if bottom != nil {
			values["the clearance of the bottom"] = bottom.Clearance.Mean
		}
	case joinery.CheckOutsideWidth:
		values["the width"] = s.out.Width.Mean
	case joinery.CheckOutsideDepth:
		values["the depth"] = s.out.Depth.Mean
	}
	return values
}

// gaps reports what else one would see open.
func (s summary) gaps(d record.Drawer) {
	say := func(v record.Length, format string, args ...any) {
		if (v - d.MaxOpen).MM() > tick {
			s.out.Remarks = append(s.out.Remarks, fmt.Sprintf(format, append(args, s.given(v))...))
		}
	}
	for _, c := range s.out.Corners {
		say(c.OpenGap.Mean, "the %s stays off the shoulder of the %s by %s", c.End, c.Side)
	}
	if b := s.out.Bottom; b != nil {
		gap := b.Gap.Mean
		if b.BottomFit == proof.SlideIn.String() { // the back ends at the upper edge of the grooves
			gap -= b.Clearance.Mean
		}
		say(gap, "between the bottom and an edge over it a gap stays open by %s")
		say(-b.Gap.Mean, "the bottom lifts the back by %s")
	}
	for _, f := range s.out.DrawerFronts {
		say(f.Gap.Mean, "between drawer front and box front a gap stays open by %s")
	}
}

// rounding is what the depths in layer names may be off by in a measure that hangs
// on two of them, in millimeters.
func (s summary) rounding() float64 {
	unit := geom.Millimeter
	if s.report.DXF.Units == geom.Inch.String() {
		unit = geom.Inch
	}
	return unit.Step() + sameDepth
}

// fitOf are the measures of a drawer, those of the one that is proven made once.
func (w *Worker) fitOf(d record.Drawer) []record.Fit {
	if w.fits == nil || w.fits[0].Drawer != d.Name {
		w.fits = w.report.FitOf(d.Name)
	}
	return w.fits
}

// hasCheck reports whether the drawer's fit has a check of a part; of any, where none
// is named.
func (w *Worker) hasCheck(d record.Drawer, check joinery.CheckCode, part string) bool {
	return slices.ContainsFunc(w.fitOf(d), func(f record.Fit) bool {
		return f.Check == check && (part == "" || f.Part == part)
	})
}
