package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/strength"
)

// held judges whether what holds the bottom at its edges bears a load in kg.
func (d *Drawer) held(j *job.Job, drawer int, load float64) []proposal {
	h, seat := strength.HeldOf(d.Drawer), d.Dimensions.Seat
	p := proposal{Diagnosis: geom.Diagnosis{
		Code: "bottom-held", Level: geom.LevelWarning,
		Subject:  geom.Subject{Setting: joinery.SettingBottomHeight, Part: string(joinery.Bottom)},
		Measured: words.Kilograms(load), Ask: geom.Sentencef("less load"),
	}}
	least := 0.0
	switch {
	case h == (strength.Held{}):
		return nil
	case load > h.Lip && h.Lip <= h.Tongue:
		least = h.Lip
		p.Fact = geom.Sentencef("under %s the wood below the bottom's groove, %s high and %s deep, "+
			"may split off the walls: it holds %s",
			words.Kilograms(load), geom.Caliper(seat.Rise), geom.Caliper(seat.Deep), words.Kilograms(least))
		high := geom.LengthOf(h.HighEnough(seat.Rise, load)).RoundUp(j.Units).MM()
		higher := geom.Change{Setting: joinery.SettingBottomHeight, Min: high, Max: 2 * high}
		p.ways = [][]Way{{{Remedy: geom.Remedy{Changes: []geom.Change{higher}}}}}
	case load > h.Tongue:
		least = h.Tongue
		p.Fact = geom.Sentencef("under %s what stands in the bottom's groove, %s thick, may shear off: it holds %s",
			words.Kilograms(load), geom.Caliper(seat.InGroove), words.Kilograms(least))
	default:
		return nil
	}
	p.Limit = words.Kilograms(least)
	p.ways = append(p.ways, lessLoad(j, drawer, least))
	return []proposal{p}
}
