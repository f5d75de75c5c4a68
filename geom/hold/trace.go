package hold

// slots are what is cut through: the bands of parts with tabs, waste that is too narrow or
// tied to nothing, but for the bridges. All that is left hangs together, so none of them
// has a hole.
func (p *planner) slots() []Slot {
	boxes := make([]Box, len(p.bridges))
	for i, b := range p.bridges {
		boxes[i] = b.Box
	}
	g, ok := newGrid(p.Sheet, boxes)
	if !ok { // the lines of the bridges are few beside those of the parts
		return nil
	}
	cut := make([]bool, len(g.part))
	for c := range cut {
		if g.part[c] != none {
			continue
		}
		if w := g.waste[c]; w != none {
			cut[c] = !p.tied(Frame - int(w))
			continue
		}
		cut[c] = true
		for _, b := range g.band[c] {
			if b != none && p.Parts[b].Kind != Tabs {
				cut[c] = false
			}
		}
	}
	for _, b := range boxes {
		g.each(b, func(c int) { cut[c] = false })
	}
	return g.trace(cut)
}

// trace gives the outlines of what is cut, piece by piece.
func (g *grid) trace(cut []bool) (list []Slot) {
	piece := make([]int32, len(cut))
	for c := range cut { // the first cell of a piece is the lowest, and of those the leftmost
		if !cut[c] || piece[c] != 0 {
			continue
		}
		number := int32(len(list) + 1)
		along := none
		piece[c] = number
		stack := []int{c}
		for len(stack) > 0 {
			c := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, b := range g.band[c] {
				if b != none && (along == none || b < along) {
					along = b
				}
			}
			g.beside(c, func(d int) {
				if cut[d] && piece[d] == 0 {
					piece[d] = number
					stack = append(stack, d)
				}
			})
		}
		list = append(list, Slot{g.round(c, piece, number), int(along)})
	}
	return list
}

// round walks round a piece from the lower left corner of its first cell, with the piece
// on the left.
func (g *grid) round(first int, piece []int32, number int32) []Point {
	x0, y0 := g.at(first)
	in := func(x, y int) bool {
		return x >= 0 && y >= 0 && x < g.width() && y < g.height() && piece[g.cell(x, y)] == number
	}
	// Of the four cells about the corner x, y: that ahead on the left and on the right,
	// by the way one goes: 0 to the right, 1 up, 2 to the left, 3 down.
	ahead := func(x, y, way int) (left, right bool) {
		cells := [...]bool{in(x, y), in(x-1, y), in(x-1, y-1), in(x, y-1)}
		return cells[way], cells[(way+3)%4]
	}
	dx, dy := [...]int{1, 0, -1, 0}, [...]int{0, 1, 0, -1}
	x, y, way := x0, y0, 0
	out := []Point{{g.xs[x0], g.ys[y0]}}
	for {
		x, y = x+dx[way], y+dy[way]
		turn := way
		switch left, right := ahead(x, y, way); {
		case !left: // also where two cells of the piece touch in the corner alone
			turn = (way + 1) % 4
		case right:
			turn = (way + 3) % 4
		}
		if x == x0 && y == y0 && turn == 0 {
			return out
		}
		if turn != way {
			out = append(out, Point{g.xs[x], g.ys[y]})
			way = turn
		}
	}
}
