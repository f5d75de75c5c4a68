package paper

import (
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// numeral is the size of the letters of a cut's sizes, in mm: capitals and figures are 3.5 high.
var numeral = drawing.Capitals(3.5)

// Hold is how a part is held for a cut.
type Hold uint8

const (
	Flat  Hold = iota // on the table, an end or an edge against the fence
	AtEnd             // on the table, the cutter partly buried in a sacrificial fence
	OnEnd             // stood on end or edge, a face against the fence
	OnJig             // stood on end against a finger jig, a face to the operator
)

// Cut is a cut at a saw or a router table, in mm.
type Cut struct {
	Hold   Hold
	Cutter float64 // its width
	Height float64 // over the table
	Fence  float64 // from its face to the near side of the cutter; below 0 as much of it is buried there
	// Touching says that a sacrificial fence stands at the cutter for the first pass, and none of it is buried.
	Touching  bool
	Thickness float64 // of the part
	End       string  // of the part at the fence, where one must not take the other
	// Then are the distances of the fence for later passes.
	Then []float64
}

// Measures of the drawing, in mm of the machine: what is shown to the left of the
// cutter and of a part's length, how far the fence and a stood part reach up.
const (
	shownLeft = 38.0
	tallFence = 25.0
	lowFence  = 18.0
	fenceDeep = 12.0
	tableDeep = 5.0
	heightOff = 4.0 // the size of the cutter's height, left of it
	firstRow  = 5.0 // of sizes, below the table
	nextRow   = 6.5
	// Of a board that is broken: from the cutter to the fence, to the break, and half of what is left out there.
	brokenFace, breakAt, breakHalf = 45.0, 15.0, 1.5
	breakOver                      = 1.5 // how far the lines of a break go on over the wood and below the table
)

// shorter is said below the fence's distance where the board is broken: a rule on the paper does not find it.
const shorter = "drawn shorter"

var (
	tableInk = drawing.Ink(0.25)
	fenceInk = drawing.Ink(0.15)
	steel    = drawing.Ink(0.75)
)

// operatorScale is that of the drawing, and OperatorScale how it is said.
const (
	operatorScale = 1.0
	OperatorScale = "1:1"
)

// Operator draws a cut as the operator sees it who feeds away from himself, the
// fence at his right: table, cutter, fence and part, with the distances to set. It is no wider than a room: the
// distances stand in several lines where one is too long, and a board that is too long between cutter and fence is
// broken there.
func Operator(c Cut, number Number, room float64) drawing.Drawing {
	const scale = operatorScale
	v := c.seen(number, room)
	var d drawing.Drawing
	v.machine(&d)
	part := v.part()
	hatch(&d, part, false)
	d.Loops(drawing.Thick, 0, part)
	d.Loops(drawing.Thick, steel, geom.Rectangle(-c.Cutter, -tableDeep, 0, c.Height))
	if v.broken {
		v.cutThrough(&d)
	}
	rows := max(1, len(v.words))
	if c.Hold == AtEnd {
		rows = max(2, rows)
	}
	below := firstRow + 2.5 + float64(nextRow*float64(rows-1))
	right := max(v.high, v.wordsAt()+widest(v.words))
	out := drawing.Drawing{Width: scale*(right-v.low) + 1, Height: scale*(v.tall+tableDeep) + below}
	at := func(x, y float64) geom.Point {
		return geom.Point{X: scale * (x - v.low), Y: below + float64(scale*(y+tableDeep))}
	}
	out.Add(d, at(0, 0), scale)
	v.settings(&out, at, number)
	if v.End != "" {
		out.Write(drawing.Text{String: v.End, Size: numeral, Align: drawing.Right,
			At: at(v.face-1, v.Thickness+1.5)})
	}
	return out
}

// operatorView is what is seen of a cut, in mm of the machine: x from the near side of the
// cutter to the right, y up from the table.
type operatorView struct {
	Cut
	face      float64  // of the fence or the jig; buried in a sacrificial fence, the cutter reaches into that
	low, high float64  // what is shown across
	tall      float64  // how far up
	broken    bool     // the board, between cutter and fence, which is then nearer than it is
	words     []string // where the fence is, in lines
}

// fenceWords say where the fence is, for each pass; nothing on a jig, which takes its place.
func (v operatorView) fenceWords(number Number) []string {
	words, from := "fence ", 0.0
	switch v.Hold {
	case OnJig:
		return nil
	case AtEnd:
		if !v.Touching {
			words, from = "out of the fence ", v.Cutter
		}
	}
	list := []string{words + number(from+v.Fence)}
	for i, at := range v.Then {
		list[i] += ","
		list = append(list, "then "+number(from+at))
	}
	return list
}

// widest is how wide the widest of some lines is.
func widest(lines []string) (wide float64) {
	for _, l := range lines {
		wide = max(wide, drawing.Width(drawing.Regular, numeral, l))
	}
	return wide
}

// filled joins words to lines that are no wider than a room; none of the words is torn apart.
func filled(words []string, room float64) (lines []string) {
	for _, w := range words {
		if n := len(lines) - 1; n >= 0 && drawing.Width(drawing.Regular, numeral, lines[n]+" "+w) <= room {
			lines[n] += " " + w
		} else {
			lines = append(lines, w)
		}
	}
	return lines
}

// wordsAt is where these words begin, right of what they measure.
func (v operatorView) wordsAt() float64 { return max(v.face, 0) + 2 }

// seen is the view of a cut in a room, with room for its sizes left of the cutter.
func (c Cut) seen(number Number, room float64) operatorView {
	v := operatorView{Cut: c, face: c.Fence, tall: max(tallFence, c.Height+12)}
	if c.Hold == OnJig {
		v.face = 14
	}
	if c.Hold == Flat || c.Hold == AtEnd {
		v.tall = max(lowFence, c.Thickness+6)
	}
	words := drawing.Width(drawing.Regular, numeral, "height "+number(c.Height))
	words = max(words, drawing.Width(drawing.Regular, numeral, "cutter "+number(c.Cutter)))
	v.low = -max(shownLeft, c.Cutter+heightOff+words+3)
	list := v.fenceWords(number)
	left := func() float64 { return room - 1 + v.low - v.wordsAt() } // for words
	if c.Hold == Flat && v.face > brokenFace && left() < widest(list) {
		v.broken, v.face = true, brokenFace
	}
	if v.words = filled(list, left()); v.broken {
		v.words = append(v.words, shorter)
	}
	v.high = max(v.face, 0) + fenceDeep
	return v
}

// cutThrough breaks board and table between cutter and fence: a gap between thin lines with a zigzag (ISO 128-2, from
// memory).
func (v operatorView) cutThrough(d *drawing.Drawing) {
	low, high := -tableDeep-breakOver, v.Thickness+breakOver
	edge := func(x float64) []geom.Point {
		middle := v.Thickness / 2
		return []geom.Point{{X: x, Y: low}, {X: x, Y: middle - 1.5}, {X: x - 1.5, Y: middle - 0.5},
			{X: x + 1.5, Y: middle + 0.5}, {X: x, Y: middle + 1.5}, {X: x, Y: high}}
	}
	left, right := edge(breakAt-breakHalf), edge(breakAt+breakHalf)
	gap := slices.Clone(right)
	slices.Reverse(gap)
	d.Loops(drawing.Pen{}, drawing.White, geom.Polygon(append(gap, left...)...))
	d.Line(drawing.Thin, left...)
	d.Line(drawing.Thin, right...)
}

// machine draws the table, and the fence where the part runs along one.
func (v operatorView) machine(d *drawing.Drawing) {
	d.Loops(drawing.Thick, tableInk, geom.Rectangle(v.low, -tableDeep, v.high, 0))
	if v.Hold != OnJig {
		d.Loops(drawing.Thick, fenceInk, geom.Rectangle(v.face, 0, v.high, v.tall))
	}
}

// part is the outline of the part with the cut in it.
func (v operatorView) part() geom.Loop {
	cut := geom.Interval{Min: -v.Cutter, Max: 0}
	board := func(left, right, top float64) geom.Rect {
		return geom.Rect{Min: geom.Point{X: left}, Max: geom.Point{X: right, Y: top}}
	}
	switch v.Hold {
	case Flat:
		// The wood is open toward the left, where it goes on.
		return notched(board(v.low+2, v.face, v.Thickness), cut, v.Height)
	case AtEnd:
		cut.Max = v.face
		return notched(board(v.low+2, v.face, v.Thickness), cut, v.Height)
	case OnEnd:
		cut.Max = min(0, v.face)
		return notched(board(v.face-v.Thickness, v.face, v.tall), cut, v.Height)
	}
	return notched(board(v.low+4, 10, v.tall), cut, v.Height) // on a jig
}

// settings writes the sizes below the table, each in a row of its own, and the height
// beside the cutter. The drawing has the machine's places at those that at gives.
func (v operatorView) settings(out *drawing.Drawing, at func(x, y float64) geom.Point, number Number) {
	down := firstRow
	if len(v.words) > 0 {
		from := 0.0
		if v.Hold == AtEnd && !v.Touching {
			from = -v.Cutter
		}
		row(out, [2]geom.Point{at(from, -tableDeep), at(v.face, -tableDeep)}, down, v.words, drawing.Left)
		if v.Hold == AtEnd {
			down += nextRow
		}
	}
	row(out, [2]geom.Point{at(-v.Cutter, -tableDeep), at(0, -tableDeep)}, down,
		[]string{"cutter " + number(v.Cutter)}, drawing.Right)
	left := at(-v.Cutter-heightOff, 0)
	top := at(-v.Cutter-heightOff, v.Height)
	out.Line(drawing.Thin, at(-v.Cutter, v.Height), geom.Point{X: left.X - 1, Y: top.Y})
	arrow(out, left, top)
	label := drawing.Text{String: "height " + number(v.Height), Size: numeral, Align: drawing.Right, Value: true,
		At: geom.Point{X: left.X - 2, Y: (left.Y+top.Y)/2 - numeral/3}}
	// Where the part covers that place the words stand on white.
	b := label.Box()
	out.Loops(drawing.Pen{}, drawing.White, geom.Rectangle(b.Min.X-0.5, b.Min.Y-0.3, b.Max.X+0.5, b.Max.Y+0.3))
	out.Write(label)
}

// notched is a board on the table with a cut from below, over an interval of x and up to
// a height; a cut that misses the board, or reaches through its top, is left out.
func notched(board geom.Rect, cut geom.Interval, height float64) geom.Loop {
	left, right, top := board.Min.X, board.Max.X, board.Max.Y
	from, to := max(cut.Min, left), min(cut.Max, right)
	point := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	switch {
	case from >= to || height <= 0 || height >= top:
		return board.Loop()
	case to >= right:
		return geom.Polygon(point(left, 0), point(from, 0), point(from, height), point(right, height),
			point(right, top), point(left, top))
	case from <= left:
		return geom.Polygon(point(left, height), point(to, height), point(to, 0), point(right, 0),
			point(right, top), point(left, top))
	}
	return geom.Polygon(point(left, 0), point(from, 0), point(from, height), point(to, height),
		point(to, 0), point(right, 0), point(right, top), point(left, top))
}

// row writes a dimension between two places of an edge, so far below it, the words beside it and below each other: to
// the right where they begin at the left, and else to the left.
func row(d *drawing.Drawing, of [2]geom.Point, down float64, lines []string, align drawing.Align) {
	a, b := of[0], of[1]
	y := a.Y - down
	for _, p := range []geom.Point{a, b} {
		d.Line(drawing.Thin, geom.Point{X: p.X, Y: p.Y - 0.8}, geom.Point{X: p.X, Y: y - 1})
	}
	p, q := geom.Point{X: a.X, Y: y}, geom.Point{X: b.X, Y: y}
	arrow(d, p, q)
	x := max(p.X, q.X) + 2
	if align == drawing.Right {
		x = min(p.X, q.X) - 2
	}
	for i, l := range lines {
		d.Write(drawing.Text{String: l, Size: numeral, Value: true, Align: align,
			At: geom.Point{X: x, Y: y - numeral/3 - float64(nextRow*float64(i))}})
	}
}

// arrow draws a line with a stroke across at both ends, as joiners do.
func arrow(d *drawing.Drawing, a, b geom.Point) {
	d.Line(drawing.Thin, a, b)
	const tick = 0.8
	for _, p := range []geom.Point{a, b} {
		d.Line(drawing.Thick, geom.Point{X: p.X - tick, Y: p.Y - tick}, geom.Point{X: p.X + tick, Y: p.Y + tick})
	}
}
