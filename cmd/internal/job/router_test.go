package job

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

func TestReadRouter(t *testing.T) {
	j := read(t, goodFiles["router"])
	want := mill.Settings{
		Overcut: 2, Relief: mill.ReliefTBone, Slots: mill.SlotsCenterline, FromSpoilboard: true, OnionSkin: 0.4, SmallPart: 120, PartSpacing: 20, IntoSpoilboard: 0.2,
		Register: mill.Register{Place: mill.PlaceCenterline, Diameter: 5, Distance: 30}, Tabs: mill.Tabs{Width: 8, Height: 2, Spacing: 300},
	}
	if !reflect.DeepEqual(j.Router, want) {
		t.Errorf("got %+v\nwant %+v", j.Router, want)
	}
	if j.Layers != "{operation}_{face}_{depth}_{cutter}" || !slices.Equal(j.Order, []string{"groove", "dado"}) || j.FileNames != "{part}-{thickness}" {
		t.Errorf("got %q %v %q", j.Layers, j.Order, j.FileNames)
	}
	// A chip load of 0.12 mm at 18,000 turns of 2 edges is a feed of 4,320 mm a minute.
	bits := []mill.Bit{
		{Name: "six", Diameter: 6, Reach: 25, Flutes: 2, Feeds: mill.Feeds{Type: mill.Compression, Tip: 5, Feed: 4320, Plunge: 1524, Speed: 18000, PassDepth: 8}},
		{Name: "half inch", Diameter: 12.7, Feeds: mill.Feeds{Type: mill.DownCut, Feed: 5000}}}
	for i, w := range []struct {
		joint joinery.Joint
		width float64
		bits  []mill.Bit
		from  joinery.DepthFrom
	}{
		{joinery.DoubleRabbet, 6, bits, joinery.FromSpoilboard}, // faces: one decides
		{joinery.DadoRabbet, 6, bits, joinery.FromSpoilboard},   // its own word decides
		{joinery.DoubleRabbet, 4, []mill.Bit{{Name: "4 mm", Diameter: 4, Reach: 20, Flutes: 3}}, joinery.FromSpoilboard},
		{joinery.DoubleRabbet, 6.2, nil, ""}, // a saw has neither bits nor a spoilboard
	} {
		d := j.Drawers[i]
		if d.Joint != w.joint || d.Cutter.Width != w.width || !slices.Equal(d.Bits, w.bits) || d.DepthFrom != w.from {
			t.Errorf("drawer %d: %s %g %v %q", i, d.Joint, d.Cutter.Width, d.Bits, d.DepthFrom)
		}
	}
}

// TestRouterDefaults: what a job that says nothing gets, and that width is a
// router's word too.
func TestRouterDefaults(t *testing.T) {
	j := read(t, `units: mm
stock: {birch: {thickness: 12}}
cutter: {kind: router, width: 6}
drawers: [{name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}]
`)
	want := mill.Settings{Overcut: 1, Relief: mill.ReliefDogbone, Slots: mill.SlotsWidened, SmallPart: 150, Register: mill.Register{Place: mill.PlaceWaste}}
	if !reflect.DeepEqual(j.Router, want) || !slices.Equal(j.Drawers[0].Bits, []mill.Bit{{Name: "6 mm", Diameter: 6}}) {
		t.Errorf("got %+v %v", j.Router, j.Drawers[0].Bits)
	}
	j = read(t, `units: mm
stock: {birch: {thickness: 12}}
cutter: {kind: router, width: 6}
router: {tabs: {}}
drawers: [{name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}]
`)
	if want := (mill.Tabs{Width: 6, Height: 1.5, Spacing: 200}); j.Router.Tabs != want {
		t.Errorf("tabs %+v", j.Router.Tabs)
	}
}

// TestReliefs: one for all, or for each operation one.
func TestReliefs(t *testing.T) {
	for text, want := range map[string]mill.Settings{
		"none": {Relief: mill.ReliefNone},
		"{}":   {Relief: mill.ReliefDogbone, Reliefs: map[string]mill.Relief{}},
		"{others: t-bone, groove: none, dado: dogbone, rabbet: t-bone, cutout: none, profile: dogbone}": {Relief: mill.ReliefTBone, Reliefs: map[string]mill.Relief{
			"groove": mill.ReliefNone, "dado": mill.ReliefDogbone, "rabbet": mill.ReliefTBone, "cutout": mill.ReliefNone, "profile": mill.ReliefDogbone}},
	} {
		j := read(t, `units: mm
stock: {birch: {thickness: 12}}
cutter: {kind: router, width: 6}
router: {relief: `+text+`}
drawers: [{name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}]
`)
		if j.Router.Relief != want.Relief || !reflect.DeepEqual(j.Router.Reliefs, want.Reliefs) {
			t.Errorf("%s: %v %v", text, j.Router.Relief, j.Router.Reliefs)
		}
	}
}

// TestEngrave: on or off, with the usual depth or one's own; the bit that is named cuts
// nothing else, so that it makes no slot narrower.
func TestEngrave(t *testing.T) {
	for text, want := range map[string]mill.Engrave{
		"no": {}, "yes": {Depth: 0.3}, "{}": {Depth: 0.3}, "{depth: 0.5, height: 9, bit: b}": {Depth: 0.5, Height: 9},
	} {
		j := read(t, `units: mm
stock: {birch: {thickness: 12}}
cutter: {kind: router, bits: {a: {diameter: 6}, b: {diameter: 1}, c: {diameter: 3}}}
router: {engrave: `+text+`}
drawers: [{name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}]
`)
		named := strings.Contains(text, "bit")
		d, narrowest := j.Drawers[0], 1.0
		if named {
			narrowest = 3
		}
		if j.Router.Engrave != want || d.Bits[1].Engraves != named || d.Cutter.Width != narrowest || len(d.Spec.Bits) != map[bool]int{false: 3, true: 2}[named] {
			t.Errorf("%s: %+v, %+v, %g wide, %v", text, j.Router.Engrave, d.Bits, d.Cutter.Width, d.Spec.Bits)
		}
	}
}
