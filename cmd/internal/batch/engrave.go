package batch

import (
	"fmt"

	"drawerwright/export/stroke"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// Engraved is the number of a part.
type Engraved struct {
	Number string // of all parts that are alike
	Face   geom.Face
	mill.Engraved
}

// engrave puts the numbers on the parts that a router cuts, where the job asks for them:
// parts that are alike have one number, so that they stay alike. It is cut with the face up
// that is cut anyway; nothing is turned over for it.
func (b *Batch) engrave() {
	if b.Router.Engrave.Depth == 0 {
		return
	}
	plain := make(map[string]bool) // stocks of which nothing is cut but outlines of bottoms
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			alone, seen := plain[p.Stock.Name]
			whole := len(p.Panel.Pockets) == 0 && len(p.Panel.Holes) == 0
			plain[p.Stock.Name] = (alone || !seen) && p.Role == joinery.Bottom && whole
		}
	}
	for i := range b.Drawers {
		for j := range b.Drawers[i].Parts {
			if p := &b.Drawers[i].Parts[j]; len(p.Bits) > 0 {
				b.number(p, plain[p.Stock.Name])
			}
		}
	}
}

// number engraves one part; from is whether it may be cut out from either face.
func (b *Batch) number(p *Part, from bool) {
	number := fmt.Sprint(p.Number)
	p.Engraved = &Engraved{Number: number}
	face, area, hidden := p.Hidden()
	p.Engraved.Face = face
	cut := from
	for _, f := range p.Work().Faces {
		cut = cut || f == face
	}
	switch {
	case !hidden:
		p.Engraved.Room = geom.Sentencef("all of it shows in the box")
		return
	case !cut:
		p.Engraved.Room = geom.Sentencef("it would have to be turned over for it")
		return
	}
	lines, wide := stroke.Open(number)
	asked := &mill.Engraving{Face: face, Area: area, Wide: wide}
	for _, l := range lines {
		var path []geom.Point
		for _, q := range l {
			path = append(path, geom.Point{X: q.X, Y: q.Y})
		}
		asked.Lines = append(asked.Lines, path)
	}
	work, _ := p.milling.prepare(milled{p.Part, asked}, p.Bits)
	if work.Engraved == nil {
		return
	}
	if p.Engraved.Engraved = *work.Engraved; work.Engraved.Room.IsEmpty() {
		p.engraving = asked
	}
}
