package router

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/geom"
	"drawerwright/geom/mill"

	"pgregory.net/rapid"
)

// TestShortBits: in R12 names of bits are cut to what all layers of a job leave room for of
// 31 characters, REGISTER_OUTSIDE_17-00MM_ taking 25 of them; what would be alike is
// numbered; nothing is cut where there is room.
func TestShortBits(t *testing.T) {
	const by = "{operation}_{face}_{depth}_{cutter}"
	dado := mill.Cut{Operation: "dado", Depth: 6, Remaining: 6}
	other := mill.Cut{Operation: "dado", Depth: 6, Remaining: 6, Bit: 1}
	hole := mill.Cut{Operation: "register", Face: geom.Outside, Depth: 12, Below: 5, Bit: 1}
	for name, c := range map[string]struct {
		version dxf.Version
		pattern string
		bits    [2]string
		cuts    []mill.Cut
		want    map[string]string
	}{
		"R2000":                 {dxf.R2000, by, [2]string{"compression six", "compression three"}, []mill.Cut{dado, other, hole}, nil},
		"room enough":           {dxf.R12, by, [2]string{"six", "three"}, []mill.Cut{dado, other, hole}, nil},
		"alike but for a few":   {dxf.R12, by, [2]string{"compression six", "compression three"}, []mill.Cut{dado, other, hole}, map[string]string{"compression six": "COMPRE", "compression three": "COMPR2"}},
		"one is short":          {dxf.R12, by, [2]string{"compre", "compression three"}, []mill.Cut{dado, other, hole}, map[string]string{"compre": "COMPRE", "compression three": "COMPR2"}},
		"a dash at the end":     {dxf.R12, by, [2]string{"x", "abcde-fgh"}, []mill.Cut{dado, hole}, map[string]string{"abcde-fgh": "ABCDE", "x": "X"}},
		"more room in dados":    {dxf.R12, by, [2]string{"compression six", "three"}, []mill.Cut{dado, other}, map[string]string{"compression six": "COMPRESSION", "three": "THREE"}},
		"in a tool's place":     {dxf.R12, "{operation}_{depth}_{tool}", [2]string{"a long name of a bit", "x"}, []mill.Cut{dado}, map[string]string{"a long name of a bit": "A-LONG-NAME-OF-A-BI", "x": "X"}},
		"a layer that both cut": {dxf.R12, "", [2]string{"compression six", "compression three"}, []mill.Cut{dado, other}, map[string]string{"compression six": "COMPRESSION", "compression three": "COMPRESSION2"}},
		"no room at all":        {dxf.R12, "a-long-word-of-the-shop_{operation}_{depth}_{cutter}", [2]string{"six", "three"}, []mill.Cut{dado}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			p := Part{Name: "p", Stock: "ply", Bits: []mill.Bit{{Name: c.bits[0], Diameter: 6}, {Name: c.bits[1], Diameter: 3}}, Work: mill.Operations{Cuts: c.cuts}}
			o := Options{Version: c.version, Pattern: c.pattern}
			var s Sharing
			s.Add(p, o)
			o.Shared, o.Words = s.Names(), s.Words(o)
			if !maps.Equal(o.Words, c.want) {
				t.Errorf("%v, want %v", o.Words, c.want)
			}
			var names []string
			for _, face := range []geom.Face{geom.Inside, geom.Outside} {
				layers, err := Layers(p, face, o)
				if name == "no room at all" {
					if face == geom.Inside && err == nil {
						t.Error("a name that is too long is taken")
					}
					return
				}
				if err != nil {
					t.Fatal(err)
				}
				for _, l := range layers {
					names = append(names, l.Name)
				}
			}
			slices.Sort(names)
			if len(slices.Compact(slices.Clone(names))) != len(c.cuts) {
				t.Errorf("%d cuts on %v", len(c.cuts), names)
			}
		})
	}
}

// TestShortened: words of any names are no longer than asked for, and none are alike.
func TestShortened(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := rapid.IntRange(1, 12).Draw(t, "room")
		names := rapid.SliceOfNDistinct(rapid.StringMatching("[a-c]{1,4}( [a-c]{1,6})?"), 1, 30,
			strings.TrimSpace).Draw(t, "names")
		words := shortened(names, room)
		if words == nil {
			if room > 2 { // 99 of a kind have room
				t.Fatalf("no words of %d letters for %d bits", room, len(names))
			}
			return
		}
		seen := map[string]bool{}
		for _, n := range names {
			w := words[n]
			if w == "" || len(w) > room || seen[w] {
				t.Fatalf("%q for %q, room for %d: %v", w, n, room, words)
			}
			seen[w] = true
		}
	})
}
