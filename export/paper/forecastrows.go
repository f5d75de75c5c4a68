package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// ForecastRow is a forecast with what is said of it: its name, its numbers and what would help, and
// the verdict with its odds.
type ForecastRow struct {
	Forecast
	Name, Numbers, Help string
	Verdict, Odds       string
	Wrong               bool
}

// Measures of rows of forecasts, in mm.
const (
	verdictWidth = 34.5
	markWidth    = 4.0 // of it the mark
	rowGap       = 1.2
	rowAir       = 1.0  // between its parts
	rowLeading   = 1.25 // from one line to the next, in sizes
)

// rowText is the size of the letters of rows of forecasts.
var rowText = caption

// Forecasts draws forecasts below each other, under a line that says what their signs are. Both come
// again on every page.
func (b *Book) Forecasts(rows []ForecastRow) {
	if len(rows) == 0 {
		return
	}
	left := b.Width() - onPaper.wide - verdictWidth - 2*rowAir
	b.Keep(rows[0].height(left) + 12)
	b.forecastKey()
	for i, r := range rows {
		high := r.height(left)
		if i > 0 && i == len(rows)-2 { // the last does not stand on its page alone
			high += rows[i+1].height(left) + 0.01 // whatever sums round to
		}
		if b.Room() < high {
			b.Page()
			b.forecastKey()
		}
		b.forecastRow(r, left)
	}
	b.Space(b.Gap(AfterTable))
}

// forecastKey says what the signs are.
func (b *Book) forecastKey() {
	const toWord, toNext = 1.0, 4.0
	x, high := margin, 0.0
	for _, s := range ForecastSigns() {
		b.put(s.Drawing, geom.Point{X: x, Y: b.cursor - s.Height})
		x += s.Width + toWord
		b.page.Words(x, b.cursor-s.Height/2-0.36*rowText, rowText, drawing.Regular, s.Word)
		x += drawing.Width(drawing.Regular, rowText, s.Word) + toNext
		high = s.Height
	}
	b.Space(high + 1)
	b.forecastRule()
}

func (b *Book) forecastRule() {
	b.page.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{X: margin, Y: b.cursor},
		geom.Point{X: margin + b.Width(), Y: b.cursor})
	b.cursor -= rowGap / 2
}

// said is a paragraph of a row.
type said struct {
	text string
	face drawing.Face
}

// words are the paragraphs of a row's left side, from above.
func (r ForecastRow) words() []said {
	return []said{{r.Name, drawing.Bold}, {r.Numbers, drawing.Regular}, {r.Help, drawing.Regular}}
}

// height is that of a row whose words have so much room.
func (r ForecastRow) height(left float64) float64 {
	lines := 0
	for _, s := range r.words() {
		lines += len(drawing.Wrap(s.face, rowText, left, s.text))
	}
	return max(forecastHeight+onPaper.rise, float64(rowLeading*rowText*float64(lines))) + rowGap
}

func (b *Book) forecastRow(r ForecastRow, left float64) {
	y := b.cursor
	for _, s := range r.words() {
		for _, l := range drawing.Wrap(s.face, rowText, left, s.text) {
			b.page.Words(margin, y-rowText, rowText, s.face, l)
			y -= rowLeading * rowText
		}
	}
	d := r.Print()
	b.put(d, geom.Point{X: margin + left + rowAir, Y: b.cursor - d.Height})
	x, face := margin+b.Width()-verdictWidth, drawing.Regular
	if r.Wrong {
		face = drawing.Bold
	}
	mark(&b.page.Drawing, geom.Point{X: x, Y: b.cursor - rowText}, r.Wrong)
	for i, s := range []string{r.Verdict, r.Odds} {
		b.page.Words(x+markWidth, b.cursor-rowText-float64(rowLeading*rowText*float64(i)), rowText, face, s)
	}
	b.cursor -= r.height(left) - rowGap/2
	b.forecastRule()
}

// mark draws a check or, of what is wrong, a cross, on a line of letters.
func mark(d *drawing.Drawing, at geom.Point, wrong bool) {
	pen := drawing.Pen{Width: 0.45, Ink: 1}
	place := func(x, y float64) geom.Point { return at.Add(geom.Point{X: x, Y: y}) }
	if wrong {
		d.Line(pen, place(0.3, 0), place(2.3, 2))
		d.Line(pen, place(0.3, 2), place(2.3, 0))
		return
	}
	d.Line(pen, place(0.2, 1), place(1, 0.1), place(2.5, 2))
}
