package paper

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

func plain(mm float64) string { return strconv.FormatFloat(mm, 'f', -1, 64) }

// TestFaceFits: a view of a part of any size is no wider than its frame, at the largest usual
// scale that leaves room for numbers and sections, or at a smaller one than all where it has to be.
func TestFaceFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long, wide := rapid.IntRange(60, 20000).Draw(t, "long"), rapid.IntRange(12, 3000).Draw(t, "wide")
		thick := float64(rapid.IntRange(6, 30).Draw(t, "thick"))
		length, width := float64(long), float64(wide)
		p := Part{Names: []string{"a", "b"}, Panel: geom.Panel{
			Outline: geom.Rectangle(0, 0, length, width), Thickness: thick,
			Pockets: []geom.Pocket{
				{Kind: geom.Dado, Depth: thick / 2, Outline: geom.Rectangle(6, 0, 12, width)},
				{Kind: geom.Groove, Depth: thick / 2, Outline: geom.Rectangle(0, 4, length, 10)},
			},
		}}
		in := Frame{Width: 180, Height: 240, Most: 240, Least: 0.2}
		v := p.Sectioned(&Details{Number: plain}).Face(geom.Inside, in, plain)
		if v.Scale <= 0 || v.Width > in.Width {
			t.Fatalf("%g mm wide at %g", v.Drawing.Width, v.Scale)
		}
		at := slices.Index(scales, v.Scale)
		if at == 0 {
			return
		}
		larger := scales[len(scales)-1]
		if at > 0 {
			larger = scales[at-1]
		}
		// Numbers and sections take up 80 mm across and 60 up at the most, details another 70 up.
		if larger*(length+thick) < in.Width-80 && larger*(width+thick) < in.Most-130 {
			t.Fatalf("1:%g where 1:%g has room", 1/v.Scale, 1/larger)
		}
	})
}
