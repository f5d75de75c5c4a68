package present

import (
	"bytes"
	"encoding/csv"
	"strconv"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/layer"
	"drawerwright/geom"
)

// NotCut stands in the legend for the operation of a layer that is not cut.
const NotCut = "not cut"

// LayersCSV is the legend of all drawings that a router cuts, parts and sheets, for mapping
// layers to tools: a line for each layer of each file, in the order of cutting;
// of a layer with several elevations, for each of them. What an operator types is to_set alone;
// depth_in_board and left_in_board are of the board as thick as the mean of its readings. Layers that
// are not cut follow, once
// for all files. Its unit is that of the drawings.
func LayersCSV(r record.Kept, drawn geom.Unit) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"file", "bit_file", "order", "layer", "tool", "bit", "diameter", "operation", "face",
		"depth_in_board", "wood_left", "through_cut", "units", "cuts", "elevation", "to_set", "set_from"})
	n := func(v record.Length) string { return geom.LengthOf(v.MM()).Fine(drawn) }
	file, order := "", 0
	for l := range r.Legend() {
		if !filing.ForRouter(l.File) {
			continue
		}
		if l.File != file {
			file, order = l.File, 0
		}
		order++
		tool, diameter := "", ""
		if l.Tool > 0 {
			tool = strconv.Itoa(l.Tool)
		}
		if l.Diameter > 0 {
			diameter = n(l.Diameter)
		}
		elevation := ""
		if l.Elevation != nil {
			elevation = n(*l.Elevation)
		}
		w.Write([]string{l.File, l.BitFile, strconv.Itoa(order), l.Layer, tool, l.Bit, diameter, l.Operation,
			l.Face, n(l.Depth), n(l.Remaining), strconv.FormatBool(l.Stated == "through"), drawn.String(), strconv.Itoa(l.Cuts), elevation, n(l.Set), l.From})
	}
	for _, name := range layer.NotCut {
		w.Write([]string{"", "", "", name, "", "", "", NotCut, "", "", "", "false", drawn.String(), "", "", "", ""})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
