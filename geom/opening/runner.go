package opening

import "drawerwright/geom"

// StripPart is what a strip of wood is for.
type StripPart string

const (
	Runner    StripPart = "runner"     // the box's side stands on it
	WearStrip StripPart = "wear strip" // on the runner, of what wears well
	Kicker    StripPart = "kicker"     // over the box's side: the box tips against it when it is pulled out
	Guide     StripPart = "guide"      // beside runner and box, where the cabinet's side is too far out to guide it
)

// Strip is one of a pair of strips of wood that a shop makes for a drawer on wooden runners, at the
// left and at the right. Its grain runs along its length.
type Strip struct {
	Part                StripPart
	Row                 int
	Length, Width, High float64 // Width is across the cabinet
	Out                 float64 // from the opening's side outward to its outer face
	From                float64 // from the cabinet's front edge to its front end
	Bottom              float64 // of its lower edge, over the datum
}

// Line is the height of its middle, on which its screws are, over the datum.
func (s Strip) Line() float64 { return s.Bottom + s.High/2 }

// Seasons are what is free over a box on wooden runners: as it is made, in the dampest and in the driest air.
type Seasons struct{ Now, Dampest, Driest float64 }

// Sizes of strips; common practice, no source.

// UsualRunner is how wide a runner is.
func UsualRunner(u geom.Unit) float64 { return u.Usual(25, 1) }

// UsualFrame is how thick a face frame is.
func UsualFrame(u geom.Unit) float64 { return u.Usual(20, 3.0/4) }

func leastKicker(u geom.Unit) float64 { return u.Usual(8, 5.0/16) }   // a lower one splits at its screws
func guideOver(u geom.Unit) float64   { return u.Usual(20, 3.0/4) }   // the box's lower edge
func leastOver(u geom.Unit) float64   { return u.Usual(1, 1.0/32) }   // a box in the dampest air
func leastAside(u geom.Unit) float64  { return u.Usual(0.2, 1./128) } // of it, at each side
func leastBelow(u geom.Unit) float64  { return u.Usual(5, 3.0/16) }   // of the runner under its wear strip

// strips finds the strips of all drawers of a plan on wooden runners, from the top down, and judges them.
func (p *planner) strips() {
	p.frames()
	if p.Slide.Kind != Wooden || p.Slide.Height == 0 {
		return
	}
	p.bearing()
	for i := range p.plan.Rows {
		p.stripsOf(i)
	}
	p.seasons()
	p.slots()
}

// stripsOf finds those of a row.
func (p *planner) stripsOf(row int) {
	s, r, u := p.Slide, &p.plan.Rows[row], p.Unit
	front, out := p.inFront(), p.plan.Packing
	behind := front
	if p.Opening.FaceFrame {
		behind = max(front, UsualFrame(u))
	}
	add := func(part StripPart, wide, high, out, from, bottom float64) {
		p.plan.Strips = append(p.plan.Strips, Strip{Part: part, Row: row, Length: front + p.plan.SlideLength - from,
			Width: wide, High: high, Out: out, From: from, Bottom: bottom})
	}
	foot, guide := r.Line-s.Height/2, s.Height+min(guideOver(u), r.Box.Height/2)
	begins, guideFoot := front, foot
	if p.Opening.WebFrame > 0 { // whose runners reach to the cabinet's sides, under the guides
		begins, guideFoot, guide = behind, foot+s.Height, guide-s.Height
		p.webFrame(row, foot, out+s.RunnerWidth+p.plan.Shim)
	} else {
		add(Runner, s.RunnerWidth, s.Height-s.WearStrip, -p.plan.Shim, front, foot)
	}
	if s.WearStrip > 0 {
		add(WearStrip, s.RunnerWidth, s.WearStrip, -p.plan.Shim, begins, foot+s.Height-s.WearStrip)
	}
	if thick := out + p.plan.Shim; thick > settle {
		add(Guide, thick, guide, out, behind, guideFoot)
	}
	top, over := r.BoxBottom+r.Box.Height, p.plan.Opening.Height
	if row > 0 {
		over = p.plan.Rows[row-1].Line - s.Height/2 // the runner above serves
	}
	grows := float64(r.Box.Height * p.Sides.Swelling)
	keep := s.ClearanceAbove + grows
	wide := out + p.plan.Shim + s.RunnerWidth
	switch high := min(s.Height, over-top-keep); {
	case high >= leastKicker(u)-settle:
		add(Kicker, wide, high, out, behind, top+keep)
		over = top + keep
		p.bore(top + keep + high/2)
	case row == 0 && p.Opening.FaceFrame: // behind the rail, level with its lower edge
		add(Kicker, wide, s.Height, out, behind, over)
	}
	r.Over = Seasons{Now: over - top, Dampest: over - top - grows,
		Driest: over - top + float64(r.Box.Height*p.Sides.Shrinkage)}
}

// bearing judges whether boxes stand safely on runners of that section.
func (p *planner) bearing() {
	s, u := p.Slide, p.Unit
	// The box stands a clearance from the cabinet's side, or twice that if it is pushed to the other.
	if need := 2*s.Clearance + s.ClearanceMinus + p.Sides.Thickness.Mean/2; s.RunnerWidth < need-settle {
		d := p.found.Fail("runner-width", SettingSlide, "runners of %s are too narrow: a box that is pushed to one "+
			"side would stand on less than half of its other side's thickness", geom.Millimeters(s.RunnerWidth))
		d.Measured, d.Limit = geom.Millimeters(s.RunnerWidth), geom.AtLeast(need)
		d.Ask = geom.Sentencef("write `runner-width:` of %s or more for the slide", geom.AtLeast(need))
	}
	if left := s.Height - s.WearStrip; left < leastBelow(u)-settle {
		d := p.found.Fail("wear-strip", SettingSlide,
			"wear strips of %s leave %s of runners that are %s high with them", geom.Millimeters(s.WearStrip),
			geom.Millimeters(max(0, left)), geom.Millimeters(s.Height))
		d.Measured, d.Limit = geom.Millimeters(left), geom.Millimeters(leastBelow(u))
		d.Ask = geom.Sentencef("thinner wear strips, or `height:` of %s or more for the slide",
			geom.AtLeast(s.WearStrip+leastBelow(u)))
	}
}

// seasons judges whether boxes still run in the dampest air.
func (p *planner) seasons() {
	u := p.Unit
	for i, r := range p.plan.Rows {
		if r.Over.Dampest >= leastOver(u)-settle {
			continue
		}
		d := p.found.Warn("runner-binds", SettingSlide, "%s is left over the box of row %d in the dampest air, when "+
			"its sides have grown by %s: it binds where less than %s is free", geom.Millimeters(max(0, r.Over.Dampest)),
			i+1, geom.Millimeters(r.Over.Now-r.Over.Dampest), geom.Millimeters(leastOver(u)))
		d.Subject.Item, d.Measured, d.Limit = i, geom.Millimeters(r.Over.Dampest), geom.Millimeters(leastOver(u))
		d.Ask = geom.Sentencef("write `clearance-above:` of %s or more for the slide",
			geom.AtLeast(p.Slide.ClearanceAbove+leastOver(u)-r.Over.Dampest))
		break
	}
	// The widest box that runs, with both sides grown thicker.
	grows := float64(p.Sides.Thickness.Max * p.Sides.Thickening)
	if aside := p.Slide.Clearance - p.Slide.ClearancePlus/2 - grows; aside < leastAside(u)-settle {
		d := p.found.Warn("runner-binds", SettingSlide, "%s is left at each side of the boxes in the dampest air, "+
			"when each side has grown thicker by %s: they bind where less than %s is free",
			geom.Millimeters(max(0, aside)), geom.Millimeters(grows), geom.Millimeters(leastAside(u)))
		d.Measured, d.Limit = geom.Millimeters(aside), geom.Millimeters(leastAside(u))
		d.Ask = geom.Sentencef("write `clearance:` of %s or more for the slide",
			geom.AtLeast(p.Slide.Clearance+leastAside(u)-aside))
	}
}

// slots finds how long the holes for the screws of runners are, on sides of solid wood that move along them.
func (p *planner) slots() {
	c := p.Opening.Sides
	if c == nil || !c.Solid || c.Swelling+c.Shrinkage == 0 {
		return
	}
	for k := range p.holes() {
		p.plan.Slots = append(p.plan.Slots, float64(float64(k)*p.Slide.HolePitch*(c.Swelling+c.Shrinkage)))
	}
}

// crossGrain judges whether a cabinet with sides of solid wood gets too shallow for its boxes.
func (p *planner) crossGrain() {
	c := p.Opening.Sides
	if c == nil || !c.Solid {
		return
	}
	shrinks := float64(p.plan.Opening.Depth * c.Shrinkage)
	room := p.plan.RoomBehind + p.Opening.ClearanceBehind
	if shrinks > room+settle {
		more := geom.AtLeast(p.Opening.ClearanceBehind + shrinks - room)
		d := p.found.Warn("cabinet-shrinks", SettingOpening, "the cabinet's sides shrink by %s in their depth in the "+
			"driest air, and %s is free behind the boxes: they would push its back off, or their fronts stand out",
			geom.Millimeters(shrinks), geom.Millimeters(room))
		d.Measured, d.Limit = geom.Millimeters(room), geom.AtLeast(shrinks)
		d.Ask = geom.Sentencef("write `clearance-behind:` of %s or more for the opening", more)
	}
}
