package dxf

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// The rules that a drawing can break. Compare with [errors.Is]; the place and
// the value are in the [*Error] around it.
var (
	ErrVersion        = errors.New("no such version of the format")
	ErrUnit           = errors.New("no such unit")
	ErrLayerName      = errors.New("a layer name is made of capitals, digits, '_' and '-'")
	ErrLayerNameLong  = errors.New("the layer name is too long for this version of the format")
	ErrLayerColor     = errors.New("a layer's color is a number from 1 to 255")
	ErrColorClash     = errors.New("the layer was declared with another color")
	ErrUnknownLayer   = errors.New("no layer with this number was declared")
	ErrNotFinite      = errors.New("not a finite number")
	ErrOutOfRange     = errors.New("beyond what a drawing may hold")
	ErrTooFewVertices = errors.New("too few vertices")
	ErrRadius         = errors.New("a circle's radius is more than 0")
)

// Error is one broken rule with its place.
type Error struct {
	Rule     error   // one of the Err values of this package
	Layer    string  // its name; empty where no layer is known
	Entity   int     // the polyline or circle, counted from 0 as drawn; -1 where a layer or the drawing is at fault
	Vertex   int     // the vertex, counted from 0; -1 where the whole entity is at fault
	Quantity string  // what was measured: x, y, bulge, radius, vertices, color
	Value    float64 // its value, in drawing units where it is a length
}

// Unwrap gives the rule.
func (e *Error) Unwrap() error { return e.Rule }

// shownName bounds how much of a wrong name a message repeats.
const shownName = 64

// Error names the layer, the entity, the vertex, the value and the rule.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString("dxf: ")
	if e.Layer != "" {
		shown := e.Layer
		if len(shown) > shownName {
			shown = shown[:shownName] + "..."
		}
		fmt.Fprintf(&b, "layer %q, ", shown)
	}
	if e.Entity >= 0 {
		fmt.Fprintf(&b, "entity %d, ", e.Entity)
	}
	if e.Vertex >= 0 {
		fmt.Fprintf(&b, "vertex %d, ", e.Vertex)
	}
	b.WriteString(e.Quantity)
	b.WriteString(" = ")
	b.WriteString(strconv.FormatFloat(e.Value, 'g', -1, 64))
	b.WriteString(": ")
	b.WriteString(e.Rule.Error())
	return b.String()
}
