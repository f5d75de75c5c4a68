package opening

import (
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
	Lip         float64 // by how much the boxes stand out before the cabinet, which lips of their fronts cover
	Shim        float64 // thickness of what is put between the slides and the cabinet, at each side
	Slide       Slide
	SlideLength float64     // as deep as the boxes
	RoomBehind  float64     // behind the boxes, without what the opening keeps free there
	BoxWidth    []WidthTerm // what the width of all boxes is the sum of
	Rows        []Drawer    // from the top down
	// Holes in the cabinet's left side: x from its front edge, y over the datum.
	Holes   []geom.Point
	Spacers []Spacer // from the datum up
	Strips  []Strip  // of wooden runners, from the top down
	// Slots are by how much longer than a screw is thick the holes in a runner are, from the front to the back, where
	// the cabinet's sides move across it.
	Slots []float64
}

// Drawer is one drawer of a plan.
type Drawer struct {
	FrontWidth, FrontHeight, FrontBottom float64 // of the front, or of the row where there is none
	Box                                  joinery.Size
	BoxBottom                            float64
	Above, Below                         float64 // that the box really keeps free in its row
	Line                                 float64 // of the slide
	Over                                 Seasons // on wooden runners
	Front                                *joinery.DrawerFront
	Lip                                  joinery.Lip // of a box front that covers the cabinet
	Undermount                           *joinery.Undermount
}

// Running is between which widths a box runs well on the slides: outside or, with
// slides that go by it, inside. Nothing is said where the slide has no limits.
func (p Plan) Running() (least, most float64, inside, known bool) {
	s := p.Slide
	meant := p.between() - 2*s.Clearance
	if s.InsideDeduction > 0 {
		meant, inside = p.between()-s.InsideDeduction, true
	}
	return meant - s.ClearanceMinus, meant + s.ClearancePlus, inside, s.ClearanceMinus+s.ClearancePlus > 0
}

// between is the width between what the slides are screwed to.
func (p Plan) between() float64 { return p.Opening.Width - 2*p.Shim }

// Limits; common practice, no source.
const (
	// usualOverhang and usualOverhangInch are what stiles of 40 to 50 mm, or 1 1/2 to 2 in, leave before a side at
	// most, in mm and inches; common practice, no source.
	usualOverhang, usualOverhangInch = 50.0, 2.0

	minBox, minBoxInch = 40.0, 1.5 // mm, inches: a lower box holds nothing
	maxPair            = 600.0     // mm: a wider box that is not deeper racks on a pair of slides
	maxAskew           = 1.0       // mm over the height: what a shop squares up with shims
	// offDiagonal is how far diagonals may differ from what width and height make them,
	// in mm, before one of the measures is wrong.
	offDiagonal = 4.0
)

// leastBox is the least height of a box, and half the least width and depth, round in the unit of the job.
func (p *planner) leastBox() float64 { return p.Unit.Usual(minBox, minBoxInch) }

// planner gathers a plan and what is to be said of it.
type planner struct {
	Bank
	plan  Plan
	found geom.Diagnoses
}

// Solve plans a bank. With an error among the diagnoses the plan is not to be used.
func Solve(b Bank) (Plan, []geom.Diagnosis) {
	p := plan(b)
	p.advise()
	return p.plan, p.found
}

// Judge says what Solve says of the readings of an opening: what is known before slides and sides are.
func (o Opening) Judge(u geom.Unit) []geom.Diagnosis {
	p := &planner{Bank: Bank{Unit: u, Opening: o}, plan: Plan{Opening: o.Counted(), OutOfSquare: o.OutOfSquare()}}
	p.measure()
	return p.found
}

// plan is Make without trying what is advised.
func plan(b Bank) *planner {
	p := &planner{Bank: b, plan: Plan{Opening: b.Opening.Counted(), Lip: b.Lip, Shim: b.Common.Shim,
		OutOfSquare: b.Opening.OutOfSquare(), Slide: b.Slide}}
	if b.Slide.Height > 0 { // something is screwed on there
		p.plan.Packing = b.Opening.FrameOverhang
	}
	p.measure()
	p.sides()
	heights, ok := p.heights()
	depth, deep := p.depth()
	if !ok || !deep || geom.AnyError(p.found) {
		return p
	}
	p.plan.SlideLength, p.plan.RoomBehind = depth, p.plan.Opening.Depth-p.inFront()-depth-p.Opening.ClearanceBehind
	p.rows(heights, depth)
	if !geom.AnyError(p.found) && len(p.plan.Rows) > 0 {
		p.racking()
		p.lines()
		p.strips()
		p.crossGrain()
	}
	return p
}

// measure judges the readings of the opening.
func (p *planner) measure() {
	o := p.Opening
	p.even()
	if usual := p.Unit.Usual(usualOverhang, usualOverhangInch); o.FrameOverhang > usual+settle {
		d := p.found.Warn("frame-overhang", SettingOverhang, "the face frame overhangs each side of the cabinet "+
			"by %s, and usual ones do by %s at most: the slides are packed out by as much",
			geom.Millimeters(o.FrameOverhang), geom.Millimeters(usual))
		d.Measured, d.Limit = geom.Millimeters(o.FrameOverhang), geom.Millimeters(usual)
		d.Ask = geom.Sentencef("measure again, from the edge of the frame to the side behind it, " +
			"not the width of the frame; if it is so, have a block of that thickness behind each slide")
	}
	if len(o.Diagonals) != 2 {
		return
	}
	w, h := p.plan.Opening.Width, p.plan.Opening.Height
	// In a parallelogram p^2 + q^2 = 2 (w^2 + h^2).
	mean := math.Sqrt((float64(o.Diagonals[0]*o.Diagonals[0]) + float64(o.Diagonals[1]*o.Diagonals[1])) / 2)
	if want := math.Hypot(w, h); math.Abs(mean-want) > offDiagonal {
		d := p.found.Warn("diagonals", SettingDiagonals,
			"width and height make diagonals of %s, and %s and %s were measured",
			geom.Millimeters(want), geom.Millimeters(o.Diagonals[0]), geom.Millimeters(o.Diagonals[1]))
		d.Measured, d.Limit = geom.Millimeters(math.Abs(mean-want)), geom.Millimeters(offDiagonal)
		d.Ask = geom.Sentencef("measure again: one of them is wrong")
	}
	if askew := p.plan.OutOfSquare; askew > maxAskew+settle {
		d := p.found.Warn("out-of-square", SettingDiagonals,
			"the diagonals differ by %s: the upper edge stands %s to one side of the lower one",
			geom.Millimeters(math.Abs(o.Diagonals[0]-o.Diagonals[1])), geom.Millimeters(askew))
		d.Measured, d.Limit = geom.Millimeters(askew), geom.Millimeters(maxAskew)
		d.Ask = geom.Sentencef("shim the slides so that the drawers run square to the front")
		if o.Fronts == Inset {
			d.Ask = geom.Sentencef("%s, and fit the drawer fronts to the opening by hand", d.Ask)
		}
	}
}

// even judges by how much the readings of one size differ.
func (p *planner) even() {
	o := p.Opening
	for _, m := range []struct {
		level geom.Level
		what  geom.Setting
		list  []float64
		ask   string
	}{
		{geom.LevelWarning, SettingWidth, o.Width, "shim the slides where it is wider"},
		{geom.LevelWarning, SettingHeight, o.Height, "see that the fronts clear it where it is lowest"},
		{geom.LevelNote, SettingDepth, o.Depth, "see that nothing stands out behind the slides"},
	} {
		low, high := least(m.list), greatest(m.list)
		doubtful := p.Unit.Usual(doubtfulSpread, doubtfulSpreadInch)
		switch spread := high - low; {
		case spread > doubtful+settle && m.what != SettingDepth:
			d := p.found.Fail("opening-spread", m.what, "the readings of the opening's %s, %s to %s, differ by %s: "+
				"more than %s is a mistyped reading, or an opening that is too uneven for drawers",
				m.what, geom.Millimeters(low), geom.Millimeters(high), geom.Millimeters(spread), geom.Millimeters(doubtful))
			d.Measured, d.Limit = geom.Millimeters(spread), geom.Millimeters(doubtful)
			d.Ask = geom.Sentencef("measure again; where it is so, make the opening even, and write what it is then")
		case spread > maxSpread+settle:
			d := p.found.Add(m.level, "opening-spread", m.what, geom.Sentencef(
				"the readings of the opening's %s differ by %s; the smallest, %s, counts",
				m.what, geom.Millimeters(spread), geom.Millimeters(low)))
			d.Measured, d.Limit = geom.Millimeters(spread), geom.Millimeters(maxSpread)
			d.Ask = geom.Sentencef("%s, or make the opening even; once that is settled, write %s: %s alone", m.ask,
				m.what, geom.Millimeters(low))
		}
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
	if s.MaxSideThickness > 0 && t.Max > s.MaxSideThickness+settle {
		thickest, most := geom.Millimeters(t.Max), geom.Millimeters(s.MaxSideThickness)
		d := p.found.Fail("side-thickness", SettingSides,
			"sides of %s, %s at the thickest, do not go beside this slide, which takes %s",
			geom.Millimeters(t.Mean), thickest, most)
		d.Measured, d.Limit, d.Remedies = thickest, most, p.most(SettingSides, "", s.MaxSideThickness-(t.Max-t.Mean))
		d.Ask = geom.Sentencef("take a %s slide", SideMount)
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
	s, room := p.Slide, p.plan.Opening.Depth-p.Opening.ClearanceBehind-p.Slide.ClearanceBehind-p.Common.Shallower
	taken := p.Opening.ClearanceBehind + s.ClearanceBehind
	room -= p.inFront()
	taken += p.inFront()
	length, ok := s.Length(room, p.Unit)
	if len(s.Lengths) == 0 { // cut to length
		if length >= 2*p.leastBox() {
			return length, true
		}
		d := p.found.Fail("depth", SettingOpening, "the opening is %s deep, and %s of that are not for the box",
			geom.Millimeters(p.plan.Opening.Depth), geom.Millimeters(taken))
		d.Measured, d.Limit = geom.Millimeters(length), geom.Millimeters(2*p.leastBox())
		d.Ask = geom.Sentencef("less room behind, or another opening")
		return 0, false
	}
	if !ok {
		deep, need := geom.Millimeters(p.plan.Opening.Depth), geom.Millimeters(s.shortest()+taken)
		d := p.found.Fail("depth", SettingSlide,
			"the opening is %s deep; the shortest slide, %s, needs %s with what stands before and behind it",
			deep, geom.Millimeters(s.shortest()), need)
		d.Measured, d.Limit, d.Remedies = deep, need, p.least(SettingOpening, KeyDepth, s.shortest()+taken)
		d.Ask = geom.Sentencef("a slide of the shop's own that is shorter, or a %s, which is cut to length", Wooden)
	}
	return length, ok
}

// rows makes fronts and boxes of the heights.
func (p *planner) rows(heights []float64, depth float64) {
	width := p.width()
	if beyond := width - p.plan.Opening.Width; beyond > settle {
		d := p.found.Fail("width", SettingSides, "with sides of %s the boxes would be %s wide in an opening of %s",
			geom.Millimeters(p.Sides.Thickness.Mean), geom.Millimeters(width), geom.Millimeters(p.plan.Opening.Width))
		d.Measured, d.Limit = geom.Millimeters(width), geom.Millimeters(p.plan.Opening.Width)
		d.Remedies = p.most(SettingSides, "", p.Sides.Thickness.Mean-beyond/2)
		d.Ask = geom.Sentencef("take another slide")
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
	if narrow := min(width, frontWidth); narrow < 2*p.leastBox() {
		what := "boxes"
		if frontWidth < width {
			what = "drawer fronts"
		}
		d := p.found.Fail("width", SettingWidth, "the opening is %s wide: that leaves %s for %s, and they need %s",
			geom.Millimeters(p.plan.Opening.Width), geom.Millimeters(max(0, narrow)), what,
			geom.Millimeters(2*p.leastBox()))
		d.Measured, d.Limit = geom.Millimeters(narrow), geom.Millimeters(2*p.leastBox())
		d.Remedies = p.least(SettingOpening, KeyWidth, p.plan.Opening.Width+2*p.leastBox()-narrow)
		d.Ask = geom.Sentencef("a slide that takes less")
		return
	}
	p.plan.BoxWidth = p.widthTerms()
	at := top
	for i, h := range heights {
		r := Drawer{FrontWidth: frontWidth, FrontHeight: h, FrontBottom: at - h}
		at -= h + p.FrontGap
		low, high := math.Max(0, r.FrontBottom), math.Min(p.plan.Opening.Height, r.FrontBottom+h)
		box, boxBottom, ok := p.box(i, low, high)
		if !ok {
			return
		}
		r.Box, r.BoxBottom = joinery.Size{Width: width, Height: box, Depth: depth + p.Lip}, boxBottom
		r.Above, r.Below, r.Line = high-boxBottom-box, boxBottom-low, boxBottom+p.Slide.ScrewLine
		if p.Lipped != nil {
			over := (p.plan.Opening.Width - width) / 2
			r.Lip = joinery.Lip{Left: p.Edge.Left + over, Right: p.Edge.Right + over,
				Top: r.FrontBottom + h - boxBottom - box, Bottom: boxBottom - r.FrontBottom}
		}
		if p.Front != nil {
			r.Front = &joinery.DrawerFront{Stock: *p.Front, Width: frontWidth, Height: h,
				OverhangLeft: (p.plan.Opening.Width-width)/2 - left, OverhangBelow: boxBottom - r.FrontBottom}
		}
		r.Undermount = p.Slide.under()
		p.plan.Rows = append(p.plan.Rows, r)
	}
}

// under is what a slide asks of the box beside its outside size; nil for nothing.
func (s Slide) under() *joinery.Undermount {
	if s.BottomRecess == 0 && s.NotchWidth == 0 && s.HookDiameter == 0 {
		return nil
	}
	return &joinery.Undermount{BottomRecess: s.BottomRecess, MaxSide: s.MaxSideThickness, NotchWidth: s.NotchWidth, NotchHeight: s.NotchHeight,
		HookDiameter: s.HookDiameter, HookDepth: s.HookDepth, HookHeight: s.HookHeight, HookIn: s.HookInset}
}

// box finds the height of a box in a row and where it stands.
func (p *planner) box(row int, low, high float64) (height, bottom float64, ok bool) {
	s := p.Slide
	bottom = low + s.ClearanceBelow
	if p.LineBoring > 0 { // up to the next hole
		bottom = float64(p.LineBoring*math.Ceil((bottom+s.ScrewLine)/p.LineBoring-settle)) - s.ScrewLine
	}
	height = high - s.ClearanceAbove - bottom
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
			room, lowest := geom.Millimeters(height), geom.Millimeters(least(p.BoxHeights))
			d := p.found.Fail("row", SettingBoxHeights,
				"row %d has room for a box of %s, and the lowest box is %s", row+1, room, lowest)
			d.Subject.Item, d.Measured, d.Limit = row, room, lowest
			d.Ask = geom.Sentencef("%s, or a lower box height", p.moreRoom(row, least(p.BoxHeights)-height))
			return 0, 0, false
		}
		height = most
	}
	if row < len(p.Common.Heights) && p.Common.Heights[row] > 0 {
		height = math.Min(height, p.Common.Heights[row])
	}
	if height < p.leastBox()-settle {
		left, need := geom.Millimeters(height), geom.Millimeters(p.leastBox())
		leaves := geom.Sentencef("a box of %s", left)
		if height <= settle {
			leaves = geom.Sentencef("nothing for a box")
		}
		fact := geom.Sentencef("row %d is %s high in the opening; what the slide keeps free leaves %s, "+
			"at least %s is needed", row+1, geom.Millimeters(high-low), leaves, need)
		if high-low <= settle {
			fact = geom.Sentencef("no part of row %d is in the opening, which is %s high: the overlay and "+
				"the other rows take all of it; a box of %s is needed",
				row+1, geom.Millimeters(p.plan.Opening.Height), need)
		}
		d := p.found.Add(geom.LevelError, "row", SettingRows, fact)
		d.Subject.Item, d.Measured, d.Limit = row, left, need
		lacks := p.leastBox() - height
		if row == 0 && s.Height > 0 { // its slide needs room, too
			lacks = max(lacks, bottom+s.ScrewLine+s.Height/2-p.plan.Opening.Height)
		}
		d.Ask = p.moreRoom(row, lacks)
		return 0, 0, false
	}
	return height, bottom, true
}

// moreRoom is what gives the box of a row so much more height.
func (p *planner) moreRoom(row int, lacks float64) geom.Sentence {
	if front := p.Rows[row].Front; front > 0 {
		if p.LineBoring > 0 { // then it goes by whole steps
			return geom.Sentencef("a higher row %d", row+1)
		}
		return geom.Sentencef("write %s or more for row %d", geom.AtLeast(front+lacks*(1+p.Sides.Swelling)), row+1)
	}
	if slices.ContainsFunc(p.Rows, func(r Row) bool { return r.Front > 0 }) {
		return geom.Sentencef("fewer rows, or lower ones where a height is written")
	}
	return geom.Sentencef("fewer rows")
}

// racking warns of boxes that are wider than deep on a pair of slides.
func (p *planner) racking() {
	box := p.plan.Rows[0].Box
	if p.Slide.Pair() && box.Width > box.Depth && box.Width > maxPair {
		d := p.found.Warn("racking", SettingSlide,
			"the boxes are %s wide and %s deep: on one pair of slides they rack "+
				"when they are pulled at one end", geom.Millimeters(box.Width), geom.Millimeters(box.Depth))
		d.Measured, d.Limit = geom.Millimeters(box.Width), geom.Millimeters(max(box.Depth, maxPair))
		d.Ask = geom.Sentencef("take slides that keep both sides in step, or two drawers side by side")
	}
}
