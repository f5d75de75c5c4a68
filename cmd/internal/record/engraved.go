package record

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
)

// Engraved is the number of a part, that of all parts that are cut alike.
type Engraved struct {
	Number string `json:"number"`
	Face   string `json:"face,omitempty"`
	// X and Y are its lower left corner as it is read, in panel coordinates; on the outside
	// face it runs from there to the left.
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Height float64 `json:"height"`
	Depth  float64 `json:"depth"`
	Why    string  `json:"why,omitempty"` // why it was left out
}

func engraved(p batch.Part, depth float64, u geom.Unit, n func(float64) float64) *Engraved {
	e := p.Engraved
	switch {
	case e == nil:
		return nil
	case !e.Room.IsEmpty():
		return &Engraved{Number: e.Number, Why: e.Room.In(u)}
	}
	return &Engraved{e.Number, e.Face.String(), n(e.At.X), n(e.At.Y), n(e.Height), n(depth), ""}
}
