package paper

import (
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// SheetPage is a sheet with what is cut from it, in mm from its lower left corner.
type SheetPage struct {
	Length, Width float64
	Trim          geom.Rect // what the trims leave of it
	Pieces        []PlacedPiece
	Offcuts       []PlacedPiece
	KeepOut       []PlacedPiece // that nothing is cut in
	Holes         []geom.Loop   // that pins stand in
	Grain         bool          // runs along the length
	Foot          []string      // lines below it
}

// PlacedPiece is a piece with the words on it: Key, which always stands there, and lines
// where there is room for them.
type PlacedPiece struct {
	Box   geom.Rect
	Key   string
	Lines []string
}

// Inks and letters of sheets: those of a key, and of lines and of what a key shrinks to, whose capitals are 2 mm high.
const (
	pieceInk = 0.06
	keySize  = 3.2
	keepInk  = 0.3
)

var lineSize = drawing.Capitals(2)

// Draw draws a sheet as large as it fits into a room. A key for which its piece is too small stands beside it with a
// leader, and where it finds no place on the sheet, in a margin at the right and above; aside is how many there are of
// these.
func (s SheetPage) Draw(room geom.Point) (d drawing.Drawing, aside int) {
	d, aside, nowhere := s.drawIn(room, 0)
	if nowhere > 0 {
		d, aside, _ = s.drawIn(room, nowhere+keyMargin)
	}
	return d, aside
}

// drawIn draws the sheet with a margin; nowhere is how wide the widest key is that found no place.
func (s SheetPage) drawIn(room geom.Point, beside float64) (d drawing.Drawing, aside int, nowhere float64) {
	above := 0.0
	if beside > 0 {
		above = keyAbove
	}
	foot, below, scale := s.scaled(geom.Point{X: room.X, Y: room.Y - above})
	d = drawing.Drawing{Width: float64(scale*s.Length) + beside, Height: float64(scale*s.Width) + below + above}
	at := func(r geom.Rect) geom.Rect {
		return geom.Rect{Min: geom.Point{X: scale * r.Min.X, Y: below + float64(scale*r.Min.Y)}, Max: geom.Point{X: scale * r.Max.X, Y: below + float64(scale*r.Max.Y)}}
	}
	sheet := at(geom.Rect{Max: geom.Point{X: s.Length, Y: s.Width}})
	if t := at(s.Trim); t != sheet {
		d.Loops(drawing.Thin, 0, t.Loop())
	}
	var small []key
	for _, kind := range []struct {
		pen    drawing.Pen
		fill   drawing.Ink
		pieces []PlacedPiece
	}{{drawing.Hidden, 0, s.Offcuts}, {drawing.Thin, pieceInk, s.Pieces}, {drawing.Thin, keepInk, s.KeepOut}} {
		for _, p := range kind.pieces {
			r := at(p.Box)
			d.Loops(kind.pen, kind.fill, r.Loop())
			if !words(&d, r, p) {
				small = append(small, key{p.Key, r})
			}
		}
	}
	for _, h := range s.Holes {
		c, r, _ := h.AsCircle()
		d.Loops(drawing.Thin, 1, geom.Circle(geom.Point{X: scale * c.X, Y: below + float64(scale*c.Y)}, scale*r))
	}
	d.Loops(drawing.Thick, 0, sheet.Loop())
	for i, line := range foot {
		d.Words(0, below-footAir-float64((float64(i)+0.8)*leading*footSize), footSize, drawing.Bold, line)
	}
	if s.Grain {
		grain(&d, geom.Point{X: 0, Y: 1}, 3)
	}
	var things []geom.Rect
	for _, p := range slices.Concat(s.Pieces, s.KeepOut) {
		things = append(things, at(p.Box))
	}
	nowhere = besides(&d, small, things)
	return d, len(small), nowhere
}

// Measures below a sheet, in mm: of the arrow of the grain, and of a line and what is above the first.
const arrowRoom, footSize, footAir = 6.0, 3.0, 1.0

// scaled is the scale of a sheet in a room, with the lines below it, of which a narrow one has more, and how high all
// below it is.
func (s SheetPage) scaled(room geom.Point) (foot []string, below, scale float64) {
	wide := min(room.X, room.Y/s.Width*s.Length)
	for {
		foot, below = nil, 0
		if s.Grain {
			below = arrowRoom
		}
		widest := 0.0
		for _, said := range s.Foot {
			for _, line := range drawing.Wrap(drawing.Bold, footSize, wide, said) {
				foot = append(foot, line)
				widest = max(widest, drawing.Width(drawing.Bold, footSize, line))
			}
		}
		if n := len(foot); n > 0 {
			below += float64(float64(n)*leading*footSize) + footAir
		}
		scale = min(room.X/s.Length, (room.Y-below)/s.Width)
		if widest <= scale*s.Length || wide < footLeast {
			return foot, below, scale
		}
		wide = min(wide-1, scale*s.Length)
	}
}

// footLeast is the width for which lines below a sheet are broken at least, in mm.
const footLeast = 25.0
