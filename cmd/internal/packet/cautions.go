package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/geom/joinery"
)

// cautions say what can hurt, before any work begins.
func (m maker) cautions() {
	s := m.sheet
	m.Heading(0, "Before you begin")
	m.Text(s.First)
	say := func(list []present.Caution) {
		for _, c := range list {
			m.Item(0, "!", c.Cited())
		}
	}
	say(s.General)
	for _, c := range s.Machines {
		m.Heading(2, upper(joinery.CutterKind(c.Machine).Machine()))
		say(c.Cautions)
	}
	m.Space(2)
	cites := s.Cited()
	for i, source := range s.Sources {
		if cites[i+1] {
			m.Small(fmt.Sprintf("[%d] %s", i+1, source))
		}
	}
}
