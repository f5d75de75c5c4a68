package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/layer"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// setInWords says it for a legend.
func setInWords(t record.ToSet, through bool, u geom.Unit) string {
	text := caliper(t.Set, u) + " deep"
	switch over := t.From == string(joinery.FromSpoilboard); {
	case over && t.Set < 0:
		text = caliper(-t.Set, u) + " below the spoilboard's top"
	case over:
		text = caliper(t.Set, u) + " over the spoilboard"
	}
	return text + throughWord(through)
}

// setInTable says it in a column under setHeading.
func setInTable(t record.ToSet, through bool, u geom.Unit) string {
	return caliper(t.Set, u) + throughWord(through)
}

func throughWord(through bool) string {
	if through {
		return ", through"
	}
	return ""
}

// setHeading is that of a column of settings.
func setHeading(from string) string {
	if from == string(joinery.FromSpoilboard) {
		return "over spoilboard"
	}
	return "deep"
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
