package record

import (
	"drawerwright/export/router"
	"drawerwright/geom/joinery"
)

// ToSet is what an operator sets for a layer. Every output tells it from here, and it is where the
// lines of a drawing with elevations lie.
type ToSet struct {
	// Set is how deep below the face the bit goes, in the thickest board and into the
	// spoilboard where it goes through; or, from the spoilboard, how high over its top it
	// ends, below 0 in it.
	Set  Length `json:"set"`
	From string `json:"set_from"` // top or spoilboard
}

// toSet is that of a layer of a board of a thickness, in mm.
func toSet(l router.Layer, thickness float64) ToSet {
	from := joinery.FromTop
	if l.FromSpoilboard {
		from = joinery.FromSpoilboard
	}
	return ToSet{Length(l.Set(thickness)), string(from)}
}
