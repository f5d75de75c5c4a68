package dxfread

import "math"

// entityText is what a polyline of some corners takes at least, in bytes: by it the list of entities gets its
// room.
const entityText = 200

// entities reads the ENTITIES section.
func (r *reader) entities() {
	if r.begun != 0 {
		r.fail(ErrSections, 1, "a second ENTITIES section")
	}
	r.begun = r.at
	r.passOver()
	for {
		word := r.record("ENTITIES")
		if word == "" {
			return
		}
		if r.file.Entities == nil {
			r.file.Entities = make([]Entity, 0, (len(r.data)-r.at)/entityText+1)
		}
		r.file.Entities = append(r.file.Entities, Entity{Type: word, Line: r.line})
		e := &r.file.Entities[len(r.file.Entities)-1]
		switch word {
		case "LWPOLYLINE":
			r.lwpolyline(e)
		case "POLYLINE":
			r.polyline(e)
		case "CIRCLE":
			r.circle(e)
		case "LINE":
			r.straight(e)
		case "ARC":
			r.arc(e)
		case "VERTEX", "SEQEND":
			r.fail(ErrIncomplete, 0, word+" without the POLYLINE before it")
		default:
			r.other(e)
		}
	}
}

// drawn is what entities of all kinds have.
type drawn struct {
	layer     []byte
	paper     bool
	low, high float64 // of the heights; low is more than high where there are none
	thickness float64
	normal    [3]float64 // the extrusion direction
}

func newDrawn() drawn {
	return drawn{low: math.Inf(1), high: math.Inf(-1), normal: [3]float64{0, 0, 1}}
}

// common reads the last pair if it is one that entities of all kinds have: 8
// layer, 30, 31 and 38 heights, 39 thickness, 67 on paper, 210 to 230 extrusion
// direction.
func (r *reader) common(d *drawn) {
	switch r.code {
	case 8:
		d.layer = r.value
	case 30, 31, 38:
		z := r.real()
		d.low, d.high = min(d.low, z), max(d.high, z)
	case 39:
		d.thickness = r.real()
	case 67:
		d.paper = r.whole() != 0
	case 210, 220, 230:
		d.normal[(r.code-210)/10] = r.real()
	}
}

// finish sets what entities of all kinds have. The coordinates of some kinds are
// the drawing's own (world) wherever the extrusion direction points; those of
// all others lie in a plane across it, whose x axis points left in the drawing
// where it points down.
func (r *reader) finish(e *Entity, d *drawn, world bool) {
	e.Layer, e.Paper = r.layers.of(d.layer), d.paper
	level := d.normal[0] == 0 && d.normal[1] == 0 && d.normal[2] != 0
	down := level && d.normal[2] < 0
	thickness := d.thickness
	if world && down {
		thickness = -thickness
	}
	if e.Thickness = thickness; d.low <= d.high {
		e.Low, e.High = d.low, d.high
	}
	e.Tilted = !level && (!world || thickness != 0)
	if down && !world {
		e.mirror()
	}
	if !finite(e.Low+thickness) || !finite(e.High+thickness) {
		r.failAt(ErrNumber, e.Line, e.Type+" with height and thickness beyond every number")
	}
}

// mirror turns an entity whose x axis points left, and whose heights go down.
func (e *Entity) mirror() {
	e.X, e.Low, e.High, e.Thickness = 0-e.X, 0-e.High, 0-e.Low, 0-e.Thickness
	for i, v := range e.Vertices {
		e.Vertices[i].X, e.Vertices[i].Bulge = 0-v.X, 0-v.Bulge
	}
}

// other reads an entity of a kind that is not known, up to the next one. The
// ATTRIB records of an INSERT and their SEQEND belong to it.
func (r *reader) other(e *Entity) {
	for r.nextGroup() {
		switch {
		case r.code == 8 && e.Layer == "":
			e.Layer = r.layers.of(r.value)
		case r.code == 67 && !e.Paper:
			onPaper, _ := whole(trim(r.value)) // 0 where it is no number
			e.Paper = onPaper != 0
		}
	}
	if e.Type != "INSERT" {
		return
	}
	for r.err == nil && r.word() == "ATTRIB" {
		r.passOver()
	}
	if r.err == nil && r.word() == "SEQEND" {
		r.passOver()
	}
}
