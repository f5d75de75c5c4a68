package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Engraving is lines to engrave on a panel, as its number, where nobody sees them.
type Engraving struct {
	Face geom.Face
	Area geom.Rect // in panel coordinates, in which it has to stay
	// Lines are 1 high, from 0, 0 to the right, and Wide long.
	Lines [][]geom.Point
	Wide  float64
}

// Engraved is where an engraving came to be: its lower left corner, or, on the outside
// face, the lower right one, from which it runs to the left; Room says why it was left out.
type Engraved struct {
	At     geom.Point
	Height float64
	Room   geom.Sentence // why there is none; empty where there is
}

// Engrave says how numbers are engraved. A Depth of 0 is not at all, a Height of 0 one that
// suits the bit: the one that [Bit.Engraves], else the narrowest.
type Engrave struct{ Depth, Height float64 }

// EngravingOperation is that of its lines.
const EngravingOperation = "engrave"

const (
	// DefaultEngraving is how deep an engraving goes, in mm; common practice, no source.
	DefaultEngraving = 0.3
	// usualLetters is the height of letters, in mm, and easyBits and minBits that in
	// diameters of the bit that is easily read, and the least that is: a stroke of a letter
	// is a quarter of its height from the next.
	usualLetters, easyBits, minBits = 6.0, 5.0, 4.0
	// engravingWeb is the least wood, in mm, between an engraving and an edge or another
	// cut; common practice, no source.
	engravingWeb = 0.8
	// engravingStep is how far apart, in mm, the places are that are tried.
	engravingStep = 1.0
)

// engrave places the panel's engraving.
func (p *preparation) engrave() {
	e := p.part.Engraving
	if p.Engrave.Depth == 0 || len(p.Bits) == 0 || e == nil {
		return
	}
	bit := p.bits[len(p.bits)-1]
	if i := slices.IndexFunc(p.Bits, func(b Bit) bool { return b.Engraves }); i >= 0 {
		bit = i
	}
	d := p.Bits[bit].Diameter
	high := p.Engrave.Height
	if high == 0 {
		high = math.Max(usualLetters, easyBits*d)
	}
	around := d/2 + engravingWeb
	if room := e.Area.Height() - 2*around; p.Engrave.Height == 0 && room < high {
		high = room
	}
	out := &Engraved{Height: math.Floor(high*100) / 100}
	p.work.Engraved = out
	if least := minBits * d; out.Height < least-touching {
		out.Room = geom.Sentencef("figures of %s are too small for %s: they have to be %s high",
			geom.Millimeters(math.Max(0, high)), named{p.Bits[bit]}, geom.Millimeters(least))
		return
	}
	long := float64(e.Wide * out.Height)
	at, found := p.clearArea(e, long, out.Height, around)
	if !found {
		out.Room = geom.Sentencef("%s x %s clear of edges and cuts is not to be had",
			geom.Millimeters(long+2*around), geom.Millimeters(out.Height+2*around))
		return
	}
	out.At = at
	for _, line := range e.Lines {
		path := make([]geom.Vertex, len(line))
		for i, q := range line {
			x := float64(q.X * out.Height)
			if e.Face == geom.Outside { // it reads from there
				x = -x
			}
			path[i] = geom.Vertex{Point: geom.Point{X: at.X + x, Y: at.Y + float64(q.Y*out.Height)}}
		}
		p.work.Cuts = append(p.work.Cuts, Cut{Operation: EngravingOperation, Face: e.Face, Depth: p.Engrave.Depth,
			Remaining: p.left(p.Engrave.Depth), Bit: bit, Path: path, Pocket: -1})
	}
}

// clearArea finds the place nearest to the middle of an area that lies in the outline and
// keeps a distance from that and from all cuts.
func (p *preparation) clearArea(e *Engraving, long, high, around float64) (geom.Point, bool) {
	x := (e.Area.Min.X + e.Area.Max.X - long) / 2
	y := (e.Area.Min.Y + e.Area.Max.Y - high) / 2
	for n := range int(e.Area.Width()/2/engravingStep) + 1 {
		for _, sign := range []float64{1, -1} {
			r := geom.Rect{Min: geom.Point{X: x + float64(sign*float64(n)*engravingStep), Y: y}}
			r.Max = geom.Point{X: r.Min.X + long, Y: y + high}
			if !p.isClear(e, r, around) {
				continue
			}
			if e.Face == geom.Outside {
				return geom.Point{X: r.Max.X, Y: r.Min.Y}, true
			}
			return r.Min, true
		}
	}
	return geom.Point{}, false
}

func (p *preparation) isClear(e *Engraving, r geom.Rect, around float64) bool {
	wide, area := r.Grow(around), e.Area.Grow(touching)
	if wide.Union(area) != area {
		return false
	}
	meets := func(b geom.Rect) bool {
		return b.Min.X < wide.Max.X-touching && b.Max.X > wide.Min.X+touching &&
			b.Min.Y < wide.Max.Y-touching && b.Max.Y > wide.Min.Y+touching
	}
	for _, c := range p.work.Cuts {
		if meets(pathBounds(c, p.Bits)) {
			return false
		}
	}
	outline := p.part.Outline.Flatten(flatWithin)
	for _, v := range outline {
		if meets(geom.Rect{Min: v, Max: v}) {
			return false
		}
	}
	for _, q := range []geom.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}} {
		if !outline.Contains(q) || outline.Distance(q) < around-touching {
			return false
		}
	}
	return true
}
