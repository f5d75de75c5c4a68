package dxfread

// Unit is what one drawing unit is.
type Unit int

// The units that this project writes. A file may name another, or none.
const (
	Unknown Unit = iota
	Millimeter
	Inch
)

// String gives the unit's name.
func (u Unit) String() string {
	switch u {
	case Millimeter:
		return "millimeter"
	case Inch:
		return "inch"
	default:
		return "unknown"
	}
}

// File is what a DXF file draws. Lengths are in drawing units.
type File struct {
	Version string // $ACADVER: AC1009 (R12), AC1015 (R2000) or another; empty where it is missing

	// Unit is from $INSUNITS, or where that is missing or 0 (none), from the first
	// comment that is "Units: millimeters" or "Units: inches": R12 has no field for
	// it. A unit that $INSUNITS names and that is neither is Unknown.
	Unit Unit

	Comments []string // groups 999 of the whole file, in order
	Layers   []string // declared in the layer table, in order
	Entities []Entity // of the ENTITIES section, in order
}

// Vertex is a corner of a polyline in drawing units, with the bulge of the edge
// to the next one: tan(included angle / 4), positive for an arc that runs
// counter-clockwise, 0 for a straight edge.
type Vertex struct{ X, Y, Bulge float64 }

// Entity is one thing that is drawn. Every number in it is finite. Of a type
// that is not read, and of a POLYLINE that is a mesh, only Type, Layer, Paper
// and Line are set.
//
// An entity whose extrusion direction is straight down, which is how a mirrored
// one is stored, arrives as it is seen from above.
type Entity struct {
	Type  string // LWPOLYLINE, POLYLINE, CIRCLE, LINE, ARC or another, in capitals
	Layer string // as the entity spells it, empty where it names none; the format compares names without regard to capitals

	Closed bool // by the flag of a polyline; true for a circle
	Paper  bool // on a sheet of paper instead of in the model
	Tilted bool // its plane is not level: the numbers are in axes of its own

	// Vertices are those of a polyline, the two ends of a LINE, or the two ends of
	// an ARC with the bulge of its sweep. An ARC of a full turn is closed, of two
	// half circles.
	Vertices []Vertex

	X, Y, Radius float64 // of a CIRCLE and of an ARC

	// Low and High are the least and the greatest height of what is drawn, the same of
	// what lies level; Thickness is how far up it reaches from there, below 0 for down.
	Low, High, Thickness float64

	Line int // where it begins in the file, counted from 1
}
