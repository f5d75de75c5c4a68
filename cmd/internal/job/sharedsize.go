package job

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// waiting is an entry that has been read: a drawer with an outside size, or the drawers
// of an opening.
type waiting struct {
	entry  *section
	drawer Drawer
	front  *joinery.DrawerFront
	bank   *opening.Bank // nil without an opening
}

// SharedSize is openings for whose boxes one size does.
type SharedSize struct {
	Banks  []int // their places among the job's banks
	Shared opening.Shared
	Made   bool // the job asks for it, and the boxes are of that size
}

// makeOf tells apart what is made in another way: all of a drawer but its size, and what
// is cut into it or screwed on to it.
func makeOf(d Drawer, slide string, fronts opening.Fronts, front *joinery.Stock) string {
	s, slack := d.Spec, d.ClearanceDepth()
	s.Name, s.Count, s.Width, s.Height, s.Depth = "", 0, 0, 0, 0
	s.BottomClearanceDepth, s.Dividers, s.Insert, s.Pull, s.DrawerFront, s.Undermount = nil, nil, nil, joinery.Pull{}, nil, nil
	thick := 0.0
	if front != nil && fronts == opening.Inset { // it takes of the depth
		thick = front.Thickness.Max
	}
	return fmt.Sprintf("%+v %g %v %s %s %g", s, slack, d.Bits, slide, fronts, thick)
}

// plan makes the drawers of all entries, in their order.
func (b *builder) plan(j *Job) {
	plans, found := make([]opening.Plan, len(b.waiting)), make([][]geom.Diagnosis, len(b.waiting))
	var banks []opening.Bank
	var planned []opening.Plan
	var at []int // of them among the entries
	sound, drawers := !b.unplanned, 0
	for i, w := range b.waiting {
		if drawers > maxDrawers { // nobody gets to see the rest
			break
		}
		if w.bank == nil {
			drawers++
			continue
		}
		if plans[i], found[i] = b.aimed(j, w); geom.AnyError(found[i]) {
			sound = false
			continue
		}
		drawers += len(plans[i].Rows)
		banks, planned, at = append(banks, *w.bank), append(planned, plans[i]), append(at, i)
	}
	groups := opening.Standardize(banks, planned, opening.DefaultGroupOpenings)
	asked := b.root.values["group-openings"]
	if asked.text == yes {
		for _, g := range groups {
			for k, bank := range g.Banks {
				w := b.waiting[at[bank]]
				w.bank.Common = g.Common[k]
				plans[at[bank]], found[at[bank]] = b.aimed(j, w)
			}
		}
		if len(groups) == 0 && sound && !b.lost {
			b.add(noGroups(b.units), asked.at)
		}
	}
	j.Drawers = make([]Drawer, 0, min(drawers, maxDrawers))
	place := make(map[int]int) // of entries among the job's banks
	for i, w := range b.waiting {
		if w.bank == nil {
			b.put(j, w.entry, w.drawer)
			continue
		}
		b.planProblems(w, found[i])
		if n := len(j.Banks); !geom.AnyError(found[i]) && !b.crowded {
			b.expand(j, w.entry, w.drawer, w.front, Bank{Name: w.drawer.Name, Opening: w.bank.Opening, Plan: plans[i]})
			if len(j.Banks) > n {
				place[i] = n
			}
		}
	}
	for _, g := range groups {
		one := SharedSize{Shared: g, Made: asked.text == yes, Banks: placesOf(g, at, place)}
		if len(one.Banks) == len(g.Banks) {
			j.SharedSizes = append(j.SharedSizes, one)
		}
	}
}

// placesOf are the places of a group's banks among the job's, of those that are there;
// at has their entries, place the places of entries.
func placesOf(g opening.Shared, at []int, place map[int]int) (list []int) {
	for _, bank := range g.Banks {
		if n, ok := place[at[bank]]; ok {
			list = append(list, n)
		}
	}
	return list
}

// aimed plans an opening whose boxes are aimed at what its slides take.
func (b *builder) aimed(j *Job, w *waiting) (opening.Plan, []geom.Diagnosis) {
	w.bank.Aim = 0
	plan, found := opening.Solve(*w.bank)
	if w.bank.Aim = b.aim(j, w.drawer, plan); w.bank.Aim != 0 {
		return opening.Solve(*w.bank)
	}
	return plan, found
}

// openingOf is what the file says of the opening of drawers.
func (b *builder) openingOf(w *waiting) map[string]value {
	for _, s := range b.root.values["openings"].sections {
		if s.name == w.entry.values["opening"].text {
			return s.values
		}
	}
	return nil
}

// planProblems shows what is to be said of the drawers of an opening.
func (b *builder) planProblems(w *waiting, list []geom.Diagnosis) {
	for _, d := range list {
		at := w.entry.values["opening"].at
		for _, get := range []map[string]value{w.entry.values, b.openingOf(w)} {
			if v := get[string(d.Subject.Setting)]; v.given {
				at = v.at
			}
		}
		b.add(Problem{Level: d.Level, Code: Code(d.Code), Message: w.drawer.Name + ": " + d.Fact.In(b.units), Hint: Advice(d, b.units)}, at)
	}
}

// noGroups is what is said where no two openings are so near that their boxes could be alike.
func noGroups(u geom.Unit) Problem {
	return Problem{Level: geom.LevelNote, Code: CodeNoEffect,
		Message: "group-openings does nothing here: no two openings of drawers that are made alike differ by so " +
			"little, up to " + geom.LengthOf(opening.DefaultGroupOpenings).Text(u) +
			", that boxes of one size serve both",
		Hint: "delete it, or give drawers of openings that are so near the same stocks, joints and slides"}
}
