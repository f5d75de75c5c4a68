package template

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/geom"
)

// Panel is a part for which a template is made.
type Panel struct {
	Name      string
	Panel     geom.Panel
	Stock     string
	Thickness string // of the stock, as it was measured, in words
	End       string // what the panel's left end is, seen from its inside, as "FRONT END"
	OtherEnd  string // and its right end
	Stop      string // the left end in a sentence
	lies      string // what the plate lies on, where it is no face
}

// Panels makes a plate for each different layout of cuts on a face of the panels; where
// panels are cut alike it serves them all. Faces without cuts have none.
func Panels(list []Panel, o Options) (plates []Plate, found []geom.Diagnosis) {
	at := make(map[string][2]int) // the plates of a layout
	add := func(seen Panel, face geom.Face) {
		if !marked(seen.Panel) {
			return
		}
		key := layout(seen)
		if of, known := at[key]; known {
			for i := of[0]; i < of[1]; i++ {
				plates[i].Parts = append(slices.Clip(plates[i].Parts), seen.Name) // strips share the list
			}
			return
		}
		t := tracer{Options: o, panel: seen, face: face}
		made := t.plates()
		at[key] = [2]int{len(plates), len(plates) + len(made)}
		plates = append(plates, made...)
		found = append(found, t.found...)
	}
	for _, p := range list {
		add(looked(p, geom.Inside), geom.Inside)
		add(looked(p, geom.Outside), geom.Outside)
		if leans(p.Panel) {
			add(endOf(p), geom.Inside)
		}
	}
	return plates, found
}

// looked is a panel as one looks at a face: cuts from there alone, and what goes
// through; the outside is the panel turned over end for end.
func looked(p Panel, face geom.Face) Panel {
	long := p.Panel.Length()
	out := p
	out.Panel.Pockets, out.Panel.Holes = nil, nil
	turn := func(l geom.Loop) geom.Loop {
		if face == geom.Outside {
			return l.TurnOver(long)
		}
		return l
	}
	for _, k := range p.Panel.Pockets {
		if k.Face == face && k.Lean == 0 {
			k.Outline = turn(k.Outline)
			out.Panel.Pockets = append(out.Panel.Pockets, k)
		}
	}
	if face == geom.Outside {
		out.End, out.OtherEnd, out.Stop = p.OtherEnd, p.End, strings.ToLower(p.OtherEnd)
		out.Panel.Outline, out.Panel.EdgeCuts = turn(p.Panel.OutsideOutline()), nil
		if leans(p.Panel) { // pins are other ones here
			out.Panel.EdgeCuts = p.Panel.EdgeCuts
		}
		return out
	}
	out.Panel.Holes = p.Panel.Holes
	return out
}

// marked reports whether a face has anything to mark. The outline is marked with the
// inside face, tails and pins by themselves too.
func marked(p geom.Panel) bool {
	return len(p.Pockets) > 0 || len(p.Holes) > 0 || dovetailed(p)
}

// layout tells layouts apart that differ by a hundredth of a millimeter.
func layout(p Panel) string {
	var b strings.Builder
	fmt.Fprint(&b, p.Stock, "|", p.End, "|")
	write := func(l geom.Loop) {
		for _, v := range l {
			fmt.Fprintf(&b, "%.2f %.2f %.3f,", v.X, v.Y, v.Bulge)
		}
		b.WriteByte(';')
	}
	write(p.Panel.Outline)
	for _, h := range p.Panel.Holes {
		write(h)
	}
	for _, k := range p.Panel.Pockets {
		fmt.Fprint(&b, k.Kind, k.Face)
		write(k.Outline)
	}
	return b.String()
}

// tracer lays out the plates for one face.
type tracer struct {
	Options
	panel Panel
	face  geom.Face
	plate Plate
	taken []geom.Rect // by openings, seams and words
	found []geom.Diagnosis
}

// add keeps a diagnosis of the plate and gives it to be filled.
func (t *tracer) add(level geom.Level, format string, args ...any) *geom.Diagnosis {
	t.found = append(t.found, geom.Diagnosis{Code: codeTemplate, Level: level, Subject: geom.Subject{Part: t.plate.Name}, Fact: geom.Sentencef(format, args...)})
	return &t.found[len(t.found)-1]
}

func (t *tracer) plates() []Plate {
	p := t.panel.Panel
	before := overhang
	if t.Register == Pins {
		before = t.Pin + 2*beside
	}
	name := t.face.String()
	if t.panel.lies == "" {
		t.panel.lies = name + " face"
	} else {
		name = "end"
	}
	t.plate = Plate{Name: t.panel.Name + "-" + name, Title: fmt.Sprintf("%s, %s", t.panel.Name, t.panel.lies),
		Parts: []string{t.panel.Name}, Count: 1,
		Origin: geom.Point{X: before, Y: before}}
	wide, high := before+p.Length()+overhang, before+p.Width()+overhang
	t.plate.Outline = geom.Rectangle(0, 0, wide, high)
	var held bool
	if t.plate.seams, held = t.Options.seams(wide, high, t.walled()); !held {
		d := t.add(geom.LevelWarning, "the bed, %s x %s, is too small for pieces of it",
			geom.Millimeters(t.Bed.X), geom.Millimeters(t.Bed.Y))
		d.Subject.Setting, d.Ask = SettingBed, geom.Sentencef("cut it on a larger bed")
	}
	t.plate.round = t.Options.round()
	if len(t.plate.seams[0])+len(t.plate.seams[1]) > 0 && t.MinBridge/2 > roundMost {
		d := t.add(geom.LevelWarning, "the keys of its pieces cannot be cut by a bit of %s",
			geom.Millimeters(t.MinBridge))
		d.Measured, d.Limit = geom.Millimeters(t.MinBridge), geom.Millimeters(2*roundMost)
		d.Ask = geom.Sentencef("cut templates with a bit of %s or less, or on a larger bed", d.Limit)
	}
	t.taken = append(t.taken, t.plate.seamZones()...)
	t.register(p)
	for _, k := range p.Pockets {
		t.loop(k.Outline, t.Options.FullHoles && k.Kind == geom.Drill)
	}
	for _, h := range p.Holes {
		t.loop(h, t.Options.FullHoles)
	}
	if t.face == geom.Inside || dovetailed(p) {
		t.outline(p)
	}
	const walls = "Of two slots that belong to one cut the outer edges are its walls; a single wide slot shows both " +
		"walls; of a single narrow one the wall is the edge away from the waste."
	t.plate.Notes = append(t.plate.Notes, fmt.Sprintf("Lay it on the %s, the words readable, %s, "+
		"hold it, and mark with a knife.", t.panel.lies, t.stop()), walls)
	if t.panel.lies == endGrain {
		t.plate.Notes = append(t.plate.Notes, "For the other end turn it upside down: the pins are alike from "+
			"both edges. Where the tails are cut already, mark the pins from them instead.")
	}
	t.plate.paper = []string{fmt.Sprintf("Lay it on the %s, the words readable, the lines of dashes and dots on "+
		"the lower edge and the %s, tape it down, and prick through at the ends of each wall.", t.panel.lies,
		t.panel.Stop), "Of two narrow rectangles that belong to one cut the outer edges are its walls; a single wide " +
		"one shows both walls; of a single narrow one the wall is the edge away from the waste."}
	if slices.ContainsFunc(t.plate.Openings, func(l geom.Loop) bool { _, _, round := l.AsCircle(); return round }) {
		t.plate.paper = append(t.plate.paper, "Prick through the middle of each circle, where its four lines point.")
	}
	t.words()
	return append([]Plate{t.plate}, t.lips(p)...)
}

// stop says what a template is pushed against; one without strips or dowels is laid by measure.
func (t *tracer) stop() string {
	if t.Register == Lip || len(t.plate.dowels) > 0 {
		return "push it home against the lower edge and the " + t.panel.Stop
	}
	o := t.plate.Origin
	return fmt.Sprintf("by measure its lower edge %s below the part's and its left edge %s beyond the %s",
		t.text(o.Y), t.text(o.X), t.panel.Stop)
}

// walled are the places of upright and of level walls on the plate, which seams keep off.
func (t *tracer) walled() (list [2][]float64) {
	for _, k := range t.panel.Panel.Pockets {
		b := t.box(k.Outline)
		list[0], list[1] = append(list[0], b.Min.X, b.Max.X), append(list[1], b.Min.Y, b.Max.Y)
	}
	return list
}

// box is a loop's on the plate.
func (t *tracer) box(l geom.Loop) geom.Rect {
	b := l.Bounds()
	return b.Translate(t.plate.Origin)
}

// free reports whether a cut leaves a rib to everything else, and takes its room.
func (t *tracer) free(l geom.Loop) bool {
	b := l.Bounds()
	if slices.ContainsFunc(t.taken, func(r geom.Rect) bool { return b.Grow(minRib).Overlaps(r) }) {
		return false
	}
	t.taken = append(t.taken, b)
	return true
}

// register makes the pin holes, or the lines to which strips are glued.
func (t *tracer) register(p geom.Panel) {
	o, far := t.plate.Origin, t.plate.Outline.Bounds().Max
	t.plate.edges = [][]geom.Vertex{{{Point: o}, {Point: geom.Point{X: far.X, Y: o.Y}}},
		{{Point: o}, {Point: geom.Point{X: o.X, Y: far.Y}}}}
	if t.plate.lip = t.Register == Lip; t.plate.lip {
		return
	}
	if t.Pin <= t.MinBridge {
		pin, least := geom.Millimeters(t.Pin), geom.Millimeters(t.MinBridge)
		d := t.add(geom.LevelWarning, "holes for dowels of %s cannot be cut by what takes away %s", pin, least)
		d.Subject.Setting, d.Measured, d.Limit = SettingPin, pin, least
		d.Remedies, d.Ask = withLip, geom.Sentencef("take thicker dowels")
		return
	}
	long, wide := p.Length(), p.Width()
	upright := t.panel.lies == endGrain // which is narrow: two stand at its longer edge
	first, second := long, wide
	if upright {
		first, second = wide, long
	}
	if !t.pin(float64(0.2*first), first, !upright) || !t.pin(float64(0.8*first), first, !upright) ||
		!t.pin(float64(0.6*second), second, upright) {
		t.plate.Holes = nil // fewer than all hold nothing
		d := t.add(geom.LevelWarning, "there is no room for a pin at the panel's edge")
		d.Subject.Setting, d.Remedies, d.Ask = SettingRegister, withLip, geom.Sentencef("cut it on a larger bed")
		return
	}
	t.plate.dowels = fmt.Sprintf("Put a dowel of %s into each hole of that size, so that it stands out below: the "+
		"dowels bear on the part's lower edge and its end.", t.Dowel)
	t.plate.Notes = append(t.plate.Notes, t.plate.dowels)
}

// pin makes a hole for a dowel that bears on the lower edge, or on the end, so far along it; moved where something
// else is, as a seam.
func (t *tracer) pin(at, long float64, lower bool) bool {
	r := t.Pin / 2
	for _, by := range []float64{0, 15, -15, 30, -30} {
		x, y := at+by, -r
		if !lower {
			x, y = y, x
		}
		hole := geom.Circle(t.plate.Origin.Add(geom.Point{X: x, Y: y}), r)
		if at+by > 0 && at+by < long && t.free(hole) {
			t.plate.Holes = append(t.plate.Holes, Hole{hole, true})
			return true
		}
	}
	return false
}

// lips are the strips that are glued under a plate, so that their edges stop it.
func (t *tracer) lips(p geom.Panel) []Plate {
	if t.Register != Lip {
		return nil
	}
	strip := func(what string, long float64) Plate {
		count := int(math.Ceil(long / max(t.Bed.X, t.Bed.Y)))
		long /= float64(count)
		s := Plate{Name: t.plate.Name + "-lip-" + what, Title: fmt.Sprintf("strip for the %s of %s", what, t.plate.Title), Parts: t.plate.Parts, Count: count, Outline: geom.Rectangle(0, 0, long, overhang),
			Notes: []string{"Glue the strips under the template, level with its outer edges: their inner edges, below the scored lines, stop it against the panel."}}
		w := s.writer()
		s.write(w, t.plate.Name+" "+what, geom.Point{X: 0, Y: overhang / 2}, 0)
		s.stamp, _ = w.place(stampText, geom.Point{X: long, Y: overhang / 2}, 0)
		return s
	}
	return []Plate{strip("edge", p.Length()), strip("end", p.Width())}
}

// loop marks a cut: a hole, or walls.
func (t *tracer) loop(l geom.Loop, full bool) {
	o := t.plate.Origin
	if c, r, round := l.AsCircle(); round {
		c = c.Add(o)
		size := max(pilot/2, t.MinBridge/2+slotRoom/2)
		if full {
			size = max(r, size)
		}
		if hole := geom.Circle(c, size); t.free(hole) {
			t.plate.Openings = append(t.plate.Openings, hole)
			far := r + 3
			for _, d := range []geom.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
				t.plate.Engrave = append(t.plate.Engrave, []geom.Vertex{{Point: c.Along(d, size+1)}, {Point: c.Along(d, far+1)}})
			}
		} else {
			d := t.add(geom.LevelNote, "a hole at %s, %s has no room beside other cuts",
				geom.Millimeters(c.X-o.X), geom.Millimeters(c.Y-o.Y))
			d.Ask = geom.Sentencef("mark it by measure")
		}
		return
	}
	b := t.box(l)
	if _, square := l.AsRect(0); square && math.Min(b.Width(), b.Height()) < 2*t.slot()+minRib {
		t.wide(b)
		return
	}
	t.walls(l, 1)
}

// walls slots along the straight sides of a loop that lie on the panel; the waste is
// to the left of them, or with side -1 to the right. Others are scored.
func (t *tracer) walls(l geom.Loop, side float64) {
	o := t.plate.Origin
	panel := t.panel.Panel.Outline.Bounds().Translate(o)
	opened := make([]bool, len(l))
	for i, v := range l { // before what leaves room for them
		a, b := v.Add(o), l.Next(i).Add(o)
		opened[i] = v.Bulge == 0 && a.X != b.X && a.Y != b.Y && t.slanted(a, b, side)
	}
	for i, v := range l {
		a, b := v.Add(o), l.Next(i).Add(o)
		switch {
		case opened[i]:
		case v.Bulge != 0 || a.X != b.X && a.Y != b.Y:
			t.plate.Engrave = append(t.plate.Engrave, []geom.Vertex{{Point: a, Bulge: v.Bulge}, {Point: b}})
		case a.Y == b.Y && a.Y > panel.Min.Y+edgeRoom && a.Y < panel.Max.Y-edgeRoom:
			up := side * math.Copysign(1, b.X-a.X)
			t.slots(false, a.Y, float64(up*t.slot()), max(min(a.X, b.X), panel.Min.X), min(max(a.X, b.X), panel.Max.X))
		case a.X == b.X && a.X > panel.Min.X+edgeRoom && a.X < panel.Max.X-edgeRoom:
			across := -side * math.Copysign(1, b.Y-a.Y)
			t.slots(true, a.X, float64(across*t.slot()), max(min(a.Y, b.Y), panel.Min.Y),
				min(max(a.Y, b.Y), panel.Max.Y))
		}
	}
}

// edgeRoom is how near a wall may be to a panel's edge, in mm, to be that edge.
const edgeRoom = 0.01

// wide opens a narrow cut in its full width, so that both long edges are walls; its
// ends, where they lie on the panel and no opening ends there, are scored.
func (t *tracer) wide(b geom.Rect) {
	panel := t.panel.Panel.Outline.Bounds().Translate(t.plate.Origin)
	upright := b.Width() <= b.Height()
	low, high, least, most := b.Min.X, b.Max.X, panel.Min.X, panel.Max.X
	if upright {
		low, high, least, most = b.Min.Y, b.Max.Y, panel.Min.Y, panel.Max.Y
		t.slots(true, b.Min.X, b.Width(), max(low, least), min(high, most))
	} else {
		t.slots(false, b.Min.Y, b.Height(), max(low, least), min(high, most))
	}
	for _, end := range []float64{low, high} {
		if end <= least+edgeRoom || end >= most-edgeRoom {
			continue
		}
		line := []geom.Vertex{{Point: geom.Point{X: end, Y: b.Min.Y}}, {Point: geom.Point{X: end, Y: b.Max.Y}}}
		if upright {
			line = []geom.Vertex{{Point: geom.Point{X: b.Min.X, Y: end}}, {Point: geom.Point{X: b.Max.X, Y: end}}}
		}
		if !slices.ContainsFunc(t.plate.Openings, func(l geom.Loop) bool {
			o := l.Bounds()
			if upright {
				return o.Min.X == b.Min.X && (o.Min.Y == end || o.Max.Y == end)
			}
			return o.Min.Y == b.Min.Y && (o.Min.X == end || o.Max.X == end)
		}) {
			t.plate.Engrave = append(t.plate.Engrave, line)
		}
	}
}

const noSlot = "Where there was no room for a slot a scored line shows the wall: mark that by measure."

// tooNarrow says that a cut of a width cannot be made in the plate.
func (t *tracer) tooNarrow(width float64) {
	wide, least := geom.Millimeters(width), geom.Millimeters(t.MinBridge)
	d := t.add(geom.LevelWarning, "a cut %s wide is no wider than what cuts the plate takes away, %s", wide, least)
	d.Measured, d.Limit = wide, least
	d.Ask = geom.Sentencef("cut the templates with a finer beam or bit")
}

// slots opens a strip along a line, x = at with upright, so far to one side of it
// (below 0 to the lower one) from one place to another, in parts with bridges between.
func (t *tracer) slots(upright bool, at, thick, from, to float64) {
	place := func(a, b float64) geom.Rect {
		low, high := min(at, at+thick), max(at, at+thick)
		if upright {
			return geom.Rect{Min: geom.Point{X: low, Y: a}, Max: geom.Point{X: high, Y: b}}
		}
		return geom.Rect{Min: geom.Point{X: a, Y: low}, Max: geom.Point{X: b, Y: high}}
	}
	if math.Abs(thick) <= t.MinBridge {
		t.tooNarrow(math.Abs(thick))
		return
	}
	// What is free along the line.
	free := []geom.Interval{{Min: from, Max: to}}
	for _, r := range t.taken {
		r = r.Grow(minRib)
		if !place(from, to).Overlaps(r) {
			continue
		}
		if upright {
			free = geom.Subtract(free, r.Upright())
		} else {
			free = geom.Subtract(free, r.Across())
		}
	}
	done := false
	for _, f := range free {
		long := f.Len()
		if long < min(shortest, to-from) {
			continue
		}
		n := int(math.Ceil((long + bridge) / (longest + bridge)))
		part := (long - float64(bridge*float64(n-1))) / float64(n)
		for i := range n {
			a := f.Min + float64((part+bridge)*float64(i))
			b := place(a, a+part)
			t.plate.Openings = append(t.plate.Openings, b.Loop())
			t.taken = append(t.taken, b)
			done = true
		}
	}
	if !done && to-from > edgeRoom {
		// No room for a slot: a scored line shows the wall.
		for _, v := range []float64{at, at + thick} {
			a, b := geom.Point{X: from, Y: v}, geom.Point{X: to, Y: v}
			if upright {
				a, b = geom.Point{X: v, Y: from}, geom.Point{X: v, Y: to}
			}
			t.plate.Engrave = append(t.plate.Engrave, []geom.Vertex{{Point: a}, {Point: b}})
			if math.Abs(thick) <= t.slot() {
				break
			}
		}
		if !slices.Contains(t.plate.Notes, noSlot) {
			t.plate.Notes = append(t.plate.Notes, noSlot)
		}
	}
}

// outline marks the part of a panel's outline that lies within its extent: fingers, notches.
func (t *tracer) outline(p geom.Panel) {
	if len(p.Outline) > 4 {
		t.walls(p.Outline, -1)
	}
}
