package main

import (
	"math"
	"testing"

	"drawerwright/cmd/internal/record"
)

// areaOf is what the outline of a part encloses, in mm2.
func areaOf(p record.Part) (area float64) {
	for i, v := range p.Outline {
		u := p.Outline[(i+1)%len(p.Outline)]
		area += (v.X.MM()*u.Y.MM() - u.X.MM()*v.Y.MM()) / 2
	}
	return area
}

// TestFilingDrawer, by hand. Walls of 12.05, rails of (3.2 + 3.22 + 3.17) / 3. From the middle of one
// rail to that of the other are 330, and both are as far from their walls. They are 0.5 shorter than
// the room between the floors of their dados, which are half the walls deep. The bottom of 5.90333
// lies 6.025 high; they stand over the thickest reading, 5.94, by 0.03, and end 18 below the walls'
// edges of 300: folders of 238 hang free by more than 10.
func TestFilingDrawer(t *testing.T) {
	r := sampled(t, "filing-drawer.yaml")
	const wall, rail = 12.05, (3.2 + 3.22 + 3.17) / 3
	p := partOf(t, r, "files-divider")
	cell := (440 - 2*wall - 330 - rail) / 2
	foot := wall/2 + 5.94 + 0.03
	high := 300 - foot - 18
	is(t, "first rail", p.Placements[0].Origin[0].MM(), wall+cell)
	is(t, "second rail", p.Placements[1].Origin[0].MM(), wall+cell+330)
	is(t, "foot", p.Placements[0].Origin[2].MM(), foot)
	is(t, "length", p.Length, 460-2*wall+wall-0.5)
	is(t, "height", p.Width, record.Length(high))
	if got, want := areaOf(p)*rail, (460-wall-0.5)*high*rail; math.Abs(got-want) > 1 {
		t.Errorf("a rail has %.1f mm3, by hand %.1f", got, want)
	}
	if p.Quantity != 2 || len(r.Parts) != 5 || len(r.Warnings) != 0 {
		t.Errorf("%d rails, %d parts, %v", p.Quantity, len(r.Parts), warningCodes(r))
	}
	f := r.Drawers[0].Folders
	if len(f) != 1 || f[0].Rails != [2]string{"divider 1", "divider 2"} {
		t.Fatalf("folders %+v", f)
	}
	is(t, "between hooks", f[0].Width, 330)
}
