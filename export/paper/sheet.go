package paper

import (
	"strings"

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
	lineSize = 2.7
	keepInk  = 0.3
)

// Draw draws a sheet as large as it fits into a room.
func (s SheetPage) Draw(room geom.Point) drawing.Drawing {
	const arrow, footSize, air = 6.0, 3.0, 1.0 // for the arrow of the grain, and a line of the foot
	below := 0.0
	if s.Grain {
		below = arrow
	}
	var foot []string
	for _, line := range s.Foot { // a narrow sheet has it in more lines, and not in smaller letters
		foot = append(foot, drawing.Wrap(drawing.Bold, footSize, 0.85*min(room.X, room.Y/s.Width*s.Length), line)...)
	}
	if n := len(foot); n > 0 {
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
		d.Loops(drawing.Thin, pieceInk, r.Loop())
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
	for i, line := range foot {
		size := footSize * min(1, d.Width/drawing.Width(drawing.Bold, footSize, line))
		d.Words(0, below-air-float64((float64(i)+0.8)*leading*footSize), size, drawing.Bold, line)
	}
	if s.Grain {
		grain(&d, geom.Point{X: 0, Y: 1}, 3)
	}
	return d
}

// words writes a key and lines into a box, upright or along it: below each other where there is room, else beside each
// other in one line, else the key alone, which may be smaller than other letters.
func words(d *drawing.Drawing, r geom.Rect, p PlacedPiece) {
	quarter := 0
	long, high := r.Width(), r.Height()
	if high > 1.5*long {
		quarter, long, high = 1, high, long
	}
	if p.Key == "" {
		return
	}
	const air = 0.8
	lines := []drawing.Text{{String: p.Key, Size: keySize, Face: drawing.Bold}}
	for _, l := range p.Lines {
		lines = append(lines, drawing.Text{String: l, Size: lineSize})
	}
	wide, tall := extent(lines)
	if wide > long-2*air || tall > high-2*air {
		lines = []drawing.Text{{String: strings.Join(append([]string{p.Key}, p.Lines[:min(1, len(p.Lines))]...), "  "),
			Size: lineSize}}
		wide, tall = extent(lines)
	}
	if wide > long-2*air || tall > high {
		lines = []drawing.Text{{String: p.Key, Size: keySize, Face: drawing.Bold}}
		wide, tall = extent(lines)
		shrink := min(1, 0.9*long/max(wide, 0.1), 0.9*high/tall)
		lines[0].Size *= shrink
		tall *= shrink
	}
	center, down := r.Center(), tall/2
	for _, t := range lines {
		down -= leading * t.Size
		base := down + 0.35*t.Size // what letters have below their line
		t.Align, t.Quarter, t.At = drawing.Middle, quarter, geom.Point{X: center.X, Y: center.Y + base}
		if quarter == 1 {
			t.At = geom.Point{X: center.X - base, Y: center.Y}
		}
		if t.Size > 0 {
			d.Write(t)
		}
	}
}

// extent is how wide and high lines below each other are.
func extent(lines []drawing.Text) (wide, tall float64) {
	for _, t := range lines {
		wide = max(wide, drawing.Width(t.Face, t.Size, t.String))
		tall += leading * t.Size
	}
	return wide, tall
}
