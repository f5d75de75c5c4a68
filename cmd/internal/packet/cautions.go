package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/geom/joinery"
)

// cautions say what can hurt, before any work begins; those of a cut stand on its card.
func (m maker) cautions() {
	s := m.sheet
	m.Chapter("Before you begin")
	m.Text(s.First)
	say := func(list []present.Caution) {
		for _, c := range list {
			m.Item(0, "!", c.Cited())
		}
	}
	m.Columns(2, func() {
		say(s.General)
		for _, c := range s.Machines {
			m.Heading(2, upper(joinery.CutterKind(c.Machine).Machine()))
			say(c.Cautions)
		}
		for i, source := range s.Sources {
			m.SmallItem(0, "", fmt.Sprintf("[%d] %s", i+1, source))
		}
	})
}
