package record

import (
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/lumber"
)

// Lumber is the rough boards that the parts of a stock of solid wood are made of.
type Lumber struct {
	Stock     string  `json:"stock"`
	Thickness Length  `json:"thickness"` // rough
	Width     Length  `json:"width"`     // of the boards as they are bought
	Waste     float64 `json:"waste"`     // as a part of what is used
	Quantity  float64 `json:"quantity"`  // with that, rounded up
	Unit      string  `json:"unit"`
	Parts     []Rough `json:"parts"`
}

// Rough is what equal parts are sawn from, by their number in the cut list.
type Rough struct {
	Number   int      `json:"number"`
	Parts    []string `json:"parts"`
	Quantity int      `json:"quantity"`
	Boards   int      `json:"boards"` // of each part: more than one are glued edge to edge
	Length   Length   `json:"length"` // of each of them
	Width    Length   `json:"width"`
}

// lumberOf lists the rough boards of the stocks of a batch that are bought in them.
func lumberOf(b batch.Batch, cuts []CutGroup) (list []Lumber) {
	for _, l := range b.Lumber {
		one := Lumber{Stock: l.Stock, Thickness: Length(l.Rough), Width: Length(l.Width), Waste: l.Waste}
		volume := 0.0
		for _, g := range cuts {
			if g.Stock != l.Stock {
				continue
			}
			length, width := g.CutFrom()
			p := l.Piece(length.MM(), width.MM())
			volume += l.Volume(p, g.Quantity)
			one.Parts = append(one.Parts, Rough{g.Number, g.Parts, g.Quantity, p.Strips, Length(p.Length), Length(p.Width)})
		}
		if len(one.Parts) == 0 {
			continue
		}
		one.Quantity, one.Unit = Bulk(volume, b.Units)
		list = append(list, one)
	}
	return list
}

// Bulk is a volume in mm3 in the unit in which rough wood is sold, rounded up to what is measured of it.
func Bulk(volume float64, u geom.Unit) (quantity float64, unit string) {
	up := func(v, of float64) float64 { return math.Ceil(v*of-geom.Settle) / of }
	if u == geom.Inch {
		return up(volume/lumber.BoardFoot, 10), "bd ft"
	}
	return up(volume/1e9, 1000), "m3"
}
