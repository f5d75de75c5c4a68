package main

import (
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestHallBench, by hand. Ends of 14.8 take tenons of 6 (0.45 of 14.8 is 6.66), 24 wide. The groove begins at
// half of 14.8 and is 5.9 and 0.2 wide: the lowest tenon begins 13.5 + 10 over the edge, the highest ends at 140.
// Middles at 35.5 and 128 are less than 75 + 24 apart: two at each of four corners of two boxes. A side loses four
// mortises of 6.1 x 24.1 with round ends, 2/3 of 14.8 deep, and a groove.
func TestHallBench(t *testing.T) {
	r := sampled(t, "hall-bench.yaml")
	if len(r.Parts) != 8 || len(r.Drawers) != 2 {
		t.Errorf("%d kinds of parts, %d drawers", len(r.Parts), len(r.Drawers))
	}
	is(t, "front", partOf(t, r, "shoes-box-front").Length, 460-2*14.8)
	side := partOf(t, r, "shoes-side")
	volume := side.Length.MM() * side.Width.MM() * side.Thickness.MM()
	kinds := make(map[string]int)
	for _, o := range side.Operations {
		var l geom.Loop
		for _, v := range o.Outline {
			l = append(l, geom.Vertex{Point: geom.Point{X: v.X.MM(), Y: v.Y.MM()}, Bulge: v.Bulge})
		}
		kinds[o.Kind]++
		volume -= l.Area() * o.Depth.MM()
	}
	if want := map[string]int{"mortise": 4, "groove": 1}; !maps.Equal(kinds, want) {
		t.Errorf("cut into a side: %v, want %v", kinds, want)
	}
	// The bottom reaches to 7.4 from the ends; the round of the bit begins 3.2 before.
	whole, groove, mortise := 380*150*14.8, (380-2*4.2)*6.1*7.4, (18*6.1+math.Pi*3.05*3.05)*14.8*2/3
	if want := whole - groove - 4*mortise; math.Abs(volume-want) > 1 {
		t.Errorf("volume of a side %.2f, want %.2f", volume, want)
	}
	for _, b := range r.Drawers[0].Bores {
		var heights, lengths []float64
		for i := range b.Heights {
			heights, lengths = append(heights, b.Heights[i].MM()), append(lengths, b.Lengths[i].MM())
		}
		if !slices.Equal(heights, []float64{35.5, 128}) || !slices.Equal(lengths, []float64{24, 26}) {
			t.Errorf("mortises in the ends of %s: %v, %v long", b.Part, heights, lengths)
		}
	}
	if len(r.Drawers[0].Bores) != 2 {
		t.Errorf("%d parts with mortises in their ends", len(r.Drawers[0].Bores))
	}
	// Of the tray 60 high, whose groove is 6.2 wide, one of 20 from 22.2 to 50: its middle is at 36.1.
	if low := r.Drawers[1].Bores[0]; len(low.Heights) != 1 || low.Heights[0].MM() != 36.1 || low.Lengths[0] != 20 {
		t.Errorf("mortises in the ends of the tray: %+v", low)
	}
	bought := make(map[string]float64)
	for _, b := range r.Buy {
		if b.Kind == "hardware" {
			bought[b.Name] = b.Quantity
		}
	}
	want := map[string]float64{"loose tenon 6 x 24 x 30 mm": 16, "loose tenon 5 x 20 x 30 mm": 4}
	if !maps.Equal(bought, want) {
		t.Errorf("to buy: %v", bought)
	}
}

// TestTenonsAreSet: whoever makes the mortises is told how, with what can hurt there; of a machine that follows
// drawings, why it leaves the ends.
func TestTenonsAreSet(t *testing.T) {
	samples := inTemp(t)
	routed, err := os.ReadFile(filepath.Join(samples, "hall-bench.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	const tool = "cutter: {kind: router, diameter: 6, reach: 22, flutes: 2}"
	machine := []string{"PLUNGE ROUTER WITH A MORTISING JIG", "plunged in steps", "both hands are on the router"}
	hand := []string{"BRACE OR HAND DRILL, AND CHISELS", "holes in a row", "Chop with the part clamped"}
	const noEnds = "does not reach their ends"
	for kind, want := range map[string]struct{ said, not []string }{
		tool:                              {append(machine, noEnds), hand},
		"cutter: {kind: saw, width: 6.3}": {machine, append(hand, noEnds)},
		"cutter: {kind: hand, width: 6}":  {hand, append(machine, noEnds)},
	} {
		shoes, _, _ := strings.Cut(strings.Replace(string(routed), tool, kind, 1), "  - name: gloves")
		if err := os.WriteFile("bench.yaml", []byte(shoes), 0o644); err != nil {
			t.Fatal(err)
		}
		code, out, errs := call(t, "", "setup", "bench.yaml", "--all")
		if code != exitDone {
			t.Fatal(errs)
		}
		out = strings.Join(strings.Fields(out), " ")
		for _, s := range want.said {
			if !strings.Contains(out, s) {
				t.Errorf("%s: no word of %q", kind, s)
			}
		}
		for _, s := range want.not {
			if strings.Contains(out, s) {
				t.Errorf("%s: it says %q", kind, s)
			}
		}
	}
}
