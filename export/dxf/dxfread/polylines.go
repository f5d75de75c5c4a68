package dxfread

import (
	"strconv"
)

// closedFlag is the bit of a polyline's group 70 that closes it.
const closedFlag = 1

// lwpolyline reads an LWPOLYLINE: 90 how many vertices, 70 flags, 38 height, and
// of each vertex 10 and 20 where it is and 42 its bulge.
func (r *reader) lwpolyline(e *Entity) {
	d := newDrawn()
	r.path = r.path[:0]
	stated, flags, open := -1, 0, false // open: a vertex that waits for its y
	for r.nextGroup() {
		switch r.code {
		case 10:
			if open {
				r.fail(ErrIncomplete, 0, "group 10 where the 20 of another belongs")
			}
			r.path = append(r.path, Vertex{X: r.real()})
			open = true
		case 20:
			if !open {
				r.fail(ErrIncomplete, 0, "group 20 without the 10 before it")
				return
			}
			r.path[len(r.path)-1].Y = r.real()
			open = false
		case 42:
			if len(r.path) == 0 {
				r.fail(ErrIncomplete, 0, "group 42 before any vertex")
				return
			}
			r.path[len(r.path)-1].Bulge = r.real()
		case 70:
			flags = r.whole()
		case 90:
			stated = r.whole()
		default:
			r.common(&d)
		}
	}
	if open {
		r.failAt(ErrIncomplete, e.Line, "LWPOLYLINE whose last vertex has no group 20")
	}
	if n := len(r.path); stated >= 0 && stated != n {
		r.failAt(ErrIncomplete, e.Line,
			"LWPOLYLINE that states "+strconv.Itoa(stated)+" vertices and has "+strconv.Itoa(n))
	}
	e.Closed = flags&closedFlag != 0
	e.Vertices = r.kept()
	r.finish(e, &d, false)
}

// The bits of a POLYLINE's group 70 and of a VERTEX's that are looked at.
const (
	spatialFlag = 8       // of a POLYLINE in space
	meshFlags   = 16 | 64 // of the two meshes that are stored as a POLYLINE
	frameFlag   = 16      // of a VERTEX that shapes a smoothed polyline and is not on it
)

// polyline reads a POLYLINE and the VERTEX records after it, up to SEQEND. Its
// own groups 10 and 20 say nothing.
func (r *reader) polyline(e *Entity) {
	d := newDrawn()
	flags := 0
	for r.nextGroup() {
		if r.code == 70 {
			flags = r.whole()
			continue
		}
		r.common(&d)
	}
	mesh := flags&meshFlags != 0
	r.path = r.path[:0]
	for r.err == nil {
		word := r.word()
		if word == "SEQEND" {
			break
		}
		if word != "VERTEX" {
			r.fail(ErrIncomplete, 0,
				shown([]byte(word))+" before the SEQEND of the POLYLINE in line "+strconv.Itoa(e.Line))
			return
		}
		if mesh {
			r.passOver()
			continue
		}
		r.vertex(&d)
	}
	r.passOver()
	if mesh {
		e.Layer, e.Paper = r.layers.of(d.layer), d.paper
		return
	}
	e.Closed = flags&closedFlag != 0
	e.Vertices = r.kept()
	r.finish(e, &d, flags&spatialFlag != 0)
}

// vertex reads a VERTEX: 10, 20 and 30 where it is, 42 its bulge, 70 flags.
func (r *reader) vertex(d *drawn) {
	line := r.line
	var v Vertex
	flags, x, y := 0, false, false
	for r.nextGroup() {
		switch r.code {
		case 10:
			v.X, x = r.real(), true
		case 20:
			v.Y, y = r.real(), true
		case 30:
			r.common(d)
		case 42:
			v.Bulge = r.real()
		case 70:
			flags = r.whole()
		}
	}
	if !x || !y {
		r.failAt(ErrIncomplete, line, "VERTEX without group 10 or 20")
	}
	if flags&frameFlag == 0 {
		r.path = append(r.path, v)
	}
}

// kept is the path that was read, for good. Paths share rooms: most have a few corners.
func (r *reader) kept() []Vertex {
	if len(r.path) == 0 {
		return nil
	}
	if n := len(r.path); cap(r.room)-len(r.room) < n {
		r.room = make([]Vertex, 0, max(n, roomSize))
	}
	from := len(r.room)
	r.room = append(r.room, r.path...)
	return r.room[from:len(r.room):len(r.room)]
}

// roomSize is how many corners are kept together.
const roomSize = 512
