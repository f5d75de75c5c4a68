package hold

import "slices"

// maxCells is how many cells a grid may have: a plan then stays below a tenth of a second
// and some tens of megabytes.
const maxCells = 8_000_000

// none is where a cell has no part, band or waste.
const none = int32(-1)

// grid is a sheet cut along every line on which a part, a band or a strip of waste begins
// or ends, so that each cell is all one thing.
type grid struct {
	xs, ys []int64
	part   []int32    // the part in a cell
	band   [][2]int32 // the parts, up to two, whose bands reach into a cell
	more   []bool     // bands of others reach into it too
	waste  []int32    // the piece of waste, wide enough to hold, of a cell; 0 is the frame
	pieces int        // of waste
}

func newGrid(s Sheet, also []Box) (*grid, bool) {
	g := &grid{}
	add := func(b Box) { g.xs, g.ys = append(g.xs, b.X0, b.X1), append(g.ys, b.Y0, b.Y1) }
	half := s.Web / 2
	for _, by := range []int64{0, half, 2 * half} {
		add(s.Size.grown(-by))
		for _, p := range s.Parts {
			add(p.Box.grown(p.Slot + by))
		}
	}
	for _, p := range s.Parts {
		add(p.Box)
	}
	for _, b := range also {
		add(b)
	}
	for _, list := range []*[]int64{&g.xs, &g.ys} {
		slices.Sort(*list)
		*list = slices.Compact(*list)
	}
	g.xs, g.ys = within(g.xs, s.Size.X0, s.Size.X1), within(g.ys, s.Size.Y0, s.Size.Y1)
	if (len(g.xs)-1)*(len(g.ys)-1) > maxCells {
		return nil, false
	}
	n := (len(g.xs) - 1) * (len(g.ys) - 1)
	g.part, g.waste, g.band, g.more = make([]int32, n), make([]int32, n), make([][2]int32, n), make([]bool, n)
	for c := range n {
		g.part[c], g.waste[c], g.band[c] = none, none, [2]int32{none, none}
	}
	solid := make([]bool, n) // wide waste, less half a web all round
	g.each(s.Size.grown(-half), func(c int) { solid[c] = true })
	for i, p := range s.Parts {
		g.each(p.Box.grown(p.Slot+half), func(c int) { solid[c] = false })
		g.each(p.Box.grown(p.Slot), func(c int) {
			switch b := &g.band[c]; {
			case b[0] == none:
				b[0] = int32(i)
			case b[1] == none:
				b[1] = int32(i)
			default:
				g.more[c] = true
			}
		})
		g.each(p.Box, func(c int) { g.part[c] = int32(i) })
	}
	g.label(solid, half)
	return g, true
}

// within are the lines on a sheet.
func within(list []int64, from, to int64) []int64 {
	return slices.DeleteFunc(list, func(v int64) bool { return v < from || v > to })
}

func (g *grid) width() int          { return len(g.xs) - 1 }
func (g *grid) height() int         { return len(g.ys) - 1 }
func (g *grid) cell(x, y int) int   { return y*g.width() + x }
func (g *grid) at(c int) (x, y int) { return c % g.width(), c / g.width() }

// span are the cells of a line from one place to another.
func span(lines []int64, from, to int64) (i, j int) {
	i, _ = slices.BinarySearch(lines, from)
	j, _ = slices.BinarySearch(lines, to)
	return i, min(j, len(lines)-1)
}

// each visits the cells of a box whose sides are lines of the grid.
func (g *grid) each(b Box, visit func(c int)) {
	x0, x1 := span(g.xs, b.X0, b.X1)
	y0, y1 := span(g.ys, b.Y0, b.Y1)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			visit(g.cell(x, y))
		}
	}
}

// label numbers the pieces of waste, that at the sheet's corner first, and gives each back
// the half of a web that it lost.
func (g *grid) label(solid []bool, half int64) {
	pieces := make([]int32, len(solid))
	for c := range pieces {
		pieces[c] = none
	}
	var cells []int
	for c := range solid { // the first cell is that of the lower left corner
		if !solid[c] || pieces[c] != none {
			continue
		}
		pieces[c] = int32(g.pieces)
		stack := []int{c}
		for len(stack) > 0 {
			c := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			cells = append(cells, c)
			g.beside(c, func(d int) {
				if solid[d] && pieces[d] == none {
					pieces[d] = int32(g.pieces)
					stack = append(stack, d)
				}
			})
		}
		g.pieces++
	}
	for _, c := range cells {
		x, y := g.at(c)
		g.each(Box{g.xs[x], g.ys[y], g.xs[x+1], g.ys[y+1]}.grown(half), func(d int) {
			if g.waste[d] == none && g.part[d] == none {
				g.waste[d] = pieces[c]
			}
		})
	}
}

// beside visits the cells that share a side with a cell.
func (g *grid) beside(c int, visit func(d int)) {
	x, y := g.at(c)
	if x > 0 {
		visit(c - 1)
	}
	if x < g.width()-1 {
		visit(c + 1)
	}
	if y > 0 {
		visit(c - g.width())
	}
	if y < g.height()-1 {
		visit(c + g.width())
	}
}
