package opening

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Plan is a bank worked out.
type Plan struct {
	Opening     joinery.Size // as it counts
	OutOfSquare float64
	Packing     float64 // thickness of what the cabinet's sides are packed out with, level with its frame
	Shim        float64 // thickness of what is put between the slides and the cabinet, at each side
	Slide       Slide
	SlideLength float64   // as deep as the boxes
	RoomBehind  float64   // behind the boxes, without what the opening keeps free there
	Rows        []Planned // from the top down
	// Holes in the cabinet's left side: x from its front edge, y over the datum.
	Holes   []geom.Point
	Spacers []Spacer // from the datum up
}

// Planned is one drawer of a plan.
type Planned struct {
	FrontWidth, FrontHeight, FrontBottom float64 // of the front, or of the row where there is none
	Box                                  joinery.Size
	BoxBottom                            float64
	Above, Below                         float64 // that the box really keeps free in its row
	Line                                 float64 // of the slide
	Front                                *joinery.DrawerFront
	Undermount                           *joinery.Undermount
}

// Running is between which widths a box runs well on the slides: outside or, with
// slides that go by it, inside. Nothing is said where the slide has no limits.
func (p Plan) Running() (least, most float64, inside, known bool) {
	s := p.Slide
	meant := p.between() - 2*s.Clearance
	if s.InsideLess > 0 {
		meant, inside = p.between()-s.InsideLess, true
	}
	return meant - s.Minus, meant + s.Plus, inside, s.Minus+s.Plus > 0
}

// between is the width between what the slides are screwed to.
func (p Plan) between() float64 { return p.Opening.Width - 2*p.Shim }

// Limits; common practice, no source.
const (
	leastBox  = 40.0  // mm: a lower box holds nothing
	mostPair  = 600.0 // mm: a wider box that is not deeper racks on a pair of slides
	mostAskew = 1.0   // mm over the height: what a shop squares up with shims
	// offDiagonal is how far diagonals may differ from what width and height make them,
	// in mm, before one of the measures is wrong.
	offDiagonal = 4.0
)

// planner gathers a plan and its problems.
type planner struct {
	Bank
	plan     Plan
	problems []Problem
}

// Make plans a bank. With an error among the problems the plan is not to be used.
func Make(b Bank) (Plan, []Problem) {
	p := plan(b)
	p.advise()
	return p.plan, p.problems
}

// plan is Make without trying what is advised.
func plan(b Bank) *planner {
	p := &planner{Bank: b, plan: Plan{Opening: b.Opening.Counted(), Shim: b.Common.Shim, OutOfSquare: b.Opening.OutOfSquare(), Slide: b.Slide}}
	if b.Slide.Height > 0 { // something is screwed on there
		p.plan.Packing = b.Opening.FrameOver
	}
	p.measure()
	p.sides()
	heights, ok := p.heights()
	depth, deep := p.depth()
	if !ok || !deep || p.failed() {
		return p
	}
	p.plan.SlideLength, p.plan.RoomBehind = depth, p.plan.Opening.Depth-p.inFront()-depth-p.Opening.Behind
	p.rows(heights, depth)
	if !p.failed() && len(p.plan.Rows) > 0 {
		p.racking()
		p.lines()
	}
	return p
}

func (p *planner) say(isError bool, code, field string, row int, message, hint string) {
	p.problems = append(p.problems, Problem{Code: code, Error: isError, Field: field, Row: row, Message: message, Hint: hint})
}

// propose is say for an error that a change may end.
func (p *planner) propose(c Change, code, field string, row int, message, hint string) {
	p.problems = append(p.problems, Problem{Code: code, Error: true, Field: field, Row: row, Message: message, Hint: hint, Change: &c})
}

func (p *planner) failed() bool {
	for _, q := range p.problems {
		if q.Error {
			return true
		}
	}
	return false
}

func (p *planner) text(mm float64) string { return geom.LengthOf(mm).Text(p.Unit) }

// measure judges the readings of the opening.
func (p *planner) measure() {
	o := p.Opening
	for _, m := range []struct {
		what string
		list []float64
	}{{"width", o.Width}, {"height", o.Height}, {"depth", o.Depth}} {
		low, high := least(m.list), greatest(m.list)
		if spread := high - low; spread > mostSpread+settle {
			p.say(false, "opening-spread", "opening", -1, fmt.Sprintf("the readings of the opening's %s differ by %s; the smallest, %s, counts", m.what, p.text(spread), p.text(low)),
				"shim the slides where it is wider, or make the opening even")
		}
	}
	if len(o.Diagonals) != 2 {
		return
	}
	w, h := p.plan.Opening.Width, p.plan.Opening.Height
	// In a parallelogram p^2 + q^2 = 2 (w^2 + h^2).
	mean := math.Sqrt((float64(o.Diagonals[0]*o.Diagonals[0]) + float64(o.Diagonals[1]*o.Diagonals[1])) / 2)
	if want := math.Hypot(w, h); math.Abs(mean-want) > offDiagonal {
		p.say(false, "diagonals", "opening", -1, fmt.Sprintf("width and height make diagonals of %s, and %s and %s were measured", p.text(want), p.text(o.Diagonals[0]), p.text(o.Diagonals[1])),
			"measure again: one of them is wrong")
	}
	if askew := p.plan.OutOfSquare; askew > mostAskew+settle {
		hint := "shim the slides so that the drawers run square to the front"
		if o.Fronts == Inset {
			hint += ", and fit the fronts to the opening by hand"
		}
		p.say(false, "out-of-square", "opening", -1, fmt.Sprintf("the diagonals differ by %s: the upper edge stands %s to one side of the lower one", p.text(math.Abs(o.Diagonals[0]-o.Diagonals[1])), p.text(askew)), hint)
	}
}

func greatest(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	return slices.Max(list)
}

// sides judges the sides' thickness against the slide.
func (p *planner) sides() {
	s, t := p.Slide, p.Sides.Thickness
	if s.MostSide > 0 && t.Max > s.MostSide+settle {
		p.propose(p.most("sides", s.MostSide-(t.Max-t.Mean)), "side-thickness", "sides", -1, fmt.Sprintf("sides of %s, %s at the thickest, do not go beside this slide, which takes %s", p.text(t.Mean), p.text(t.Max), p.text(s.MostSide)),
			fmt.Sprintf("take a %s slide", SideMount))
	}
}

// inFront is what inset fronts take of the depth.
func (p *planner) inFront() float64 {
	if p.Front != nil && p.Opening.Fronts == Inset {
		return p.Front.Thickness.Max
	}
	return 0
}

// depth is that of the boxes.
func (p *planner) depth() (float64, bool) {
	s, room := p.Slide, p.plan.Opening.Depth-p.Opening.Behind-p.Slide.Behind-p.Common.Shallower
	taken := p.Opening.Behind + s.Behind
	room -= p.inFront()
	taken += p.inFront()
	if len(s.Lengths) == 0 { // cut to length
		step := 1.0
		if p.Unit == geom.Inch {
			step = geom.InchMM / 16
		}
		room = math.Floor(room/step+settle) * step
		if room >= 2*leastBox {
			return room, true
		}
		p.say(true, "depth", "opening", -1, fmt.Sprintf("the opening is %s deep, and %s of that are not for the box", p.text(p.plan.Opening.Depth), p.text(taken)), "less room behind, or another opening")
		return 0, false
	}
	length, ok := s.pick(room)
	if !ok {
		p.propose(p.least("opening", s.shortest()+taken), "depth", "slide", -1, fmt.Sprintf("the opening is %s deep; the shortest slide, %s, needs %s with what stands before and behind it", p.text(p.plan.Opening.Depth), p.text(s.shortest()), p.text(s.shortest()+taken)),
			fmt.Sprintf("a slide of the shop's own that is shorter, or a %s, which is cut to length", Wooden))
	}
	return length, ok
}

// width is that of the boxes.
func (p *planner) width() float64 {
	if p.Slide.InsideLess > 0 {
		return p.plan.between() - p.Slide.InsideLess + 2*p.Sides.Thickness.Mean + p.Aim
	}
	return p.plan.between() - 2*p.Slide.Clearance + p.Aim
}

// rows makes fronts and boxes of the heights.
func (p *planner) rows(heights []float64, depth float64) {
	width := p.width()
	if beyond := width - p.plan.Opening.Width; beyond > settle {
		p.propose(p.most("sides", p.Sides.Thickness.Mean-beyond/2), "width", "sides", -1, fmt.Sprintf("with sides of %s the boxes would be %s wide in an opening of %s", p.text(p.Sides.Thickness.Mean), p.text(width), p.text(p.plan.Opening.Width)),
			"take another slide")
		return
	}
	_, top, left := p.span()
	frontWidth := p.plan.Opening.Width
	switch p.Opening.Fronts {
	case Inset:
		frontWidth = p.plan.Opening.Width - p.Edge.Left - p.Edge.Right
	case Overlay:
		frontWidth = p.plan.Opening.Width + p.Edge.Left + p.Edge.Right
	}
	if width < 2*leastBox || frontWidth < 2*leastBox {
		p.say(true, "width", "opening", -1, fmt.Sprintf("the opening is %s wide: that leaves boxes of %s", p.text(p.plan.Opening.Width), p.text(width)), "a wider opening, or a slide that takes less")
		return
	}
	at := top
	for i, h := range heights {
		r := Planned{FrontWidth: frontWidth, FrontHeight: h, FrontBottom: at - h}
		at -= h + p.Gap
		low, high := math.Max(0, r.FrontBottom), math.Min(p.plan.Opening.Height, r.FrontBottom+h)
		box, boxBottom, ok := p.box(i, low, high)
		if !ok {
			return
		}
		r.Box, r.BoxBottom = joinery.Size{Width: width, Height: box, Depth: depth}, boxBottom
		r.Above, r.Below, r.Line = high-boxBottom-box, boxBottom-low, boxBottom+p.Slide.Line
		if p.Front != nil {
			r.Front = &joinery.DrawerFront{Stock: *p.Front, Width: frontWidth, Height: h,
				Left: (p.plan.Opening.Width-width)/2 - left, Below: boxBottom - r.FrontBottom}
		}
		r.Undermount = p.Slide.under()
		p.plan.Rows = append(p.plan.Rows, r)
	}
}

// under is what a slide asks of the box beside its outside size; nil for nothing.
func (s Slide) under() *joinery.Undermount {
	if s.Recess == 0 && s.NotchWidth == 0 && s.HookDiameter == 0 {
		return nil
	}
	return &joinery.Undermount{Recess: s.Recess, MostSide: s.MostSide, NotchWidth: s.NotchWidth, NotchHeight: s.NotchHeight,
		HookDiameter: s.HookDiameter, HookDepth: s.HookDepth, HookHeight: s.HookHeight, HookIn: s.HookIn}
}

// box finds the height of a box in a row and where it stands.
func (p *planner) box(row int, low, high float64) (height, bottom float64, ok bool) {
	s := p.Slide
	bottom = low + s.Below
	if p.LineBoring > 0 { // up to the next hole
		bottom = float64(p.LineBoring*math.Ceil((bottom+s.Line)/p.LineBoring-settle)) - s.Line
	}
	height = high - s.Above - bottom
	if p.Sides.Solid { // they grow higher in a damp season
		height /= 1 + p.Sides.Swelling
	}
	if len(p.BoxHeights) > 0 {
		most := 0.0
		for _, h := range p.BoxHeights {
			if h <= height+settle {
				most = math.Max(most, h)
			}
		}
		if most == 0 {
			p.say(true, "row", "box-heights", row, fmt.Sprintf("row %d has room for a box of %s, and the lowest box is %s", row+1, p.text(height), p.text(least(p.BoxHeights))), "fewer or higher rows, or a lower box height")
			return 0, 0, false
		}
		height = most
	}
	if row < len(p.Common.Heights) && p.Common.Heights[row] > 0 {
		height = math.Min(height, p.Common.Heights[row])
	}
	if height < leastBox-settle {
		p.say(true, "row", "rows", row, fmt.Sprintf("row %d is %s high in the opening; what the slide keeps free leaves a box of %s, at least %s is needed", row+1, p.text(high-low), p.text(height), p.text(leastBox)),
			"fewer or higher rows")
		return 0, 0, false
	}
	return height, bottom, true
}

// racking warns of boxes that are wider than deep on a pair of slides.
func (p *planner) racking() {
	box := p.plan.Rows[0].Box
	if p.Slide.Pair() && box.Width > box.Depth && box.Width > mostPair {
		p.say(false, "racking", "slide", -1, fmt.Sprintf("the boxes are %s wide and %s deep: on one pair of slides they rack when they are pulled at one end", p.text(box.Width), p.text(box.Depth)),
			"take slides that keep both sides in step, or two drawers side by side")
	}
}
