package packet

import (
	"context"
	"slices"
)

// inOrder lays chapters out one after the other, tightened those that save a page so. Where there are many drawers,
// each is as usual. The context's end ends it between two chapters.
func (m maker) inOrder(ctx context.Context, list []func()) error {
	for i, draw := range list {
		if err := ctx.Err(); err != nil {
			return err
		}
		m.Tight = m.few() && m.saves(list[i:])
		draw()
		m.Tight = false
	}
	return nil
}

// lookedAhead is how many chapters are looked at for what tightening the first saves.
const lookedAhead = 3

// saves reports whether the first of chapters saves a page when it is tightened: before it ends, or before one of those
// after it does, which may be tightened too.
func (m maker) saves(list []func()) bool {
	after := list[1:min(lookedAhead, len(list))]
	usual := m.begun(list[0], after)
	return usual[len(usual)-1] > 0 && slices.Compare(m.begun(m.tight(list[0]), after), usual) < 0
}

// begun is how many pages have begun after a chapter, and after each of those that follow, tightened.
func (m maker) begun(chapter func(), after []func()) []int {
	list := []func(){chapter}
	for _, draw := range after {
		list = append(list, m.tight(draw))
	}
	return m.Pages(list...)
}

// tight draws something tightened.
func (m maker) tight(draw func()) func() {
	return func() {
		m.Tight = true
		draw()
	}
}
