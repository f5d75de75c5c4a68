package drawing

import (
	"strings"

	"drawerwright/geom"
)

// Marked is a drawing as data, for a page whose style sheet has the colors: shapes and texts
// with their roles and without ink. As in SVG, x and y run from the upper left corner, in mm.
type Marked struct {
	Width  float64       `json:"width"`
	Height float64       `json:"height"`
	Shapes []MarkedShape `json:"shapes"`
	Texts  []MarkedText  `json:"texts"`
}

// MarkedShape is a shape as the path of an SVG element.
type MarkedShape struct {
	Role string `json:"role"`
	Path string `json:"path"`
}

// MarkedText is a text as an SVG element has it, which starts, is centered or ends at a place.
type MarkedText struct {
	Role   string  `json:"role"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Size   float64 `json:"size"`
	Length float64 `json:"length"` // in the letters that it was laid out with
	Anchor string  `json:"anchor"` // start, middle or end
	Text   string  `json:"text"`
}

// Marked gives a drawing as data. Its texts must be upright.
func (d Drawing) Marked() Marked {
	out := Marked{Width: tidy(d.Width), Height: tidy(d.Height), Shapes: []MarkedShape{}, Texts: []MarkedText{}}
	for _, s := range d.Shapes {
		b := svg{height: d.Height}
		b.follow(s)
		out.Shapes = append(out.Shapes, MarkedShape{s.Role, b.String()})
	}
	for _, t := range d.Texts {
		out.Texts = append(out.Texts, MarkedText{Role: t.Role, X: tidy(t.At.X), Y: tidy(d.Height - t.At.Y),
			Size: tidy(t.Size), Length: tidy(Width(t.Face, t.Size, t.String)), Anchor: anchors[t.Align], Text: strings.Map(basic, t.String)})
	}
	return out
}

// tidy is a length in whole nanometers, so that its last bits do not show.
func tidy(mm float64) float64 { return geom.LengthOf(mm).MM() }
