package dxf

import (
	"math"
	"slices"
)

// Version is the version of the format that a drawing is written in.
type Version int

const (
	R2000 Version = iota // AC1015, polylines as LWPOLYLINE; the zero value
	R12                  // AC1009, polylines as POLYLINE, VERTEX and SEQEND, for the oldest readers
)

// Unit is what one drawing unit is.
type Unit int

const (
	Millimeter Unit = iota // the zero value
	Inch
)

// MaxCoordinate is the largest magnitude of a coordinate or a radius, in drawing
// units: a kilometer of millimeters, more than any sheet. It keeps every number
// of a file within the exact whole numbers of a float64 at six decimals.
const MaxCoordinate = 1e6

// MaxBulge is the largest magnitude of a bulge. One of 1e6 is an arc that lacks
// four millionths of a radian to the full circle.
const MaxBulge = 1e6

// Vertex is a corner of a polyline in drawing units, with the bulge of the edge
// to the next one: tan(included angle / 4), positive for an arc that runs
// counter-clockwise, 0 for a straight edge.
type Vertex struct{ X, Y, Bulge float64 }

// LayerID is a layer of one drawing. The zero LayerID is no layer.
type LayerID int

// Drawing collects layers, polylines and circles in the order in which they are
// drawn. The zero value is ready for use. Version, Unit and Comments may be set
// at any time before WriteTo. It must not be used by two goroutines at once.
type Drawing struct {
	Version  Version
	Unit     Unit
	Comments []string // written as lines at the head of the file, each on its own

	layers   []layer
	byName   map[string]LayerID // for look-up alone, never walked
	entities []entity
	nodes    []node
	circles  []circle
	levels   []level // other than 0 that things lie at
	at       level   // that of what is drawn next
	extents  box
	heights  heights
	err      error // the first of the calls so far, after which further ones do nothing
}

type layer struct {
	name  string
	color int
}

// entity is a polyline of nodes[first:first+count], or with count 0 the circle
// circles[first]; it lies at levels[level-1], or with level 0 at Z = 0.
type entity struct {
	layer        LayerID
	closed       bool
	level        int32
	first, count int
}

// Layer declares a layer, or finds the one of that name. The color is a number
// of the format's color index, 1 to 255, and the same at every call for one
// name. Names are checked by [ValidLayerName] for the version that is set now,
// and once more when the file is written. Errors: [ErrLayerName],
// [ErrLayerNameLong], [ErrLayerColor], [ErrColorClash].
//
// Every file has the layer "0" besides; it can be declared to draw on it.
func (d *Drawing) Layer(name string, color int) LayerID {
	if d.err != nil {
		return 0
	}
	fault := func(rule error) LayerID {
		d.err = &Error{Rule: rule, Layer: name, Entity: -1, Vertex: -1, Quantity: "color", Value: float64(color)}
		return 0
	}
	if id, ok := d.byName[name]; ok {
		if d.layers[id-1].color != color {
			return fault(ErrColorClash)
		}
		return id
	}
	if err := ValidLayerName(d.Version, name); err != nil {
		d.err = err
		return 0
	}
	if color < 1 || color > 255 {
		return fault(ErrLayerColor)
	}
	if d.byName == nil {
		d.byName = make(map[string]LayerID)
	}
	d.layers = append(d.layers, layer{name, color})
	id := LayerID(len(d.layers))
	d.byName[name] = id
	return id
}

// Course is how a polyline ends.
type Course bool

const (
	Open   Course = false // at its last vertex
	Closed Course = true  // back at its first
)

// Polyline draws a polyline, whose vertices are copied. An open one needs two
// vertices, a closed one three, or two of which one has a bulge. The bulge of an
// open polyline's last vertex bends no edge and is not written. Edges without
// length are written as they are given. No arc may reach beyond [MaxCoordinate].
// Errors: [ErrUnknownLayer], [ErrTooFewVertices], [ErrNotFinite],
// [ErrOutOfRange].
func (d *Drawing) Polyline(l LayerID, c Course, v []Vertex) {
	closed := c == Closed
	if !d.known(l) {
		return
	}
	first := len(d.nodes)
	nodes := room(d.nodes, len(v), firstNodes)
	bent := false
	for i, p := range v {
		if !d.within(l, i, "x", p.X, MaxCoordinate) || !d.within(l, i, "y", p.Y, MaxCoordinate) ||
			!d.within(l, i, "bulge", p.Bulge, MaxBulge) {
			return
		}
		n := node{x: toMicro(p.X), y: toMicro(p.Y), bulge: toNano(p.Bulge)}
		if !closed && i == len(v)-1 {
			n.bulge = 0
		}
		bent = bent || n.bulge != 0
		nodes = append(nodes, n)
	}
	if len(v) < 2 || closed && len(v) == 2 && !bent {
		d.fail(ErrTooFewVertices, l, -1, "vertices", float64(len(v)))
		return
	}
	drawn := nodes[first:]
	var reach box
	for i, n := range drawn {
		reach.point(n.x, n.y)
		if n.bulge == 0 {
			continue
		}
		reach.edge(n.vertex(), drawn[(i+1)%len(drawn)].vertex())
		if reach.beyond(MaxCoordinate * microOne) {
			d.fail(ErrOutOfRange, l, i, "bulge", v[i].Bulge)
			return
		}
	}
	d.nodes = nodes
	d.extents.join(reach)
	d.entities = append(room(d.entities, 1, firstEntities),
		entity{layer: l, closed: closed, level: d.level(), first: first, count: len(v)})
}

// Circle draws a full circle about x, y with radius r, in drawing units. A
// radius that is 0 when rounded to six decimals is none, and no circle may reach
// beyond [MaxCoordinate]. Errors: [ErrUnknownLayer], [ErrRadius],
// [ErrNotFinite], [ErrOutOfRange].
func (d *Drawing) Circle(l LayerID, x, y, r float64) {
	if !d.known(l) || !d.within(l, -1, "x", x, MaxCoordinate) || !d.within(l, -1, "y", y, MaxCoordinate) ||
		!d.within(l, -1, "radius", r, MaxCoordinate) {
		return
	}
	c := circle{toMicro(x), toMicro(y), toMicro(r)}
	if c.radius <= 0 {
		d.fail(ErrRadius, l, -1, "radius", r)
		return
	}
	reach := c.reach()
	if reach.beyond(MaxCoordinate * microOne) {
		d.fail(ErrOutOfRange, l, -1, "radius", r)
		return
	}
	d.entities = append(d.entities, entity{layer: l, level: d.level(), first: len(d.circles)})
	d.circles = append(d.circles, c)
	d.extents.join(reach)
}

// Room that a drawing begins with: most parts with their label need no more.
const (
	firstNodes    = 1024
	firstEntities = 256
)

// room makes room for n more, and for least at first. It doubles, where append would grow
// large slices by a quarter: copying was most of the time that drawing took.
func room[T any](s []T, n, least int) []T {
	if cap(s)-len(s) >= n {
		return s
	}
	return slices.Grow(s, max(n, len(s), least))
}

// known says whether something can be drawn on the layer.
func (d *Drawing) known(l LayerID) bool {
	if d.err != nil {
		return false
	}
	if l < 1 || int(l) > len(d.layers) {
		d.err = &Error{Rule: ErrUnknownLayer, Entity: len(d.entities), Vertex: -1, Quantity: "layer number", Value: float64(l)}
		return false
	}
	return true
}

// within says whether a number is finite and no larger than the limit.
func (d *Drawing) within(l LayerID, vertex int, quantity string, v, limit float64) bool {
	if rule := beyond(v, limit); rule != nil {
		d.fail(rule, l, vertex, quantity, v)
		return false
	}
	return true
}

// beyond is the rule that a number breaks, if it does.
func beyond(v, limit float64) error {
	switch {
	case math.Abs(v) <= limit:
		return nil
	case math.IsNaN(v) || math.IsInf(v, 0):
		return ErrNotFinite
	}
	return ErrOutOfRange
}

// fail keeps an error of the entity that is being drawn.
func (d *Drawing) fail(rule error, l LayerID, vertex int, quantity string, v float64) {
	d.err = &Error{
		Rule: rule, Layer: d.layers[l-1].name, Entity: len(d.entities), Vertex: vertex, Quantity: quantity, Value: v,
	}
}
