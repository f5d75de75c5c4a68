package gauge

import (
	"math"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// drive is what a reading does to a source. Shift is how far the target of its row is
// over that of this drawer.
type drive struct {
	variable  int
	by, shift float64
}

// bound is one limit of one measure of a box: it stays within it while the worst
// combination of readings and boards does.
type bound struct {
	measure Measure
	value   func([]float64) float64
	up      bool // the upper limit
	limit   float64
	off     []float64 // of the sources
	moves   []move
	boards  []board
}

// move is a source that follows a reading: at the worst, by as much as the limit on one
// side of it is off.
type move struct {
	source int
	side   side
	sign   float64
	shift  float64 // of the source at the target of the row
}

// board is a source that is the thickness of a board, with how far it is off at the worst.
type board struct {
	source int
	stock  joinery.Stock
	off    float64
}

func newBound(d Drawer, m fit.Measure, drives map[int]drive, up bool) *bound {
	b := &bound{measure: Measure{m.Check, d.Spec.Name}, value: m.Stack.Value, up: up, limit: m.LowerLimit, off: make([]float64, len(m.Stack.Sources))}
	worst := -1.0
	if up {
		b.limit, worst = m.UpperLimit, 1
	}
	for _, t := range m.Stack.Terms {
		sign := float64(t.Sign * worst)
		if r, known := drives[t.Source]; known {
			at := 2 * r.variable
			if sign*r.by > 0 {
				at++
			}
			b.moves = append(b.moves, move{t.Source, at, sign, float64(r.by * r.shift)})
			continue
		}
		s := m.Stack.Sources[t.Source]
		if role, is := fit.BoardOf(t.Source); is && s.Cause.Board() {
			one := board{t.Source, stockOf(d, role), s.Plus}
			if sign < 0 {
				one.off = -s.Minus
			}
			b.boards = append(b.boards, one)
		}
	}
	return b
}

// stockOf is the first stock of a part.
func stockOf(d Drawer, role joinery.Role) joinery.Stock {
	for _, p := range d.Parts {
		if p.Role == role {
			return p.Stock
		}
	}
	return joinery.Stock{}
}

// gap is how far the worst box is within the limit, below 0 beyond it, with limits of
// the readings that far from their targets and boards within a part of their range.
func (b *bound) gap(ext []float64, part float64) float64 {
	for _, o := range b.boards {
		b.off[o.source] = float64(o.off * part)
	}
	for _, m := range b.moves {
		b.off[m.source] = float64(m.sign*ext[m.side]) + m.shift
	}
	v := b.value(b.off)
	if b.up {
		return b.limit - v
	}
	return v - b.limit
}

// concerns reports whether the bound hangs on one of the sides.
func (b *bound) concerns(sides ...side) bool {
	for _, m := range b.moves {
		for _, s := range sides {
			if m.side == s {
				return true
			}
		}
	}
	return false
}

// mark tells bounds apart: those of drawers that differ in their sizes alone are the
// same, and so is how they answer to any readings.
type mark struct {
	code    joinery.CheckCode
	part    joinery.Role
	up      bool
	boards  string
	answers [3]int64
}

func (b *bound) mark(ext []float64) mark {
	k := mark{code: b.measure.Code, part: b.measure.Part, up: b.up}
	for _, o := range b.boards {
		k.boards += o.stock.Name + "\n"
	}
	for i, part := range []float64{0, 0.5, 1} {
		for j := range ext { // any numbers that differ
			ext[j] = math.Mod(float64(j*j+i)*0.0137+0.01, 0.1) * float64(i)
		}
		k.answers[i] = int64(math.Round(b.gap(ext, part) * 1e7))
	}
	return k
}
