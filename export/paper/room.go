package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"
)

// room knows what of a drawing is taken, so that words can be put where they touch nothing.
type room struct {
	within  geom.Rect
	sides   near[picture.Segment]
	boxes   near[geom.Rect] // of words
	things  near[geom.Rect] // on which no name stands, though leaders go over them
	far     float64         // from what it names a name is at most, in mm
	ways    []geom.Point
	leaders near[picture.Segment]
	crossed bool // leaders may cross others
}

// roomOf is what is left between the lines and the words of a drawing.
func roomOf(d drawing.Drawing) *room {
	r := &room{within: geom.Rect{Max: geom.Point{X: d.Width, Y: d.Height}}, far: farthest, ways: ways}
	for _, s := range d.Shapes {
		if s.Pen.Width == 0 {
			continue
		}
		for _, p := range s.Paths {
			r.path(p, s.Closed)
		}
	}
	for _, t := range d.Texts {
		r.taken(t.Box())
	}
	return r
}

// taken takes what is written.
func (r *room) taken(box geom.Rect) { r.boxes.add(box, box) }

// line adds a straight line to others.
func line(to *near[picture.Segment], a, b geom.Point) {
	to.add(picture.Segment{A: a, B: b}, geom.Around(a, b))
}

// path takes the sides of a chain, its arcs in chords.
func (r *room) path(p []geom.Vertex, closed bool) {
	const within = 0.05 // mm on paper
	for i, v := range p {
		if i+1 == len(p) && !closed {
			return
		}
		next := p[(i+1)%len(p)].Point
		if v.Bulge == 0 {
			line(&r.sides, v.Point, next)
			continue
		}
		chords := geom.Loop{v, {Point: next}}.Flatten(within)
		for k := range len(chords) - 1 {
			line(&r.sides, chords[k], chords[k+1])
		}
	}
}

// clear reports whether a rectangle is on the drawing and touches nothing of it.
func (r *room) clear(b geom.Rect) bool {
	if !r.within.Contains(b) {
		return false
	}
	return !r.boxes.any(b, b.Overlaps) && !r.things.any(b, b.Overlaps) &&
		!r.sides.any(b, func(s picture.Segment) bool { return meets(s.A, s.B, b) })
}

// free reports whether a leader runs through no words and over no other leader.
func (r *room) free(from, to geom.Point) bool {
	about := geom.Around(from, to)
	return !r.boxes.any(about, func(taken geom.Rect) bool { return meets(from, to, taken) }) &&
		(r.crossed || !r.leaders.any(about, picture.Segment{A: from, B: to}.Crosses))
}

// meets reports whether a straight line from a to b has a part in a rectangle: it is cut
// to the rectangle's sides one after the other (Y.-D. Liang, B. A. Barsky, A New Concept
// and Method for Line Clipping, 1984, from memory).
func meets(a, b geom.Point, box geom.Rect) bool {
	if max(a.X, b.X) < box.Min.X || min(a.X, b.X) > box.Max.X || // most are far away
		max(a.Y, b.Y) < box.Min.Y || min(a.Y, b.Y) > box.Max.Y {
		return false
	}
	on := geom.Interval{Min: 0, Max: 1}
	for _, k := range [4][2]float64{
		{a.X - b.X, a.X - box.Min.X}, {b.X - a.X, box.Max.X - a.X},
		{a.Y - b.Y, a.Y - box.Min.Y}, {b.Y - a.Y, box.Max.Y - a.Y},
	} {
		switch by, room := k[0], k[1]; {
		case by == 0 && room < 0:
			return false
		case by < 0:
			on.Min = max(on.Min, room/by)
		case by > 0:
			on.Max = min(on.Max, room/by)
		}
	}
	return on.Min < on.Max
}

// Distances of a name from what it names, in mm: at most so far unless a drawing has it otherwise, tried in such steps;
// beyond the first it has a leader.
const (
	nearest  = 0.8
	farthest = 26.0
	farStep  = 1.6
)

// ways lead away from a place: along the sheet's edges and between them.
var ways = []geom.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1},
	{X: 0.8, Y: 0.6}, {X: -0.8, Y: 0.6}, {X: -0.8, Y: -0.6}, {X: 0.8, Y: -0.6},
	{X: 0.6, Y: 0.8}, {X: -0.6, Y: 0.8}, {X: -0.6, Y: -0.8}, {X: 0.6, Y: -0.8},
	{X: 0.96, Y: 0.28}, {X: -0.96, Y: 0.28}, {X: -0.96, Y: -0.28}, {X: 0.96, Y: -0.28},
	{X: 0.28, Y: 0.96}, {X: -0.28, Y: 0.96}, {X: -0.28, Y: -0.96}, {X: 0.28, Y: -0.96}}

// name writes a word of a size as near as there is room to one of some places, which have a clear
// distance about them; a leader goes to it where it is not close. It gives the place, if there was room.
func (r *room) name(d *drawing.Drawing, word string, size float64, places []geom.Point, about float64) (
	place geom.Point, found bool) {
	t := drawing.Text{String: word, Size: size, Face: drawing.Bold, Align: drawing.Middle}
	own := t.Box()
	half := geom.Point{X: own.Width() / 2, Y: own.Height() / 2}
	for far := nearest; far < r.far; far += farStep {
		for _, at := range places {
			for _, way := range r.ways {
				reach := about + far + min(half.X/max(math.Abs(way.X), 1e-9), half.Y/max(math.Abs(way.Y), 1e-9))
				c := at.Along(way, reach)
				box := geom.Rect{Min: c.Sub(half), Max: c.Add(half)}.Grow(0.3)
				from := at.Along(way, about)
				to := at.Along(way, about+far-0.5)
				leads := far > nearest
				if !r.clear(box) || leads && !r.free(from, to) {
					continue
				}
				if leads {
					d.Line(drawing.Thin, from, to)
					line(&r.sides, from, to)
					line(&r.leaders, from, to)
				}
				t.At = geom.Point{X: c.X, Y: c.Y - own.Center().Y}
				d.Write(t)
				r.taken(box)
				return at, true
			}
		}
	}
	return place, false
}
