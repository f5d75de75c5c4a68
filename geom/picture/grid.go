package picture

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// grid finds what may be at a place of the picture.
type grid struct{ faces, edges cells }

// cells are squares of the picture with the numbers of what their boxes touch.
type cells struct {
	from       geom.Point // the lower left corner
	size       float64    // of a cell
	wide, high int
	begins     []int32 // where the numbers of a cell begin in all, and after the last cell how many there are
	all        []int32
	seen       []int32 // by number: the search that met it last
	search     int32
}

// maxCells is the largest number of cells on a side: some hundreds of faces are spread over some
// thousands of cells.
const maxCells = 32

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
	d.grid.edges.seen = make([]int32, len(d.edges))
	d.grid.faces.fill(len(d.faces), func(i int) geom.Rect { return d.faces[i].box() })
	d.grid.edges.fill(len(d.edges), func(i int) geom.Rect { return d.edges[i].box() })
}

// fill enters n things by their boxes: once to count them, once to put them down.
func (c *cells) fill(n int, box func(i int) geom.Rect) {
	cells := c.wide * c.high
	c.begins = make([]int32, cells+1)
	for i := range n {
		c.over(box(i), func(from, to int) {
			for cell := from; cell < to; cell++ {
				c.begins[cell+1]++
			}
		})
	}
	for cell := range cells {
		c.begins[cell+1] += c.begins[cell]
	}
	c.all = make([]int32, c.begins[cells])
	next := slices.Clone(c.begins)
	for i := range n {
		c.over(box(i), func(from, to int) {
			for cell := from; cell < to; cell++ {
				c.all[next[cell]] = int32(i)
				next[cell]++
			}
		})
	}
}

// in are the numbers of what touches a cell.
func (c *cells) in(cell int) []int32 { return c.all[c.begins[cell]:c.begins[cell+1]] }

// column is the cell of a distance from the grid's corner, within the grid.
func (c *cells) column(v float64, n int) int {
	return max(0, min(n-1, int(math.Floor(v/c.size))))
}

// cell is the column and the row of a place, within the grid.
func (c *cells) cell(p geom.Point) (column, row int) {
	p = p.Sub(c.from)
	return c.column(p.X, c.wide), c.column(p.Y, c.high)
}

// over calls f with each row of cells that a box touches, the box grown by a little: from a cell to
// before another.
func (c *cells) over(box geom.Rect, f func(from, to int)) {
	box = box.Grow(2 * aside)
	x0, y0 := c.cell(box.Min)
	x1, y1 := c.cell(box.Max)
	for row := y0; row <= y1; row++ {
		f(row*c.wide+x0, row*c.wide+x1+1)
	}
}

// at calls f with what may be at a place, until f has enough.
func (c *cells) at(p geom.Point, f func(i int) bool) {
	if len(c.begins) == 0 {
		return
	}
	column, row := c.cell(p)
	for _, i := range c.in(row*c.wide + column) {
		if !f(int(i)) {
			return
		}
	}
}

// along calls f once with each edge whose box may touch that of e.
func (c *cells) along(e edge, f func(i int)) {
	if len(c.begins) == 0 {
		return
	}
	c.search++
	c.over(e.box(), func(from, to int) {
		for _, i := range c.all[c.begins[from]:c.begins[to]] {
			if c.seen[i] != c.search {
				c.seen[i] = c.search
				f(int(i))
			}
		}
	})
}
