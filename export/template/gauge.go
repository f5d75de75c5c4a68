package template

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// Corner is what fence and cutter are set to, and how far the cuts may be off.
type Corner struct {
	Name          string     // the setting's
	Fence, Height float64    // f and h
	Cutter        float64    // width of a slot
	Deep          float64    // of the dados, which may be deeper than Height
	Depths        [2]float64 // between which that is right; 0, 0 where nothing is said
	Tongue        [2]float64 // between which tongues may be; 0, 0 where there are none
}

// blockLong and blockWide are the size of a block, in mm, that lies well in the hand.
const blockLong, blockWide = 90.0, 40.0

// Blocks are plates to set a fence or a cutter by: of plates and of the shop's spacers what comes
// nearest without being higher, and what a feeler gauge adds. There is none where one plate is
// thicker than what is to be set.
func Blocks(c Corner, spacers []float64, o Options) (list []Plate) {
	b := blocks{c.Name, spacers, o}
	add := func(what, name string, target float64) {
		if p, ok := b.block(what, name, target); ok {
			list = append(list, p)
		}
	}
	if math.Abs(c.Fence-c.Height) < even {
		add("fence and height", "fence", c.Fence)
	} else {
		add("fence", "fence", c.Fence)
		add("height", "height", c.Height)
	}
	if c.Deep > 0 && math.Abs(c.Deep-c.Height) >= even { // with room for glue
		add("height for the dados", "dado-height", c.Deep)
	}
	return list
}

const (
	even       = 0.005 // mm by which heights differ that are one
	mostFeeler = 1.0   // mm that feeler gauges make up; common practice, no source
)

// blocks makes the blocks of one corner.
type blocks struct {
	corner  string
	spacers []float64
	Options
}

// block is one; ok is false where a plate is thicker than it is to be.
func (b blocks) block(what, name string, target float64) (p Plate, ok bool) {
	o := b.Options
	n, said, sum := 0, "", 0.0
	for try := 1; float64(float64(try)*o.Thickness) <= target+even; try++ {
		if text, high := stack(try, target, b.spacers, o); high > sum+even {
			n, said, sum = try, text, high
		}
	}
	if n == 0 {
		return Plate{}, false
	}
	short := o.printed(target) - o.printed(sum) // so that what is printed adds up
	feeler := ""
	if short >= even {
		feeler = "plus feeler " + o.text(short)
	}
	p = Plate{Name: "block-" + b.corner + "-" + name, Title: fmt.Sprintf("setup block: %s %s", what, o.text(target)),
		Parts: []string{b.corner}, Count: n, Outline: geom.Rectangle(0, 0, blockLong, blockWide)}
	p.Notes = []string{fmt.Sprintf("For a %s of %s: %s. Measure the stack before it is used.", what, o.text(target),
		strings.TrimSuffix(said+", "+feeler, ", "))}
	if short > mostFeeler {
		p.Notes[0] += " That is much for feelers: add spacers to the job, or plates of another thickness."
	}
	w := p.writer()
	p.write(w, strings.ToUpper("for "+what+" "+o.text(target)), geom.Point{X: blockLong / 2, Y: 30}, 0)
	p.write(w, said, geom.Point{X: blockLong / 2, Y: 22}, 0)
	p.write(w, feeler, geom.Point{X: blockLong / 2, Y: 14}, 0)
	p.write(w, o.Job, geom.Point{X: blockLong / 2, Y: 6}, 0)
	p.finish(w)
	return p, true
}

// printed is a length as numbers print it: to 0.01 mm, or 0.001 in.
func (o Options) printed(mm float64) float64 {
	step := 0.01
	if o.Unit == geom.Inch.String() {
		step = geom.InchMM / 1000
	}
	return math.Round(mm/step) * step
}

// stack is so many plates with the spacers that come nearest to the rest and are no higher, in
// words, and how high it is.
func stack(n int, target float64, spacers []float64, o Options) (said string, high float64) {
	said, high = fmt.Sprintf("%d x %s", n, o.Number(o.Thickness)), float64(float64(n)*o.Thickness)
	rest := target - high
	if list := setup.Stacks(spacers, geom.Interval{Max: rest + even}, rest, 1); rest > even && len(list) > 0 {
		for _, v := range list[0].Pieces {
			said += " + " + o.Number(v)
		}
		high += list[0].Height
	}
	return said + " = " + o.text(high), high
}

// Measures of the gauge, in mm.
const (
	gaugeWide, gaugeHigh = 110.0, 52.0
	hollow               = 1.5 // above the edge, beside the tooth, for what is left of a burr
	hollowWide           = 1.2 // little: at a board's end there is no more wood beside a dado than its fence distance
	throat               = 14.0
	goAt, noGoAt         = 26.0, gaugeWide - 26 // middles of the mouths
	mouthRoom            = 24.0                 // for words to each side of them
)

// Gauge makes a plate that checks dados and tongues. Stood over a dado on its edge, its
// tooth reaches just to the floor: where the edge rocks the dado is too shallow, where
// light shows under the tooth it is too deep. Tongues go into the one mouth and not into
// the other.
func Gauge(c Corner, o Options) Plate {
	p := Plate{Name: "gauge-" + c.Name, Title: "gauge for dados and tongues", Parts: []string{c.Name}, Count: 1,
		Notes: []string{fmt.Sprintf("Stand it over a dado: the tooth is %s long. Where its edge rocks the dado is shallower; where light shows under the tooth it is deeper.", o.text(c.Deep))}}
	if c.Depths[0] < c.Depths[1] {
		p.Notes[0] += fmt.Sprintf(" %s to %s is right: measure one that is off.", o.text(c.Depths[0]),
			o.text(c.Depths[1]))
	}
	tooth := min(max(3, c.Cutter-0.6), 12)
	low := c.Deep // the edge
	middle := gaugeWide / 2
	at := func(x, y float64) geom.Vertex { return geom.Vertex{Point: geom.Point{X: x, Y: y}} }
	beside := max(hollowWide, o.MinBridge+slotRoom)
	l := geom.Loop{at(0, low), at(middle-tooth/2-beside, low), at(middle-tooth/2-beside, low+hollow), at(middle-tooth/2, low+hollow), at(middle-tooth/2, 0),
		at(middle+tooth/2, 0), at(middle+tooth/2, low+hollow), at(middle+tooth/2+beside, low+hollow), at(middle+tooth/2+beside, low), at(gaugeWide, low), at(gaugeWide, low+gaugeHigh)}
	mouths := c.Tongue[0] > max(o.MinBridge, 1) && c.Tongue[1] > c.Tongue[0]
	if mouths {
		for _, m := range []struct{ at, wide float64 }{{noGoAt, c.Tongue[0]}, {goAt, c.Tongue[1]}} {
			l = append(l, at(m.at+m.wide/2, low+gaugeHigh), at(m.at+m.wide/2, low+gaugeHigh-throat), at(m.at-m.wide/2, low+gaugeHigh-throat), at(m.at-m.wide/2, low+gaugeHigh))
		}
	}
	p.Outline = append(l, at(0, low+gaugeHigh))
	w := p.writer()
	w.taken = append(w.taken, geom.Rect{Max: geom.Point{X: gaugeWide, Y: low + hollow}})
	if mouths {
		// Each mouth's words are in its own half.
		for _, m := range []struct {
			at, wide float64
			word     string
		}{{goAt, c.Tongue[1], "GO"}, {noGoAt, c.Tongue[0], "NO-GO"}} {
			half := &writer{within: geom.Rect{Min: geom.Point{X: m.at - mouthRoom, Y: low}, Max: geom.Point{X: m.at + mouthRoom, Y: low + gaugeHigh - throat}}}
			p.write(half, m.word, geom.Point{X: m.at, Y: low + gaugeHigh - throat - 6}, 0)
			p.write(half, o.text(m.wide), geom.Point{X: m.at, Y: low + gaugeHigh - throat - 16}, 0)
		}
		p.Notes = append(p.Notes, "A right tongue goes into the mouth GO and not into the mouth NO-GO.")
		w.taken = append(w.taken, geom.Rect{Min: geom.Point{Y: low + gaugeHigh - throat - 22}, Max: geom.Point{X: goAt + mouthRoom, Y: low + gaugeHigh}},
			geom.Rect{Min: geom.Point{X: noGoAt - mouthRoom, Y: low + gaugeHigh - throat - 22}, Max: geom.Point{X: gaugeWide, Y: low + gaugeHigh}})
	}
	p.write(w, "DEPTH "+o.text(c.Deep), geom.Point{X: middle, Y: low + 10}, 0)
	p.write(w, c.Name, geom.Point{X: middle, Y: low + gaugeHigh - throat/2}, 0)
	p.finish(w)
	return p
}
