package drawing

import (
	"math"

	"drawerwright/geom"
)

// Mark is a place along an edge and the words for its distance from the datum.
type Mark struct {
	At   float64
	Text string
}

// Side of a view that numbers stand on.
type Side uint8

const (
	Below     Side = iota // numbers run up and down the sheet
	Above                 // likewise
	LeftSide              // numbers run across the sheet
	RightSide             // likewise
)

// flat reports whether numbers run across the sheet.
func (s Side) flat() bool { return s == LeftSide || s == RightSide }

// outward is 1 where numbers are at greater coordinates than the view.
func (s Side) outward() float64 {
	if s == Above || s == RightSide {
		return 1
	}
	return -1
}

// Geometry of the numbers along an edge, in mm or in parts of their size.
const (
	stub  = 1.5  // from the view to where its line begins
	jog   = 2.6  // in which a line steps over to its number
	lead  = 1.3  // from there to the number
	pitch = 1.25 // of numbers, in sizes: their boxes do not touch
)

// Edge is an edge of a view that numbers stand along.
type Edge struct {
	Side     Side
	From, To geom.Point // its ends, from the datum on
	Scale    float64    // of the view
	// Straight is how far lines go on off the view, in mm, before they step aside to their numbers.
	Straight float64
	// Before and After are by how much, in mm, numbers may go beyond the edge's ends.
	Before, After float64
}

// length of the edge, in mm of the sheet.
func (e Edge) length() float64 {
	if e.Side.flat() {
		return e.To.Y - e.From.Y
	}
	return e.To.X - e.From.X
}

// Room is how many numbers of a size stand beside each other along the edge.
func (e Edge) Room(size float64) int { return 1 + int((e.length()+e.Before+e.After)/(pitch*size)) }

// Ordinates writes distances from one datum along an edge of a view: each with a
// line from the view to its number, all beside each other, stepping aside where
// there is no room ([Spread]). The marks are distances from the edge's start in mm of
// what is drawn; numbers keep within the edge grown by what they may go beyond it, and are in each other's
// way where they are more than [Edge.Room]. [Reach] is what they take up across the edge.
func (d *Drawing) Ordinates(e Edge, marks []Mark, size float64) {
	if len(marks) == 0 {
		return
	}
	from, to := e.From.X, e.To.X
	if e.Side.flat() {
		from, to = e.From.Y, e.To.Y
	}
	wanted := make([]float64, len(marks))
	for i, m := range marks {
		wanted[i] = from + float64(e.Scale*m.At)
	}
	// A number's middle is on its line, so its base line lies below that.
	placed := Spread(wanted, pitch*size, from-e.Before, to+e.After)
	for i, m := range marks {
		at := func(along, across float64) geom.Point {
			across *= e.Side.outward()
			if e.Side.flat() {
				return geom.Point{X: e.From.X + across, Y: along}
			}
			return geom.Point{X: along, Y: e.From.Y + across}
		}
		aside := stub + e.Straight
		end := aside + jog
		d.Line(Thin, at(wanted[i], stub/2), at(wanted[i], aside), at(placed[i], end), at(placed[i], end+1))
		drop := (ascent - descent) / 2 * size
		t := Text{String: m.Text, Size: size, Align: Right, Value: true, At: at(placed[i]-drop, end+lead)}
		if e.Side.outward() > 0 {
			t.Align = Left
		}
		if !e.Side.flat() {
			t.At, t.Quarter = at(placed[i]+drop, end+lead), 1
		}
		d.Write(t)
	}
}

// Reach is how far numbers of a size stand off the edge of a view, with lines that go straight nowhere.
func Reach(marks []Mark, size float64) float64 {
	long := 0.0
	for _, m := range marks {
		long = max(long, Width(Regular, size, m.Text))
	}
	if long == 0 {
		return 0
	}
	return stub + jog + lead + long
}

// Spread moves sorted places as little as possible, by the sum of squares, until
// each is at least a step from the next and all are within low and high. It is
// isotonic regression of the places less their steps (pool adjacent violators; R.
// E. Barlow et al., Statistical Inference under Order Restrictions, Wiley 1972,
// from memory). Where there is no room at all they stand evenly from low to high.
func Spread(places []float64, step, low, high float64) []float64 {
	n := len(places)
	if n == 0 {
		return nil
	}
	if room := high - low; float64(step*float64(n-1)) > room {
		step = 0
		if n > 1 {
			step = max(0, room/float64(n-1))
		}
	}
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, p := range places {
		pools = append(pools, pool{p - float64(float64(i)*step), 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/float64(pools[k-1].n) > pools[k].sum/float64(pools[k].n); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	out := make([]float64, 0, n)
	top := high - float64(step*float64(n-1))
	for _, p := range pools {
		at := math.Max(low, math.Min(top, p.sum/float64(p.n)))
		for range p.n {
			out = append(out, at+float64(step*float64(len(out))))
		}
	}
	return out
}
