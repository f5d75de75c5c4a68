package testcut

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
)

// readOn are the readings of a test cut that a setup sheet lists too, of a corner with tongues
// and of others. What is left under a cut is less where the cut is deeper.
var (
	readOnTongues = map[fit.ReadingKind]Kind{fit.DadoWidth: Slot, fit.DadoPlace: Edge,
		fit.DadoDepth: Depth, fit.UnderDado: Depth,
		fit.TongueThick: Tongue, fit.RabbetDeep: RabbetDepth, fit.TongueLong: TongueLength, fit.FrontLength: FrontLength}
	readOnSlots = map[fit.ReadingKind]Kind{fit.GrooveWidth: Slot, fit.GroovePlace: Edge,
		fit.SideRabbet: Depth, fit.UnderSide: Depth, fit.GrooveDepth: Depth, fit.UnderGroove: Depth}
)

// Reads gives the reading of a test cut that a row of a setup sheet is, if it is one. Left says that the row is of the
// wood left under a cut, and the reading of how deep that is.
func (c Model) Reads(row fit.ReadingKind) (k Kind, left, listed bool) {
	kinds := readOnSlots
	if c.joined {
		kinds = readOnTongues
	}
	k, listed = kinds[row]
	return k, row == fit.UnderDado || row == fit.UnderSide || row == fit.UnderGroove, listed
}

// limitsOf are the limits of a setup sheet by the readings of a test cut, in mm. Of two kinds
// of rows that one height cuts, the first counts: it is that of the corner. Of rows of one kind,
// which drawers of several sizes have, that counts which is nearest to what this one asks for.
func (c Model) limitsOf(set gauge.Limits) map[Kind]geom.Interval {
	out, of := make(map[Kind]geom.Interval), make(map[Kind]gauge.Row)
	for _, row := range set.Rows {
		k, left, listed := c.Reads(row.Kind)
		if !listed {
			continue
		}
		f, _ := c.form(Reading{Kind: k}, vector{})
		if had, twice := of[k]; twice && (had.Kind != row.Kind ||
			math.Abs(had.Target-f.at0) <= math.Abs(row.Target-f.at0)) {
			continue
		}
		of[k] = row
		less, more := row.Target-row.Min, row.Max-row.Target
		if left {
			less, more = more, less
		}
		out[k] = geom.Interval{Min: f.at0 - less, Max: f.at0 + more}
	}
	boards := map[Kind]joinery.Stock{Sides: c.spec.Sides, Front: c.spec.Front}
	for k, s := range boards {
		out[k] = geom.Interval{Min: s.Thickness.Min, Max: s.Thickness.Max}
	}
	return out
}

// withinLimits reports whether a setup sheet lists every one of some readings and calls it
// right. As it calls every combination of them right, so does the advice on a test cut.
func (c Model) withinLimits(readings []Reading) bool {
	for _, r := range readings {
		if l, listed := c.sheet[r.Kind]; !listed || r.Value < l.Min-geom.Settle || r.Value > l.Max+geom.Settle {
			return false
		}
	}
	return len(readings) > 0
}

// rightDepths are those of a setup sheet for cuts as deep as the cutter is high; what a
// shop keeps to where the sheet has none.
func (c Model) rightDepths() geom.Interval {
	if r, listed := c.sheet[Depth]; listed {
		return r
	}
	keeps, h := c.noise.Height+c.noise.Cut, c.is.depth.at0
	return geom.Interval{Min: h - keeps, Max: h + keeps}
}
