package prove

import (
	"math"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// marks looks whether what is cut out of a template marks what it should: each slot of a
// plate that is laid on a part has an edge on a wall of what is cut there, and a story stick
// has one for every slide line.
func (c *checking) marks(t record.Template, p plate) {
	for _, k := range c.report.Cabinets {
		if t.Name == "stick-"+k.Name && len(k.Files) > 0 {
			c.stick(t, k, p)
		}
	}
	if len(t.Parts) == 0 || strings.Contains(t.Name, "-lip-") { // strips that are glued under it
		return
	}
	i, known := c.parts[t.Parts[0]]
	face, of := strings.CutPrefix(t.Name, t.Parts[0]+"-")
	if !known || !of {
		return
	}
	origin := geom.Point{X: t.Origin[0].MM(), Y: t.Origin[1].MM()}
	for _, f := range []geom.Face{geom.Inside, geom.Outside} {
		if strings.HasPrefix(face, f.String()) { // or a piece of it
			c.slots(t, p, c.wallsOf(c.report.Parts.At(i), f), origin)
		}
	}
}

// wallsOf are the places of a part's upright and of its level walls, as one looks at a face.
type wallsOf [2][]float64

func (c *checking) wallsOf(q record.Part, face geom.Face) (w wallsOf) {
	length := q.Length.MM()
	add := func(corners []record.Vertex) {
		l, ok := loopOf(corners)
		if !ok {
			return
		}
		for _, v := range l {
			x := v.X
			if face == geom.Outside { // turned over end for end
				x = length - x
			}
			w[0], w[1] = append(w[0], x), append(w[1], v.Y)
		}
	}
	for _, op := range q.Operations {
		if op.Face == face.String() {
			add(op.Outline)
		}
	}
	add(q.Outline)
	return w
}

// slots looks for the wall that each slot marks.
func (c *checking) slots(t record.Template, p plate, walls wallsOf, origin geom.Point) {
	for _, o := range p.openings {
		if len(o.Loop) != 4 { // a hole
			continue
		}
		b := o.Bounds()
		low, high, list := b.Min.X-origin.X, b.Max.X-origin.X, walls[0]
		if b.Width() > b.Height() {
			low, high, list = b.Min.Y-origin.Y, b.Max.Y-origin.Y, walls[1]
		}
		off := math.Inf(1)
		for _, at := range list {
			off = math.Min(off, math.Min(math.Abs(low-at), math.Abs(high-at)))
		}
		if off > sameSize {
			c.fault("template-mark", place{t.Name, p.file, o.line}, rebuild,
				"neither edge of the slot is on a wall of what is cut into %s: the nearest is %s off", t.Parts[0],
				c.text(off))
		}
	}
}

// stick looks for a slot with its edge on each slide line.
func (c *checking) stick(t record.Template, k record.Cabinet, p plate) {
	for _, r := range k.Rows {
		at, off := r.SlideLine.MM(), math.Inf(1)
		for _, o := range p.openings {
			if b := o.Bounds(); len(o.Loop) == 4 {
				off = math.Min(off, math.Min(math.Abs(b.Min.X-at), math.Abs(b.Max.X-at)))
			}
		}
		if off > sameSize {
			c.fault("template-mark", place{r.Drawer, p.file, 0}, rebuild,
				"no slot of the stick has an edge on the slide line of %s, %s from its end", r.Drawer, c.text(at))
		}
	}
}
