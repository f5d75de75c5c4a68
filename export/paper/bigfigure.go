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
// that do not go beside each other take more rows, of about as many each.
func (b *Book) BigFigures(label string, list []BigFigure, ticks []string) {
	for {
		wide, _ := fitting(list, b.Width()-labelRoom(ticks))
		rows := (len(list) + len(wide) - 1) / max(len(wide), 1)
		n := (len(list) + rows - 1) / max(rows, 1)
		b.bigRow(label, list[:n], ticks)
		if list = list[n:]; len(list) == 0 {
			break
		}
		label, ticks = "", nil
	}
	b.Space(b.Gap(2))
}

// labelRoom is how wide the box with the label is.
func labelRoom(ticks []string) float64 {
	wide := labelWide
	for _, s := range ticks {
		wide = max(wide, drawing.Width(drawing.Regular, body, s)+tickSide+5)
	}
	return wide
}

// bigRow prints figures that go into one row.
func (b *Book) bigRow(label string, list []BigFigure, ticks []string) {
	left := labelRoom(ticks)
	wide, face := fitting(list, b.Width()-left)
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
	at := make([]float64, len(list))
	for i := range list {
		at[i] = x + left
		if i > 0 {
			at[i] = at[i-1] + wide[i-1]
		}
	}
	for i, f := range list { // the captions are one line, the figures the next
		d.Words(at[i]+1.5, b.cursor-4, body, drawing.Regular, f.Caption)
		d.Line(drawing.Thin, geom.Point{X: at[i], Y: low}, geom.Point{X: at[i], Y: b.cursor})
	}
	for i, f := range list {
		if f.Words != "" {
			said := drawing.Fit(drawing.Bold, figureWords, wide[i]-2, f.Words)
			d.Words(at[i]+1.5, low+figureAir+3, figureWords, drawing.Bold, said)
			continue
		}
		d.Words(at[i]+1.5, low+figureAir, drawing.Capitals(FigureHeight), face, f.Figure)
	}
	b.cursor = low
}

// fitting is how wide the boxes of a row are, at least one, and the letters in which most go into it: all as wide as
// the widest, or each as its figure needs where more have room so.
func fitting(list []BigFigure, room float64) (wide []float64, face drawing.Face) {
	for _, f := range []drawing.Face{drawing.Bold, drawing.Regular} {
		for _, alike := range []bool{true, false} {
			var row []float64
			taken, widest := 0.0, 0.0
			for _, one := range list {
				needs := one.width(f)
				widest = max(widest, needs)
				if taken += needs; taken > room || alike && widest*float64(len(row)+1) > room {
					break
				}
				row = append(row, needs)
			}
			if len(row) > len(wide) {
				wide, face = row, f
				share(wide, room, alike)
			}
		}
	}
	if len(wide) == 0 && len(list) > 0 {
		wide = []float64{room}
	}
	return wide, face
}

// share gives boxes all the room of a row: alike, or what is left in equal parts.
func share(wide []float64, room float64, alike bool) {
	n, left := float64(len(wide)), room
	for _, w := range wide {
		left -= w
	}
	for i := range wide {
		if wide[i] += left / n; alike {
			wide[i] = room / n
		}
	}
}

// width is what a figure needs.
func (f BigFigure) width(face drawing.Face) float64 {
	figure := drawing.Width(face, drawing.Capitals(FigureHeight), f.Figure)
	return 2.5 + max(drawing.Width(drawing.Regular, body, f.Caption), figure,
		drawing.Width(drawing.Bold, figureWords, f.Words))
}
