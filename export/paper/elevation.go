package paper

import (
	"math"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Elevation is a board as one looks at it, its lower left corner the datum of all distances: what
// is marked on it before anything is screwed to it. Lengths are in mm.
type Elevation struct {
	Width, Height float64
	Lines         []Level
	Holes         []geom.Loop // circles
	Dashed        []geom.Rect // what stands behind it
	Across, Up    []drawing.Mark
	Edge          string // what the left edge is; none where it is empty
}

// Level is a line from edge to edge, and what it is for.
type Level struct {
	At    float64
	Words string
}

// datumSize is that of the triangle at the datum, in mm on paper.
const datumSize = 2.4

// Elevation draws an elevation no wider than lines are and no higher than given in mm, at the largest usual scale or,
// in a tight book, at the one below, and gives that.
func (b *Book) Elevation(e Elevation, high float64) (drawing.Drawing, float64) {
	d, scale := e.draw(geom.Point{X: b.Width(), Y: high}, 1)
	if below := slices.Index(scales, scale) + 1; b.Tight && below < len(scales) {
		return e.draw(geom.Point{X: b.Width(), Y: high}, scales[below])
	}
	return d, scale
}

// draw draws an elevation at the largest usual scale that a room takes, up to a limit, and gives that.
func (e Elevation) draw(room geom.Point, most float64) (drawing.Drawing, float64) {
	left := max(datumSize, drawing.Reach(e.Up, figure)) + 1
	below := max(datumSize, drawing.Reach(e.Across, figure)) + 1
	scale, top := scales[len(scales)-1], e.rise(scales[len(scales)-1])+figure
	for _, s := range scales {
		if rise := e.rise(s) + figure; s <= most && left+float64(s*e.Width)+1 <= room.X &&
			below+float64(s*e.Height)+rise <= room.Y {
			scale, top = s, rise
			break
		}
	}
	d := drawing.Drawing{Width: left + float64(scale*e.Width) + 1, Height: below + float64(scale*e.Height) + top}
	o := geom.Point{X: left, Y: below}
	at := func(x, y float64) geom.Point { return o.Along(geom.Point{X: x, Y: y}, scale) }
	for _, r := range e.Dashed {
		a, b := at(r.Min.X, r.Min.Y), at(r.Max.X, r.Max.Y)
		d.Loops(drawing.Hidden, 0, geom.Rectangle(a.X, a.Y, b.X, b.Y))
	}
	for _, l := range e.Lines {
		d.Line(pathPen, at(0, l.At), at(e.Width, l.At))
		d.Write(drawing.Text{String: drawing.Fit(drawing.Regular, caption, scale*e.Width-8, l.Words),
			Size: caption, Align: drawing.Right, At: at(e.Width, l.At).Add(geom.Point{X: -1.5, Y: 1.4})})
	}
	for _, h := range e.Holes {
		c, r, _ := h.AsCircle()
		d.Loops(drawing.Pen{Width: 0.25, Ink: 1}, drawing.White, geom.Circle(at(c.X, c.Y), max(0.5, scale*r)))
	}
	end := at(e.Width, e.Height)
	d.Loops(drawing.Thick, 0, geom.Rectangle(o.X, o.Y, end.X, end.Y))
	e.edge(&d, at)
	d.Loops(drawing.Pen{}, 1, geom.Polygon(o, geom.Point{X: o.X - datumSize, Y: o.Y},
		geom.Point{X: o.X, Y: o.Y - datumSize}))
	d.Ordinates(drawing.Edge{Side: drawing.Below, From: o, To: geom.Point{X: end.X, Y: o.Y}, Scale: scale,
		Before: 0.5, After: 0.5}, e.Across, figure)
	d.Ordinates(drawing.Edge{Side: drawing.LeftSide, From: o, To: geom.Point{X: o.X, Y: end.Y}, Scale: scale,
		Before: 0.5, After: e.rise(scale)}, e.Up, figure)
	return d, scale
}

// rise is by how much, in mm, the numbers to the left go beyond the upper edge at a scale.
func (e Elevation) rise(scale float64) float64 {
	side := drawing.Edge{To: geom.Point{X: scale * e.Height}, Before: 0.5, After: 0.5}
	for side.Room(figure) < len(e.Up) {
		side.After += 0.5
	}
	return side.After
}

// edge writes along the left edge what it is, between two lines where there is room.
func (e Elevation) edge(d *drawing.Drawing, at func(x, y float64) geom.Point) {
	heights := []float64{0, e.Height}
	for _, l := range e.Lines {
		heights = append(heights, l.At)
	}
	slices.Sort(heights)
	low, high := 0.0, 0.0
	for i, h := range heights[1:] {
		if h-heights[i] > high-low {
			low, high = heights[i], h
		}
	}
	a, b := at(0, low), at(0, high)
	if drawing.Width(drawing.Regular, caption, e.Edge) > math.Abs(b.Y-a.Y)-4 {
		return
	}
	d.Write(drawing.Text{String: e.Edge, Size: caption, Align: drawing.Middle, Quarter: 1,
		At: geom.Point{X: a.X + caption + 0.5, Y: (a.Y + b.Y) / 2}})
}
