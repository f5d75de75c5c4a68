package paper

import (
	"math"
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Measures of keys beside their pieces, in mm: the radius of the dot in which a leader ends, how far a key is at most,
// and how much wider than its keys the margin is, for their leaders.
const keyDot, keyFar, keyMargin = 0.4, 50.0, 6.0

// keyAbove is the margin above a sheet, in mm, for keys of its upper row.
const keyAbove = 5.0

// keyWays is in how many ways leaders of keys go.
const keyWays = 48

// allRound are so many ways all round, level and upright ones first.
func allRound(n int) (list []geom.Point) {
	for part := range n / 4 {
		sin, cos := math.Sincos(2 * math.Pi * float64(part) / float64(n))
		for p := (geom.Point{X: cos, Y: sin}); len(list) < 4*(part+1); p = p.Left() {
			list = append(list, p)
		}
	}
	return list
}

// key is one with its piece in the drawing.
type key struct {
	words string
	of    geom.Rect
}

// besides writes keys beside their pieces with leaders, on none of the things there are, and gives how wide the widest
// key is that found no place.
func besides(d *drawing.Drawing, list []key, things []geom.Rect) (nowhere float64) {
	if len(list) == 0 {
		return 0
	}
	free := roomOf(*d)
	free.far, free.ways = keyFar, allRound(keyWays)
	for _, t := range things {
		free.things.add(t, t)
	}
	for _, k := range list {
		c := k.of.Center()
		way := geom.Point{X: k.of.Width()/2 - 2*keyDot}
		if k.of.Height() > k.of.Width() {
			way = geom.Point{Y: k.of.Height()/2 - 2*keyDot}
		}
		var places []geom.Point
		for _, far := range []float64{0, 1, -1, 0.5, -0.5} {
			places = append(places, c.Along(way, far))
		}
		at, found := free.name(d, k.words, lineSize, places, 0)
		if !found { // leaders that cross are better than none
			free.crossed = true
			at, found = free.name(d, k.words, lineSize, places, 0)
			free.crossed = false
		}
		if !found {
			nowhere = max(nowhere, drawing.Width(drawing.Bold, lineSize, k.words))
			continue
		}
		d.Loops(drawing.Pen{}, 1, geom.Circle(at, keyDot))
	}
	return nowhere
}

// words writes a key and lines into a box, upright or along it: below each other where there is room, else beside each
// other in one line, else the key alone; false where there is no room for that.
func words(d *drawing.Drawing, r geom.Rect, p PlacedPiece) bool {
	quarter := 0
	long, high := r.Width(), r.Height()
	if high > 1.5*long {
		quarter, long, high = 1, high, long
	}
	if p.Key == "" {
		return true
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
		one := drawing.Text{String: p.Key, Size: keySize, Face: drawing.Bold}
		box := one.Box()
		one.Size *= min(1, 0.9*long/box.Width(), 0.95*high/box.Height())
		if one.Size < lineSize {
			return false
		}
		lines = []drawing.Text{one}
		_, tall = extent(lines)
	}
	center, down := r.Center(), tall/2
	for _, t := range lines {
		down -= leading * t.Size
		base := down + 0.425*t.Size // what letters have below their line
		t.Align, t.Quarter, t.At = drawing.Middle, quarter, geom.Point{X: center.X, Y: center.Y + base}
		if quarter == 1 {
			t.At = geom.Point{X: center.X - base, Y: center.Y}
		}
		d.Write(t)
	}
	return true
}

// extent is how wide and high lines below each other are.
func extent(lines []drawing.Text) (wide, tall float64) {
	for _, t := range lines {
		wide = max(wide, drawing.Width(t.Face, t.Size, t.String))
		tall += leading * t.Size
	}
	return wide, tall
}
