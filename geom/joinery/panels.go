package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// checkPanels judges every panel by the rules of package geom and by its sheet.
func (l *layout) checkPanels() {
	for _, p := range l.drawer.Parts {
		if p.Role == Back && l.Front == l.Back {
			continue // the front's twin
		}
		_, field := l.stockOf(p.Role)
		told := make(map[geom.Rule]bool) // once a panel is enough
		for _, v := range p.Panel.Check() {
			if told[v.Rule] {
				continue
			}
			told[v.Rule] = true
			l.problems = append(l.problems, Problem{
				Code: string(v.Rule), Error: !v.Warning, Field: field, Part: string(p.Role),
				Message: string(p.Role) + ": " + v.Describe(p.Panel, l.Units),
				Hint:    "change the cutter height, the fence distance or the stock",
			})
		}
		l.checkSheet(p, field)
	}
}

// checkSheet refuses a part that no sheet of its stock can hold.
func (l *layout) checkSheet(p Part, field Field) {
	s, length, width := p.Stock, p.Panel.Length(), p.Panel.Width()
	fits := func(length, width float64) bool { return length <= s.Length+settle && width <= s.Width+settle }
	if s.Length == 0 || fits(length, width) {
		return
	}
	hint := "make the box smaller or buy a larger sheet"
	if s.Grain == GrainNone {
		if fits(width, length) {
			return
		}
	} else if fits(width, length) {
		hint = "it would fit turned: if the grain runs along the second number of the sheet, write grain: width; if it does not matter, grain: none"
	}
	l.fail("sheet", field, p.Role, fmt.Sprintf("the %s is %s x %s; a sheet of %s is %s x %s",
		p.Role, l.text(length), l.text(width), s.Name, l.text(s.Length), l.text(s.Width)), hint)
}
