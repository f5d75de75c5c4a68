package paper

import (
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// chord is how far, in mm, a section's chords may be off an arc.
const chord = 0.01

// profiles are the outlines of what a line across a panel shows: along it first, then
// over the outside face. Runs that touch are one.
func profiles(runs []geom.Run, thickness float64) (loops []geom.Loop) {
	for i := 0; i < len(runs); {
		n := i + 1
		for n < len(runs) && runs[n].Min == runs[n-1].Max {
			n++
		}
		var l geom.Loop
		for _, r := range runs[i:n] {
			low := r.Wood(thickness).Min
			l = append(l, geom.Polygon(geom.Point{X: r.Min, Y: low}, geom.Point{X: r.Max, Y: low})...)
		}
		for _, r := range slices.Backward(runs[i:n]) {
			high := r.Wood(thickness).Max
			l = append(l, geom.Polygon(geom.Point{X: r.Max, Y: high}, geom.Point{X: r.Min, Y: high})...)
		}
		loops = append(loops, l)
		i = n
	}
	return loops
}

// hatching is the distance between the hatching lines of wood that is cut through, in mm.
const hatching = 1.8

// hatch draws lines at 45 degrees in a loop of straight sides, rising or falling.
func hatch(d *drawing.Drawing, l geom.Loop, falling bool) {
	turn := func(p geom.Point) geom.Point { // along the lines and across them
		if falling {
			return geom.Point{X: p.X - p.Y, Y: p.X + p.Y}
		}
		return geom.Point{X: p.X + p.Y, Y: p.Y - p.X}
	}
	back := func(along, across float64) geom.Point {
		if falling {
			return geom.Point{X: (along + across) / 2, Y: (across - along) / 2}
		}
		return geom.Point{X: (along - across) / 2, Y: (along + across) / 2}
	}
	turned := make(geom.Ring, len(l))
	for i, v := range l {
		turned[i] = turn(v.Point)
	}
	span := turned.Bounds().Upright()
	const step = hatching * 1.4142
	var lines [][]geom.Vertex
	var crosses []float64
	for n := int(span.Min/step) - 1; float64(float64(n)*step) < span.Max; n++ {
		at := float64(n)*step + step/3
		crosses = turned.Crossings(crosses[:0], geom.AlongX, at)
		for i := 0; i+1 < len(crosses); i += 2 {
			lines = append(lines, []geom.Vertex{{Point: back(crosses[i], at)}, {Point: back(crosses[i+1], at)}})
		}
	}
	d.Lines(drawing.Hatch, lines...)
}
