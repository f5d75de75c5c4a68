package opening

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Settings that diagnoses are about. A diagnosis of [SettingRows], or of one row of
// them, has the row as its subject's item, from 0 at the top.
const (
	SettingOpening    geom.Setting = "opening"
	SettingSlide      geom.Setting = "slide"
	SettingRows       geom.Setting = "rows"
	SettingGraduation geom.Setting = "graduation"
	SettingSides      geom.Setting = "sides"
	SettingFrontGap   geom.Setting = "front-gap"
	SettingReveal     geom.Setting = "reveal"
	SettingBoxHeights geom.Setting = "box-heights"
)

// Settings of the opening itself: what was measured of it.
const (
	SettingWidth     geom.Setting = "width"
	SettingHeight    geom.Setting = "height"
	SettingDepth     geom.Setting = "depth"
	SettingDiagonals geom.Setting = "diagonals"
	SettingOverhang  geom.Setting = "frame-overhang"
)

// KeyWidth and KeyDepth are those of an opening in a remedy.
const KeyWidth, KeyDepth = string(SettingWidth), string(SettingDepth)

// least and most are remedies that write one length of a setting, on the grid on which
// lengths are printed.
func (p *planner) least(s geom.Setting, key string, v float64) []geom.Remedy {
	return lengths(geom.Change{Setting: s, Key: key, Min: geom.LengthOf(v).RoundUp(p.Unit).MM(), Max: math.Inf(1)})
}

func (p *planner) most(s geom.Setting, key string, v float64) []geom.Remedy {
	return lengths(geom.Change{Setting: s, Key: key, Max: geom.LengthOf(v).RoundDown(p.Unit).MM()})
}

func lengths(c geom.Change) []geom.Remedy { return []geom.Remedy{{Changes: []geom.Change{c}}} }

// advise tries the remedies that are proposed, and keeps those that end the complaint and
// bring no other. Of boxes that an error kept from being planned nobody knew yet what is
// to be warned of.
func (p *planner) advise() {
	failed := geom.AnyError(p.found)
	for i := range p.found {
		d := &p.found[i]
		d.Remedies = slices.DeleteFunc(d.Remedies, func(r geom.Remedy) bool {
			c := r.Changes[0]
			return c.Max <= 0 || slices.ContainsFunc(plan(follow(p.Bank, r)).found, func(o geom.Diagnosis) bool {
				return o.Code == d.Code || (o.IsError() || !failed) && !slices.ContainsFunc(p.found,
					func(q geom.Diagnosis) bool { return q.Code == o.Code })
			})
		})
	}
}

// follow is a bank with a remedy's change made at its nearer end.
func follow(b Bank, r geom.Remedy) Bank {
	v := r.Ends()[0][0]
	switch r.Changes[0].Setting {
	case SettingSides:
		t := b.Sides.Thickness
		b.Sides.Thickness = joinery.Thickness{Mean: v, Min: v - (t.Mean - t.Min), Max: v + (t.Max - t.Mean)}
	case SettingOpening:
		if r.Changes[0].Key == KeyWidth {
			b.Opening.Width = []float64{v}
		} else {
			b.Opening.Depth = []float64{v}
		}
	case SettingFrontGap:
		b.FrontGap = v
	case SettingReveal:
		b.Edge.Top, b.Edge.Bottom = v, v
	}
	return b
}
