package paper

import (
	"math"

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

// Inks and letters of sheets.
const (
	pieceInk = 0.06
	keySize  = 3.2
	lineSize = 2.4
	minLine  = 1.5
	keepInk  = 0.3
)

// Draw draws a sheet as large as it fits into a room.
func (s SheetPage) Draw(room geom.Point) drawing.Drawing {
	const arrow, footSize, air = 6.0, 3.0, 1.0 // for the arrow of the grain, and a line of the foot
	below := 0.0
	if s.Grain {
		below = arrow
	}
	if n := len(s.Foot); n > 0 {
		below += float64(float64(n)*leading*footSize) + air
	}
	scale := min(room.X/s.Length, (room.Y-below)/s.Width)
	d := drawing.Drawing{Width: scale * s.Length, Height: float64(scale*s.Width) + below}
	at := func(r geom.Rect) geom.Rect {
		return geom.Rect{Min: geom.Point{X: scale * r.Min.X, Y: below + float64(scale*r.Min.Y)}, Max: geom.Point{X: scale * r.Max.X, Y: below + float64(scale*r.Max.Y)}}
	}
	sheet := at(geom.Rect{Max: geom.Point{X: s.Length, Y: s.Width}})
	if t := at(s.Trim); t != sheet {
		d.Loops(drawing.Thin, 0, t.Loop())
	}
	for _, o := range s.Offcuts {
		r := at(o.Box)
		d.Loops(drawing.Hidden, 0, r.Loop())
		words(&d, r, o)
	}
	for _, p := range s.Pieces {
		r := at(p.Box)
		d.Loops(drawing.Medium, pieceInk, r.Loop())
		words(&d, r, p)
	}
	for _, k := range s.KeepOut {
		r := at(k.Box)
		d.Loops(drawing.Thin, keepInk, r.Loop())
		words(&d, r, k)
	}
	for _, h := range s.Holes {
		c, r, _ := h.AsCircle()
		d.Loops(drawing.Thin, 1, geom.Circle(geom.Point{X: scale * c.X, Y: below + float64(scale*c.Y)}, scale*r))
	}
	d.Loops(drawing.Thick, 0, sheet.Loop())
	for i, line := range s.Foot {
		size := footSize * min(1, d.Width/drawing.Width(drawing.Bold, footSize, line))
		d.Words(0, below-air-float64((float64(i)+0.8)*leading*footSize), size, drawing.Bold, line)
	}
	if s.Grain {
		grain(&d, geom.Point{X: 0, Y: 1}, 3)
	}
	return d
}

// words writes a key and lines into a box, upright or along it, as large as fits; only
// the key where the lines do not fit.
func words(d *drawing.Drawing, r geom.Rect, p PlacedPiece) {
	quarter := 0
	long, high := r.Width(), r.Height()
	if high > 1.5*long {
		quarter, long, high = 1, high, long
	}
	const air = 0.8
	lines := append([]string{p.Key}, p.Lines...)
	size := func(i int) float64 {
		if i == 0 {
			return keySize
		}
		return lineSize
	}
	tall, wide := 0.0, 0.0
	for i, l := range lines {
		tall += leading * size(i)
		wide = math.Max(wide, drawing.Width(drawing.Regular, size(i), l))
	}
	shrink := min(1, (long-2*air)/wide, (high-2*air)/tall)
	if shrink*lineSize < minLine { // the key alone, in its own size or less
		lines = lines[:1]
		tall, wide = leading*keySize, drawing.Width(drawing.Bold, keySize, p.Key)
		shrink = min(1, 0.9*long/max(wide, 0.1), 0.9*high/tall)
	}
	if shrink <= 0 || p.Key == "" {
		return
	}
	center := r.Center()
	down := float64(shrink*tall) / 2
	for i, l := range lines {
		face := drawing.Regular
		if i == 0 {
			face = drawing.Bold
		}
		letters := float64(shrink * size(i))
		down -= leading * letters
		base := down + 0.35*letters // what letters have below their line
		t := drawing.Text{String: l, Size: letters, Align: drawing.Middle, Face: face, Quarter: quarter, At: geom.Point{X: center.X, Y: center.Y + base}}
		if quarter == 1 {
			t.At = geom.Point{X: center.X - base, Y: center.Y}
		}
		d.Write(t)
	}
}
