package prove

import (
	"errors"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/proof"
	"drawerwright/geom/sweep"
)

// reach cuts one line with its bit.
func (r *panelReader) reach(c *drawnCut) {
	radius := c.bit / 2
	switch c.operation {
	case "register":
		return
	case "profile":
		r.around(c, radius)
		return
	}
	if !r.sweep(c, radius) {
		return
	}
	c.shape = proof.ShapeOf(c.reach...) // what the bit goes round is left in it
	bounds := c.shape.Bounds()
	r.corners += c.shape.Corners()
	c.beyond = max(0, -bounds.Min.X, -bounds.Min.Y, bounds.Max.X-r.length, bounds.Max.Y-r.width)
	c.inside = bounds.Intersect(r.region.box)
	r.areas(c)
	if c.operation == geom.Flank.String() {
		c.lean = leanOf(r.out.left, c.loop.Bounds())
	}
	if c.within > 0 {
		r.out.cuts = append(r.out.cuts, c.boardCut)
	}
	if c.left > proof.MinLeft {
		line := bounds
		if c.path == nil {
			line = c.loop.Bounds()
		}
		r.leftStanding(c, line, r.region.box)
	}
	if gap := r.report.Router.PartSpacing.MM(); gap > 0 && c.beyond > gap+tick {
		r.fault("neighbor", r.place(c.file, c.at), "lay the parts further apart, or write less overcut",
			"the %s on %s reaches %s past the panel, and the next part lies at %s",
			c.operation, c.layer, r.text(c.beyond), r.text(gap))
	}
}

// leanOf is which way the wall of a pin leans: it is deepest beside the notch of the outline, where the pin ends.
func leanOf(outline geom.Loop, b geom.Rect) int {
	ring := rings{}.with(outline.Flatten(outlineChord))
	if m := b.Center(); ring.inside(geom.Point{X: m.X, Y: b.Max.Y + sameSize}) {
		return -1
	}
	return 1
}

// sweep moves the bit within its line; false where it cannot cut there.
func (r *panelReader) sweep(c *drawnCut, radius float64) bool {
	if _, hole, ok := c.loop.AsCircle(); ok && radius > hole && radius < hole+tick {
		radius = hole // a bit that is plunged: the drawing rounds the hole's size
	}
	var err error
	if c.path != nil {
		c.reach, err = sweep.Line(c.path, radius)
	} else {
		c.reach, err = sweep.Pocket(c.loop, radius)
	}
	switch {
	case errors.Is(err, sweep.ErrRing):
		r.fault("crossing", r.place(c.file, c.at), rebuild,
			"a line on %s crosses itself or has no area", c.layer)
		return false
	case err != nil:
		r.fault("uncut", r.place(c.file, c.at), rebuild, "a line on %s cannot be cut: %v", c.layer, err)
		return false
	case len(c.reach) == 0:
		b := c.loop.Bounds()
		r.fault("bit-too-big", r.place(c.file, c.at),
			"take a smaller bit, or build the folder with the bit that is there",
			"a bit of %s does not get into the %s on %s, %s wide",
			r.text(c.bit), c.operation, c.layer, r.text(math.Min(b.Width(), b.Height())))
		return false
	}
	return true
}

// areas measures what the bit cuts, what of that lies within the panel, and what it leaves
// of a closed line.
func (r *panelReader) areas(c *drawnCut) {
	for _, l := range c.reach {
		c.swept += l.Area()
		c.within += math.Copysign(r.region.within(l, r.chord()), l.Area())
	}
	drawn := c.within
	if c.path == nil {
		drawn = r.region.within(c.loop, r.chord())
		c.line, c.left = proof.ShapeOf(c.loop), drawn-c.within
	}
	if r.detail {
		n := func(v float64) float64 { return math.Round(v*1e6) / 1e6 }
		r.cuts = append(r.cuts, record.Cut{File: c.file, Layer: c.layer, Line: c.at, Bit: r.found(c.bit),
			Drawn: n(drawn), Reached: n(c.within), Swept: n(c.swept), Beyond: r.found(c.beyond)})
	}
}

// around follows the outline on its outside.
func (r *panelReader) around(c *drawnCut, radius float64) {
	left, err := sweep.Outside(c.loop, radius)
	switch {
	case errors.Is(err, sweep.ErrRing):
		r.fault("crossing", r.place(c.file, c.at), rebuild,
			"the outline on %s crosses itself or has no area", c.layer)
	case err != nil:
		r.fault("uncut", r.place(c.file, c.at), rebuild, "the outline on %s cannot be cut: %v", c.layer, err)
	default:
		r.out.outline, r.out.left = proof.ShapeOf(left), left
		if !c.through {
			r.out.under = r.out.thickness - c.depth
		}
	}
}

// leftStanding says where a bit leaves wood that the line does not show, if that
// is at the panel's edge: there the line should have run past it.
func (r *panelReader) leftStanding(c *drawnCut, line, panel geom.Rect) {
	radius := c.bit / 2
	short := func(past float64) bool { return past > -sameSize && past < radius-sameSize }
	edges := []float64{panel.Min.X - line.Min.X, panel.Min.Y - line.Min.Y,
		line.Max.X - panel.Max.X, line.Max.Y - panel.Max.Y}
	if i := slices.IndexFunc(edges, short); i >= 0 {
		r.fault("overcut", r.place(c.file, c.at), "draw it past the edge by the bit's radius and more",
			"the %s on %s ends %s past the panel's %s edge: a bit of %s leaves %s standing there",
			c.operation, c.layer, r.text(max(0, edges[i])), []string{"left", "bottom", "right", "top"}[i], r.text(c.bit),
			words.SmallArea(c.left, r.unit))
	}
}

// toldChord is how far, in millimeters, chords may be off their arcs where areas are given to a
// hundredth of a square millimeter, judgedChord where they are only compared with a limit.
const toldChord, judgedChord = 1e-5, 1e-3

func (r *panelReader) chord() float64 {
	if r.detail {
		return toldChord
	}
	return judgedChord
}
