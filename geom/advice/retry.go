package advice

import (
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Noticeable is the part of the boxes by which a change has to gain before it is
// advised: one box in a hundred; a shop sees no less.
const Noticeable = 0.01

// Retry moves the setting of a measure to where most boxes come out right, and tries it
// on all drawers of the entry; before that, a saw's bottom gets grooves that are made to fit
// it. A change that helps ends it or does not. It finds nothing where that gains too little,
// or makes anything else of them worse.
func Retry(rows []Box, row, index int) (r geom.Remedy, ends, found bool) {
	d := rows[row]
	m := d.Outcome.Measures[index]
	var tries []geom.Remedy
	if blade, can := d.ownBlade(); can && m.Code == joinery.CheckGrooveClearance {
		r := geom.Remedy{Changes: []geom.Change{blade}}
		if o, holds := d.with(r); holds { // then with the play that suits the boards
			if play, changed := d.aimed(o.Measures[index], joinery.SettingGrooveClearance,
				d.Spec.GrooveClearance, 1); changed {
				tries = append(tries, geom.Remedy{Changes: []geom.Change{blade, play}})
			}
		}
		tries = append(tries, r)
	}
	if c, can := d.narrower(); can && m.Code == joinery.CheckGrooveClearance {
		tries = append(tries, geom.Remedy{Changes: []geom.Change{c}})
	}
	if f, now, factor := d.settingOf(m); f != "" {
		if c, changed := d.aimed(m, f, now, factor); changed {
			tries = append(tries, geom.Remedy{Changes: []geom.Change{c}})
		}
	}
	for _, r := range tries {
		better, holds := eased(rows, row, index, r)
		if !holds {
			continue
		}
		r.Result = geom.Sentencef("%s", better.Right)
		return r, !better.OutOfLimits(), true
	}
	return r, false, false
}

// eased is a measure with a change that all drawers of the entry take, if it gains enough.
func eased(rows []Box, row, index int, r geom.Remedy) (better fit.SimulatedMeasure, holds bool) {
	for i, one := range rows {
		o, holds := one.with(r)
		if !holds {
			return better, false
		}
		if i == row {
			better = o.Measures[index]
		}
	}
	return better, better.Right.Fraction >= rows[row].Outcome.Measures[index].Right.Fraction+Noticeable
}

// aimed is a setting as it is printed, from which a measure comes out right most often.
func (d *Box) aimed(m fit.SimulatedMeasure, f geom.Setting, now, factor float64) (c geom.Change, changed bool) {
	aim := fit.Aim(m.Stack, geom.Interval{Min: m.LowerLimit - m.Nominal, Max: m.UpperLimit - m.Nominal})
	length, err := geom.ParseLength(geom.LengthOf(now+float64(factor*aim)).Text(d.Spec.Units), d.Spec.Units)
	v := length.MM()
	return geom.Change{Setting: f, Min: v, Max: v}, err == nil && v > 0 && v != now
}

// with is the outcome of a drawer with other settings, and whether nothing is worse.
func (d *Box) with(r geom.Remedy) (o fit.Outcome, holds bool) {
	t := d.once("with", r, nil, func() trial {
		o, holds := d.tryWith(r)
		return trial{o, holds}
	})
	return t.outcome, t.holds
}

func (d *Box) tryWith(r geom.Remedy) (o fit.Outcome, holds bool) {
	spec := joinery.Follow(d.Spec, r, r.Ends()[0])
	spec.Spreads = nil
	box, _, sound := joinery.LayOut(spec)
	if !sound || len(d.Outcome.Measures) == 0 {
		return o, false
	}
	o = d.foresee(box)
	if len(o.Measures) != len(d.Outcome.Measures) || o.Right.Fraction < d.Outcome.Right.Fraction {
		return o, false
	}
	for i, m := range o.Measures {
		if was := d.Outcome.Measures[i]; m.CheckID != was.CheckID || m.OutOfLimits() && !was.OutOfLimits() {
			return o, false
		}
	}
	before := d.Spec
	before.Spreads = d.Outcome.Spreads()
	_, problems, _ := joinery.LayOut(before)
	count := geom.Topics(problems)
	spec.Spreads = o.Spreads()
	_, problems, _ = joinery.LayOut(spec)
	for at, n := range geom.Topics(problems) {
		if n > count[at] {
			return o, false
		}
	}
	return o, true
}
