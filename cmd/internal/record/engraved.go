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
	X      Length `json:"x"`
	Y      Length `json:"y"`
	Height Length `json:"height"`
	Depth  Length `json:"depth"`
	Reason string `json:"reason,omitempty"` // why it was left out
}

func engraved(p batch.Part, depth float64, u geom.Unit) *Engraved {
	e := p.Engraved
	switch {
	case e == nil:
		return nil
	case !e.Room.IsEmpty():
		return &Engraved{Number: e.Number, Reason: e.Room.In(u)}
	}
	return &Engraved{e.Number, e.Face.String(), Length(e.At.X), Length(e.At.Y), Length(e.Height), Length(depth), ""}
}
