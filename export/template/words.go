package template

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/export/stroke"
	"drawerwright/geom"
)

// box is what a word covers.
func (w Word) box() geom.Rect {
	long := stroke.Width(w.Text, w.Height)
	if w.Quarter == 1 {
		return geom.Rect{Min: geom.Point{X: w.At.X - w.Height, Y: w.At.Y}, Max: geom.Point{X: w.At.X, Y: w.At.Y + long}}
	}
	return geom.Rect{Min: w.At, Max: geom.Point{X: w.At.X + long, Y: w.At.Y + w.Height}}
}

// strokes are a word's lines on the plate.
func (w Word) strokes() (lines [][]geom.Vertex) {
	for _, line := range stroke.Text(w.Text, w.Height) {
		path := make([]geom.Vertex, len(line))
		for i, p := range line {
			x, y := p.X, p.Y
			if w.Quarter == 1 {
				x, y = -y, x
			}
			path[i].Point = w.At.Add(geom.Point{X: x, Y: y})
		}
		lines = append(lines, path)
	}
	return lines
}

// wordRoom is what words keep off everything else, in mm.
const wordRoom = 1.5

// writer finds room for words on a plate.
type writer struct {
	within geom.Rect
	taken  []geom.Rect
}

// place puts a word as near to a place as there is room, in the largest letters that
// fit; ok is false where none do.
func (w *writer) place(text string, wish geom.Point, quarter int) (Word, bool) {
	for _, height := range []float64{letters, 4.5, 3.5, minWord} {
		word := Word{Text: text, Height: height, Quarter: quarter}
		b := word.box()
		half := b.Center()
		best, found := math.Inf(1), false
		const step = 3.0
		for x := w.within.Min.X - b.Min.X + wordRoom; x <= w.within.Max.X-b.Max.X-wordRoom; x += step {
			for y := w.within.Min.Y - b.Min.Y + wordRoom; y <= w.within.Max.Y-b.Max.Y-wordRoom; y += step {
				off := math.Abs(x+half.X-wish.X) + math.Abs(y+half.Y-wish.Y)
				if off >= best {
					continue
				}
				at := b.Translate(geom.Point{X: x, Y: y}).Grow(wordRoom)
				if slices.ContainsFunc(w.taken, func(r geom.Rect) bool { return at.Overlaps(r) }) {
					continue
				}
				best, found = off, true
				word.At = geom.Point{X: x, Y: y}
			}
		}
		if found {
			w.taken = append(w.taken, word.box())
			return word, true
		}
	}
	return Word{}, false
}

// write puts words on a plate, or into its notes where there is no room.
func (p *Plate) write(w *writer, text string, wish geom.Point, quarter int) {
	if text == "" {
		return
	}
	if word, ok := w.place(text, wish, quarter); ok {
		p.Words = append(p.Words, word)
		return
	}
	p.Notes = append(p.Notes, "There is no room on the plate for: "+text+".")
}

// stampText is as long as the longest of the words about the kerf.
const stampText = "KERF 0.000 IN"

// writer of a plate keeps off what is cut and scored already.
func (p *Plate) writer() *writer {
	w := &writer{within: p.Outline.Bounds(), taken: p.seamZones()}
	for _, l := range p.cuts() {
		w.taken = append(w.taken, l.Bounds())
	}
	for _, path := range p.lines() {
		w.taken = append(w.taken, geom.Loop(path).Bounds())
	}
	for _, word := range p.Words {
		w.taken = append(w.taken, word.box())
	}
	return w
}

// toHang says what the hole that has no other use is for.
const toHang = "The hole at the upper edge is to hang it by."

// finish leaves room for the words on the kerf and makes a hole to hang the plate by.
func (p *Plate) finish(w *writer) {
	b := p.Outline.Bounds()
	if stamp, ok := w.place(stampText, geom.Point{X: b.Max.X, Y: b.Min.Y}, 0); ok {
		p.stamp = stamp
	}
	for _, at := range []geom.Point{{X: b.Max.X - overhang/2, Y: b.Max.Y - overhang/2}, {X: b.Min.X + overhang/2, Y: b.Max.Y - overhang/2}, {X: (b.Min.X + b.Max.X) / 2, Y: b.Max.Y - overhang/2}} {
		hole := geom.Circle(at, hangHole/2)
		if r := hole.Bounds().Grow(minRib); r.Min.X > b.Min.X && r.Max.Y < b.Max.Y && !slices.ContainsFunc(w.taken, func(t geom.Rect) bool { return r.Overlaps(t) }) {
			p.Holes = append(p.Holes, Hole{Loop: hole})
			w.taken = append(w.taken, hole.Bounds())
			p.Notes = append(p.Notes, toHang)
			return
		}
	}
}

func (t *tracer) words() {
	p := &t.plate
	b, o := p.Outline.Bounds(), p.Origin
	w := p.writer()
	middle := geom.Point{X: o.X + t.panel.Panel.Length()/2, Y: o.Y + t.panel.Panel.Width()/2}
	p.write(w, t.panel.Name, geom.Point{X: middle.X, Y: middle.Y + 14}, 0)
	p.write(w, strings.ToUpper(t.panel.lies)+" UP", geom.Point{X: middle.X, Y: middle.Y + 4}, 0)
	p.write(w, "BOTTOM EDGE", geom.Point{X: middle.X, Y: b.Min.Y}, 0)
	p.write(w, t.panel.End, geom.Point{X: b.Min.X, Y: middle.Y}, 1)
	p.write(w, fmt.Sprintf("FOR %s, %s", t.panel.Stock, t.panel.Thickness), geom.Point{X: middle.X, Y: middle.Y - 6}, 0)
	p.write(w, t.Job, geom.Point{X: middle.X, Y: middle.Y - 14}, 0)
	p.finish(w)
}
