package dxf

import "strconv"

// The longest layer names, in characters. Before 2000 a name has at most 31,
// since then at most 255 (DXF Reference, page GUID-8EC065EC).
const (
	maxNameR12   = 31
	maxNameR2000 = 255
)

// ValidLayerName says whether a layer can bear the name in a file of version v.
// A name is not empty and is made of the capitals A to Z, digits, '_' and '-'
// alone, which is what the oldest readers take and what newer ones do not
// change. It has at most 31 characters in an R12 file and 255 in an R2000 file;
// a longer one is an error and is never cut short. The error is an [*Error]
// whose rule is [ErrLayerName] or [ErrLayerNameLong], or [ErrVersion].
func ValidLayerName(v Version, name string) error {
	limit := maxNameR2000
	switch v {
	case R2000:
	case R12:
		limit = maxNameR12
	default:
		return &Error{Rule: ErrVersion, Entity: -1, Vertex: -1, Quantity: "version", Value: float64(v)}
	}
	fault := func(rule error, quantity string, value int) error {
		return &Error{Rule: rule, Layer: name, Entity: -1, Vertex: -1, Quantity: quantity, Value: float64(value)}
	}
	if name == "" {
		return fault(ErrLayerName, "characters", 0)
	}
	for i := range len(name) {
		if !nameByte(name[i]) {
			return fault(ErrLayerName, "place of the first wrong character", i+1)
		}
	}
	if len(name) > limit {
		return fault(ErrLayerNameLong, "characters, where "+strconv.Itoa(limit)+" are allowed", len(name))
	}
	return nil
}

func nameByte(c byte) bool {
	return 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || c == '_' || c == '-'
}
