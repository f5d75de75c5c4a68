package packet

import "context"

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
	for n := range min(lookedAhead, len(list)) {
		rest := m.tight(together(list[1 : n+1]...))
		usual := m.Pages(together(list[0], rest))
		if usual > 0 && m.Pages(together(m.tight(list[0]), rest)) < usual {
			return true
		}
	}
	return false
}

// tight draws something tightened.
func (m maker) tight(draw func()) func() {
	return func() {
		m.Tight = true
		draw()
	}
}

// together draws one after the other as one.
func together(list ...func()) func() {
	return func() {
		for _, do := range list {
			do()
		}
	}
}
