package packet

import (
	"fmt"

	"drawerwright/cmd/internal/firstbox"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
)

// maxForms is for how many settings a packet has forms of their first box.
const maxForms = 12

// firstBoxes are the forms for the first box of each setting, with the rows of the table that inspect takes.
func (m maker) firstBoxes() {
	drawers := firstbox.First(m.batch)
	for i, at := range drawers[:min(maxForms, len(drawers))] {
		f := firstbox.Of(m.batch, at)
		left, right := m.readOn(f, false), m.readOn(f, true)
		m.Keep(formHeads + max(m.HeightIn(2, left), m.HeightIn(2, right)))
		if i == 0 {
			m.Section("First box")
			m.Small("Before the rest is cut. " + firstbox.Safely + " Read the box dry, its front pulled outward. " +
				"drawerwright inspect takes these readings in this order, and says what to move first." +
				m.behindLips())
		}
		m.Heading(2, f.Drawer())
		m.Abreast(left, right)
	}
	if more := len(drawers) - maxForms; more > 0 {
		m.Text(fmt.Sprintf("First boxes of %s more have no form here: drawerwright inspect writes one with --drawer.",
			words.Count(more, "setting", "settings")))
	}
}

// formHeads is the room for what stands over a form of a first box, in mm about.
const formHeads = 35.0

// readOn prints what is read on the box of a form, or on all else.
func (m maker) readOn(f firstbox.Form, box bool) func(*paper.Book) {
	return func(b *paper.Book) {
		m := m
		m.Book = b
		for _, p := range f.Parts() {
			if p.OfBox == box {
				t := present.GoTable(p.Checks, m.unit).Renamed("what", p.On).Renamed("set to", "right")
				t.Columns[1].Unit = "" // the page says it, and columns are narrow
				m.limits(t)
			}
		}
	}
}
