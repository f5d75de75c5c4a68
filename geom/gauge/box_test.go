package gauge_test

import (
	"fmt"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
)

// box is a dado-rabbet box put together from what was read on its parts: the physics of
// the joint, written down here once more and apart from the package. Lists are of the
// left and the right side, or of the front and the back.
type box struct {
	spec joinery.Spec

	side, end                         [2]float64 // thicknesses
	bottom                            float64
	slot, place                       [2]float64 // of the dados for front and back
	depth                             [2]float64 // of the dados in either side
	tongue                            [2]float64
	long                              [2]float64 // tongues of the front, left and right
	backSlot, backPlace               float64    // of a housed back
	groove, bottomTongue              float64
	grooveAt                          [2]float64 // in sides and ends
	grooveSide, grooveEnd             [2]float64 // how deep
	length, sideLength                float64
	high                              [2]float64 // of sides and back
	bottomLength, bottomWidth, drawnH float64
}

// limited is a measure with its limits.
type limited struct {
	what               string
	value, least, most float64
}

// measures are those of the box, pushed outward and clamped across its width.
func (b box) measures(slide *fit.SlideFit) (list []limited) {
	l, s := b.spec.Limits, b.spec
	put := func(what string, value, least, most float64) { list = append(list, limited{what, value, least, most}) }
	var recess [2]float64
	for i := range 2 {
		if i == 1 && s.BackJoint == joinery.Housed {
			put("back-clearance", b.backSlot-b.end[1], l.TongueClearance.Min, l.TongueClearance.Max)
			continue
		}
		put("tongue-clearance", b.slot[i]-b.tongue[i], l.TongueClearance.Min, l.TongueClearance.Max)
		// The outside face stands the rabbet's depth before the dado's outer wall, or
		// the inside face against its inner wall.
		recess[i] = b.place[i] - (b.end[i] - b.tongue[i])
		put("recess", recess[i], -l.Flush, l.Flush)
		put("recess-inner", b.place[i]+b.slot[i]-b.end[i], -l.Flush, l.Flush+l.TongueClearance.Max)
	}
	width := b.length
	for i := range 2 {
		put("shoulder-gap", b.long[i]-b.depth[i], -l.EndClearance, l.ShoulderGap)
		width += b.side[i] - min(b.long[i], b.depth[i])
	}
	inside := width - b.side[0] - b.side[1]
	put("outside-width", width, s.Width-l.Width, s.Width+l.Width)
	if slide != nil && slide.InsideCounts {
		put("slide-clearance", inside, slide.Min, slide.Max)
	} else if slide != nil {
		put("slide-clearance", width, slide.Min, slide.Max)
	}
	put("outside-depth", b.sideLength+max(0, -recess[0])+max(0, -recess[1]), s.Depth-l.Depth, s.Depth+l.Depth)
	diagonal := math.Hypot(s.Width, s.Depth)
	put("diagonal", math.Hypot(width, b.sideLength), diagonal-l.Diagonal, diagonal+l.Diagonal)
	if s.BottomFit == joinery.BottomApplied { // the walls stand on it
		put("outside-height", b.high[0]+b.bottom-b.drawnH-s.Bottom.Thickness.Mean, -l.Height, l.Height)
		return list
	}
	put("outside-height", b.high[0]-b.drawnH, -l.Height, l.Height)
	put("bottom-clearance", inside+b.grooveSide[0]+b.grooveSide[1]-b.bottomLength, l.BottomClearance.Min,
		l.BottomClearance.Max)
	deep := b.sideLength - b.place[0] - b.tongue[0] + b.grooveEnd[0] - b.bottomWidth // from the front's groove on
	switch {
	case s.BottomFit.SlidesIn() && s.BackJoint == joinery.Housed:
		deep -= b.backPlace
	case s.BottomFit.SlidesIn():
		deep -= recess[1]
	case s.BackJoint == joinery.Housed:
		deep += b.grooveEnd[1] - b.backPlace - b.end[1]
	default:
		deep += b.grooveEnd[1] - b.place[1] - b.tongue[1]
	}
	open := l.BottomClearance.Min
	if s.BottomFit.SlidesIn() { // behind: it may come level with the back
		open = 0
	}
	put("bottom-clearance-depth", deep, open, l.BottomClearance.Max)
	if s.BottomFit.SlidesIn() {
		stands := b.bottom
		if s.BottomFit == joinery.BottomFielded {
			stands = b.bottomTongue
		}
		put("back-over-bottom", b.high[0]-b.high[1]-b.grooveAt[0]-stands, -l.Height, l.Height)
	}
	put("groove-step", b.grooveAt[0]-b.grooveAt[1], -l.Flush, l.Flush)
	if b.bottomTongue > 0 {
		put("groove-clearance", b.groove-b.bottomTongue, l.GrooveClearance.Min, l.GrooveClearance.Max)
	}
	if b.bottomTongue > 0 && !s.BottomFit.SlidesIn() {
		put("bottom-flush", b.grooveAt[0]-(b.bottom-b.bottomTongue), -l.Flush, l.Flush)
	}
	if b.bottomTongue == 0 {
		put("groove-clearance", b.groove-b.bottom, l.GrooveClearance.Min, l.GrooveClearance.Max)
	}
	return list
}

// choice is one thing that differs from box to box, between two values.
type choice struct {
	name        string
	least, most float64
	row         int // of the sheet; -1 of a board
}

// choices are the readings of a box, each place on its own, and its boards.
func choices(d gauge.Drawer, set gauge.Limits) []choice {
	var list []choice
	s := d.Spec
	board := func(name string, stock joinery.Stock) {
		c := choice{name, stock.Thickness.Min, stock.Thickness.Max, -1}
		for _, r := range set.SortBoards {
			if r.Stock == stock.Name {
				c.least, c.most = max(c.least, r.Min), min(c.most, r.Max)
			}
		}
		list = append(list, c)
	}
	board("left side", s.Sides)
	board("right side", s.Sides)
	board("front board", s.Front)
	board("back board", s.Back)
	board("bottom board", s.Bottom)
	for i, r := range set.Rows {
		for _, n := range []string{"0", "1"} {
			list = append(list, choice{fmt.Sprintf("%s@%g/%s", r.Kind, r.Target, n), r.Min, r.Max, i})
		}
	}
	return list
}

// boxOf puts a box together of one value for each choice, in their order.
func boxOf(d gauge.Drawer, set gauge.Limits, v []float64) box {
	s := d.Spec
	b := box{spec: s, side: [2]float64{v[0], v[1]}, end: [2]float64{v[2], v[3]}, bottom: v[4]}
	part := func(r joinery.Role) geom.Panel {
		for _, p := range d.Parts {
			if p.Role == r {
				return p.Panel
			}
		}
		return geom.Panel{}
	}
	b.drawnH = part(joinery.Side).Width()
	off := [2]float64{0.0255, 0.0255} // of rabbets from their row, that of targets that print alike
	for i, r := range set.Rows {
		two := [2]float64{v[5+2*i], v[6+2*i]}
		one := two[0]
		switch r.Kind {
		case fit.DadoWidth:
			b.slot = two
		case fit.DadoPlace:
			b.place = two
		case fit.DadoDepth:
			b.depth = two
		case fit.UnderDado:
			b.depth = [2]float64{b.side[0] - two[0], b.side[1] - two[1]}
		case fit.TongueThick:
			b.tongue = two
		case fit.RabbetDeep:
			for j, stock := range []joinery.Stock{s.Front, s.Back} { // looked up in the row nearest to it
				if by := math.Abs(stock.Thickness.Mean - d.Setup.FenceDistance - r.Target); by < off[j] {
					b.tongue[j], off[j] = b.end[j]-two[j], by
				}
			}
		case fit.TongueLong:
			b.long = two
		case fit.BackWidth:
			b.backSlot = one
		case fit.BackPlace:
			b.backPlace = one
		case fit.GrooveWidth:
			b.groove = one
		case fit.GrooveDepth:
			b.grooveSide, b.grooveEnd = two, two
		case fit.UnderGroove:
			// Off what is left under the drawn groove, or as it is.
			sides, front, back := 0.0, 0.0, 0.0
			if r.Relative {
				sides, front, back = s.Sides.Thickness.Mean-d.Setup.CutterHeight, s.Front.Thickness.Mean-d.Setup.CutterHeight, s.Back.Thickness.Mean-d.Setup.CutterHeight
			}
			b.grooveSide = [2]float64{b.side[0] - sides - two[0], b.side[1] - sides - two[1]}
			b.grooveEnd = [2]float64{b.end[0] - front - two[0], b.end[1] - back - two[1]}
		case fit.GroovePlace:
			b.grooveAt = two
		case fit.BottomTongue:
			b.bottomTongue = one
		case fit.BottomRabbet:
			b.bottomTongue = b.bottom - one
		case fit.FrontLength:
			b.length = one
		case fit.SideLength:
			b.sideLength = one
		case fit.BottomLength:
			b.bottomLength = one
		case fit.BottomWidth:
			b.bottomWidth = one
		case fit.WallHeight:
			b.high = two
			if r.Relative { // a back over a bottom that is slid in is lower
				b.high[0], b.high[1] = two[0]+b.drawnH, two[1]+part(joinery.Back).Width()
			}
		}
	}
	return b
}

// worst looks for the values that bring one measure furthest out of its limits: each
// moves it one way or not at all, so that it is enough to try them one by one, twice for
// those that hide behind another.
func worst(d gauge.Drawer, set gauge.Limits, list []choice, measure int, up bool) (over float64, what string) {
	v := make([]float64, len(list))
	for i, c := range list {
		v[i] = (c.least + c.most) / 2
	}
	at := func() float64 {
		m := boxOf(d, set, v).measures(d.Slide)[measure]
		what = m.what
		if up {
			return m.value - m.most
		}
		return m.least - m.value
	}
	for range 3 {
		for i, c := range list {
			v[i] = c.least
			low := at()
			v[i] = c.most
			if at() < low {
				v[i] = c.least
			}
		}
	}
	return at(), what
}
