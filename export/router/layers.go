package router

import (
	"fmt"
	"strings"

	"drawerwright/geom"
)

// Layers that are not cut.
const (
	LabelLayer = "LABEL" // the part's words, in single strokes
	BlankLayer = "BLANK" // the panel's outline, to line up with
	ScaleLayer = "SCALE" // a square to measure: 100 mm or 4 in
)

// CutLayer names the layer of an operation: OPERATION_FACE_DEPTH, as
// DADO_INSIDE_5-99MM, GROOVE_INSIDE_0-236IN or DRILL_INSIDE_THROUGH. The depth
// is in millimetres, rounded to 0.01 mm or 0.001 in; a dash is its decimal point,
// since the oldest readers take only capitals, digits, _ and -.
func CutLayer(operation string, face geom.Face, depth, thickness float64, u geom.Unit) string {
	place := fmt.Sprintf("%s_%s_", strings.ToUpper(operation), strings.ToUpper(face.String()))
	if depth >= thickness {
		return place + "THROUGH"
	}
	number := strings.Replace(geom.LengthOf(depth).Fixed(u), ".", "-", 1)
	return place + number + strings.ToUpper(u.String())
}

// Colours, as index numbers of the DXF Reference (group code 62).
const (
	labelColour = 8
	scaleColour = 9
	blankColour = 253
)

// cutColour gives the i-th cut layer a colour of its own: steps of seven round
// the 24 full hues (10, 20, ... 240), so that neighbours in the list are nowhere
// near each other, then the darker shades of each.
func cutColour(i int) int {
	return 10*(1+(7*i+2)%24) + 2*(i/24%5)
}
