package advice

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// KeepOdds leaves out remedies with which fewer boxes come out right: what the box is set for
// may be within its limits while boards and machine take it out of others, of which the
// package joinery knows nothing. A range of which a part does that is its best length.
func (d *Box) KeepOdds(problems []geom.Diagnosis) {
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
// best of its ends and its middle. Of another corner or bottom, none that a shop sees.
func (d *Box) better(r geom.Remedy) (out geom.Remedy, ok bool) {
	holds, least := true, d.Outcome.Right.Fraction
	if r.Changes[0].Word != "" { // another way to make it has measures of its own
		least -= Noticeable
	}
	for _, lengths := range r.Ends() {
		holds = holds && d.odds(r, lengths) >= least
	}
	if c := r.Changes[0]; holds || len(r.Changes) > 1 || c.Min == c.Max || c.Word != "" || c.Min == 0 || math.IsInf(c.Max, 1) {
		return r, holds
	}
	c := r.Changes[0]
	best := d.Outcome.Right.Fraction
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
func (d *Box) odds(r geom.Remedy, lengths []float64) float64 {
	return d.once("odds", r, lengths, func() trial {
		spec := joinery.Follow(d.Spec, r, lengths)
		spec.Spreads = nil
		box, _, sound := joinery.LayOut(spec)
		if !sound {
			return trial{}
		}
		return trial{outcome: d.foresee(box)}
	}).outcome.Right.Fraction
}
