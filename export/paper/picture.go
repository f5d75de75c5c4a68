package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"
)

// Picture is a picture's lines in a room of so many mm, as large as they fit.
func Picture(lines []picture.Segment, room geom.Point) drawing.Drawing {
	b := picture.Bounds(lines)
	if b.Width() <= 0 || b.Height() <= 0 {
		return drawing.Drawing{}
	}
	scale := min(room.X/b.Width(), room.Y/b.Height())
	d := drawing.Drawing{Width: scale * b.Width(), Height: scale * b.Height()}
	at := func(p geom.Point) geom.Point {
		return p.Sub(b.Min).Scale(scale)
	}
	for _, s := range lines {
		d.Line(drawing.Medium, at(s.A), at(s.B))
	}
	return d
}

// Detail is what a picture's lines show in a window of it, as large as a room takes.
func Detail(lines []picture.Segment, window geom.Rect, room geom.Point) drawing.Drawing {
	if window.Width() <= 0 || window.Height() <= 0 {
		return drawing.Drawing{}
	}
	scale := min(room.X/window.Width(), room.Y/window.Height())
	at := func(p geom.Point) geom.Point { return geom.Point{X: scale * p.X, Y: scale * p.Y} }
	var d drawing.Drawing
	for _, s := range lines {
		d.Line(drawing.Medium, at(s.A), at(s.B))
	}
	return d.Clip(geom.Rect{Min: at(window.Min), Max: at(window.Max)})
}

// Framed is a drawing with a little white round it, so that lines at its edge are
// whole.
func Framed(d drawing.Drawing) drawing.Drawing {
	const white = 2
	out := drawing.Drawing{Width: d.Width + 2*white, Height: d.Height + 2*white}
	out.Add(d, geom.Point{X: white, Y: white}, 1)
	return out
}
