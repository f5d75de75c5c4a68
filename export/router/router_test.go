package router

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxftest"
	"drawerwright/geom"
)

func TestCutLayer(t *testing.T) {
	for want, c := range map[string]struct {
		operation string
		face      geom.Face
		depth     float64
		unit      geom.Unit
	}{
		// The names of the contract.
		"DADO_INSIDE_5-99MM":     {"dado", geom.Inside, 5.99, geom.Millimetre},
		"GROOVE_INSIDE_0-236IN":  {"groove", geom.Inside, 5.99, geom.Inch}, // 5.99 mm is 0.23583 in
		"RABBET_OUTSIDE_5-98MM":  {"rabbet", geom.Outside, 5.98, geom.Millimetre},
		"DRILL_INSIDE_THROUGH":   {"drill", geom.Inside, 12, geom.Millimetre},
		"PROFILE_INSIDE_THROUGH": {"profile", geom.Inside, 99, geom.Inch},
		"DADO_INSIDE_6-00MM":     {"dado", geom.Inside, 6, geom.Millimetre},
		"DADO_INSIDE_0-01MM":     {"dado", geom.Inside, 0.01, geom.Millimetre},
		"DADO_INSIDE_6-13MM":     {"dado", geom.Inside, 6.125, geom.Millimetre}, // halves go up
		"DADO_INSIDE_0-250IN":    {"dado", geom.Inside, 6.35, geom.Inch},
	} {
		got := CutLayer(c.operation, c.face, c.depth, 12, c.unit)
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
		for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
			if err := dxf.ValidLayerName(v, got); err != nil {
				t.Error(err)
			}
		}
	}
}

func TestColoursDiffer(t *testing.T) {
	seen := map[int]int{labelColour: -1, scaleColour: -1, blankColour: -1}
	for i := range 100 {
		c := cutColour(i)
		if other, taken := seen[c]; taken || c < 1 || c > 255 {
			t.Errorf("layer %d has colour %d, as %d", i, c, other)
		}
		seen[c] = i
	}
}

func parse(t *testing.T, d *dxf.Drawing) *dxftest.File {
	t.Helper()
	f, err := dxftest.ReadBack(d)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestOrder: drills, pockets, cutouts, the outline last, whatever the panel's order.
func TestOrder(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12, Holes: []geom.Loop{geom.Rectangle(200, 40, 220, 60)}, Pockets: []geom.Pocket{
		{Kind: geom.Cutout, Depth: 12, Outline: geom.Rectangle(100, 40, 120, 60)},
		{Kind: geom.Groove, Depth: 6, Outline: geom.Rectangle(0, 6, 300, 12)},
		{Kind: geom.Drill, Depth: 12, Outline: geom.Circle(geom.Point{X: 50, Y: 50}, 2.5)},
		{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 6, 100)},
		{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(6, 0, 12, 100)},
	}}
	layers := func(face geom.Face) (list []string) {
		for _, e := range parse(t, Draw(Part{Name: "p", Quantity: 1, Stock: "s", Panel: p}, face, Options{})).Entities {
			if e.Layer != LabelLayer {
				list = append(list, e.Layer)
			}
		}
		return list
	}
	if got, want := layers(geom.Inside), strings.Fields("DRILL_INSIDE_THROUGH GROOVE_INSIDE_6-00MM DADO_INSIDE_6-00MM CUTOUT_INSIDE_THROUGH CUTOUT_INSIDE_THROUGH PROFILE_INSIDE_THROUGH SCALE"); !slices.Equal(got, want) {
		t.Errorf("inside: %v\nwant %v", got, want)
	}
	if got, want := layers(geom.Outside), strings.Fields("RABBET_OUTSIDE_6-00MM BLANK SCALE"); !slices.Equal(got, want) {
		t.Errorf("outside: %v\nwant %v", got, want)
	}
}

// TestBlankAtOrigin: a panel drawn elsewhere still has its lower left at 0,0,
// on both faces, and the outside is mirrored end for end.
func TestBlankAtOrigin(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(10, 20, 310, 120), Thickness: 12, Pockets: []geom.Pocket{
		{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(10, 20, 16, 120)}}}
	seen := 0
	for _, e := range parse(t, Draw(Part{Panel: p}, geom.Outside, Options{})).Entities {
		if e.Layer == BlankLayer || strings.HasPrefix(e.Layer, "RABBET") {
			seen++
		}
		low, high := e.Vertices[0], e.Vertices[0]
		for _, v := range e.Vertices {
			low.X, low.Y, high.X, high.Y = min(low.X, v.X), min(low.Y, v.Y), max(high.X, v.X), max(high.Y, v.Y)
		}
		switch {
		case e.Layer == BlankLayer && (low.X != 0 || low.Y != 0 || high.X != 300 || high.Y != 100):
			t.Errorf("blank from %v to %v", low, high)
		case strings.HasPrefix(e.Layer, "RABBET") && (low.X != 294 || high.X != 300 || low.Y != 0 || high.Y != 100):
			t.Errorf("the rabbet at the left end lies from %v to %v", low, high)
		}
	}
	if seen != 2 {
		t.Errorf("%d of blank and rabbet are there", seen)
	}
}
