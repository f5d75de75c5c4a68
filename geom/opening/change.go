package opening

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Change is a length that a hint names, from Min to Max in mm: the thickness of the
// sides, the depth of the opening, the gap between fronts or the reveal about them. Max
// is +Inf for a length or more, Min is 0 for one or less.
type Change struct {
	Field    string // sides, opening, gap or reveal
	Min, Max float64
}

// Follow makes the change at its nearer end.
func (c Change) Follow(b Bank) Bank {
	v := c.Min
	if v == 0 {
		v = c.Max
	}
	switch c.Field {
	case "sides":
		t := b.Sides.Thickness
		b.Sides.Thickness = joinery.Thickness{Mean: v, Min: v - (t.Mean - t.Min), Max: v + (t.Max - t.Mean)}
	case "opening":
		b.Opening.Depth = []float64{v}
	case "gap":
		b.Gap = v
	case "reveal":
		b.Edge.Top, b.Edge.Bottom = v, v
	}
	return b
}

func (c Change) text(u geom.Unit) string {
	name := map[string]string{"sides": "take sides of ", "opening": "take an opening with a depth of "}[c.Field]
	if name == "" {
		name = "write a " + c.Field + " of "
	}
	if c.Min == 0 {
		return fmt.Sprintf("%s%s or less", name, geom.LengthOf(c.Max).Text(u))
	}
	return fmt.Sprintf("%s%s or more", name, geom.LengthOf(c.Min).Text(u))
}

// least and most are changes on the grid on which lengths are printed.
func (p *planner) least(field string, v float64) Change {
	return Change{field, geom.LengthOf(v).RoundUp(p.Unit).MM(), math.Inf(1)}
}

func (p *planner) most(field string, v float64) Change {
	return Change{field, 0, geom.LengthOf(v).RoundDown(p.Unit).MM()}
}

// advise tries the changes that problems propose, and lets hints name those that end
// the complaint and bring no other. Of boxes that an error kept from being planned nobody
// knew yet what is to be warned of.
func (p *planner) advise() {
	for i := range p.problems {
		q := &p.problems[i]
		if q.Change == nil {
			continue
		}
		t := plan(q.Change.Follow(p.Bank))
		if q.Change.Max <= 0 || slices.ContainsFunc(t.problems, func(r Problem) bool {
			return r.Code == q.Code || (r.Error || !p.failed()) && !slices.ContainsFunc(p.problems, func(o Problem) bool { return o.Code == r.Code })
		}) {
			q.Change = nil
			continue
		}
		q.Hint = q.Change.text(p.Unit) + "; or " + q.Hint
	}
}
