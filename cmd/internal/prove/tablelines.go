package prove

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// tables make all for programs whose rows the report has.
func (p *Prover) tables() []func() table {
	list := []func() table{p.partTable, p.buyTable}
	if p.report.ForRouter() {
		list = append(list, p.layerTable)
	}
	if len(p.report.Cabinets) > 0 {
		list = append(list, p.slideTable)
	}
	if len(p.report.Sheets) > 0 {
		list = append(list, p.placeTable, p.cutTable)
	}
	return list
}

func (p *Prover) partTable() table {
	t := table{file: filing.Parts, unit: p.unit, words: []string{"part", "drawer", "role", "stock", "grain", "units",
		"inside_file",
		"outside_file"}, numbers: []string{"quantity", "length", "width", "thickness"}}
	for _, q := range p.report.Parts.All() {
		t.lines = append(t.lines, line{q.Name, []string{q.Name, q.Drawer, q.Role, q.Stock, q.Grain, p.report.Units,
			q.Files.Inside, q.Files.Outside},
			append([]float64{float64(q.Quantity)}, p.lengths(q.Length, q.Width, q.Thickness)...), false})
	}
	return t
}

// lengths are numbers of a table in the report's unit.
func (p *Prover) lengths(list ...record.Length) []float64 {
	numbers := make([]float64, len(list))
	for i, l := range list {
		numbers[i] = l.In(p.unit)
	}
	return numbers
}

func (p *Prover) buyTable() table {
	t := table{file: filing.Buy, unit: p.unit, words: []string{"kind", "name", "unit"}, numbers: []string{"quantity",
		"cost"},
		blank: []string{"cost"}}
	for _, b := range p.report.Buy {
		t.lines = append(t.lines, line{b.Name, []string{b.Kind, b.Name, b.Unit}, []float64{b.Quantity, b.Cost}, false})
	}
	return t
}

// layerTable is the legend of all drawings that a router cuts, in their unit: the layers of each file in order,
// and those that are not cut.
func (p *Prover) layerTable() table {
	unit := geom.Millimeter
	if p.report.DXF.Units == geom.Inch.String() {
		unit = geom.Inch
	}
	numbers := []string{"cuts", "diameter", "depth_in_board", "wood_left", "to_set", "elevation"}
	t := table{file: filing.Layers, words: []string{"file", "bit_file", "order", "layer", "tool", "bit", "operation",
		"face", "through_cut", "set_from", "units"}, numbers: numbers, blank: numbers, unit: unit}
	n := func(v record.Length) float64 { return v.In(unit) }
	file, order := "", 0
	for l := range p.report.Legend() {
		if !filing.ForRouter(l.File) {
			continue
		}
		if l.File != file {
			file, order = l.File, 0
		}
		order++
		tool := ""
		if l.Tool > 0 {
			tool = strconv.Itoa(l.Tool)
		}
		elevation := 0.0
		if l.Elevation != nil {
			elevation = n(*l.Elevation)
		}
		t.lines = append(t.lines, line{l.Layer,
			[]string{l.File, l.BitFile, strconv.Itoa(order), l.Layer, tool, l.Bit, l.Operation, l.Face,
				strconv.FormatBool(l.Stated == "through"), l.From, p.report.DXF.Units},
			[]float64{float64(l.Cuts), n(l.Diameter), n(l.Depth), n(l.Remaining), n(l.Set), elevation}, false})
	}
	for _, name := range notCut {
		t.lines = append(t.lines, line{name,
			[]string{"", "", "", name, "", "", present.NotCut, "", "false", "", p.report.DXF.Units},
			make([]float64, len(t.numbers)), false})
	}
	return t
}

func (p *Prover) slideTable() table {
	t := table{file: filing.SlideLines, unit: p.unit, words: []string{"opening", "drawer", "units"},
		numbers: []string{"slide_line", "box_bottom", "front_bottom", "front_height",
			"shim"}, blank: []string{"slide_line"}}
	for _, k := range p.report.Cabinets {
		for _, r := range k.Rows {
			// A slide without a height of its own has no line.
			t.lines = append(t.lines, line{r.Drawer, []string{k.Name, r.Drawer, p.report.Units},
				p.lengths(r.SlideLine, r.BoxBottom, r.FrontBottom, r.FrontHeight, k.Shim), len(k.Files) == 0})
		}
	}
	return t
}

// placeTable is where parts and offcuts lie on sheets.
func (p *Prover) placeTable() table {
	t := table{file: filing.Layout, unit: p.unit, words: []string{"stock", "sheet", "size", "kind", "name",
		"turned"},
		numbers: []string{"x", "y", "length", "width", "alike"}}
	for _, k := range p.report.Sheets {
		for _, s := range k.Sheets {
			add := func(kind, name, turned string, b record.Box) {
				about := name
				if name == "" {
					about = kind + " of " + k.Stock
				}
				t.lines = append(t.lines, line{about,
					[]string{k.Stock, strconv.Itoa(s.Number), k.Sizes[s.Size].Name, kind, name,
						turned}, append(p.lengths(b.X, b.Y, b.Length, b.Width), float64(s.Count)), false})
			}
			for _, q := range s.Placements {
				add("part", strings.Join(q.Names(), " "), map[bool]string{false: "no", true: "yes"}[q.Rotated], q.Box)
			}
			for _, o := range s.Offcuts {
				add("offcut", "", "", o)
			}
		}
	}
	return t
}

// cutTable is the cuts at the saw in order.
func (p *Prover) cutTable() table {
	t := table{file: filing.Cuts, unit: p.unit, words: []string{"stock", "cut", "stage", "how", "board", "piece",
		"remainder"},
		numbers: []string{"setting", "boards", "piece_length", "piece_width", "remainder_length",
			"remainder_width"}, blank: []string{"piece_length", "piece_width", "remainder_length", "remainder_width"}}
	for _, k := range p.report.Sheets {
		for i, c := range k.Cuts {
			var gives, left record.Workpiece
			if c.Yields != nil {
				gives = *c.Yields
			}
			if c.Remainder != nil {
				left = *c.Remainder
			}
			t.lines = append(t.lines, line{fmt.Sprintf("cut %d of %s", i+1, k.Stock),
				[]string{k.Stock, strconv.Itoa(i + 1), strconv.Itoa(c.Stage), c.Kind, c.Workpiece.Name, gives.Name,
					left.Name},
				slices.Insert(p.lengths(c.Setting, gives.Length, gives.Width, left.Length, left.Width), 1, float64(c.Count)),
				false})
		}
	}
	return t
}
