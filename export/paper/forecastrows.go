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

// rowLook is how rows look that have some room: their words at the left of the drawing and the verdict at its right,
// or, where that is too little, all below each other.
type rowLook struct {
	look
	left   float64 // for the words
	narrow bool
}

// leastLeft is the least room for the words at the left of a drawing, in mm.
const leastLeft = 50.0

func (b *Book) rowLook() rowLook {
	l := rowLook{look: onPaper, left: b.Width() - onPaper.wide - verdictWidth - 2*rowAir}
	if l.left < leastLeft {
		l.narrow, l.left = true, b.Width()
		l.wide = min(l.wide, b.Width())
	}
	return l
}

// Forecasts draws forecasts below each other, under a line that says what their signs are. Both come
// again on every page.
func (b *Book) Forecasts(rows []ForecastRow) {
	if len(rows) == 0 {
		return
	}
	l := b.rowLook()
	b.Keep(rows[0].height(l) + 12)
	b.forecastKey()
	for i, r := range rows {
		high := r.height(l)
		if i > 0 && i == len(rows)-2 { // the last does not stand on its page alone
			high += rows[i+1].height(l) + 0.01 // whatever sums round to
		}
		if b.Room() < high {
			b.Page()
			b.forecastKey()
		}
		b.forecastRow(r, l)
	}
	b.Space(b.Gap(AfterTable))
}

// forecastKey says what the signs are.
func (b *Book) forecastKey() {
	const toWord, toNext = 1.0, 4.0
	x := b.left()
	for _, s := range ForecastSigns() {
		wide := s.Width + toWord + drawing.Width(drawing.Regular, rowText, s.Word)
		if x > b.left() && x+wide > b.left()+b.Width() {
			x = b.left()
			b.Space(s.Height + 1)
		}
		b.put(s.Drawing, geom.Point{X: x, Y: b.cursor - s.Height})
		b.page.Words(x+s.Width+toWord, b.cursor-s.Height/2-0.36*rowText, rowText, drawing.Regular, s.Word)
		x += wide + toNext
	}
	b.Space(ForecastSigns()[0].Height + 1)
	b.forecastRule()
}

func (b *Book) forecastRule() {
	b.page.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{X: b.left(), Y: b.cursor},
		geom.Point{X: b.left() + b.Width(), Y: b.cursor})
	b.cursor -= rowGap / 2
}

// said is a paragraph of a row.
type said struct {
	text string
	face drawing.Face
}

// words are the paragraphs of a row, from above.
func (r ForecastRow) words() []said {
	return []said{{r.Name, drawing.Bold}, {r.Numbers, drawing.Regular}, {r.Help, drawing.Regular}}
}

// height is that of a row of a look.
func (r ForecastRow) height(l rowLook) float64 {
	lines := 0
	for _, s := range r.words() {
		lines += len(drawing.Wrap(s.face, rowText, l.left, s.text))
	}
	high, drawn := float64(rowLeading*rowText*float64(lines)), forecastHeight+l.rise
	if l.narrow {
		return high + drawn + float64(rowLeading*rowText*float64(len(r.verdict(l)))) + rowGap
	}
	return max(drawn, high) + rowGap
}

// verdict are the lines of the verdict and its odds.
func (r ForecastRow) verdict(l rowLook) []string {
	if l.narrow {
		return drawing.Wrap(r.verdictFace(), rowText, l.left-markWidth, r.Verdict+", "+r.Odds)
	}
	return []string{r.Verdict, r.Odds}
}

func (r ForecastRow) verdictFace() drawing.Face {
	if r.Wrong {
		return drawing.Bold
	}
	return drawing.Regular
}

func (b *Book) forecastRow(r ForecastRow, l rowLook) {
	y, end := b.cursor, b.cursor-r.height(l)+rowGap/2
	down := func(x float64, face drawing.Face, lines ...string) {
		for _, s := range lines {
			b.page.Words(x, y-rowText, rowText, face, s)
			y -= rowLeading * rowText
		}
	}
	for _, s := range r.words() {
		down(b.left(), s.face, drawing.Wrap(s.face, rowText, l.left, s.text)...)
	}
	d, at := r.drawn(l.look), geom.Point{X: b.left(), Y: y} // at is where the drawing is, then the verdict
	if !l.narrow {
		at = geom.Point{X: b.left() + l.left + rowAir, Y: b.cursor}
	}
	b.put(d, at.Sub(geom.Point{Y: d.Height}))
	if l.narrow {
		at.Y -= d.Height
	} else {
		at.X += d.Width + rowAir
	}
	y = at.Y
	mark(&b.page.Drawing, geom.Point{X: at.X, Y: y - rowText}, r.Wrong)
	down(at.X+markWidth, r.verdictFace(), r.verdict(l)...)
	b.cursor = end
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
