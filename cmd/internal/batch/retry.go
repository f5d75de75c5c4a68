package batch

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// noticeable is the part of the boxes by which a change has to gain before a hint names
// it: one box in a hundred; a shop sees no less.
const noticeable = 0.01

// settingOf is the entry that moves a measure as it is set, and by how much for each
// millimetre of the measure.
func (d *Drawer) settingOf(m fit.Foreseen) (f geom.Setting, now, factor float64) {
	s, router, fits := d.Spec, d.Spec.Cutter.Kind.FollowsDrawing(), d.Spec.Cutter.Kind.MadeToFit()
	switch m.Code {
	case joinery.CheckTonguePlay, joinery.CheckBackPlay, joinery.CheckDividerPlay:
		if fits {
			return joinery.FieldDadoPlay, s.DadoPlay, 1
		}
	case joinery.CheckBottomPlay:
		if fits || s.Cutter.Groove > 0 {
			return joinery.FieldGroovePlay, s.GroovePlay, 1
		}
	case joinery.CheckBottomSlack, joinery.CheckBottomSlackDeep:
		if m.Code == joinery.CheckBottomSlackDeep && s.DeepSlack != nil {
			return joinery.FieldDeepSlack, *s.DeepSlack, 1
		}
		return joinery.FieldBottomSlack, s.BottomSlack, 1
	case joinery.CheckRecess:
		if !router && s.Joint == joinery.DadoRabbet {
			return joinery.FieldFenceDistance, d.Setup.FenceDistance, 0.5 // it sets dado and tongue
		}
		return joinery.FieldFenceDistance, d.Setup.FenceDistance, 1
	case joinery.CheckLap:
		return joinery.FieldCutterHeight, d.Setup.CutterHeight, 1
	}
	return "", 0, 0
}

// retry moves the setting of a measure to where most boxes come out right, and tries it
// on all drawers of the entry; before that, a saw's bottom gets grooves that are made to fit
// it. A change that helps may not end it. It finds nothing where that gains too little, or makes anything else of them worse.
func retry(rows []Drawer, row, index int) (r geom.Remedy, ends, found bool) {
	d := rows[row]
	m := d.Outcome.Measures[index]
	var tries []geom.Remedy
	if blade, can := d.ownBlade(); can && m.Code == joinery.CheckBottomPlay {
		r := geom.Remedy{Changes: []geom.Change{blade}}
		if o, holds := d.with(r); holds { // then with the play that suits the boards
			if play, changed := d.aimed(o.Measures[index], joinery.FieldGroovePlay, d.Spec.GroovePlay, 1); changed {
				tries = append(tries, geom.Remedy{Changes: []geom.Change{blade, play}})
			}
		}
		tries = append(tries, r)
	}
	if c, can := d.narrower(); can && m.Code == joinery.CheckBottomPlay {
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
		return r, !better.Out(), true
	}
	return r, false, false
}

// eased is a measure with a change that all drawers of the entry take, if it gains enough.
func eased(rows []Drawer, row, index int, r geom.Remedy) (better fit.Foreseen, holds bool) {
	for i, one := range rows {
		o, holds := one.with(r)
		if !holds {
			return better, false
		}
		if i == row {
			better = o.Measures[index]
		}
	}
	return better, better.Right.Part >= rows[row].Outcome.Measures[index].Right.Part+noticeable
}

// aimed is a setting as it is printed, from which a measure comes out right most often.
func (d *Drawer) aimed(m fit.Foreseen, f geom.Setting, now, factor float64) (c geom.Change, changed bool) {
	aim := fit.Aim(m.Stack, geom.Interval{Min: m.Least - m.Nominal, Max: m.Most - m.Nominal})
	length, err := geom.ParseLength(geom.LengthOf(now+float64(factor*aim)).Text(d.Spec.Units), d.Spec.Units)
	v := length.MM()
	return geom.Change{Setting: f, Min: v, Max: v}, err == nil && v > 0 && v != now
}

// blade is a usual saw blade or the least bit of a router table, in mm: an eighth of an inch.
const blade = geom.InchMM / 8

// ownBlade is a cutter for the grooves of a bottom that are as wide as the stack as yet.
func (d *Drawer) ownBlade() (c geom.Change, can bool) {
	s := d.Spec
	length, err := geom.ParseLength(geom.LengthOf(blade).Text(s.Units), s.Units)
	c = geom.Change{Setting: joinery.FieldGrooveCutter, Min: length.MM(), Max: length.MM()}
	return c, err == nil && s.Cutter.Kind.Fenced() && (s.Cutter.Groove == 0 || s.Cutter.Groove > s.Bottom.Thickness.Mean) && s.BottomFit.Grooved()
}

// narrower is a usual iron or bit no wider than a bottom is thick, where one that is wider
// makes its groove.
func (d *Drawer) narrower() (c geom.Change, can bool) {
	s := d.Spec
	bit, found := joinery.SoldBit(s.Bottom.Thickness.Mean)
	length, err := geom.ParseLength(geom.LengthOf(bit).Text(s.Units), s.Units)
	c = geom.Change{Setting: joinery.FieldCutter, Min: length.MM(), Max: length.MM()}
	return c, err == nil && found && s.Cutter.Kind.MadeToFit() && len(s.Bits) == 0 && s.Cutter.Width > c.Min && s.BottomFit.Grooved()
}

// with is the outcome of a drawer with other settings, and whether nothing is worse.
func (d *Drawer) with(r geom.Remedy) (o fit.Outcome, holds bool) {
	t := d.once("with", r, nil, func() trial {
		o, holds := d.tryWith(r)
		return trial{o, holds}
	})
	return t.outcome, t.holds
}

func (d *Drawer) tryWith(r geom.Remedy) (o fit.Outcome, holds bool) {
	spec := joinery.Follow(d.Spec, r, r.Ends()[0])
	spec.Spreads = nil
	box, _, sound := joinery.LayOut(spec)
	if !sound || len(d.Outcome.Measures) == 0 {
		return o, false
	}
	o = fit.Foresee(box, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide)
	if len(o.Measures) != len(d.Outcome.Measures) || o.Right.Part < d.Outcome.Right.Part {
		return o, false
	}
	for i, m := range o.Measures {
		if was := d.Outcome.Measures[i]; m.CheckID != was.CheckID || m.Out() && !was.Out() {
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

// keepOdds leaves out remedies with which fewer boxes come out right: what the box is set for
// may be within its limits while boards and machine take it out of others, of which the
// package joinery knows nothing. A range of which a part does that is its best length.
func (d *Drawer) keepOdds(problems []geom.Diagnosis) {
	if len(d.Outcome.Measures) == 0 {
		return // not sound: nobody knows what comes out
	}
	for i := range problems {
		p := &problems[i]
		if p.IsError() {
			continue
		}
		var kept []geom.Remedy
		for _, r := range p.Remedies {
			if r, ok := d.better(r); ok {
				kept = append(kept, r)
			}
		}
		p.Remedies = kept
	}
}

// better is a remedy with which no fewer boxes come out right, all over its range or at the
// best of its ends and its middle.
func (d *Drawer) better(r geom.Remedy) (out geom.Remedy, ok bool) {
	holds := true
	for _, lengths := range r.Ends() {
		holds = holds && d.odds(r, lengths) >= d.Outcome.Right.Part
	}
	if c := r.Changes[0]; holds || len(r.Changes) > 1 || c.Min == c.Max || c.Word != "" || c.Min == 0 || math.IsInf(c.Max, 1) {
		return r, holds
	}
	c := r.Changes[0]
	best := d.Outcome.Right.Part
	for _, v := range []float64{c.Min, geom.LengthOf((c.Min + c.Max) / 2).RoundUp(d.Spec.Units).MM(), c.Max} {
		one := c
		one.Min, one.Max = v, v
		if odds := d.odds(geom.Remedy{Changes: []geom.Change{one}}, []float64{v}); v <= c.Max && (odds > best || odds == best && !ok) {
			out, best, ok = geom.Remedy{Changes: []geom.Change{one}, Then: r.Then}, odds, true
		}
	}
	return out, ok
}

// odds is the part of the boxes that come out right with a change; none of those that cannot
// be made.
func (d *Drawer) odds(r geom.Remedy, lengths []float64) float64 {
	return d.once("odds", r, lengths, func() trial {
		spec := joinery.Follow(d.Spec, r, lengths)
		spec.Spreads = nil
		box, _, sound := joinery.LayOut(spec)
		if !sound {
			return trial{}
		}
		return trial{outcome: fit.Foresee(box, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide)}
	}).outcome.Right.Part
}
