package mill

import (
	"testing"

	"drawerwright/geom"
)

func TestFlipOf(t *testing.T) {
	pocket := func(f geom.Face, x0, y0, x1, y1 float64) geom.Pocket {
		return geom.Pocket{Face: f, Outline: geom.Rectangle(x0, y0, x1, y1), Depth: 6}
	}
	for name, c := range map[string]struct {
		pocket geom.Pocket
		want   Flip
	}{
		"a rabbet at the end, over the full height": {pocket(geom.Outside, 0, 0, 6, 100), Flip{Along: true, Allowed: 1.25}},
		"a groove from end to end":                  {pocket(geom.Outside, 0, 10, 400, 16), Flip{Across: true}},
		"a groove that stops":                       {pocket(geom.Outside, 6, 10, 394, 16), Flip{Along: true, Across: true, Allowed: 1.25}},
		"overcut both ways":                         {pocket(geom.Outside, -5, -5, 405, 105), Flip{}},
		"on the inside":                             {pocket(geom.Inside, 0, 0, 6, 100), Flip{}},
	} {
		p := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 100), Thickness: 12, Pockets: []geom.Pocket{c.pocket}}
		if got := FlipOf(p, 1); got != c.want { // 1 of glue room and 0.25
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
}

func TestBlank(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 100)}
	if length, width := (Operations{Gap: 6.05, EndGap: 15}).Blank(p); length != 430 || width != 112.1 {
		t.Errorf("%g x %g, want 430 x 112.1", length, width)
	}
}
