package router

import (
	"fmt"
	"strings"

	"drawerwright/export/layer"
	"drawerwright/geom/mill"
)

// ToolRun is what a bit cuts of a drawing until it is changed, and the file that has it, for
// machines whose bits are changed by hand.
type ToolRun struct {
	File   string
	Bit    mill.Bit
	Layers []Layer
}

// Runs parts the layers of a drawing at each change of bit, where that is asked for, in the order of cutting: a bit
// that comes up again has another run, for what is cut between may have to be cut before,
// and what cuts parts loose comes last. Files have the drawing's name with the number of the
// run and the bit before its ending, so that they are sorted as they are cut. Layers of a saw
// are in none.
func (o Options) Runs(drawing string, layers []Layer, bits []mill.Bit) (list []ToolRun) {
	if !o.Split {
		return nil
	}
	last := -1
	for _, l := range layers {
		if l.Bit < 0 {
			continue
		}
		if l.Bit != last {
			last = l.Bit
			list = append(list, ToolRun{Bit: bits[l.Bit]})
		}
		of := &list[len(list)-1]
		of.Layers = append(of.Layers, l)
	}
	digits := len(fmt.Sprint(len(list)))
	for i := range list {
		bit := list[i].Bit
		name := layer.Plain(bit.Name)
		if bit.Tool > 0 {
			name = layer.Plain(bit.ToolName()) + "-" + name
		}
		list[i].File = fmt.Sprintf("%s.%0*d.%s.dxf", strings.TrimSuffix(drawing, ".dxf"), digits, i+1, name)
	}
	return list
}
