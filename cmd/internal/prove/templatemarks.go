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
	if strings.HasPrefix(face, "end") {
		c.slots(t, p, endWalls(c.report.Parts.At(i)), origin)
	}
	for _, f := range []geom.Face{geom.Inside, geom.Outside} {
		if strings.HasPrefix(face, f.String()) { // or a piece of it
			c.slots(t, p, c.wallsOf(c.report.Parts.At(i), f), origin)
		}
	}
}

// wallsOf are the places of a part's upright and of its level walls, as one looks at a face, and its walls that
// are neither.
type wallsOf struct {
	square  [2][]float64
	slanted [][2]geom.Point
}

// endWalls are the walls of pins as the end grain at a part's left end shows them, the outside face to the left.
func endWalls(q record.Part) (w wallsOf) {
	outline, ok := loopOf(q.Outline)
	if !ok {
		return w
	}
	for _, op := range q.Operations {
		l, ok := loopOf(op.Outline)
		if !ok || op.Kind != geom.Flank.String() {
			continue
		}
		b := l.Bounds()
		wide, deep := b.Min.Y, b.Max.Y
		if leanOf(outline, b) < 0 {
			wide, deep = deep, wide
		}
		w.slanted = append(w.slanted, [2]geom.Point{{Y: wide}, {X: q.Thickness.MM(), Y: deep}})
	}
	return w
}

func (c *checking) wallsOf(q record.Part, face geom.Face) (w wallsOf) {
	length := q.Length.MM()
	add := func(corners []record.Vertex) {
		l, ok := loopOf(corners)
		if !ok {
			return
		}
		for i, v := range l {
			x := v.X
			if face == geom.Outside { // turned over end for end
				x = length - x
			}
			l[i].X = x
			w.square[0], w.square[1] = append(w.square[0], x), append(w.square[1], v.Y)
		}
		for i, v := range l {
			w.slanted = append(w.slanted, [2]geom.Point{v.Point, l.Next(i).Point})
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
		low, high, list := b.Min.X-origin.X, b.Max.X-origin.X, walls.square[0]
		if b.Width() > b.Height() {
			low, high, list = b.Min.Y-origin.Y, b.Max.Y-origin.Y, walls.square[1]
		}
		off := math.Inf(1)
		if _, square := o.AsRect(tick); !square {
			list, off = nil, walls.aside(o.Loop, origin)
		}
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

// aside is how far the side of a slot that lies nearest to a slanted wall is off it.
func (w wallsOf) aside(slot geom.Loop, origin geom.Point) float64 {
	off := math.Inf(1)
	for _, wall := range w.slanted {
		for i, v := range slot {
			_, a := geom.Beside(v.Sub(origin), wall[0], wall[1])
			_, b := geom.Beside(slot.Next(i).Sub(origin), wall[0], wall[1])
			off = math.Min(off, math.Max(math.Abs(a), math.Abs(b)))
		}
	}
	return off
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
