package joinery

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"drawerwright/geom"
)

// FieldDividers is the entry of a [geom.Diagnosis] about dividers.
const FieldDividers geom.Setting = "dividers"

// KeyAt is the key of a divider's places.
const KeyAt = "at"

// Dividers, in millimeters; common practice, no source.
const (
	fixedShort, looseShort = 0.5, 1.0 // of the room between the floors of its dados
	looseClearance         = 0.5      // more in a loose one's dado
	looseBelow             = 3.0      // how far below the walls' upper edges a loose one ends
	minCell                = 20.0     // the least room between two, or to a wall: a finger's
)

// standingDivider is a divider in its place, or a strip of an insert.
type standingDivider struct {
	Divider
	number int       // in the job
	at     []float64 // of the near faces, from the wall's inside face
	t      float64
	wide   float64 // t, or that of two rails and what hangs on them
	slot   float64 // width of its dados
	play   float64 // in the slots of what it crosses
	length float64
	foot   float64 // its lower edge, over those of the walls
	height float64
}

// dividers puts boards into dados of the walls that they meet, h deep, as all cuts
// are. On a router a dado begins where the bottom's groove is, which is as deep; a
// saw's runs through.
func (l *layout) dividers() {
	var all, judged []standingDivider
	for i, d := range l.Dividers {
		s, ok := l.standDivider(i, d)
		all = append(all, s)
		if !ok || !l.apart(s, judged) {
			continue // the others are judged too
		}
		// Walls that nothing else is cut into have not been judged.
		switch {
		case l.failed():
		case d.Direction == Across:
			l.checkSideDepth()
		default:
			l.checkEndDepth(Front)
			l.checkEndDepth(Back)
		}
		judged = append(judged, s)
	}
	if l.shapeless {
		return
	}
	for i, s := range all {
		all[i].at = s.rails()
	}
	for i, s := range all {
		l.dividerSlots = append(l.dividerSlots, s.slot)
		l.dividerDados(s)
		p := l.dividerPanel(s, all)
		part := Part{Role: DividerRole, Stock: s.Stock, Panel: p}
		if len(all) > 1 {
			part.Label = strconv.Itoa(i + 1)
		}
		part.Placements = l.dividerStands(s)
		l.drawer.Parts = append(l.drawer.Parts, part)
		l.drawer.DividerPlaces = append(l.drawer.DividerPlaces, s.at)
	}
}

// dividerFoot is how high dividers stand: a hair over the thickest bottom, which
// then does not lift the walls apart; no higher than the groove lets it rise.
func (l *layout) dividerFoot() float64 {
	t := l.Bottom.Thickness
	switch l.BottomFit {
	case BottomApplied:
		return l.bottomTop()
	case BottomCleats:
		return l.bottomTop() + t.Max - t.Mean + bottomRoom
	}
	return math.Min(math.Max(l.bottomTop(), l.rise+l.groove), l.bottomTop()+t.Max-t.Mean+bottomRoom)
}

// roomFor is the clear size across a divider's way.
func (l *layout) roomFor(w GrainDirection) float64 {
	if w == Across {
		return l.Depth - l.toFront - l.toBack
	}
	return l.Width - 2*l.Ts
}

// failDivider refuses one of the dividers, by its place in the job.
func (l *layout) failDivider(i int, d geom.Diagnosis) {
	d.Subject = about(FieldDividers, DividerRole)
	d.Subject.Item = i
	d.Fact = geom.Sentencef("divider %d: %s", i+1, d.Fact)
	l.fail(d)
}

// standDivider works out where a divider stands, and judges it.
func (l *layout) standDivider(i int, d Divider) (s standingDivider, ok bool) {
	s = standingDivider{Divider: d, number: i, t: d.Stock.Thickness.Mean, height: d.Height, at: d.At, length: l.dividerLength(d), foot: l.dividerFoot()}
	s.wide = s.t + d.Folders.Width
	room := l.roomFor(d.Direction)
	if len(s.at) == 0 {
		cell := (room - float64(float64(d.Count)*s.wide)) / float64(d.Count+1)
		for k := range d.Count {
			s.at = append(s.at, cell+float64(float64(k)*(cell+s.wide)))
		}
	}
	s.at = slices.Clone(s.at)
	slices.Sort(s.at)
	end := 0.0
	for _, at := range append(slices.Clone(s.at), room) {
		if at-end < minCell-settle {
			l.failDivider(i, geom.Diagnosis{
				Code:     "divider-room",
				Measured: geom.Millimeters(at - end), Limit: geom.Millimeters(minCell),
				Fact:     s.cellFact(end, at, room),
				Ask:      geom.Sentencef("take other places, or none"),
				Remedies: l.otherPlaces(i, s, room),
			})
			return s, false
		}
		end = at + s.wide
	}
	if d.Folders.Width > 0 {
		return s, l.hangFolders(&s) && l.dividerSlot(&s)
	}
	most := l.Height - l.dividerFoot()
	if d.Loose {
		most -= looseBelow
	}
	if s.height == 0 {
		s.height = most
	}
	if s.height > l.Height-l.dividerFoot()+settle {
		l.failDivider(i, geom.Diagnosis{
			Code:     "divider-height",
			Measured: geom.Millimeters(s.height), Limit: geom.Millimeters(l.Height - l.dividerFoot()),
			Fact:     geom.Sentencef("it is %s high, over a bottom whose top is %s below the upper edges", geom.Millimeters(s.height), geom.Millimeters(l.Height-l.dividerFoot())),
			Ask:      geom.Sentencef("take lower dividers"),
			Remedies: []geom.Remedy{l.most(FieldDividers, l.Height-l.dividerFoot()).Of("height", i)},
		})
		return s, false
	}
	return s, l.dividerSlot(&s)
}

// cellFact says what is wrong with a cell that ends at a place: it is too small, or there is none.
func (s standingDivider) cellFact(end, at, room float64) geom.Sentence {
	begins, inside := geom.Millimeters(end-s.wide), geom.Millimeters(room)
	begin := geom.Sentencef("the inside is %s, and it can begin at %s to %s", inside, geom.AtLeast(minCell),
		geom.AtMost(s.last(room)))
	switch cell := at - end; {
	case cell >= 0 || len(s.At) == 0: // those that are spaced evenly
		return geom.Sentencef("it leaves a cell of %s in %s; at least %s is needed", geom.Millimeters(cell), inside,
			geom.Millimeters(minCell))
	case at < room: // of the next one
		return geom.Sentencef("those at %s and %s overlap", begins, geom.Millimeters(at))
	case end-s.wide >= room:
		return geom.Sentencef("at %s it is beyond the far wall: %s", begins, begin)
	}
	what := "its board"
	if s.Folders.Width > 0 {
		what = "its pair of rails"
	}
	return geom.Sentencef("at %s %s of %s runs into the far wall: %s", begins, what, geom.Millimeters(s.wide), begin)
}

// last is where one can begin that leaves a cell to the far wall.
func (s standingDivider) last(room float64) float64 { return room - s.wide - minCell }

// otherPlaces is where a divider that stands alone can begin, or how many can stand there.
func (l *layout) otherPlaces(i int, s standingDivider, room float64) []geom.Remedy {
	if lack := s.wide + 2*minCell - room; s.Folders.Width > 0 && lack > settle {
		if s.Direction == Along {
			return []geom.Remedy{l.least(SettingOutside, l.Width+lack).Of("width", 0)}
		}
		return []geom.Remedy{l.least(SettingOutside, l.Depth+lack).Of("depth", 0)}
	}
	if len(s.At) == 1 {
		return []geom.Remedy{l.between(FieldDividers, minCell, s.last(room)).Of(KeyAt, i)}
	}
	n := int((room - minCell + settle) / (s.wide + minCell))
	if len(s.At) > 1 {
		n = min(n, len(s.At))
	}
	if n < 1 {
		return nil
	}
	return []geom.Remedy{{Changes: []geom.Change{{Setting: FieldDividers, Key: KeyAt, Item: i, Count: n}}}}
}

// apart reports whether a divider keeps clear of those before it that run the same way.
func (l *layout) apart(s standingDivider, all []standingDivider) bool {
	for _, o := range all {
		if o.Direction != s.Direction {
			continue
		}
		for _, a := range s.at {
			for _, b := range o.at {
				if cell := math.Max(b-(a+s.wide), a-(b+o.wide)); cell < minCell-settle {
					l.failDivider(s.number, geom.Diagnosis{
						Code:     "divider-room",
						Measured: geom.Millimeters(cell), Limit: geom.Millimeters(minCell),
						Fact: geom.Sentencef("one at %s is nearer than %s to one of divider %d at %s", geom.Millimeters(a), geom.Millimeters(minCell), o.number+1, geom.Millimeters(b)),
						Ask:  geom.Sentencef("other places, or write them all in one divider"),
					})
					return false
				}
			}
		}
	}
	return true
}

// dividerSlot finds how wide its dados are.
func (l *layout) dividerSlot(s *standingDivider) bool {
	least, most := l.Limits.TongueClearance.Min, l.Limits.TongueClearance.Max
	play := l.DadoClearance
	if s.Loose {
		least, most, play = least+looseClearance/2, most+looseClearance, play+looseClearance
	}
	s.slot = l.DadoWidth(s.t, play)
	s.play = l.crossingPlay(s.slot - s.t)
	c := l.check(Check{CheckID: CheckID{Code: CheckDividerClearance, Part: DividerRole, Item: s.number + 1}, Name: fmt.Sprintf("divider %d clearance in its dados", s.number+1), Nominal: s.slot - s.t,
		LowerLimit: least, UpperLimit: most, Verdicts: ClearanceVerdicts}, s.Stock.Thickness, -1)
	if c.Verdict != WillNot && c.Nominal <= HopelessGap+settle && !l.setWrong(c) {
		return true
	}
	low, high := l.usual(c)
	field, way := FieldDividers, l.between(FieldDividers, s.slot-high, s.slot-low).Of("", s.number)
	if l.Cutter.Kind.MadeToFit() && s.slot > l.DadoWidth(0, 0)+settle {
		more := play - l.DadoClearance // in a loose one's dado
		field, way = SettingDadoClearance, l.between(SettingDadoClearance, low-more, high-more)
	}
	l.say(c.Misfit(geom.Diagnosis{
		Code: "divider-clearance", Level: refused(c.Verdict == WillNot || c.Nominal > HopelessGap+settle), Subject: about(field, DividerRole),
		Fact:     l.clearanceFact(fmt.Sprintf("divider %d", s.number+1), "its dados", c),
		Ask:      unlikeBoards,
		Remedies: []geom.Remedy{way},
	}))
	return c.Verdict != WillNot
}

// dividerDados cuts them into the two walls.
func (l *layout) dividerDados(s standingDivider) {
	dado := func(p *geom.Panel, x, foot float64) {
		k := geom.Pocket{Kind: geom.Dado, Depth: l.h, MayMeet: true} // it may meet a rabbet of the outside that a tongue of a wall has
		y := 0.0
		if l.Cutter.Kind.FollowsDrawing() {
			bits := l.slotBits(s.slot, l.h, l.Sides, l.Front, l.Back)
			bit := bits[0].Diameter
			if l.BottomFit.Grooved() {
				// A bit's radius below the divider, in the groove, where its round is in
				// nobody's way.
				ends := func(d float64) float64 { return foot - d/2 - reliefRoom }
				bit = widest(bits, func(d float64) bool { return ends(d) >= foot-l.dividerFoot()+l.rise })
				y = math.Max(0, ends(bit))
			}
			k.Bit = l.cutWith(bit)
		}
		top := p.Outline.Bounds().Max.Y
		k.Outline = geom.Rectangle(x, y, x+s.slot, top)
		if y > 0 {
			k.Takes = geom.Rectangle(x, foot, x+s.slot, top) // wherever it stands in its play
		}
		p.Pockets = append(p.Pockets, k)
	}
	play := (s.slot - s.t) / 2
	foot := l.dividerFoot()
	if s.Direction == Across {
		l.cutSides(func(p *geom.Panel, left *Part) {
			for _, at := range s.at {
				dado(p, left.along(geom.Vec3{Y: l.toFront + at})-play, foot-left.Placements[0].Origin.Z)
			}
		})
		return
	}
	for _, r := range []Role{Front, Back} {
		w := l.wall(r)
		for _, at := range s.at {
			a, b := w.along(geom.Vec3{X: l.Ts + at}), w.along(geom.Vec3{X: l.Ts + at + s.t})
			dado(&w.Panel, math.Min(a, b)-play, foot-w.Placements[0].Origin.Z)
		}
	}
}

// dividerLength is that between the floors of its dados, less what it is shorter.
func (l *layout) dividerLength(d Divider) float64 {
	short := fixedShort
	if d.Loose {
		short = looseShort
	}
	return l.lengthFor(d.Direction) + 2*l.h - short
}

// lengthFor is the clear size along a divider's way.
func (l *layout) lengthFor(w GrainDirection) float64 {
	if w == Across {
		return l.roomFor(Along)
	}
	return l.roomFor(Across)
}

// dividerStart is where it begins in the box, along its way.
func (l *layout) dividerStart(s standingDivider) float64 {
	from := l.Ts
	if s.Direction == Along {
		from = l.toFront
	}
	return from + (l.lengthFor(s.Direction)-s.length)/2
}

// dividerStands are the placements of a divider whose near faces are at their distances from the
// wall's inside face. Those across look to the front, those along to the right.
func (l *layout) dividerStands(s standingDivider) (list []geom.Placement) {
	for _, at := range s.at {
		stand := geom.Placement{Origin: geom.Vec3{X: l.Ts + at, Y: l.dividerStart(s), Z: s.foot}, X: geom.Back, Y: geom.Up}
		if s.Direction == Across {
			stand = geom.Placement{Origin: geom.Vec3{X: l.dividerStart(s), Y: l.toFront + at + s.t, Z: s.foot}, X: geom.Right, Y: geom.Up}
		}
		list = append(list, stand)
	}
	return list
}

// crossingPlay is what a slot is wider than the board that crosses in it: on a router as much as
// that board's dado is; else it is cut to fit, whatever the stack.
func (l *layout) crossingPlay(inDado float64) float64 {
	if !l.Cutter.Kind.FollowsDrawing() {
		return l.sawnClearance()
	}
	return math.Max(inDado, l.Limits.TongueClearance.Min)
}

// dividerPanel is a rectangle, with slots where others cross it: those across from
// above, those along from below, so that they go into each other by half of the
// lower one's height.
func (l *layout) dividerPanel(s standingDivider, all []standingDivider) geom.Panel {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, s.length, s.height).With(geom.Mating, 1, 3), Thickness: s.t}
	type crossing struct{ x, width, half float64 }
	var list []crossing
	start := l.dividerStart(s)
	for _, o := range all {
		if o.Direction == s.Direction {
			continue
		}
		from := l.Ts
		if s.Direction == Along {
			from = l.toFront
		}
		for _, at := range o.at {
			width := math.Max(o.t+o.play, l.minNotch())
			l.outlineBit(&p, sameNotch(width))
			list = append(list, crossing{from + at - start - (width-o.t)/2, width, math.Min(s.height, o.height) / 2})
		}
	}
	// In the order in which the edge runs.
	slices.SortFunc(list, func(a, b crossing) int {
		if a.x < b.x {
			return -1
		}
		return 1
	})
	corners := []geom.Vertex{}
	edge, side := s.height, 2
	if s.Direction == Along {
		edge, side = 0, 0
	} else {
		slices.Reverse(list)
	}
	for _, c := range list {
		a, b := c.x, c.x+c.width
		if s.Direction == Across { // the upper edge runs from right to left
			a, b = b, a
		}
		p.EdgeCuts = append(p.EdgeCuts, geom.EdgeCut{Kind: geom.CrossingCut, Area: geom.Rectangle(min(a, b), min(edge, c.half), max(a, b), max(edge, c.half))})
		for _, q := range [][2]float64{{a, edge}, {a, c.half}, {b, c.half}, {b, edge}} {
			v := geom.Vertex{Point: geom.Point{X: q[0], Y: q[1]}}
			if q[1] == c.half {
				v.Marks = geom.Relief
			}
			corners = append(corners, v)
		}
	}
	cutEdge(&p, side, corners)
	return p
}
