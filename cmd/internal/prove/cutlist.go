package prove

import (
	"math"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/record"
)

// cutList is the file in which equal parts share a row.
const cutList = filing.CutList

// cutListCheck holds the cut list against the parts of the report: each part stands in one
// row, with its stock, its grain and its size; a row has as many pieces and spares as its
// parts, and says which of their faces are cut.
func (w *Worker) cutListCheck(read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedTable, Name: cutList,
		Faults: []record.Fault{}}}
	data, ok := c.file(cutList, read)
	if !ok {
		return c.out
	}
	listed := make(map[string]int)
	whole := c.rows(cutList, data, []string{"parts", "stock", "grain", "cuts", "units", "pieces", "spares", "length",
		"width", "thickness"}, func(at int, cells []string) {
		pieces, spares := 0, 0
		for _, name := range strings.Fields(cells[0]) {
			i, known := c.parts[name]
			if !known {
				c.fault("table-row", place{name, cutList, at}, rebuild, "the report has no part %s", name)
				return
			}
			q := c.report.Parts.At(i)
			pieces, spares = pieces+q.Quantity, spares+q.Spares
			listed[name]++
			if listed[name] == 2 {
				c.fault("table-row", place{name, cutList, at}, rebuild, "%s stands in the list twice", name)
			}
			for k, want := range []string{q.Stock, grainOf(q), cutFaces(q), c.report.Units} {
				if cells[1+k] != want {
					c.fault("table-word", place{name, cutList, at}, rebuild, "%s: %s is %q, the report has %q", name,
						[]string{"stock", "grain", "cuts", "units"}[k], cells[1+k], want)
				}
			}
			for k, length := range []record.Length{q.Length, q.Width, q.Thickness} {
				want := length.In(c.unit)
				if v, err := strconv.ParseFloat(cells[7+k], 64); err != nil || math.Abs(v-want)*c.unit.MM() > printed {
					c.fault("table-number", place{name, cutList, at}, rebuild, "%s: %s is %s, the report has %s", name,
						[]string{"length", "width", "thickness"}[k], cells[7+k], strconv.FormatFloat(want, 'f', -1, 64))
				}
			}
		}
		for k, want := range []int{pieces, spares} {
			if cells[5+k] != strconv.Itoa(want) {
				c.fault("table-number", place{cells[0], cutList, at}, rebuild, "%s: %s are %s, the report has %d", cells[0],
					[]string{"pieces", "spares"}[k], cells[5+k], want)
			}
		}
	})
	for _, q := range c.report.Parts.All() {
		if whole && listed[q.Name] == 0 {
			c.fault("table-row", place{q.Name, cutList, 0}, rebuild, "%s does not stand in the list", q.Name)
		}
	}
	return c.out
}

// grainOf says along which side of a part the grain runs, as lists do.
func grainOf(q record.Part) string {
	if q.Grain == "none" {
		return "none"
	}
	return "along the length"
}

// cutFaces says which faces of a part are cut, as lists do.
func cutFaces(q record.Part) string {
	on := make(map[string]bool)
	for _, o := range q.Operations {
		on[o.Face] = true
	}
	switch {
	case on["inside"] && on["outside"]:
		return "both faces"
	case on["outside"]:
		return "outside face"
	case on["inside"]:
		return "inside face"
	case len(q.Outline) > 4: // fingers, notches, slots
		return "outline"
	}
	return "none"
}
