package paper

import (
	"math"
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// LegendRow says what has a number in a picture: its names, and the stock that it is of.
type LegendRow struct {
	Number string
	Names  []string
	Stock  string
	Tint   drawing.Tint // of the stock
}

// Measures of a legend, in mm.
const (
	legendRow    = 5.2
	legendNumber = 8.0 // from the left to the number's right end
	legendWords  = 10.0
	legendSwatch = 5.0
	legendGap    = 6.0 // between columns
)

// Legend lists what numbers and tones of a picture stand for, in as many columns as a width takes.
func Legend(rows []LegendRow, wide float64) drawing.Drawing {
	text := func(r LegendRow) string { return strings.Join(r.Names, ", ") }
	words, stock := 0.0, 0.0
	for _, r := range rows {
		words = max(words, drawing.Width(drawing.Regular, caption, text(r)))
		stock = max(stock, drawing.Width(drawing.Regular, caption, r.Stock))
	}
	words, stock = min(words, wide/2), min(stock, wide/4)
	column := legendWords + words + 3 + legendSwatch + 1.5 + stock
	columns := max(1, min(len(rows), int((wide-1+legendGap)/(column+legendGap))))
	high := int(math.Ceil(float64(len(rows)) / float64(columns)))
	d := drawing.Drawing{Width: float64(float64(columns)*(column+legendGap)) - legendGap + 1,
		Height: float64(legendRow*float64(high)) + 1}
	for i, r := range rows {
		x, y := float64(float64(i/high)*(column+legendGap)), d.Height-float64(legendRow*float64(i%high+1))
		d.Write(drawing.Text{String: r.Number, At: geom.Point{X: x + legendNumber, Y: y}, Size: caption,
			Align: drawing.Right, Face: drawing.Bold})
		d.Words(x+legendWords, y, caption, drawing.Regular,
			drawing.Fit(drawing.Regular, caption, words, text(r)))
		x += legendWords + words + 3
		d.Area(r.Tint, geom.Rectangle(x, y-0.3, x+legendSwatch, y+2.8))
		d.Loops(drawing.Pen{Width: 0.18, Ink: 1}, 0, geom.Rectangle(x, y-0.3, x+legendSwatch, y+2.8))
		d.Words(x+legendSwatch+1.5, y, caption, drawing.Regular,
			drawing.Fit(drawing.Regular, caption, stock, r.Stock))
	}
	return d
}
