package router

import (
	"errors"
	"math"
	"strings"
	"testing"

	"drawerwright/export/dxf/dxftest"
	"drawerwright/export/layer"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// TestLevels: in a board of 12, 12.3 at the most, and 0.2 into the spoilboard.
func TestLevels(t *testing.T) {
	pocket := mill.Cut{Operation: "dado", Depth: 5, Remaining: 7}
	for _, c := range []struct {
		name          string
		cut           mill.Cut
		spoilboard    bool
		elevation, up float64
	}{
		{"a dado", pocket, false, -5, 5},
		{"a dado, from the spoilboard", pocket, true, 7, 5},
		{"through, 0.3 + 0.2 below the mean", mill.Cut{Operation: "slot", Depth: 12, Overcut: 0.5}, false, -12.5, 12.5},
		{"through, into the spoilboard", mill.Cut{Operation: "slot", Depth: 12, Overcut: 0.2}, true, -0.2, 12.2},
		{"a pin", mill.Cut{Operation: "register", Depth: 12, Below: 5}, false, -17, 17},
		{"a pin, from the spoilboard", mill.Cut{Operation: "register", Depth: 12, Below: 5}, true, -5, 17},
	} {
		z, up := Part{FromSpoilboard: c.spoilboard}.layerOf(c.cut).Level(12)
		if math.Abs(z-c.elevation) > 1e-9 || math.Abs(up-c.up) > 1e-9 {
			t.Errorf("%s: at %v, %v thick, want %v, %v", c.name, z, up, c.elevation, c.up)
		}
	}
}

// TestOneLayerOfDepths: names without depths are refused where cuts differ in it, and
// taken where each has its elevation: then a layer comes once for each depth, and its
// lines lie there.
func TestOneLayerOfDepths(t *testing.T) {
	panel := full()
	panel.Pockets = append(panel.Pockets, geom.Pocket{Kind: geom.Dado, Depth: 4, Outline: geom.Rectangle(150, 0, 156.5, 100)})
	s := mill.Settings{Bits: []mill.Bit{{Name: "up", Diameter: 4, Tool: 2}}, IntoSpoilboard: 0.2, Overcut: 1, Relief: mill.ReliefDogbone}
	p := routed(t, panel, s)
	o := Options{Pattern: "{operation}_{tool}"}
	var clash *LayerConflict
	if _, err := Layers(p, geom.Inside, o); !errors.As(err, &clash) || clash.In != InDepth || clash.Layer != "DADO_T2" {
		t.Fatalf("without elevations: %v", err)
	}
	o.Elevation = true
	layers, err := Layers(p, geom.Inside, o)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, l := range layers {
		names = append(names, l.Name)
	}
	if got := strings.Join(names, " "); got != "DRILL_T2 GROOVE_T2 DADO_T2 DADO_T2 CUTOUT_T2 PROFILE_T2" {
		t.Error(got)
	}
	for _, unit := range []geom.Unit{geom.Millimeter, geom.Inch} {
		o.Unit = unit
		f, err := dxftest.ReadRaised(Draw(p, geom.Inside, layers, o))
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string][]float64{}
		for _, e := range f.Entities {
			z := math.Round(e.Low*unit.MM()*1e4) / 1e4
			if top := e.Low + e.Thickness; e.Low != e.High || math.Abs(top) > 1e-6 {
				t.Errorf("%s from %v to %v, up to %v", e.Layer, e.Low, e.High, top)
			}
			seen[e.Layer] = append(seen[e.Layer], z)
		}
		for name, want := range map[string][]float64{"DADO_T2": {-6, -4}, "GROOVE_T2": {-6}, "DRILL_T2": {-12.2}, "CUTOUT_T2": {-12.2, -12.2}, "PROFILE_T2": {-12.2}, layer.Scale: {0}} {
			if got := seen[name]; len(got) != len(want) || got[0] != want[0] || got[len(got)-1] != want[len(want)-1] {
				t.Errorf("%s in %s: %v, want %v", name, unit, got, want)
			}
		}
	}
}
