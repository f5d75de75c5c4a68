package sheets

import (
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/export/router"
	"drawerwright/geom/mill"
	"drawerwright/geom/nest"
)

// TestLayersMeanTheSame: in all drawings of a job, of parts and of sheets, a layer's name is
// of one bit, and registration holes of a stock have one name and go 5 mm into the spoilboard
// below the thickest board.
func TestLayersMeanTheSame(t *testing.T) {
	const twoBits = "bits: {mid: {diameter: 5, reach: 22, tool: 1}, wee: {diameter: 3, reach: 28, tool: 2}}"
	for name, c := range map[string]struct {
		stock, bits, more, drawers string
		pins                       []string // names of the layers of registration holes
	}{
		"boards that differ": {"b: {thickness: [12.1, 11.5], sheet: 1525 x 1525}", "diameter: 6, reach: 25", "",
			"{name: u, outside: 400 x 150 x 400, sides: b, bottom: c}", []string{"REGISTER_OUTSIDE_17-10MM"}},
		"boards that differ, from the spoilboard": {"b: {thickness: [12.1, 11.5], sheet: 1525 x 1525}", "diameter: 6, reach: 25", "router: {depth-from: spoilboard}",
			"{name: u, outside: 400 x 150 x 400, sides: b, bottom: c}", []string{"REGISTER_OUTSIDE_BELOW_5-00MM"}},
		"stocks for which other bits reach": {"a: {thickness: [18.05, 17.94], sheet: 1525 x 1525}, b: {thickness: [11.93, 12.05, 11.92], sheet: 1525 x 1525}", twoBits, "router: {depth-from: spoilboard}",
			"{name: u, outside: 400 x 120 x 400, sides: a, bottom: c}, {name: v, outside: 400 x 120 x 400, sides: b, bottom: c}", []string{"REGISTER_OUTSIDE_BELOW_5-00MM_MID", "REGISTER_OUTSIDE_BELOW_5-00MM_WEE"}},
		// A flush bottom, cut on its outside alone, is cut out from the inside on a sheet that
		// is turned for others, with another bit than these.
		"outlines on the other face": {"b: {thickness: 12, sheet: 1525 x 1525}", "bits: {big: {diameter: 8, reach: 25}, small: {diameter: 5, reach: 25}}", "",
			"{name: u, outside: 400 x 120 x 400, sides: b, bottom: b, joint: box-joint, joinery: {bottom-fit: flush}}", nil},
	} {
		j, problems := job.Read("layers.yaml", strings.NewReader("units: mm\nstock: {c: {thickness: 6, "+
			"sheet: 1525 x 1525}, "+c.stock+"}\ncutter: {kind: router, "+c.bits+"}\n"+c.more+
			"\ndrawers: ["+c.drawers+"]\n"))
		if problems.Failed() {
			t.Fatal(name, problems)
		}
		b, _ := batch.Make(t.Context(), j)
		plan, err := Of(t.Context(), b, nil, Search{Options: nest.Options{Effort: 20}})
		if err != nil {
			t.Fatal(name, err)
		}
		bits, pins := make(map[string]mill.Bit), make(map[string]bool)
		take := func(file string, layers []router.Layer, of []mill.Bit, most float64) {
			for _, l := range layers {
				if first, known := bits[l.Name]; known && first != of[l.Bit] {
					t.Errorf("%s: %s is of the bit %s in %s, and was of %s",
						name, l.Name, of[l.Bit].Name, file, first.Name)
				}
				bits[l.Name] = of[l.Bit]
				if l.Operation != mill.Registering {
					continue
				}
				pins[l.Name] = true
				into := l.Below
				if !l.FromSpoilboard {
					into += l.Depth - most
				}
				if math.Abs(into-mill.PinDepth) > 1e-9 {
					t.Errorf("%s: %s of %s goes %v into the spoilboard, want %v",
						name, l.Name, file, into, mill.PinDepth)
				}
			}
		}
		turned := false
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				for _, g := range p.Drawings {
					take(g.File, b.Layers(p, g), p.Bits, p.Stock.Thickness.Max)
				}
			}
		}
		for _, s := range plan.Stocks {
			turned = turned || s.RotatedSheets
			for _, one := range s.Laid {
				for _, g := range s.Drawn(one) {
					take(g.File, g.Layers, g.Part.Bits, s.Stock.Thickness.Max)
				}
			}
		}
		if !turned || c.pins != nil && len(pins) != len(c.pins) {
			t.Errorf("%s: turned %t, registration holes on %v, want %v", name, turned, pins, c.pins)
		}
		for _, want := range c.pins {
			if !pins[want] {
				t.Errorf("%s: no %s among %v", name, want, pins)
			}
		}
	}
}
