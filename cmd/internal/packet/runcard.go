package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/paper"
)

// runCard is what those who run the router have to know of a sheet: what comes before the first step, and the steps.
type runCard struct{ before, steps func() }

// runCard prints nothing for a sheet that saws cut.
func (b sheetBook) runCard(l laidSheet) runCard {
	one := l.of.Sheets[l.at]
	if one.Run == nil {
		return runCard{func() {}, func() {}}
	}
	rules, faces := b.once(present.RunRules()), one.Run.Faces
	before := func() {
		for _, s := range rules {
			b.Caution(0, s)
		}
		numbers := present.MeasuredNumbers(l.of, one)
		b.Heading(2, fmt.Sprintf("Run card of %s, sheet %d%s", l.of.Stock, one.Number, numbers))
		if loose := present.Unheld(one); loose != "" {
			b.Item(0, "!", loose)
		}
		b.notes(present.RunNotes(*one.Run, b.unit))
		if len(faces) > 0 {
			b.prepared(faces[0])
		}
	}
	return runCard{before, func() {
		for i, f := range faces {
			if i > 0 {
				b.prepared(f)
			}
			b.steps(f)
		}
	}}
}

// prepared is what is done before a face is cut, below the name of its drawing.
func (b sheetBook) prepared(f record.RunFace) {
	b.Heading(3, f.File)
	for i, said := range f.Preparation {
		b.Item(0, fmt.Sprintf("%d.", i+1), said)
	}
	b.notes(present.RunPins(f, b.unit))
	b.notes(present.RunOrder(f, b.unit))
}

// steps are the layers of a face by the bit that cuts them.
func (b sheetBook) steps(f record.RunFace) {
	var groups []paper.Group
	var heads []paper.Column
	for _, g := range present.RunGroups(f, b.unit) {
		heads = columns(g.Table)
		groups = append(groups, paper.Group{Head: g.Set, Rows: g.Texts()})
	}
	if len(groups) > 0 {
		b.Groups(heads, groups)
	}
}
