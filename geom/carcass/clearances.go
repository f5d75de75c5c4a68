package carcass

import "drawerwright/geom/opening"

// clearances measures what is free about each box and each drawer front.
func (m *maker) clearances() {
	for i := range m.Drawers {
		m.aboutBox(i)
		m.aboutFront(i)
	}
}

// gap measures along an axis, at the place of `at` otherwise.
func (m *maker) gap(name string, drawer, axis int, ends [2]float64, at [3]float64) {
	c := Clearance{Name: name, Gap: ends[1] - ends[0], Axis: axis, Block: Block{at, at}, Drawer: drawer}
	c.Low[axis], c.High[axis] = ends[0], ends[1]
	m.out.Clearances = append(m.out.Clearances, c)
}

// aboutBox measures from a box to the opening, to its row, to its slides and to the box below.
func (m *maker) aboutBox(i int) {
	box, ok := m.box(i)
	if !ok {
		return
	}
	o, name := m.out.Opening, m.Drawers[i].Name
	at := box.middle()
	at[1] = box.Low[1]
	m.gap("left of "+name, i, 0, [2]float64{o.Low[0], box.Low[0]}, at)
	m.gap("right of "+name, i, 0, [2]float64{box.High[0], o.High[0]}, at)
	low, high := m.row(i)
	m.gap("above "+name+", in its row", i, 2, [2]float64{box.High[2], high}, at)
	m.gap("below "+name+", in its row", i, 2, [2]float64{low, box.Low[2]}, at)
	m.gap("behind "+name, i, 1, [2]float64{box.High[1], o.High[1]}, box.middle())
	for _, s := range m.out.Outlines {
		if s.Drawer != i || s.Motion != Runs || s.High[2] <= box.Low[2] || m.Plan.Slide.Kind == opening.CenterMount {
			continue
		}
		beside := s.middle()
		beside[1] = box.Low[1]
		if beside[0] < at[0] {
			m.gap("between "+s.Name+" and its box", i, 0, [2]float64{s.High[0], box.Low[0]}, beside)
		} else {
			m.gap("between "+s.Name+" and its box", i, 0, [2]float64{box.High[0], s.Low[0]}, beside)
		}
	}
	if i+1 < len(m.Drawers) {
		if below, ok := m.box(i + 1); ok {
			at[0] = (at[0] + box.Low[0]) / 2 // beside what is free in the rows
			m.gap("between the boxes of "+name+" and "+m.Drawers[i+1].Name, i, 2,
				[2]float64{below.High[2], box.Low[2]}, at)
		}
	}
}

// row is from where to where the row of a drawer goes: as its front does, within the opening.
func (m *maker) row(i int) (low, high float64) {
	r := m.Plan.Rows[i]
	low, high = r.FrontBottom, r.FrontBottom+r.FrontHeight
	if front, ok := m.front(i); ok {
		low, high = front.Low[2], front.High[2]
	}
	return max(low, m.out.Opening.Low[2]), min(high, m.out.Opening.High[2])
}

// aboutFront measures from a drawer front to the one below, and of an inset one to the opening.
func (m *maker) aboutFront(i int) {
	front, ok := m.front(i)
	if !ok {
		return
	}
	o, at, name := m.out.Opening, front.middle(), "the drawer front of "+m.Drawers[i].Name
	at[0], at[1] = (at[0]+front.High[0])/2, front.Low[1]
	last := i+1 == len(m.Drawers)
	if !last {
		if below, ok := m.front(i + 1); ok {
			m.gap("between the drawer fronts of "+m.Drawers[i].Name+" and "+m.Drawers[i+1].Name, i, 2,
				[2]float64{below.High[2], front.Low[2]}, at)
		}
	}
	if m.Opening.Fronts != opening.Inset {
		return
	}
	m.gap("left of "+name, i, 0, [2]float64{o.Low[0], front.Low[0]}, at)
	m.gap("right of "+name, i, 0, [2]float64{front.High[0], o.High[0]}, at)
	if i == 0 {
		m.gap("above "+name, i, 2, [2]float64{front.High[2], o.High[2]}, at)
	}
	if last {
		m.gap("below "+name, i, 2, [2]float64{o.Low[2], front.Low[2]}, at)
	}
}
