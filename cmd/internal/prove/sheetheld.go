package prove

import (
	"math"
	"sync"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// beside is how far outside a part's outline, in millimeters, it is looked whether
// the part is cut out there: any bit takes more.
const beside = 0.25

// takesOf is how deep a cut goes in a board of a thickness.
func (r *sheetReader) takesOf(c *sheetCut, thickness float64) float64 {
	switch {
	case c.through:
		return thickness + 1
	case c.kept:
		return c.depth + thickness - r.out.thickness
	}
	return c.depth
}

// through reports whether a cut leaves nothing of a board of a thickness.
func (r *sheetReader) through(c *sheetCut, thickness float64) bool {
	return proof.NothingLeft(thickness - r.takesOf(c, thickness))
}

// held looks what holds each part when all is cut, and that nothing is cut of one that
// has come loose.
func (r *sheetReader) held(out *record.OnSheet) {
	least := r.flood(r.least)
	usual := sync.OnceValue(func() *flooded { return r.flood(r.out.thickness) })
	for i := range r.parts {
		p := &r.parts[i]
		found := bridges(r.around(p, r.least, true), r.out.thickness)
		count, whole, free := found.count, found.whole, found.free
		tied := whole || count > 0 && least.withWaste(r.within(p))
		if !tied && p.under > 0 { // a thin skin was reported before: what is left of it in most boards holds
			usually := bridges(r.around(p, r.out.thickness, false), r.out.thickness)
			count, whole = usually.count, usually.whole
			tied = whole || count > 0 && usual().withWaste(r.within(p))
		}
		if !tied && r.onlyMarked() && p.Held != nil && p.Held.By == "tabs" {
			r.heldByMarks(p, out, free)
			continue
		}
		switch {
		case whole:
			out.HeldByOnionSkin++
		case tied:
			if out.HeldByTabs++; out.MinTabs == 0 || count < out.MinTabs {
				out.MinTabs = count
			}
			need := proof.MinTied
			if h := p.Held; h != nil {
				need = max(need, h.TabsNeeded)
			}
			if count < need {
				r.fault("loose", p.cutBy(r.cuts[free]), rebuild,
					"%s hangs by %s; it takes %d", p.Part, words.Count(count, "bridge", "bridges"), need)
			}
			r.asPlanned(p, found)
		case p.under > 0:
			r.fault("loose", p.cutBy(r.cuts[free]), rebuild,
				"nothing holds %s when all is cut: its own drawing leaves %s under its outline", p.Part,
				r.text(p.under))
		default:
			out.Loose++
		}
		if !tied && free >= 0 {
			r.afterLoose(p, free)
		}
	}
}

// asPlanned holds the bridges of a part that hangs by tabs against those that the job asks
// for: as many as were planned, none narrower.
func (r *sheetReader) asPlanned(p *placedPart, found bridged) {
	tabs := r.report.Router.Tabs
	if p.Held == nil || p.Held.By != "tabs" || tabs == nil || found.free < 0 {
		return
	}
	if found.count < p.Held.Tabs {
		r.fault("loose", p.cutBy(r.cuts[found.free]), rebuild, "%s hangs by %s; %d were planned", p.Part,
			words.Count(found.count, "bridge", "bridges"), p.Held.Tabs)
	}
	bit := r.cuts[found.free].bit
	for i := range r.cuts {
		if c := &r.cuts[i]; c.through && c.bit > 0 {
			bit = math.Min(bit, c.bit)
		}
	}
	if width := found.width(bit); width < tabs.Width.MM()-sameSize {
		r.fault("narrow-tab", p.cutBy(r.cuts[found.ending]), rebuild, "a tab of %s is %s wide; the job asks for %s",
			p.Part, r.text(math.Max(0, width)), r.text(tabs.Width.MM()))
	}
}

// heldByMarks judges a part whose tabs a program is to make: by the marks at which it is to
// make them. That they hold, and that nothing is cut too late, rests on the program.
func (r *sheetReader) heldByMarks(p *placedPart, out *record.OnSheet, free int) {
	count, need := r.markedTabs(p), max(proof.MinTied, p.Held.TabsNeeded)
	if out.HeldAtMarks++; out.MinMarks == 0 || count < out.MinMarks {
		out.MinMarks = count
	}
	if count < need {
		c := sheetCut{}
		if free >= 0 {
			c = r.cuts[free]
		}
		r.fault("loose", p.cutBy(c), rebuild, "%s has %s for tabs; it takes %d", p.Part,
			words.Count(count, "mark", "marks"), need)
	}
}

// edge is a side of a part's outline on the sheet, a hair outside, with the cuts there.
type edge struct {
	a, b    geom.Point
	deepest []stretch
}

// together is what cuts from both faces take: where they leave nothing, more than the board.
// Of the two the one is named that goes through, or the later. What goes through is deeper
// than the nominal thickness.
func together(out, in []stretch, thickness, nominal float64) (list []stretch) {
	for i, j := 0, 0; i < len(out) && j < len(in); {
		a, b := out[i], in[j]
		s := stretch{math.Max(a.from, b.from), math.Min(a.to, b.to), a.depth + b.depth, max(a.which, b.which)}
		if proof.NothingLeft(thickness - s.depth) {
			s.depth = nominal + 1
			if proof.NothingLeft(thickness - a.depth) {
				s.which = a.which
			}
		}
		if s.to > s.from {
			list = append(list, s)
		}
		if a.to < b.to {
			i++
		} else {
			j++
		}
	}
	return list
}

// around takes the cuts about a part's outline, side by side. What is not cut at all is
// told of, if that is asked for.
func (r *sheetReader) around(p *placedPart, thickness float64, tell bool) []edge {
	to := r.toSheet(p)
	box := r.boxOf(p)
	box = box.Grow(beside)
	var near [2][]layer // from the outside, and from the inside
	for i := range r.cuts {
		c := &r.cuts[i]
		if c.region.box.Apart(box) {
			continue
		}
		side := 0
		if c.face == geom.Inside {
			side = 1
		}
		near[side] = append(near[side], layer{c.region, r.takesOf(c, thickness), i})
	}
	ring := r.ringOf(p)
	var list []edge
	uncut, at := 0.0, geom.Point{}
	for i, v := range ring {
		w := ring[(i+1)%len(ring)]
		length := v.To(w)
		if length < tick {
			continue
		}
		out := w.Sub(v).Right().Scale(beside / length)
		e := edge{a: to(v.Add(out)), b: to(w.Add(out))}
		along := func(list []float64, g rings) []float64 { return g.along(list, e.a, e.b) }
		e.deepest = together(deepest(near[0], along, 0, 1), deepest(near[1], along, 0, 1), thickness, r.out.thickness)
		for _, s := range e.deepest {
			if s.which < 0 {
				if uncut == 0 {
					at = v.Lerp(w, (s.from+s.to)/2)
				}
				uncut += float64((s.to - s.from) * length)
			}
		}
		list = append(list, e)
	}
	if uncut > proof.MinBridge/2 && tell {
		last := r.files[r.faces[len(r.faces)-1]]
		r.fault("not-cut-out", place{p.Part, last, 0}, rebuild, "%s of the outline of %s is not cut, near x %s, y %s of it", r.text(uncut), p.Part, r.text(at.X), r.text(at.Y))
	}
	return list
}

// bridged is what holds a part: how many stretches of its outline are not cut through, and
// the least length of one in millimeters; whole, that none of it is cut through. Free is the cut that goes
// through there last, -1 for none.
type bridged struct {
	count     int
	narrowest float64
	ending    int // the through cut at which the narrowest ends
	whole     bool
	free      int
}

// width is that of the narrowest bridge in its middle, in millimeters, where a bit of a
// diameter has cut round ends: a hair from the outline it is wider.
func (b bridged) width(bit float64) float64 {
	r := bit / 2
	mouth := r - math.Sqrt(float64(r*r)-float64((r-beside)*(r-beside)))
	return b.narrowest - 2*mouth
}

// bridges finds what holds a part of a nominal thickness by what is cut about it.
func bridges(around []edge, nominal float64) bridged {
	out := bridged{narrowest: math.Inf(1), free: -1}
	add := func(length float64, ending int) {
		if length >= proof.MinBridge {
			out.count++
			if length < out.narrowest {
				out.narrowest, out.ending = length, ending
			}
		}
	}
	length, total := 0.0, 0.0 // of the stretch that goes on, and of all that is through
	first := -1.0             // of the stretch at the beginning, which may go on at the end
	last := -1
	end := func() {
		if first < 0 {
			first = length
		} else {
			add(length, last)
		}
		length = 0
	}
	for _, e := range around {
		size := e.a.To(e.b)
		for _, s := range e.deepest {
			if s.depth <= nominal {
				length += float64((s.to - s.from) * size)
				continue
			}
			out.free, last = max(out.free, s.which), s.which
			total += float64((s.to - s.from) * size)
			end()
		}
	}
	if total == 0 {
		return bridged{whole: true, free: -1}
	}
	add(length+math.Max(0, first), last)
	return out
}

// afterLoose names what is cut of a part after the cut that makes it loose.
func (r *sheetReader) afterLoose(p *placedPart, free int) {
	for _, which := range p.touched {
		if which > free {
			c := r.cuts[which]
			r.fault("order", p.cutBy(c), "cut it before, or hold the part by tabs or an onion skin",
				"the %s on %s is cut into %s after line %d of %s has cut it loose", c.operation, c.layer, p.Part,
				r.cuts[free].at, r.cuts[free].file)
		}
	}
}

// within is a place in the wood of a part, on the sheet: in the middle of the widest wood
// of a line across its middle.
func (r *sheetReader) within(p *placedPart) geom.Point {
	b := p.outline.box
	best, at := 0.0, geom.Point{}
	for _, share := range []float64{0.5, 0.3, 0.7, 0.1, 0.9} {
		y := b.Min.Y + float64(share*(b.Max.Y-b.Min.Y))
		inside := p.outline.spans(nil, y)
		var out []layer
		for _, c := range p.cuts {
			if c.through || c.depth >= r.least {
				ring := rings{}.with(c.shape.Ring())
				for _, d := range [...]geom.Point{{}, {X: floodStep}, {X: -floodStep}, {Y: floodStep}, {Y: -floodStep}} { // the flood's line lies beside the place
					out = append(out, layer{rings: ring.mapped(func(p geom.Point) geom.Point { return p.Add(d) }), depth: 1})
				}
			}
		}
		for k := 0; k+1 < len(inside); k += 2 {
			for _, s := range deepest(out, func(list []float64, g rings) []float64 { return g.spans(list, y) },
				inside[k], inside[k+1]) {
				if s.depth == 0 && s.to-s.from > best {
					best, at = s.to-s.from, geom.Point{X: (s.from + s.to) / 2, Y: y}
				}
			}
		}
	}
	return r.toSheet(p)(at)
}
