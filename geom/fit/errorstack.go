// Package fit works out what the joints of a drawer will do when boards, cutters
// and settings are off by what they usually are, which settings serve a whole run,
// and what a test cut says about the machine.
package fit

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/shoplog"
)

// Shape is how an error spreads between its limits.
type Shape uint8

const (
	// Uniform is as likely at one place between the limits as at another: boards
	// from a rack.
	Uniform Shape = iota
	// Normal has its limits at three standard deviations, and is drawn no further
	// out: settings and cuts.
	Normal
	// Learned is what a log tells: its limits leave out as much as those of a Normal one.
	Learned
)

// Source is one thing that can be off, by as much as Minus below and Plus above what
// it is meant to be, both 0 or more, in mm.
type Source struct {
	Name        string
	Minus, Plus float64
	Shape       Shape
	Cause       Cause
	law         *shoplog.Law // of a Learned one
}

// Cause is what a shop can do something about: sources of one cause get better together.
type Cause string

const (
	OfSides    Cause = "the boards of the sides"
	OfFront    Cause = "the boards of the box front"
	OfBack     Cause = "the boards of the back"
	OfBottom   Cause = "the boards of the bottom"
	OfDividers Cause = "the boards of the dividers"
	OfCutter   Cause = "cutter" // from here on as the accuracies are called
	OfCut      Cause = "cut"
	OfFence    Cause = "fence"
	OfHeight   Cause = "height"
	OfLength   Cause = "length"
)

// Board reports whether it is a thickness, not what the shop does.
func (c Cause) Board() bool {
	return c == OfSides || c == OfFront || c == OfBack || c == OfBottom || c == OfDividers
}

// middle of the limits, and half of what is between them.
func (s Source) middle() float64 { return (s.Plus - s.Minus) / 2 }
func (s Source) half() float64   { return (s.Plus + s.Minus) / 2 }

// sigma is the standard deviation of the source.
func (s Source) sigma() float64 {
	if s.Shape == Normal {
		return s.half() / normalLimit
	}
	return s.half() / math.Sqrt(3) // of a uniform spread
}

// normalLimit is how many standard deviations the limits of a Normal source are out.
const normalLimit = 3

// Stack is a measure as a function of what is off. Value takes a deviation for each
// source, in their order, and must not fall or not rise over the whole range of each
// one. Terms are the sources that it looks at, with the sign of what they do to it.
type Stack struct {
	Sources  []Source
	Terms    []Term
	Value    func(off []float64) float64
	together blockLaw // Value once more, if there is one
}

// blockLaw is a measure as a function of what is off that is known as numbers.
type blockLaw interface {
	// lanes is Value of all boxes of a block, to the last bit.
	lanes(off []lanes, to *lanes)
	// movers are the sources that it looks at.
	movers() []int
	// appendTo adds all numbers of the law to a key.
	appendTo(key []byte) []byte
}

// Term says that a measure rises (Sign 1) or falls (-1) with a source, counted from 0.
type Term struct {
	Source int
	Sign   float64
}

// Share is what a source has in the root of squares of a measure.
type Share struct {
	Source int
	Name   string // of the source
	// Half is by how much the source alone moves the measure either way; Part its
	// share of the sum of squares, 0 to 1.
	Half, Part float64
	// Halved is the root of squares with this source half as large.
	Halved float64
}

// Result is what a stack does.
type Result struct {
	Nominal float64
	// Worst is with every source at the limit that is worst.
	Worst geom.Interval
	// RootSumSquare is the root of the sum of squares of what each source does alone, either
	// way of the measure with all sources in the middle of their limits. It weighs the
	// sources. It is no range that boxes keep: of a measure with a bend, as that of the
	// first of two parts that meet, it can reach beyond the worst case.
	RootSumSquare float64
	Shares        []Share // the largest first; of equal ones in the order of terms
}

// Result works a stack out: worst case and root sum of squares. For a sum
// Y = a X + b Z of independent sources the latter is the formula of propagation in
// the NIST/SEMATECH e-Handbook of Statistical Methods, section 2.5.5.2.
func (s Stack) Result() Result {
	off := make([]float64, len(s.Sources))
	r := Result{Nominal: s.Value(off)}
	at := func(end float64) float64 {
		for _, t := range s.Terms {
			if t.Sign*end > 0 {
				off[t.Source] = s.Sources[t.Source].Plus
			} else {
				off[t.Source] = -s.Sources[t.Source].Minus
			}
		}
		return s.Value(off)
	}
	r.Worst = geom.Interval{Min: at(-1), Max: at(1)}
	for _, t := range s.Terms {
		off[t.Source] = s.Sources[t.Source].middle()
	}
	sum := 0.0
	for _, t := range s.Terms {
		from := s.Sources[t.Source]
		off[t.Source] = from.Plus
		high := s.Value(off)
		off[t.Source] = -from.Minus
		half := math.Abs(high-s.Value(off)) / 2
		off[t.Source] = from.middle()
		if half > 0 {
			r.Shares = append(r.Shares, Share{Source: t.Source, Name: from.Name, Half: half})
			sum += float64(half * half)
		}
	}
	r.RootSumSquare = math.Sqrt(sum)
	for i := range r.Shares {
		h := &r.Shares[i]
		square := float64(h.Half * h.Half)
		h.Part, h.Halved = square/sum, math.Sqrt(max(0, sum-float64(square*3/4)))
	}
	slices.SortStableFunc(r.Shares, func(a, b Share) int { return cmp.Compare(alikeHalf(b.Half), alikeHalf(a.Half)) })
	return r
}

// alikeHalf is what halves are compared by: those that differ by less than a nanometer are
// one, so that the order of terms and not the last digit decides between them.
func alikeHalf(mm float64) float64 { return math.Round(mm * 1e6) }
