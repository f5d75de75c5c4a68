package batch

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// noticeable is the part of the boxes by which a change has to gain before a hint names
// it: one box in a hundred; a shop sees no less.
const noticeable = 0.01

// settingOf is the entry that moves a measure as it is set, and by how much for each
// millimetre of the measure.
func (d *Drawer) settingOf(m fit.Foreseen) (f joinery.Field, now, factor float64) {
	s, router := d.Spec, d.Spec.Cutter.Kind.FollowsDrawing()
	switch m.Code {
	case "tongue-play", "back-play", "divider-play":
		if router {
			return joinery.FieldDadoPlay, s.DadoPlay, 1
		}
	case "bottom-play":
		if router {
			return joinery.FieldGroovePlay, s.GroovePlay, 1
		}
	case "bottom-slack", "bottom-slack-deep":
		if m.Name == joinery.SlackName(joinery.DeepWay) && s.DeepSlack != nil {
			return joinery.FieldDeepSlack, *s.DeepSlack, 1
		}
		return joinery.FieldBottomSlack, s.BottomSlack, 1
	case "recess":
		if !router && s.Joint == joinery.DadoRabbet {
			return joinery.FieldFenceDistance, d.Setup.FenceDistance, 0.5 // it sets dado and tongue
		}
		return joinery.FieldFenceDistance, d.Setup.FenceDistance, 1
	case "lap":
		return joinery.FieldCutterHeight, d.Setup.CutterHeight, 1
	}
	return "", 0, 0
}

// retry moves the setting of a measure to where most boxes come out right, and tries it
// on all drawers of the entry. It finds nothing where that gains too little, or makes
// anything else of them worse.
func retry(rows []Drawer, row, index int) (hint string, r joinery.Remedy, found bool) {
	d := rows[row]
	m := d.Outcome.Measures[index]
	f, now, factor := d.settingOf(m)
	if f == "" {
		return "", r, false
	}
	aim := fit.Aim(m.Stack, fit.Range{Min: m.Least - m.Nominal, Max: m.Most - m.Nominal})
	text := geom.LengthOf(now + float64(factor*aim)).Text(d.Spec.Units)
	length, err := geom.ParseLength(text, d.Spec.Units) // as it is printed
	v := length.MM()
	if err != nil || v <= 0 || v == now {
		return "", r, false
	}
	r = joinery.Remedy{Changes: []joinery.Change{{Field: f, Min: v, Max: v}}}
	var after fit.Outcome
	for i, one := range rows {
		o, holds := one.with(r, v)
		if !holds {
			return "", r, false
		}
		if i == row {
			after = o
		}
	}
	better := after.Measures[index]
	if better.Right.Part < m.Right.Part+noticeable {
		return "", r, false
	}
	hint = fmt.Sprintf("write a %s of %s: then %s", f, text, better.Right)
	if better.Out() {
		r = joinery.Remedy{} // it helps, and does not end it
	}
	return hint, r, true
}

// with is the outcome of a drawer with another setting, and whether nothing is worse.
func (d *Drawer) with(r joinery.Remedy, v float64) (o fit.Outcome, holds bool) {
	spec := r.Follow(d.Spec, []float64{v})
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
		if was := d.Outcome.Measures[i]; m.Name != was.Name || m.Out() && !was.Out() {
			return o, false
		}
	}
	count := make(map[[2]string]int)
	before := d.Spec
	before.Spreads = d.Outcome.Spreads()
	_, problems := joinery.Build(before)
	for _, p := range problems {
		count[[2]string{p.Code, p.Part}]++
	}
	spec.Spreads = o.Spreads()
	_, problems = joinery.Build(spec)
	for _, p := range problems {
		if count[[2]string{p.Code, p.Part}]--; count[[2]string{p.Code, p.Part}] < 0 {
			return o, false
		}
	}
	return o, true
}
