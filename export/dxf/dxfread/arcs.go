package dxfread

import (
	"math"
	"strconv"
)

// The numbers of a circle, a line or an arc, by group code: 10, 20 center or
// start, 11, 21 end, 40 radius, 50, 51 angles in degrees.
const (
	group10 = iota
	group20
	group11
	group21
	group40
	group50
	group51
	groups
)

var groupCodes = [groups]int{10, 20, 11, 21, 40, 50, 51}

// numbers reads the numbers of an entity, each of which it must have.
func (r *reader) numbers(e *Entity, d *drawn, needed ...int) [groups]float64 {
	var v [groups]float64
	var has [groups]bool
	for r.nextGroup() {
		which := groups
		for _, n := range needed {
			if r.code == groupCodes[n] {
				which = n
			}
		}
		if which == groups {
			r.common(d)
			continue
		}
		v[which], has[which] = r.real(), true
	}
	for _, n := range needed {
		if !has[n] {
			r.failAt(ErrIncomplete, e.Line, e.Type+" without group "+strconv.Itoa(groupCodes[n]))
		}
	}
	return v
}

// circle reads a CIRCLE.
func (r *reader) circle(e *Entity) {
	d := newDrawn()
	v := r.numbers(e, &d, group10, group20, group40)
	e.Closed = true
	e.X, e.Y, e.Radius = v[group10], v[group20], v[group40]
	r.finish(e, &d, false)
}

// straight reads a LINE.
func (r *reader) straight(e *Entity) {
	d := newDrawn()
	v := r.numbers(e, &d, group10, group20, group11, group21)
	e.Vertices = []Vertex{{X: v[group10], Y: v[group20]}, {X: v[group11], Y: v[group21]}}
	r.finish(e, &d, true)
}

// arc reads an ARC, which runs counter-clockwise from its first angle to its
// second. Where they are the same it runs all the way round.
func (r *reader) arc(e *Entity) {
	d := newDrawn()
	v := r.numbers(e, &d, group10, group20, group40, group50, group51)
	e.X, e.Y, e.Radius = v[group10], v[group20], v[group40]
	start, end := math.Mod(v[group50], 360), math.Mod(v[group51], 360)
	sweep := math.Mod(end-start, 360)
	if sweep <= 0 {
		sweep += 360
	}
	if sweep >= 360 {
		e.Closed = true
		e.Vertices = []Vertex{e.onArc(start, 1), e.onArc(start+180, 1)}
	} else {
		e.Vertices = []Vertex{e.onArc(start, math.Tan(sweep/4*(math.Pi/180))), e.onArc(end, 0)}
	}
	for _, p := range e.Vertices {
		if !finite(p.X) || !finite(p.Y) {
			r.failAt(ErrNumber, e.Line, "ARC that reaches beyond every number")
		}
	}
	r.finish(e, &d, false)
}

// onArc gives the point of an arc at an angle in degrees.
func (e *Entity) onArc(degrees, bulge float64) Vertex {
	sin, cos := sincos(degrees)
	return Vertex{X: e.X + float64(e.Radius*cos), Y: e.Y + float64(e.Radius*sin), Bulge: bulge}
}

// sincos gives the sine and the cosine of an angle in degrees, those of quarter
// turns without error.
func sincos(degrees float64) (sin, cos float64) {
	quarters := math.Round(degrees / 90)
	sin, cos = math.Sincos((degrees - float64(90*quarters)) * (math.Pi / 180))
	switch (int(quarters)%4 + 4) % 4 {
	case 1:
		return cos, -sin
	case 2:
		return -sin, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}
