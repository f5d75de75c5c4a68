package router

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/dxf/dxftest"
	"drawerwright/export/layer"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// TestLayerNames: the names of the contract.
func TestLayerNames(t *testing.T) {
	for want, c := range map[string]struct {
		layer Layer
		unit  geom.Unit
	}{
		"DADO_INSIDE_5-99MM":            {Layer{Operation: "dado", Depth: 5.99, Remaining: 6}, geom.Millimeter},
		"GROOVE_INSIDE_0-2358IN":        {Layer{Operation: "groove", Depth: 5.99, Remaining: 6}, geom.Inch}, // 5.99 mm is 0.23583 in
		"RABBET_OUTSIDE_5-98MM":         {Layer{Operation: "rabbet", Face: geom.Outside, Depth: 5.98, Remaining: 6}, geom.Millimeter},
		"DRILL_INSIDE_THROUGH":          {Layer{Operation: "drill", Depth: 12}, geom.Millimeter},
		"PROFILE_INSIDE_THROUGH":        {Layer{Operation: "profile", Depth: 99}, geom.Inch},
		"DADO_INSIDE_0-01MM":            {Layer{Operation: "dado", Depth: 0.01, Remaining: 6}, geom.Millimeter},
		"DADO_INSIDE_6-13MM":            {Layer{Operation: "dado", Depth: 6.125, Remaining: 6}, geom.Millimeter}, // halves go up
		"DADO_INSIDE_0-2500IN":          {Layer{Operation: "dado", Depth: 6.35, Remaining: 6}, geom.Inch},
		"DADO_INSIDE_FLOOR_5-99MM":      {Layer{Operation: "dado", Depth: 6, Remaining: 5.99, Floor: true}, geom.Millimeter},
		"DADO_INSIDE_LINE_5-99MM":       {Layer{Operation: "dado", Depth: 5.99, Remaining: 6, Line: true}, geom.Millimeter},
		"DADO_INSIDE_LINE_FLOOR_5-99MM": {Layer{Operation: "dado", Depth: 6, Remaining: 5.99, Line: true, Floor: true}, geom.Millimeter},
		"ENGRAVE_OUTSIDE_FLOOR_11-58MM": {Layer{Operation: "engrave", Face: geom.Outside, Depth: 0.3, Remaining: 11.58, Line: true, Floor: true}, geom.Millimeter},
		"REGISTER_OUTSIDE_17-00MM":      {Layer{Operation: "register", Face: geom.Outside, Depth: 12, Below: 5}, geom.Millimeter},
		"REGISTER_OUTSIDE_BELOW_5-00MM": {Layer{Operation: "register", Face: geom.Outside, Depth: 12, Below: 5, FromSpoilboard: true}, geom.Millimeter},
	} {
		c.layer.Bit = -1
		got := Options{Unit: c.unit}.Name(nil, "", c.layer)
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

// TestBitsInNames: where cuts with two bits would share a layer, each has that of its bit,
// whatever its letters; a saw's have none.
func TestBitsInNames(t *testing.T) {
	bits := []mill.Bit{{Name: "1/4 \"up\"", Diameter: 6.35}, {Name: "fräser klein", Diameter: 4}}
	p := Part{Name: "p", Stock: "ply", Bits: bits, Work: mill.Operations{Cuts: []mill.Cut{{Operation: "dado", Depth: 6, Remaining: 6}, {Operation: "dado", Depth: 6, Remaining: 6, Bit: 1}, {Operation: "groove", Depth: 6, Remaining: 6, Bit: 1}}}}
	var sharing Sharing
	o := Options{}
	sharing.Add(p, o)
	o.Shared = sharing.Names()
	layers, err := Layers(p, geom.Inside, o)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, l := range layers {
		got = append(got, l.Name)
	}
	if want := []string{"DADO_INSIDE_6-00MM_1-4-UP", "DADO_INSIDE_6-00MM_FRASER-KLEIN", "GROOVE_INSIDE_6-00MM"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestDiameterInNames: that of holes, and nothing in the names of others.
func TestDiameterInNames(t *testing.T) {
	for pattern, want := range map[string][2]string{
		"{operation}_{diameter}_{depth}": {"DRILL_D5-00MM_THROUGH", "GROOVE_6-00MM"},
		"{diameter}_{operation}":         {"D5-00MM_DRILL", "GROOVE"},
		"{operation}{diameter}":          {"DRILLD5-00MM", "GROOVE"},
		"{operation}":                    {"DRILL", "GROOVE"},
	} {
		o := Options{Pattern: pattern}
		drill := o.Name(nil, "", sawn(full()).layerOf(mill.Cut{Operation: "drill", Depth: 12, Bit: -1, Outline: geom.Circle(geom.Point{}, 2.5)}))
		groove := o.Name(nil, "", sawn(full()).layerOf(mill.Cut{Operation: "groove", Depth: 6, Remaining: 6, Bit: -1, Outline: geom.Rectangle(0, 0, 9, 6)}))
		if got := [2]string{drill, groove}; got != want {
			t.Errorf("%s: %v, want %v", pattern, got, want)
		}
	}
}

// TestColors: a color of its own for every operation, of those that the DXF Reference
// numbers, whatever else is drawn.
func TestColors(t *testing.T) {
	seen := map[int]string{}
	for _, name := range slices.Concat(DefaultOrder, layer.NotCut[:len(layer.NotCut)-1]) {
		c := layer.Color(name)
		if other, taken := seen[c]; taken || c < 1 || c > 255 || c == 7 {
			t.Errorf("%s has color %d, as %s", name, c, other)
		}
		seen[c] = name
	}
}

// sawn is a panel drawn as it is.
func sawn(p geom.Panel) Part {
	work, _ := mill.Prepare(mill.Part{Panel: p, MinThickness: p.Thickness, MaxThickness: p.Thickness}, mill.Settings{})
	return Part{Name: "p", Quantity: 1, Stock: "birch ply", Panel: p, Work: work}
}

// routed is one that a router cuts.
func routed(t *testing.T, p geom.Panel, s mill.Settings) Part {
	t.Helper()
	work, faults := mill.Prepare(mill.Part{Panel: p, MinThickness: p.Thickness, MaxThickness: p.Thickness}, s)
	for _, f := range faults {
		if f.IsError() {
			t.Fatal(f)
		}
	}
	return Part{Name: "p", Quantity: 1, Stock: "birch ply", Panel: p, Work: work, Bits: s.Bits, FromSpoilboard: s.FromSpoilboard}
}

func drawn(t *testing.T, p Part, face geom.Face, o Options) *dxfread.File {
	t.Helper()
	layers, err := Layers(p, face, o)
	if err != nil {
		t.Fatal(err)
	}
	f, err := dxftest.ReadBack(Draw(p, face, layers, o))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// layersOf lists the layers of what is drawn, the label left out.
func layersOf(f *dxfread.File) (list []string) {
	for _, e := range f.Entities {
		if e.Layer != layer.Label {
			list = append(list, e.Layer)
		}
	}
	return list
}

// full has every kind of cut.
func full() geom.Panel {
	return geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12, Holes: []geom.Loop{geom.Rectangle(200, 40, 220, 60)}, Pockets: []geom.Pocket{
		{Kind: geom.Cutout, Depth: 12, Outline: geom.Rectangle(100, 40, 120, 60)},
		{Kind: geom.Groove, Depth: 6, Outline: geom.Rectangle(0, 6, 300, 12.5)},
		{Kind: geom.Drill, Depth: 12, Outline: geom.Circle(geom.Point{X: 50, Y: 50}, 2.5)},
		{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 6, 100)},
		{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(6, 0, 12.5, 100)},
	}}
}

// TestOrder: drills, pockets, cutouts, the outline last, whatever the panel's
// order; the options move what they name to the front.
func TestOrder(t *testing.T) {
	for _, c := range []struct {
		face  geom.Face
		order []string
		want  string
	}{
		{geom.Inside, nil, "DRILL_INSIDE_THROUGH GROOVE_INSIDE_6-00MM DADO_INSIDE_6-00MM CUTOUT_INSIDE_THROUGH CUTOUT_INSIDE_THROUGH PROFILE_INSIDE_THROUGH BLANK BLANK BLANK SCALE"},
		{geom.Inside, []string{"dado", "profile"}, "DADO_INSIDE_6-00MM DRILL_INSIDE_THROUGH GROOVE_INSIDE_6-00MM CUTOUT_INSIDE_THROUGH CUTOUT_INSIDE_THROUGH PROFILE_INSIDE_THROUGH BLANK BLANK BLANK SCALE"},
		{geom.Outside, nil, "RABBET_OUTSIDE_6-00MM OUTLINE BLANK BLANK BLANK SCALE"},
	} {
		if got, want := layersOf(drawn(t, sawn(full()), c.face, Options{Order: c.order})), strings.Fields(c.want); !slices.Equal(got, want) {
			t.Errorf("%v: %v\nwant %v", c.face, got, want)
		}
	}
}

// TestPattern: a shop's own names, and what is refused.
func TestPattern(t *testing.T) {
	bits := []mill.Bit{{Name: "six", Diameter: 6}, {Name: "4 mm", Diameter: 4}}
	p := routed(t, full(), mill.Settings{Bits: bits, Overcut: 1})
	got := layersOf(drawn(t, p, geom.Outside, Options{Pattern: "S{stock}_{cutter}_{operation}_{depth}"}))
	if got[0] != "SBIRCH-PLY_SIX_REGISTER_17-00MM" || got[2] != "SBIRCH-PLY_SIX_RABBET_6-00MM" {
		t.Errorf("layers %v", got)
	}
	refused := func(want, pattern string, v dxf.Version) {
		t.Helper()
		if _, err := Layers(p, geom.Inside, Options{Pattern: pattern, Version: v}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", pattern, err, want)
		}
	}
	refused("depth", "CUTS_{face}", dxf.R2000)
	refused("31", "{operation}_{face}_{depth}_A-RATHER-LONG-ENDING", dxf.R12)
	refused("", "{operation} {depth}", dxf.R2000)
	refused("something else", "LABEL", dxf.R2000)
	shallow := full()
	shallow.Pockets[1].Depth = 5
	if _, err := Layers(sawn(shallow), geom.Inside, Options{Pattern: "{face}"}); err == nil {
		t.Error("a groove and a dado of different depths share a layer")
	}
}

// TestLine: a slot of the bit's own width is an open path where that is asked for,
// on a layer with the word, mirrored with its face.
func TestLine(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12, Pockets: []geom.Pocket{
		{Kind: geom.Dado, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(20, 0, 26, 100)}}}
	f := drawn(t, routed(t, p, mill.Settings{Bits: []mill.Bit{{Name: "six", Diameter: 6}}, Overcut: 1, Slots: mill.SlotsCenterline}), geom.Outside, Options{})
	e := f.Entities[0]
	// The middle, x = 23, from 1 mm below the panel to 1 mm above, turned over.
	want := []dxfread.Vertex{{X: 277, Y: -1}, {X: 277, Y: 101}}
	if e.Layer != "DADO_OUTSIDE_LINE_6-00MM" || e.Closed || !slices.Equal(e.Vertices, want) {
		t.Errorf("%+v", e)
	}
	for _, pattern := range []string{"{operation}", "{operation}_{face}"} {
		layers, err := Layers(routed(t, p, mill.Settings{Bits: []mill.Bit{{Name: "six", Diameter: 6}}, Slots: mill.SlotsCenterline}), geom.Outside, Options{Pattern: pattern})
		if err != nil || !strings.Contains(layers[0].Name, "LINE") {
			t.Errorf("%v %v: an open line's layer does not say so", layers, err)
		}
	}
}

// TestBlankAtOrigin: a panel drawn elsewhere still has its lower left at 0,0,
// on both faces, the outside is mirrored end for end, and so is the corner mark.
func TestBlankAtOrigin(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(10, 20, 310, 120), Thickness: 12, Pockets: []geom.Pocket{
		{Kind: geom.Groove, Depth: 3, Outline: geom.Rectangle(10, 30, 310, 40)},
		{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(10, 20, 16, 120)}}}
	for _, c := range []struct {
		face geom.Face
		want map[string][4]float64
	}{
		{geom.Outside, map[string][4]float64{"OUTLINE": {0, 0, 300, 100}, "mark": {292, 0, 300, 8}, "RABBET_OUTSIDE_6-00MM": {294, 0, 300, 100}}},
		{geom.Inside, map[string][4]float64{"PROFILE_INSIDE_THROUGH": {0, 0, 300, 100}, "mark": {0, 0, 8, 8}, "GROOVE_INSIDE_3-00MM": {0, 10, 300, 20}}},
	} {
		seen := 0
		for _, e := range drawn(t, sawn(p), c.face, Options{}).Entities {
			name := e.Layer
			if name == layer.Blank && len(e.Vertices) == 3 {
				name = "mark"
			}
			want, known := c.want[name]
			if !known {
				continue
			}
			seen++
			low, high := e.Vertices[0], e.Vertices[0]
			for _, v := range e.Vertices {
				low.X, low.Y, high.X, high.Y = min(low.X, v.X), min(low.Y, v.Y), max(high.X, v.X), max(high.Y, v.Y)
			}
			if got := [4]float64{low.X, low.Y, high.X, high.Y}; got != want {
				t.Errorf("%v: %s at %v, want %v", c.face, name, got, want)
			}
		}
		if seen != len(c.want) {
			t.Errorf("%v: %d of %d are there", c.face, seen, len(c.want))
		}
	}
}

// TestNeighborsUnited: overcuts of parts that lie side by side are one outline, an L, and
// cuts with another bit or of another depth stay apart.
func TestNeighborsUnited(t *testing.T) {
	bit := mill.Bit{Name: "six", Diameter: 6}
	side := func(depth, width float64) Part {
		return routed(t, geom.Panel{Outline: geom.Rectangle(0, 0, 300, width), Thickness: 12, Pockets: []geom.Pocket{
			{Kind: geom.Rabbet, Depth: depth, Outline: geom.Rectangle(0, 0, 10, width)}}}, mill.Settings{Bits: []mill.Bit{bit}, Overcut: 1})
	}
	count := func(parts ...Placement) (list []geom.Loop) {
		layers, err := Layers(Sheet{Name: "s", Quantity: 1, Length: 700, Width: 300, Thickness: 12, Parts: parts}.Whole(), geom.Inside, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range layers {
			if l.Operation == "rabbet" {
				for _, c := range l.Cuts {
					list = append(list, c.Outline)
				}
			}
		}
		return list
	}
	// 107 apart: each runs 4 past its edges, so that they share 14 x 1 mm.
	got := count(Placement{Part: side(6, 100), X: 10, Y: 10}, Placement{Part: side(6, 100), X: 10, Y: 117})
	if want := 2*14*108.0 - 14; len(got) != 1 || math.Abs(got[0].Area()-want) > 1e-6 || len(got[0]) != 4 {
		t.Errorf("%v, want one of %g mm2", got, want)
	}
	got = count(Placement{Part: side(6, 100), X: 10, Y: 10}, Placement{Part: side(6, 150), X: 16, Y: 117})
	if want := 14*108 + 14*158 - 8.0; len(got) != 1 || math.Abs(got[0].Area()-want) > 1e-6 || len(got[0]) != 8 {
		t.Errorf("%v, want one of %g mm2", got, want)
	}
	if got := count(Placement{Part: side(6, 100), X: 10, Y: 10}, Placement{Part: side(5, 100), X: 10, Y: 117}); len(got) != 2 {
		t.Errorf("%v: rabbets of two depths are one", got)
	}
	if got := count(Placement{Part: side(6, 100), X: 10, Y: 10}, Placement{Part: side(6, 100), X: 10, Y: 130}); len(got) != 2 {
		t.Errorf("%v: rabbets that do not meet are one", got)
	}
}

// TestNoNotes: nothing is drawn beside a part, and all else is as with notes.
func TestNoNotes(t *testing.T) {
	with, without := drawn(t, sawn(full()), geom.Inside, Options{}), drawn(t, sawn(full()), geom.Inside, Options{NoNotes: true})
	rest := slices.DeleteFunc(with.Entities,
		func(e dxfread.Entity) bool { return e.Layer == layer.Label || e.Layer == layer.Scale })
	if len(rest) == 0 || len(rest) != len(without.Entities) {
		t.Errorf("%d of %d entities are left", len(without.Entities), len(rest))
	}
	for _, e := range without.Entities {
		if e.Layer == layer.Label || e.Layer == layer.Scale {
			t.Errorf("%s is drawn", e.Layer)
		}
	}
}
