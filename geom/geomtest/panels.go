package geomtest

import "drawerwright/geom"

// Side is a drawer side of common size: two dados and a groove.
func Side() geom.Panel {
	return geom.Panel{Outline: geom.Rectangle(0, 0, 500, 140), Thickness: 12.2, Pockets: []geom.Pocket{
		{Kind: geom.Dado, Depth: 6.1, Outline: geom.Rectangle(6.1, 0, 12.45, 140)},
		{Kind: geom.Dado, Depth: 6.1, Outline: geom.Rectangle(487.55, 0, 493.9, 140)},
		{Kind: geom.Groove, Depth: 6.1, Outline: geom.Rectangle(0, 6.1, 500, 12.45)},
	}}
}

// Crowded has [MaxPockets] overlapping rectangles on both faces, the same for everyone:
// for benchmarks.
func Crowded() geom.Panel { return crowded(geom.Rectangle) }

// CrowdedRounded is [Crowded] with rounded corners.
func CrowdedRounded() geom.Panel {
	return crowded(func(x0, y0, x1, y1 float64) geom.Loop { return geom.RoundedRectangle(x0, y0, x1, y1, 8) })
}

func crowded(outline func(x0, y0, x1, y1 float64) geom.Loop) geom.Panel {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 500, 140), Thickness: 18}
	for i := range MaxPockets {
		x, y := float64(i*37%400), float64(i*53%90)
		p.Pockets = append(p.Pockets, geom.Pocket{Depth: 2 + float64(i%5), Face: geom.Face(i % 2),
			Outline: outline(x, y, x+60+float64(i), y+25+float64(i%7))})
	}
	return p
}

// Pins has a pin of 10 x 60 at each end, 20 from both edges, whose flanks lean by 2 over the thickness.
func Pins() geom.Panel {
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	p := geom.Panel{Thickness: 16, Outline: geom.Polygon(at(10, 0), at(190, 0), at(190, 20), at(200, 20), at(200, 80),
		at(190, 80), at(190, 100), at(10, 100), at(10, 80), at(0, 80), at(0, 20), at(10, 20))}
	for _, x := range []float64{0, 190} {
		k := geom.Pocket{Kind: geom.Flank, Face: geom.Outside, Depth: 16, Lean: -1}
		k.Outline = geom.Rectangle(x, 20, x+10, 22)
		p.Pockets = append(p.Pockets, k)
		k.Lean, k.Outline = 1, geom.Rectangle(x, 78, x+10, 80)
		p.Pockets = append(p.Pockets, k)
	}
	return p
}
