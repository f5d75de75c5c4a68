package report

import (
	"fmt"
	"strings"

	"drawerwright/export/layer"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// ToSet is what an operator sets for a layer, in the job's unit. Every output tells it from
// here, and it is where the lines of a drawing with elevations lie.
type ToSet struct {
	// Set is how deep below the face the bit goes, in the thickest board and into the
	// spoilboard where it goes through; or, from the spoilboard, how high over its top it
	// ends, below 0 in it.
	Set  float64 `json:"set"`
	From string  `json:"set_from"` // top or spoilboard
}

// toSet is that of a layer of a board of a thickness, in mm.
func toSet(l router.Layer, thickness float64, n func(mm float64) float64) ToSet {
	from := joinery.FromTop
	if l.FromSpoilboard {
		from = joinery.FromSpoilboard
	}
	return ToSet{n(l.Set(thickness)), string(from)}
}

// inWords says it for a legend.
func (t ToSet) inWords(through bool, u geom.Unit) string {
	text := caliper(t.Set, u) + " deep"
	switch over := t.From == string(joinery.FromSpoilboard); {
	case over && t.Set < 0:
		text = caliper(-t.Set, u) + " below the spoilboard's top"
	case over:
		text = caliper(t.Set, u) + " over the spoilboard"
	}
	return text + throughWord(through)
}

// inTable says it in a column under setHead.
func (t ToSet) inTable(through bool, u geom.Unit) string {
	return caliper(t.Set, u) + throughWord(through)
}

func throughWord(through bool) string {
	if through {
		return ", through"
	}
	return ""
}

// setHead is the head of a column of settings.
func setHead(from string, u geom.Unit) string {
	if from == string(joinery.FromSpoilboard) {
		return ">over spoilboard " + u.String()
	}
	return ">deep " + u.String()
}

// HowCut says which side of the lines of each layer is cut, and which layers are not.
func HowCut() string {
	named := layer.NotCut[:len(layer.NotCut)-1] // the last is that which every DXF has
	last := len(named) - 1
	return fmt.Sprintf("Pockets, CUTOUT and SLOT are cleared inside their lines, all of the area, so that no loose "+
		"piece is left under the bit; PROFILE is cut outside its line; on layers with the word LINE the middle of "+
		"the bit follows the line. %s and %s are not cut.",
		strings.Join(named[:last], ", "), named[last])
}
