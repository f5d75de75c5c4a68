package proof

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// slidIn, fielded and applied are boxes with those bottoms.
var (
	slidIn  = madeBox{front: joinery.Rabbet, back: joinery.Rabbet, bottom: joinery.BottomSlideIn}
	fielded = madeBox{front: joinery.Rabbet, back: joinery.Rabbet, bottom: joinery.BottomFielded}
	applied = madeBox{front: joinery.Butt, back: joinery.Butt, bottom: joinery.BottomApplied}
)

// deeper makes the bottom longer from front to back, at its front and rear edge.
func deeper(p *Piece, before, behind float64) {
	r := p.Board.Outline.Bounds()
	p.Board.Outline = ShapeOf(geom.Rectangle(r.Min.X, r.Min.Y-before, r.Max.X, r.Max.Y+behind))
}

// TestMadeBottoms: each bottom as made, and with one thing made otherwise.
func TestMadeBottoms(t *testing.T) {
	type measured struct {
		fit                    BottomFit
		goes                   bool
		play, slackX, slackY   float64
		hold, gap              [4]float64
		stand, height, overlap float64
		blocked                []string
	}
	inf := math.Inf(1)
	// In grooves 4.5 deep with half of the clearance at each edge; slid in it is 5 - 1 in
	// the front's, under all of the back, in grooves 0.2 higher than itself, at whose
	// upper edge the back ends. Applied it lies under the walls' edges.
	grooves := measured{goes: true, play: 0.2, slackX: 1, slackY: 1, hold: [4]float64{4.5, 4.5, 4.5, 4.5}, stand: madeRise, height: madeH}
	behind := measured{fit: SlideIn, goes: true, play: 0.2, slackX: 1, slackY: 1, hold: [4]float64{4.5, 4.5, 4, madeTk}, gap: [4]float64{0, 0, 0, 0.2}, stand: madeRise, height: madeH}
	hanging := behind // below its tongue there is more of it
	hanging.stand -= madeField
	below := measured{fit: Applied, goes: true, play: inf, slackX: inf, slackY: inf, hold: [4]float64{madeTs, madeTs, madeTf, madeTk}, stand: -madeTb, height: madeH}
	for name, c := range map[string]struct {
		made madeBox
		is   measured
		harm func([]Piece)
		want func(*measured)
	}{
		"in grooves":                     {made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet}, is: grooves},
		"in grooves, with fingers":       {made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint}, is: grooves},
		"in grooves, with a housed back": {made: madeBox{front: joinery.Butt, back: joinery.Housed}, is: grooves},
		"in higher grooves": {
			made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet}, is: grooves,
			harm: func(p []Piece) {
				for i := left; i <= back; i++ {
					c := len(p[i].Board.Cuts) - 1
					recut(&p[i], c, geom.Rect{Min: geom.Point{Y: 12}, Max: geom.Point{Y: 12}})
				}
				p[bottom].Placement.Origin.Z += 12
			},
			want: func(w *measured) { w.stand += 12 }},
		"slid in":                  {made: slidIn, is: behind},
		"slid in before a setback": {made: madeBox{front: joinery.Butt, back: joinery.Housed, bottom: joinery.BottomSlideIn}, is: behind},
		"fielded":                  {made: fielded, is: hanging},
		"fielded, rabbets 0.1 less deep": {made: fielded, is: hanging,
			harm: func(p []Piece) {
				for i := range p[bottom].Board.Cuts {
					p[bottom].Board.Cuts[i].Depth -= 0.1
				}
			},
			want: func(w *measured) { w.play, w.gap[3], w.stand = 0.1, 0.1, w.stand+0.1 }},
		"slid in, 0.1 thinner": {made: slidIn, is: behind,
			harm: func(p []Piece) { p[bottom].Board.Thickness -= 0.1 },
			want: func(w *measured) { w.play, w.gap[3] = 0.3, 0.3 }},
		"slid in, under a back too low": { // that it lifts by 0.1
			made: slidIn, is: behind,
			harm: func(p []Piece) { p[back].Placement.Origin.Z -= 0.3 },
			want: func(w *measured) { w.gap[3] = -0.1 }},
		"slid in, under a back far too low": { // which it cannot lift by 0.8; they share that along 376 + 10 - 1 of the bottom, 11 deep
			made: slidIn, is: behind,
			harm: func(p []Piece) { p[back].Placement.Origin.Z -= 1 },
			want: func(w *measured) {
				w.goes, w.gap[3], w.overlap = false, -0.8, 0.8*385*madeTk
				w.blocked = []string{"back"}
			}},
		"slid in, under a back 3 higher": {made: slidIn, is: behind,
			harm: func(p []Piece) { p[back].Placement.Origin.Z += 3 },
			want: func(w *measured) { w.gap[3], w.height = 3.2, madeH+3 }},
		"slid in, 1.5 too long": { // 1 of slack, then 0.5 into the front's wood: 385 x 6
			made: slidIn, is: behind,
			harm: func(p []Piece) { deeper(&p[bottom], 1.5, 0) },
			want: func(w *measured) { w.goes, w.slackY, w.hold[2], w.overlap = false, -0.5, 5.5, 0.5*385*madeTb }},
		"slid in, 3 too short": {made: slidIn, is: behind,
			harm: func(p []Piece) { deeper(&p[bottom], -3, 0) },
			want: func(w *measured) { w.slackY, w.hold[2] = 4, 1 }},
		"slid in, a groove that stops behind": { // 4 before the end, in what the rabbet cut leaves of it
			made: madeBox{front: joinery.Butt, back: joinery.Housed, bottom: joinery.BottomSlideIn}, is: behind,
			harm: func(p []Piece) { recut(&p[left], len(p[left].Board.Cuts)-1, sideways(0, -4)) },
			want: func(w *measured) { w.goes, w.blocked = false, []string{"left side"} }},
		"applied": {made: applied, is: below},
		"applied, 3 smaller all round": {made: applied, is: below,
			harm: func(p []Piece) { p[bottom].Board.Outline = ShapeOf(geom.Rectangle(3, 3, madeW-3, madeD-3)) },
			want: func(w *measured) {
				for i := range w.hold {
					w.hold[i] -= 3
				}
			}},
		"applied, 0.4 thicker": { // the box is higher
			made: applied, is: below,
			harm: func(p []Piece) { p[bottom].Board.Thickness += 0.4 },
			want: func(w *measured) { w.stand, w.height = -madeTb-0.4, madeH+0.4 }},
		"applied, under a back that ends 0.5 higher": {made: applied, is: below,
			harm: func(p []Piece) { p[back].Placement.Origin.Z += 0.5 },
			want: func(w *measured) { w.gap[3], w.height = 0.5, madeH+0.5 }},
		"applied, too small": {made: applied, is: below,
			harm: func(p []Piece) { p[bottom].Board.Outline = ShapeOf(geom.Rectangle(0, 0, madeW, madeD-15)) },
			want: func(w *measured) { w.goes, w.hold[3] = false, -4 }},
	} {
		t.Run(name, func(t *testing.T) {
			want, list := c.is, c.made.pieces()
			if c.harm != nil {
				c.harm(list)
				c.want(&want)
			}
			b := assemble(list)
			if b.GoesTogether() != want.goes || b.BottomFit != want.fit || !slices.Equal(b.Blocked, want.blocked) {
				t.Errorf("goes %t, %v, blocked by %v, want %t, %v, %v: %+v %+v", b.GoesTogether(), b.BottomFit, b.Blocked, want.goes, want.fit, want.blocked, b.BottomJoints, b.Overlaps)
			}
			same(t, "play", b.GrooveClearance, want.play)
			same(t, "clearance across", b.ClearanceX, want.slackX)
			same(t, "clearance along", b.ClearanceY, want.slackY)
			same(t, "stand", b.BottomHeight, want.stand)
			same(t, "height", b.Height, want.height)
			for i, w := range b.BottomJoints {
				same(t, w.Name+": hold", w.Engagement, want.hold[i])
				same(t, w.Name+": gap", w.Gap, want.gap[i])
			}
			shared := 0.0
			for _, o := range b.Overlaps {
				shared += o.Volume
			}
			if !near(shared, want.overlap, 1e-6) {
				t.Errorf("overlaps %+v, want %g mm3", b.Overlaps, want.overlap)
			}
		})
	}
}
