package scene

import (
	"math"

	"drawerwright/geom"
)

// Numbers are what previews show of a part, as JSON: millimeters in panel coordinates,
// rounded to a tenth of a micrometer.
type Numbers struct {
	Length    float64  `json:"length"`
	Width     float64  `json:"width"`
	Thickness float64  `json:"thickness"`
	Pockets   []Pocket `json:"pockets"`
}

// Pocket is a pocket by the rectangle about it.
type Pocket struct {
	Kind    string     `json:"kind"`
	Face    string     `json:"face"`
	At      [2]float64 `json:"at"`   // its lower left corner
	Size    [2]float64 `json:"size"` // along x and y
	Depth   float64    `json:"depth"`
	Through bool       `json:"through"`
}

// NumbersOf are the numbers of a panel. The part of a pocket beyond its edges is not counted.
func NumbersOf(p geom.Panel) Numbers {
	n := Numbers{Length: Rounded(p.Length()), Width: Rounded(p.Width()), Thickness: Rounded(p.Thickness), Pockets: []Pocket{}}
	edge := p.Outline.Bounds()
	add := func(kind geom.Kind, face geom.Face, l geom.Loop, depth float64) {
		r := l.Bounds()
		x, y := max(r.Min.X, edge.Min.X), max(r.Min.Y, edge.Min.Y)
		n.Pockets = append(n.Pockets, Pocket{Kind: kind.String(), Face: face.String(),
			At:    [2]float64{Rounded(x - edge.Min.X), Rounded(y - edge.Min.Y)},
			Size:  [2]float64{Rounded(min(r.Max.X, edge.Max.X) - x), Rounded(min(r.Max.Y, edge.Max.Y) - y)},
			Depth: Rounded(min(depth, p.Thickness)), Through: depth >= p.Thickness})
	}
	for _, k := range p.Pockets {
		add(k.Kind, k.Face, k.Outline, k.Depth)
	}
	for _, h := range p.Holes {
		add(geom.Cutout, geom.Inside, h, p.Thickness)
	}
	return n
}

// Rounded is a length to a tenth of a micrometer, so that the last bits of a
// computation do not show.
func Rounded(mm float64) float64 { return math.Round(mm*1e4)/1e4 + 0 }
