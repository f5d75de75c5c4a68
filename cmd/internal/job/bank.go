package job

import (
	"fmt"
	"strconv"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// Bank is an opening with the drawers that share it, worked out.
type Bank struct {
	Name    string // of the entry; its drawers are numbered from the top
	Opening opening.Opening
	Plan    opening.Plan // its Slide is the drawers'
	Drawers []int        // their places among the job's drawers, from the top
}

// bank reads the drawers of an opening. What they have in common is in d.
func (b *builder) bank(s *section, d Drawer) {
	get := s.values
	if get["slide"].given {
		d.places[joinery.FieldUndermount] = get["slide"].at
	}
	d.places[joinery.SettingOutside] = get["opening"].at
	hole := known(b, get["opening"], b.openings, "opening", !b.root.values["openings"].given)
	if !b.root.values["openings"].given && !b.lost {
		b.fail(CodeMissingKey, get["opening"].at, "write `openings:` with the opening as it was measured", "the file has no openings")
	}
	slide := known(b, get["slide"], b.slides, "slide", b.slidesLost)
	if !get["slide"].given && !s.meant["slide"] && !b.lost {
		b.add(Problem{Level: geom.LevelError, Code: CodeMissingKey, Key: "slide",
			Hint:    "write `slide:`, a built-in kind or a slide of the shop",
			Message: "a drawer in an opening has no slide"}, s.at)
	}
	if n := get["count"]; n.number > 1 && hole != nil && !get["rows"].given && !s.meant["rows"] && !b.lost {
		b.add(Problem{Level: geom.LevelNote, Code: CodeAssumed,
			Message: fmt.Sprintf("%.0f boxes are made, each for an opening of its own like this one", n.number),
			Hint:    "for drawers above each other in one opening write `rows:` instead, as in `rows: 3`"}, n.at)
	}
	asked, ok := b.asked(s, hole)
	var front *joinery.DrawerFront
	if section := get["drawer-front"].section; section != nil {
		front = b.drawerFront(section, true)
		ok = ok && front.Stock.Thickness.Mean > 0
		asked.Front = &front.Stock
	}
	// The width is found from the sides.
	if !ok || hole == nil || slide == nil || !b.unitsKnown || d.Sides.Thickness.Mean == 0 || d.Bottom.Thickness.Mean == 0 {
		b.unplanned = true
		if hole != nil && b.unitsKnown { // so that a mistake in it is not found in the next run
			b.planProblems(&waiting{entry: s, drawer: d}, hole.Judge(b.units))
		}
		return
	}
	if hole.Fronts == opening.Overlay && d.Joint == joinery.RabbetedFront && front == nil {
		asked.Lipped, asked.Lip = &d.Front, d.LipThickness()
		d.places[joinery.SettingLip] = either(get["overlay"], get["opening"]).at
	}
	asked.Unit, asked.Opening, asked.Slide = b.units, *hole, *slide
	asked.Sides, asked.Make = d.Sides, makeOf(d, slide.Name, hole.Fronts, asked.Front)
	b.waiting = append(b.waiting, &waiting{entry: s, drawer: d, front: front, bank: &asked})
}

// expand adds a drawer for each row of a plan.
func (b *builder) expand(j *Job, s *section, d Drawer, front *joinery.DrawerFront, bank Bank) {
	at, rows := s.values["opening"].at, bank.Plan.Rows
	for i, row := range rows {
		if b.outOfReach(at, row.Box.Width, row.Box.Height, row.Box.Depth) || front != nil && b.outOfReach(at, row.FrontWidth, row.FrontHeight) {
			return
		}
		one := d
		if len(rows) > 1 {
			one.Name += "-" + strconv.Itoa(i+1)
		}
		one.Width, one.Height, one.Depth = row.Box.Width, row.Box.Height, row.Box.Depth
		one.Undermount, one.Planned, one.Lip = row.Undermount, true, row.Lip
		if row.Front != nil {
			cut := *row.Front
			cut.Handles, cut.HandleSpacing, cut.HandleDiameter, cut.HandleFromTop = front.Handles, front.HandleSpacing, front.HandleDiameter, front.HandleFromTop
			one.DrawerFront = &cut
		}
		if !b.put(j, s, one) {
			return
		}
		bank.Drawers = append(bank.Drawers, len(j.Drawers)-1)
	}
	j.Banks = append(j.Banks, bank)
}

// put adds a drawer to the job, if its name and the number of drawers let it.
func (b *builder) put(j *Job, s *section, d Drawer) bool {
	if nameFault(s.values["name"].text) == "" { // else that has been reported
		b.names.check(b.reader, d.Name, s.values["name"].at, "drawer")
	}
	d.sound = d.sound && nameFault(d.Name) == ""
	if len(j.Drawers) == maxDrawers {
		if !b.crowded {
			b.fail(CodeTooMany, s.at, "divide the job into several files", "there are more than %d drawers", maxDrawers)
		}
		b.crowded = true
		return false
	}
	j.Drawers = append(j.Drawers, d)
	return true
}

// asked is what an entry says of how its drawers share the opening, which is nil
// when it is not known. It reports whether all could be read.
func (b *builder) asked(s *section, hole *opening.Opening) (bank opening.Bank, ok bool) {
	get := s.values
	bank = opening.Bank{FrontGap: get["front-gap"].mm(0), BoxHeights: all64(get["box-heights"]), LineBoring: get["line-boring"].mm(0), Rows: []opening.Row{{}}}
	if rows := get["rows"]; rows.given {
		bank.Rows = make([]opening.Row, int(rows.number))
		for i := range rows.lengths {
			bank.Rows = append(bank.Rows, opening.Row{Front: rows.mm(i)})
		}
	}
	ok = len(bank.Rows) > 0
	for _, name := range []string{"front-gap", "reveal", "overlay", "box-heights", "line-boring"} {
		ok = ok && (!get[name].given || len(get[name].lengths) > 0)
	}
	free := 0
	for _, row := range bank.Rows {
		if row.Front == 0 {
			free++
		}
	}
	b.noEffect(ok && free < 2, get, "graduation", "delete it, or leave more rows free", "no two rows are free")
	b.noEffect(len(bank.Rows) == 1, get, "front-gap", "delete it", "a single drawer has no other above or below it")
	ok = b.graduation(&bank, get["graduation"]) && ok
	if hole == nil {
		return bank, false
	}
	b.noEffect(hole.Fronts != opening.Inset, get, "reveal", "delete it",
		"the drawer fronts of the opening are not inset")
	b.noEffect(hole.Fronts != opening.Overlay, get, "overlay", "delete it",
		"the drawer fronts of the opening are not overlay")
	b.noEffect(hole.Fronts == opening.NoFront, get, "drawer-front", "delete it, or write how drawer fronts stand as `fronts:` of the opening", "the opening has no drawer fronts")
	if hole.Fronts == opening.Inset && !get["drawer-front"].given && !s.meant["drawer-front"] && !b.lost {
		b.fail(CodeMissingKey, s.at, "write `drawer-front: {stock: ...}`, or `fronts: none` for the opening",
			"an inset drawer front takes up depth, and the drawer has none")
	}
	edge := get["overlay"]
	if hole.Fronts == opening.Inset {
		edge = get["reveal"]
	}
	bank.Edge = opening.Edges{Left: edge.mm(0), Right: edge.mm(1), Top: edge.mm(2), Bottom: edge.mm(3)}
	return bank, ok
}

// graduation reads how rows grow. It reports whether that could be read.
func (b *builder) graduation(bank *opening.Bank, v value) bool {
	bank.Graduation = opening.Equal
	if v.section == nil {
		return !v.given || v.text != ""
	}
	step, ratio := v.section.values[string(opening.Arithmetic)], v.section.values[string(opening.Geometric)]
	b.noEffect(step.given, v.section.values, string(opening.Geometric), "delete one of the two",
		"rows grow by a length already")
	switch {
	case step.given:
		bank.Graduation, bank.Step = opening.Arithmetic, step.mm(0)
		return len(step.lengths) > 0
	case ratio.given:
		bank.Graduation, bank.Ratio = opening.Geometric, ratio.number
		return ratio.number > 0
	case v.section.read && len(v.section.meant) == 0 && !b.lost:
		b.fail(CodeMissingKey, v.section.at, "write `{arithmetic: ...}` or `{geometric: ...}`", "graduation has neither of its two ways")
	}
	return false
}
