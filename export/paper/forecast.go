package paper

import (
	"math"
	"strconv"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Forecast is what a measure of a finished box comes out as, in mm: as the cuts are set,
// between what nearly all boxes are, and the worst case, beside what is right. Below and Above
// are words for what is smaller and greater than that.
type Forecast struct {
	Set                  float64
	Right, Likely, Worst geom.Interval
	Below, Above         string
	Unit                 geom.Unit // of the numbers along the axis
}

// Roles of the shapes and texts of a forecast.
const (
	RoleRight  = "right"  // the band of what is right
	RoleLimit  = "limit"  // an end of the band
	RoleWorst  = "worst"  // the whisker and its two ends
	RoleLikely = "likely" // the bar of what is likely and right
	RoleWrong  = "wrong"  // a bar of what is likely and not right; RoleHatch are lines in it
	RoleHatch  = "hatch"
	RoleSet    = "set" // the mark of the measure as set
	RoleAxis   = "axis"
	RoleTick   = "tick"
	RoleNumber = "number" // of a tick
	RoleWord   = "word"   // for what is below the band or above it
)

// The drawing of a forecast, in mm: heights from its lower edge.
const (
	forecastHeight = 9.6
	axisLine       = 3.7
	bandTop        = 9.4
	barMiddle      = 6.1
	barHalf        = 1.3
)

// look is how large a forecast is drawn, in mm: its width and the room for the words at either end, the size of its
// letters, the line of the numbers along the axis, and by how much all lies higher for them.
type look struct{ wide, words, letters, numbers, rise float64 }

// Looks of a forecast: on a screen, and on paper with capitals of 2.5 mm. Words have room for the longest, recessed.
var (
	onScreen = look{wide: 84, words: 14, letters: 2.8, numbers: 0.6}
	onPaper  = look{wide: 61, words: 16, letters: caption, numbers: 0.35, rise: 0.4}
)

// aroundRight is how much of an axis either side of what is right takes where nothing asks for
// more, as a part of what is right: then all bands stand in one line.
const aroundRight = 0.5

// axis has the places of lengths, in mm.
type axis struct {
	shown geom.Interval // lengths
	from  float64       // the place of the least
	scale float64
	look
}

func (a axis) at(mm float64) float64 { return a.from + float64((mm-a.shown.Min)*a.scale) }

// axis is that of a forecast, on which all of it is.
func (f Forecast) axis(l look) axis {
	all := geom.Interval{Min: min(f.Right.Min, f.Likely.Min, f.Worst.Min, f.Set),
		Max: max(f.Right.Max, f.Likely.Max, f.Worst.Max, f.Set)}
	shown := f.Right.Grow(float64(f.Right.Len() * aroundRight))
	if all.Min < shown.Min || all.Max > shown.Max {
		shown = all.Grow(float64(all.Len() * 0.03))
	}
	if shown.Len() < f.Unit.Step() { // all is one length
		shown = shown.Grow(f.Unit.Step())
	}
	return axis{shown, l.words, (l.wide - 2*l.words) / shown.Len(), l}
}

// Draw draws a forecast for a screen: a band for what is right, a bar for what is likely, hatched where it
// leaves the band, whiskers to the worst case, a mark for the measure as set, and an axis
// with numbers.
func (f Forecast) Draw() drawing.Drawing { return f.drawn(onScreen) }

func (f Forecast) drawn(l look) drawing.Drawing {
	var d drawing.Drawing
	a := f.axis(l)
	band(&d, geom.Interval{Min: a.at(f.Right.Min), Max: a.at(f.Right.Max)})
	f.ticks(&d, a)
	whisker(&d, geom.Interval{Min: a.at(f.Worst.Min), Max: a.at(f.Worst.Max)})
	for _, p := range f.bars() {
		bar(&d, geom.Interval{Min: a.at(p.span.Min), Max: a.at(p.span.Max)}, p.role)
	}
	setMark(&d, a.at(f.Set))
	const toAxis = 1.2 // from a word
	word := drawing.Text{Size: l.letters, Ink: 1, Role: RoleWord}
	word.At.Y = barMiddle - 0.36*l.letters // half of a capital
	word.String, word.At.X, word.Align = f.Below, l.words-toAxis, drawing.Right
	d.Write(word)
	word.String, word.At.X, word.Align = f.Above, l.wide-l.words+toAxis, drawing.Left
	d.Write(word)
	out := drawing.Drawing{Width: l.wide, Height: forecastHeight + l.rise}
	out.Add(d, geom.Point{Y: l.rise}, 1)
	return out
}

// part is a part of what is likely: right, or not.
type part struct {
	span geom.Interval // lengths
	role string
}

// bars are the parts of what is likely.
func (f Forecast) bars() (list []part) {
	if f.Likely.Len() <= 0 { // nothing is off
		if f.Right.Contains(f.Likely.Min) {
			return []part{{f.Likely, RoleLikely}}
		}
		return []part{{f.Likely, RoleWrong}}
	}
	for _, p := range []part{
		{geom.Interval{Min: f.Likely.Min, Max: min(f.Likely.Max, f.Right.Min)}, RoleWrong},
		{f.Likely.Intersect(f.Right), RoleLikely},
		{geom.Interval{Min: max(f.Likely.Min, f.Right.Max), Max: f.Likely.Max}, RoleWrong},
	} {
		if p.span.Len() > 0 {
			list = append(list, p)
		}
	}
	return list
}

// Pens and inks of a forecast; every role also has a shape of its own, so that none hangs on its gray.
var (
	limitPen   = drawing.Pen{Width: 0.35, Ink: 0.8}
	whiskerPen = drawing.Pen{Width: 0.25, Ink: 1}
	barPen     = drawing.Pen{Width: 0.2, Ink: 1}
)

const (
	bandInk drawing.Ink = 0.12
	barInk  drawing.Ink = 0.6
)

// band draws what is right, with a line at either end.
func band(d *drawing.Drawing, right geom.Interval) {
	d.Loops(drawing.Pen{}, bandInk, box(right, axisLine, bandTop))
	role(d, RoleRight)
	for _, x := range []float64{right.Min, right.Max} {
		upright(d, limitPen, x, geom.Interval{Min: axisLine, Max: bandTop}, RoleLimit)
	}
}

// whisker draws the line of the worst case with its ends.
func whisker(d *drawing.Drawing, worst geom.Interval) {
	d.Line(whiskerPen, geom.Point{X: worst.Min, Y: barMiddle}, geom.Point{X: worst.Max, Y: barMiddle})
	role(d, RoleWorst)
	for _, x := range []float64{worst.Min, worst.Max} {
		upright(d, whiskerPen, x, geom.Interval{Min: barMiddle - 0.9, Max: barMiddle + 0.9}, RoleWorst)
	}
}

// bar draws a part of what is likely.
func bar(d *drawing.Drawing, span geom.Interval, as string) {
	loop := box(span, barMiddle-barHalf, barMiddle+barHalf)
	if as == RoleLikely {
		d.Loops(barPen, barInk, loop)
		role(d, as)
		return
	}
	d.Loops(barPen, drawing.White, loop)
	role(d, as)
	before := len(d.Shapes)
	hatch(d, loop, false)
	for i := range d.Shapes[before:] {
		d.Shapes[before+i].Role = RoleHatch
	}
}

// setMark draws a triangle over the bar, its tip at a place.
func setMark(d *drawing.Drawing, x float64) {
	tip := barMiddle + barHalf + 0.2
	d.Loops(drawing.Pen{}, 1, geom.Polygon(geom.Point{X: x, Y: tip}, geom.Point{X: x + 0.9, Y: tip + 1.5},
		geom.Point{X: x - 0.9, Y: tip + 1.5}))
	role(d, RoleSet)
}

func (f Forecast) ticks(d *drawing.Drawing, a axis) {
	d.Line(drawing.Thin, geom.Point{X: a.from, Y: axisLine}, geom.Point{X: a.wide - a.from, Y: axisLine})
	role(d, RoleAxis)
	for _, t := range ticks(a, f.Unit) {
		x := a.at(t.mm)
		upright(d, drawing.Thin, x, geom.Interval{Min: axisLine - 0.8, Max: axisLine}, RoleTick)
		d.Write(drawing.Text{String: t.text, At: geom.Point{X: x, Y: a.numbers}, Size: a.letters,
			Align: drawing.Middle, Role: RoleNumber})
	}
}

// tick is a round length on an axis.
type tick struct {
	mm   float64
	text string
}

// betweenNumbers is the least that is left between two numbers of an axis, in mm.
const betweenNumbers = 1.5

// ticks are the round lengths of a unit on an axis, as many as there is room for the numbers of. Steps are
// 1, 2 or 5 in some place of decimals.
func ticks(a axis, u geom.Unit) []tick {
	for places := 4; ; places-- {
		for _, k := range []float64{1, 2, 5} {
			list, roomy := tried(a, u, k, places)
			if roomy {
				return list
			}
		}
	}
}

// tried are the ticks at whole multiples of k in a place of decimals, and whether their numbers
// have room.
func tried(a axis, u geom.Unit, k float64, places int) (list []tick, roomy bool) {
	step := float64(k*math.Pow10(-places)) * u.MM()
	apart := float64(step * a.scale)
	if apart < a.letters { // no number is as narrow
		return nil, false
	}
	const onIt = 1e-6 // of a step: rounding takes no tick off the ends of an axis
	from, to := math.Ceil(a.shown.Min/step-onIt), math.Floor(a.shown.Max/step+onIt)
	for n := from; n <= to; n++ {
		text := strconv.FormatFloat(float64(n*k)/math.Pow10(places)+0, 'f', max(places, 0), 64)
		if drawing.Width(drawing.Regular, a.letters, text)+betweenNumbers > apart {
			return nil, false
		}
		list = append(list, tick{float64(n * step), text})
	}
	return list, true
}

// box is an upright rectangle.
func box(across geom.Interval, low, high float64) geom.Loop {
	return geom.Rect{Min: geom.Point{X: across.Min, Y: low}, Max: geom.Point{X: across.Max, Y: high}}.Loop()
}

// upright draws an upright line.
func upright(d *drawing.Drawing, pen drawing.Pen, x float64, heights geom.Interval, as string) {
	d.Line(pen, geom.Point{X: x, Y: heights.Min}, geom.Point{X: x, Y: heights.Max})
	role(d, as)
}

// role gives the last shape its role.
func role(d *drawing.Drawing, as string) { d.Shapes[len(d.Shapes)-1].Role = as }

// Sign is a sign of forecasts with its word.
type Sign struct {
	Word string
	drawing.Drawing
}

// ForecastSigns are the signs of forecasts, as they look in them.
func ForecastSigns() (list []Sign) {
	const wide, white = 6.0, 0.3
	for _, s := range []struct {
		word string
		draw func(d *drawing.Drawing, at geom.Interval)
		low  float64 // by how much it is let down to its word
	}{
		{"right", band, 0},
		{"likely", func(d *drawing.Drawing, at geom.Interval) { bar(d, at, RoleLikely) }, 0},
		{"likely, not right", func(d *drawing.Drawing, at geom.Interval) { bar(d, at, RoleWrong) }, 0},
		{"worst", whisker, 0},
		{"as set", func(d *drawing.Drawing, at geom.Interval) { setMark(d, at.Max-1) }, 1.8},
	} {
		var d drawing.Drawing
		s.draw(&d, geom.Interval{Max: wide})
		sign := Sign{s.word, drawing.Drawing{Width: wide + 2*white, Height: bandTop - axisLine + 2*white}}
		sign.Add(d, geom.Point{X: white, Y: white - axisLine - s.low}, 1)
		list = append(list, sign)
	}
	return list
}
