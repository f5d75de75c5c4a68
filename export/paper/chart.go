package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Chart is a control chart: values in their order, about a mean, between limits of three standard deviations either
// way. Marked are those that a rule names.
type Chart struct {
	Title, Said string    // what it is of, and what it tells
	Values      []float64 // mm
	Mean, Sigma float64
	Marked      map[int]bool
	Unit        geom.Unit
}

// WholeChart is the size of a chart by itself, in mm, SmallChart of one that stands beside another on a page.
var WholeChart, SmallChart = geom.Point{X: 160, Y: 60}, geom.Point{X: 86, Y: 36}

// The drawing of a chart, in mm: the room for its title and for the numbers beside it, and its dots.
const (
	chartTitle, chartNumbers   = 10.0, 24.0
	chartDot, chartRing        = 0.8, 1.8
	chartLimits                = 3.0
	chartLetters, chartHeading = 3.2, 4.0
)

// Draw draws it as large as a size.
func (c Chart) Draw(size geom.Point) drawing.Drawing {
	d := drawing.Drawing{Width: size.X, Height: size.Y, Alt: c.Title}
	reach := chartLimits * c.Sigma
	for _, v := range c.Values {
		reach = math.Max(reach, math.Abs(v-c.Mean))
	}
	reach = math.Max(reach, c.Unit.Step()) * 1.1
	middle := (size.Y - chartTitle) / 2
	high := func(v float64) float64 { return middle + float64((v-c.Mean)/reach*middle) }
	end := size.X - chartNumbers
	for i, pen := range []drawing.Pen{drawing.Hidden, drawing.Thin, drawing.Hidden} {
		v := c.Mean + float64((float64(i)-1)*chartLimits*c.Sigma)
		d.Line(pen, geom.Point{Y: high(v)}, geom.Point{X: end, Y: high(v)})
		d.Words(end+1.5, high(v)-1, chartLetters, drawing.Regular, geom.LengthOf(v).Fixed(c.Unit)+" "+c.Unit.String())
	}
	var line []geom.Point
	for i, v := range c.Values {
		line = append(line, geom.Point{X: end * (float64(i) + 0.5) / float64(len(c.Values)), Y: high(v)})
	}
	d.Line(drawing.Medium, line...)
	for i, at := range line {
		d.Loops(drawing.Pen{}, 1, geom.Circle(at, chartDot))
		if c.Marked[i] {
			d.Loops(drawing.Medium, 0, geom.Circle(at, chartRing))
		}
	}
	d.Words(0, size.Y-chartHeading, chartHeading, drawing.Bold, c.Title)
	d.Words(0, size.Y-chartHeading-chartLetters-1, chartLetters, drawing.Regular, c.Said)
	return d
}
