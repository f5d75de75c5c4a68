package picture

import (
	"math"

	"drawerwright/geom"
)

// grid finds what may be at a place of the picture.
type grid struct{ faces, edges cells }

// cells are squares of the picture with the numbers of what their boxes touch.
type cells struct {
	from       geom.Point // the lower left corner
	size       float64    // of a cell
	wide, high int
	lists      [][]int32
	seen       []int32 // by number: the search that met it last
	search     int32
}

// maxCells is the largest number of cells on a side: some hundreds of faces are spread over some
// thousands of cells.
const maxCells = 64

func (e edge) box() geom.Rect { return geom.Around(e.a.Point, e.b.Point) }
func (f face) box() geom.Rect { return geom.Around(f.a.Point, f.b.Point, f.c.Point) }

func (d *drawing) index() {
	if len(d.edges) == 0 {
		return
	}
	box := d.edges[0].box()
	for _, e := range d.edges {
		box = box.Union(e.box())
	}
	size := max(box.Width(), box.Height(), shortest) / maxCells
	empty := cells{from: box.Min, size: size, wide: int(box.Width()/size) + 1, high: int(box.Height()/size) + 1}
	d.grid.faces, d.grid.edges = empty, empty
	d.grid.faces.lists, d.grid.edges.lists = make([][]int32, empty.wide*empty.high), make([][]int32,
		empty.wide*empty.high)
	d.grid.edges.seen = make([]int32, len(d.edges))
	for i, f := range d.faces {
		d.grid.faces.put(i, f.box())
	}
	for i, e := range d.edges {
		d.grid.edges.put(i, e.box())
	}
}

// column is the cell of a distance from the grid's corner, within the grid.
func (c *cells) column(v float64, n int) int {
	return max(0, min(n-1, int(math.Floor(v/c.size))))
}

// cell is the column and the row of a place, within the grid.
func (c *cells) cell(p geom.Point) (column, row int) {
	p = p.Sub(c.from)
	return c.column(p.X, c.wide), c.column(p.Y, c.high)
}

// over calls f with each cell that a box touches, the box grown by a little.
func (c *cells) over(box geom.Rect, f func(cell int)) {
	box = box.Grow(2 * aside)
	x0, y0 := c.cell(box.Min)
	x1, y1 := c.cell(box.Max)
	for row := y0; row <= y1; row++ {
		for column := x0; column <= x1; column++ {
			f(row*c.wide + column)
		}
	}
}

func (c *cells) put(i int, box geom.Rect) {
	c.over(box, func(cell int) { c.lists[cell] = append(c.lists[cell], int32(i)) })
}

// at calls f with what may be at a place, until f has enough.
func (c *cells) at(p geom.Point, f func(i int) bool) {
	if len(c.lists) == 0 {
		return
	}
	column, row := c.cell(p)
	for _, i := range c.lists[row*c.wide+column] {
		if !f(int(i)) {
			return
		}
	}
}

// along calls f once with each edge whose box may touch that of e.
func (c *cells) along(e edge, f func(i int)) {
	c.search++
	c.over(e.box(), func(cell int) {
		for _, i := range c.lists[cell] {
			if c.seen[i] != c.search {
				c.seen[i] = c.search
				f(int(i))
			}
		}
	})
}
