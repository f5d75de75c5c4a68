package router

import (
	"strings"

	"drawerwright/export/layer"
	"drawerwright/geom/mill"
)

// BitFile is the file of what one bit cuts of a drawing, for machines whose bits are
// changed by hand: the drawing's name with that of the bit before its ending.
func BitFile(drawing string, b mill.Bit) string {
	name := layer.Plain(b.Name)
	if b.Tool > 0 {
		name = layer.Plain(b.ToolName()) + "-" + name
	}
	return strings.TrimSuffix(drawing, ".dxf") + "." + name + ".dxf"
}

// ByBit parts layers by their bits, in the order in which these come first; a saw's have
// none.
func ByBit(layers []Layer) (list [][]Layer) {
	at := make(map[int]int)
	for _, l := range layers {
		if l.Bit < 0 {
			continue
		}
		i, known := at[l.Bit]
		if !known {
			i = len(list)
			at[l.Bit] = i
			list = append(list, nil)
		}
		list[i] = append(list[i], l)
	}
	return list
}
