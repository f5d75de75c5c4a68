package paper

import (
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// chord is how far, in mm, a section's chords may be off an arc.
const chord = 0.01

// run is a stretch of a panel on a line across it, with what is cut from both faces.
type run struct {
	from, to        float64
	inside, outside float64 // depths
}

// low and high are the heights over the outside face between which a run is wood.
func (r run) heights(thickness float64) (low, high float64) {
	return r.outside, thickness - r.inside
}

// runsOf cuts a panel along the line y = at, or x = at with upright, into stretches
// of one depth each. What is cut through is left out.
func runsOf(p geom.Panel, upright bool, at float64) (runs []run) {
	type ring struct {
		points  []geom.Point
		crosses []float64
	}
	var places []float64
	lay := func(l geom.Loop) ring {
		r := ring{points: l.Flatten(chord)}
		for i, a := range r.points {
			b := r.points[(i+1)%len(r.points)]
			u, v, s, t := a.Y, b.Y, a.X, b.X
			if upright {
				u, v, s, t = a.X, b.X, a.Y, b.Y
			}
			if (u > at) != (v > at) {
				r.crosses = append(r.crosses, s+float64((at-u)/(v-u)*(t-s)))
			}
		}
		slices.Sort(r.crosses)
		places = append(places, r.crosses...)
		return r
	}
	within := func(r ring, s float64) bool {
		n, _ := slices.BinarySearch(r.crosses, s)
		return n%2 == 1
	}
	outline := lay(p.Outline)
	var holes, pockets []ring
	for _, h := range p.Holes {
		holes = append(holes, lay(h))
	}
	for _, k := range p.Pockets {
		pockets = append(pockets, lay(k.Outline))
	}
	slices.Sort(places)
	for i := range len(places) - 1 {
		r := run{from: places[i], to: places[i+1]}
		middle := (r.from + r.to) / 2
		if r.to-r.from < chord || !within(outline, middle) || slices.ContainsFunc(holes, func(h ring) bool { return within(h, middle) }) {
			continue
		}
		for i, k := range p.Pockets {
			if !within(pockets[i], middle) {
				continue
			}
			if k.Face == geom.Inside {
				r.inside = max(r.inside, k.Depth)
			} else {
				r.outside = max(r.outside, k.Depth)
			}
		}
		if r.inside+r.outside >= p.Thickness-chord {
			continue
		}
		if n := len(runs) - 1; n >= 0 && runs[n].to == r.from && runs[n].inside == r.inside && runs[n].outside == r.outside {
			runs[n].to = r.to
			continue
		}
		runs = append(runs, r)
	}
	return runs
}

// profiles are the outlines of what a line across a panel shows: along it first, then
// over the outside face. Runs that touch are one.
func profiles(runs []run, thickness float64) (loops []geom.Loop) {
	for i := 0; i < len(runs); {
		n := i + 1
		for n < len(runs) && runs[n].from == runs[n-1].to {
			n++
		}
		var l geom.Loop
		for _, r := range runs[i:n] {
			low, _ := r.heights(thickness)
			l = append(l, geom.Polygon(geom.Point{X: r.from, Y: low}, geom.Point{X: r.to, Y: low})...)
		}
		for _, r := range slices.Backward(runs[i:n]) {
			_, high := r.heights(thickness)
			l = append(l, geom.Polygon(geom.Point{X: r.to, Y: high}, geom.Point{X: r.from, Y: high})...)
		}
		loops = append(loops, l)
		i = n
	}
	return loops
}

// Hatching of wood that is cut through: distance of its lines, in mm.
const hatching = 1.4

var hatchPen = drawing.Pen{Width: 0.1, Ink: 0.7}

// hatch draws lines at 45 degrees in a loop of straight sides, rising or falling.
func hatch(d *drawing.Drawing, l geom.Loop, falling bool) {
	turn := func(p geom.Point) (along, across float64) {
		if falling {
			return p.X - p.Y, p.X + p.Y
		}
		return p.X + p.Y, p.Y - p.X
	}
	back := func(along, across float64) geom.Point {
		if falling {
			return geom.Point{X: (along + across) / 2, Y: (across - along) / 2}
		}
		return geom.Point{X: (along - across) / 2, Y: (along + across) / 2}
	}
	low, high := 0.0, 0.0
	for i, v := range l {
		_, across := turn(v.Point)
		if i == 0 {
			low, high = across, across
		}
		low, high = min(low, across), max(high, across)
	}
	const step = hatching * 1.4142
	for n := int(low/step) - 1; float64(float64(n)*step) < high; n++ {
		at := float64(n)*step + step/3
		var crosses []float64
		for i, a := range l {
			b := l[(i+1)%len(l)]
			s, u := turn(a.Point)
			t, v := turn(b.Point)
			if (u > at) != (v > at) {
				crosses = append(crosses, s+float64((at-u)/(v-u)*(t-s)))
			}
		}
		slices.Sort(crosses)
		for i := 0; i+1 < len(crosses); i += 2 {
			d.Line(hatchPen, back(crosses[i], at), back(crosses[i+1], at))
		}
	}
}
