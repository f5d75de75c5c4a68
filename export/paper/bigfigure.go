package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// BigFigure is a number that a machine is set to, to be read from where one stands at it; Words where a fence or a jig
// takes its place.
type BigFigure struct{ Caption, Figure, Words string }

// FigureHeight is how high the figures of settings are, in mm.
const FigureHeight = 12.0

// Measures of a row of big figures, in mm.
const (
	figureAir   = 2.5
	captionRow  = 5.0
	figureRow   = captionRow + FigureHeight + 2*figureAir
	figureWords = 5.0
	labelWide   = 34.0
)

// BigFigures prints a row of figures in boxes, after a box with a label and boxes to tick, each with its words. Figures
// that do not go beside each other take another row.
func (b *Book) BigFigures(label string, list []BigFigure, ticks []string) {
	for {
		n := b.bigRow(label, list, ticks)
		if list = list[n:]; len(list) == 0 {
			break
		}
		label, ticks = "", nil
	}
	b.Space(2)
}

// bigRow prints one row, and gives how many figures went into it.
func (b *Book) bigRow(label string, list []BigFigure, ticks []string) int {
	left := labelWide
	for _, s := range ticks {
		left = max(left, drawing.Width(drawing.Regular, body, s)+tickSide+5)
	}
	n, face := fitting(list, b.Width()-left)
	b.Keep(figureRow)
	d, x, low := &b.page.Drawing, b.left(), b.cursor-figureRow
	d.Loops(drawing.Thick, 0, geom.Rectangle(x, low, x+b.Width(), b.cursor))
	const labelSize = 4.0
	for i, s := range drawing.Wrap(drawing.Bold, labelSize, left-3, label) {
		d.Words(x+1.5, b.cursor-5.5-float64(5.5*float64(i)), labelSize, drawing.Bold, s)
	}
	for i, s := range ticks {
		y := b.cursor - 12.5 - float64(6*float64(i))
		tickBox(d, geom.Point{X: x + 1.5, Y: y - 0.6})
		d.Words(x+tickSide+3.5, y, body, drawing.Regular, s)
	}
	each := (b.Width() - left) / float64(max(n, 1))
	at := func(i int) float64 { return x + left + float64(each*float64(i)) }
	for i, f := range list[:n] { // the captions are one line, the figures the next
		d.Words(at(i)+1.5, b.cursor-4, body, drawing.Regular, f.Caption)
		d.Line(drawing.Thin, geom.Point{X: at(i), Y: low}, geom.Point{X: at(i), Y: b.cursor})
	}
	for i, f := range list[:n] {
		if f.Words != "" {
			said := drawing.Fit(drawing.Bold, figureWords, each-2, f.Words)
			d.Words(at(i)+1.5, low+figureAir+3, figureWords, drawing.Bold, said)
			continue
		}
		d.Words(at(i)+1.5, low+figureAir, drawing.Capitals(FigureHeight), face, f.Figure)
	}
	b.cursor = low
	return n
}

// fitting is how many figures a row has room for, at least one, and the letters in which they go best.
func fitting(list []BigFigure, room float64) (n int, face drawing.Face) {
	for _, f := range []drawing.Face{drawing.Bold, drawing.Regular} {
		k, each := 0, 0.0 // all boxes are as wide as the widest
		for k < len(list) {
			if each = max(each, list[k].width(f)); float64(k+1)*each > room {
				break
			}
			k++
		}
		if k > n {
			n, face = k, f
		}
	}
	if n == 0 && len(list) > 0 {
		n = 1
	}
	return n, face
}

// width is what a figure needs.
func (f BigFigure) width(face drawing.Face) float64 {
	figure := drawing.Width(face, drawing.Capitals(FigureHeight), f.Figure)
	return 2.5 + max(drawing.Width(drawing.Regular, body, f.Caption), figure,
		drawing.Width(drawing.Bold, figureWords, f.Words))
}
