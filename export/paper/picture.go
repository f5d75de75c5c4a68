package paper

import (
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"
)

// Scenery is a picture with all that can be said in it, in the picture's millimeters; Band is how
// much room, in mm on paper, there is for balloons all round, [WideBand] for as many as there may be.
type Scenery struct {
	Band     float64
	Lines    []picture.Segment // what is seen of solids
	Paths    []picture.Segment // ways that pieces take
	Areas    []Area
	Glue     []picture.Segment // where glue goes, drawn as broad bands
	GlueTint drawing.Tint
}

// WideBand has room for balloons side by side.
const WideBand = 2*balloonRadius + 2*balloonAir

// Area is where a piece is seen, in the tone of its wood.
type Area struct {
	Loops []geom.Loop
	Tint  drawing.Tint
	Mark  string // in the balloon beside it, its number or a letter; none where it is empty
}

// Pens of pictures. The way of a piece is a thin line of long dashes and dots (ISO 128-2, from memory).
var (
	seenPen = drawing.Pen{Width: 0.25, Ink: 1}
	pathPen = drawing.Pen{Width: 0.18, Ink: 1, Dash: []float64{4, 1, 0.3, 1}}
)

// Draw draws a picture as large as a room of so many mm takes it, with its balloons. The drawing
// is no larger than what is in it.
func (s Scenery) Draw(room geom.Point) drawing.Drawing {
	b := picture.Bounds(append(s.Lines[:len(s.Lines):len(s.Lines)], s.Paths...))
	band := 0.0
	if slices.ContainsFunc(s.Areas, func(a Area) bool { return a.Mark != "" }) {
		band = s.Band
	}
	wide, high := room.X-2*band-2*seenPen.Width, room.Y-2*band-2*seenPen.Width
	if b.Width() <= 0 || b.Height() <= 0 || wide <= 0 || high <= 0 {
		return drawing.Drawing{}
	}
	scale := min(wide/b.Width(), high/b.Height())
	corner := geom.Point{X: band + seenPen.Width, Y: band + seenPen.Width}
	d := drawing.Drawing{Width: float64(scale*b.Width()) + 2*corner.X, Height: float64(scale*b.Height()) + 2*corner.Y}
	at := func(p geom.Point) geom.Point { return corner.Add(p.Sub(b.Min).Scale(scale)) }
	for _, a := range s.Areas {
		if loops := moved(a.Loops, at); len(loops) > 0 {
			d.Area(a.Tint, loops...)
		}
	}
	for _, l := range s.Glue {
		d.Area(s.GlueTint, bandOf(picture.Segment{A: at(l.A), B: at(l.B)}))
	}
	var taken []picture.Segment
	for _, l := range s.Paths {
		l = picture.Segment{A: at(l.A), B: at(l.B)}
		d.Line(pathPen, l.A, l.B)
		taken = append(taken, l)
	}
	for _, l := range s.Lines {
		l = picture.Segment{A: at(l.A), B: at(l.B)}
		d.Line(seenPen, l.A, l.B)
		taken = append(taken, l)
	}
	var pieces []numbered
	for _, a := range s.Areas {
		if a.Mark != "" {
			if p, seen := picture.Middle(a.Loops); seen {
				pieces = append(pieces, numbered{a.Mark, at(p), moved(a.Loops, at)})
			}
		}
	}
	balloons(&d, pieces, taken)
	return d
}

// glueWide is how broad a band of glue is on paper, in mm: lines of a joint do not hide it.
const glueWide = 2.0

// bandOf is a band along a segment.
func bandOf(s picture.Segment) geom.Loop {
	across := s.B.Sub(s.A).Unit().Left().Scale(glueWide / 2)
	return geom.Polygon(s.A.Sub(across), s.B.Sub(across), s.B.Add(across), s.A.Add(across))
}

// moved is loops with their corners where at has them.
func moved(loops []geom.Loop, at func(geom.Point) geom.Point) []geom.Loop {
	out := make([]geom.Loop, len(loops))
	for i, l := range loops {
		for _, v := range l {
			out[i] = append(out[i], geom.Vertex{Point: at(v.Point)})
		}
	}
	return out
}

// Framed is a drawing with a little white round it, so that lines at its edge are
// whole.
func Framed(d drawing.Drawing) drawing.Drawing {
	const white = 2
	out := drawing.Drawing{Width: d.Width + 2*white, Height: d.Height + 2*white}
	out.Add(d, geom.Point{X: white, Y: white}, 1)
	return out
}
