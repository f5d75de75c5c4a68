package files_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/opening"
)

// TestAnyBankFits: whatever job with an opening is not refused makes drawings of
// boxes that, cut virtually and put together, fit the opening with the clearance
// that the slide asks for, over all readings of the boards. Depths in layers' names
// are rounded to 0.01 mm, at both sides. Nothing in it collides, closed or pulled out.
func TestAnyBankFits(t *testing.T) {
	const rounded = 0.03
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		word := func(name string, words ...string) string { return rapid.SampledFrom(words).Draw(t, name) }
		whole := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		sides := rapid.Float64Range(10, 16).Draw(t, "sides")
		width, height, depth := whole("width", 250, 900), whole("height", 120, 900), whole("depth", 240, 650)
		fronts, slide := word("fronts", "inset", "overlay", "none"), word("slide", "side-mount",
			"undermount", "center-mount", "wooden-runner", "none")
		var b strings.Builder
		fmt.Fprintf(&b, "units: mm\nstock:\n  s: {thickness: [%.2f, %.2f]}\n  b: {thickness: [5.9, 6]}\n", sides, sides+rapid.Float64Range(0, 0.2).Draw(t, "spread"))
		fmt.Fprintf(&b, "cutter: {kind: router, bits: {large: {diameter: 6}, small: {diameter: 4}}}\n")
		fmt.Fprintf(&b, "openings: {o: {width: %d, height: %d, depth: %d, cabinet: frameless, fronts: %s}}\n", width, height, depth, fronts)
		fmt.Fprintf(&b, "drawers:\n  - {name: a, opening: o, slide: %s, rows: %d, sides: s, bottom: b, joint: %s", slide, whole("rows", 1, 4),
			word("joint", "dado-rabbet", "double-rabbet", "rabbet", "butt", "box-joint", "rabbeted-front"))
		if fronts != "none" {
			fmt.Fprintf(&b, ", drawer-front: {stock: s}")
		}
		if slide == "undermount" || slide == "center-mount" {
			fmt.Fprintf(&b, ", joinery: {bottom-height: 13}")
		}
		fmt.Fprintf(&b, "}\n")
		text := b.String()
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			for _, p := range problems {
				if p.IsError() && (p.Message == "" || p.Hint == "") {
					t.Fatalf("refused without a reason or a way out\n%s", text)
				}
			}
			return
		}
		made, found := batch.Make(t.Context(), j)
		for _, p := range found {
			if p.IsError() {
				return
			}
		}
		for _, c := range files.Cabinets(made)[0].Carcass.Collisions {
			if !strings.Contains(c.Name, ", higher than the ") { // of a low box beside a usual slide
				t.Fatalf("%+v\n%s", c, text)
			}
		}
		to := &folder{files: map[string][]byte{}}
		if err := files.Write(context.Background(), made, to, files.Options{}); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		proven++
		r, err := record.Read(to.files["report.json"])
		if err != nil {
			t.Fatal(err)
		}
		bank := j.Banks[0]
		s := bank.Plan.Slide
		for i, row := range bank.Plan.Rows {
			box := r.Proof[bank.Drawers[i]]
			low, high := max(0, row.FrontBottom), min(float64(height), row.FrontBottom+row.FrontHeight)
			if room := float64(width) - 2*s.Clearance + s.ClearancePlus; s.Kind != opening.Undermount && box.Width.Max.MM() > room+rounded {
				t.Fatalf("row %d is %g wide in %g\n%s", i, box.Width.Max.MM(), room, text)
			}
			if inside := box.Width.Mean.MM() - 2*made.Drawers[bank.Drawers[i]].Spec.Sides.Thickness.Mean; s.Kind == opening.Undermount && inside > float64(width)-s.InsideDeduction+rounded {
				t.Fatalf("row %d is %g wide inside\n%s", i, inside, text)
			}
			if row.BoxBottom < low+s.ClearanceBelow-1e-6 || row.BoxBottom+box.Height.Max.MM() > high-s.ClearanceAbove+rounded {
				t.Fatalf("row %d stands from %g, %g high, in %g to %g\n%s", i, row.BoxBottom,
					box.Height.Max, low, high, text)
			}
			front := 0.0
			if fronts == "inset" {
				front = j.Stocks[0].Thickness.Max
			}
			if proud := (box.Depth.Max - box.Depth.Mean).MM(); box.Depth.Max.MM()+s.ClearanceBehind+front-proud > float64(depth)+rounded {
				t.Fatalf("row %d is %g deep in %d\n%s", i, box.Depth.Max, depth, text)
			}
		}
	})
	if proven == 0 {
		t.Error("every job was refused")
	}
}
