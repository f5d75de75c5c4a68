package picture

import "math"

// grid finds what may be at a place of the picture.
type grid struct{ faces, edges cells }

// cells are squares of the picture with the numbers of what their boxes touch.
type cells struct {
	x, y, size float64 // of the lower left corner, and of a cell
	wide, high int
	lists      [][]int32
	seen       []int32 // by number: the search that met it last
	search     int32
}

// most cells on a side: some hundreds of faces are spread over some thousands.
const mostCells = 64

func (d *drawing) index() {
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, e := range d.edges {
		for _, p := range []place{e.a, e.b} {
			low[0], low[1] = min(low[0], p.x), min(low[1], p.y)
			high[0], high[1] = max(high[0], p.x), max(high[1], p.y)
		}
	}
	if len(d.edges) == 0 {
		return
	}
	size := max(high[0]-low[0], high[1]-low[1], shortest) / mostCells
	empty := cells{x: low[0], y: low[1], size: size, wide: int((high[0]-low[0])/size) + 1, high: int((high[1]-low[1])/size) + 1}
	d.grid.faces, d.grid.edges = empty, empty
	d.grid.faces.lists, d.grid.edges.lists = make([][]int32, empty.wide*empty.high), make([][]int32, empty.wide*empty.high)
	d.grid.edges.seen = make([]int32, len(d.edges))
	for i, f := range d.faces {
		d.grid.faces.put(i, min(f.a.x, f.b.x, f.c.x), min(f.a.y, f.b.y, f.c.y), max(f.a.x, f.b.x, f.c.x), max(f.a.y, f.b.y, f.c.y))
	}
	for i, e := range d.edges {
		d.grid.edges.put(i, min(e.a.x, e.b.x), min(e.a.y, e.b.y), max(e.a.x, e.b.x), max(e.a.y, e.b.y))
	}
}

// column is the cell of a coordinate, within the grid.
func (c *cells) column(v, from float64, n int) int {
	return max(0, min(n-1, int(math.Floor((v-from)/c.size))))
}

// over calls f with each cell that a box touches, the box grown by a little.
func (c *cells) over(x0, y0, x1, y1 float64, f func(cell int)) {
	const room = 2 * aside
	for row := c.column(y0-room, c.y, c.high); row <= c.column(y1+room, c.y, c.high); row++ {
		for col := c.column(x0-room, c.x, c.wide); col <= c.column(x1+room, c.x, c.wide); col++ {
			f(row*c.wide + col)
		}
	}
}

func (c *cells) put(i int, x0, y0, x1, y1 float64) {
	c.over(x0, y0, x1, y1, func(cell int) { c.lists[cell] = append(c.lists[cell], int32(i)) })
}

// at calls f with what may be at a place, until f has enough.
func (c *cells) at(x, y float64, f func(i int) bool) {
	if len(c.lists) == 0 {
		return
	}
	for _, i := range c.lists[c.column(y, c.y, c.high)*c.wide+c.column(x, c.x, c.wide)] {
		if !f(int(i)) {
			return
		}
	}
}

// along calls f once with each edge whose box may touch that of e.
func (c *cells) along(e edge, f func(i int)) {
	c.search++
	c.over(min(e.a.x, e.b.x), min(e.a.y, e.b.y), max(e.a.x, e.b.x), max(e.a.y, e.b.y), func(cell int) {
		for _, i := range c.lists[cell] {
			if c.seen[i] != c.search {
				c.seen[i] = c.search
				f(int(i))
			}
		}
	})
}
