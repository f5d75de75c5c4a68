package template

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// blockLong and blockWide are the size of a block, in mm, that lies well in the hand.
const blockLong, blockWide = 90.0, 40.0

// mostFeeler is what feeler gauges make up; common practice, no source.
const mostFeeler geom.Length = 1_000_000 // 1 mm

// Blocks are plates to set a fence or a cutter by: of plates and of the shop's spacers what comes
// nearest without being higher, and what a feeler gauge adds, so that all that is printed adds up
// to what the setting is printed as. There is none where one plate is thicker than what is to be set.
func Blocks(c Corner, spacers []float64, o Options) (list []Plate) {
	b := blocks{c.Name, spacers, o}
	add := func(what, name string, target float64) {
		if p, ok := b.block(what, name, target); ok {
			list = append(list, p)
		}
	}
	if o.printed(c.Fence) == o.printed(c.Height) {
		add("fence and height", "fence", c.Fence)
	} else {
		add("fence", "fence", c.Fence)
		add("height", "height", c.Height)
	}
	if c.Deep > 0 && o.printed(c.Deep) != o.printed(c.Height) { // with room for glue
		add("height for the dados", "dado-height", c.Deep)
	}
	return list
}

// blocks makes the blocks of one corner.
type blocks struct {
	corner  string
	spacers []float64
	Options
}

// stack is what a block is: plates with spacers, in words, and how high they are.
type stack struct {
	plates int
	said   string
	high   geom.Length
}

// block is one; ok is false where a plate is thicker than it is to be.
func (b blocks) block(what, name string, target float64) (p Plate, ok bool) {
	var best stack
	setting := b.printed(target)
	plate, _ := b.fine(b.Thickness)
	for n := 1; plate > 0; n++ {
		s := b.stack(n, setting)
		if s.high > setting {
			break
		}
		if s.high > best.high {
			best = s
		}
	}
	if best.plates == 0 {
		return Plate{}, false
	}
	short, feeler := setting-best.high, ""
	if short > 0 {
		feeler = "plus feeler " + b.set(short.MM())
	}
	p = Plate{Name: "block-" + b.corner + "-" + name, Title: fmt.Sprintf("setup block: %s %s", what, b.set(target)),
		Parts: []string{b.corner}, Count: best.plates, Outline: geom.Rectangle(0, 0, blockLong, blockWide)}
	p.Notes = []string{fmt.Sprintf("For a %s of %s: %s. Measure the stack before it is used.", what, b.set(target),
		strings.TrimSuffix(best.said+", "+feeler, ", "))}
	if short > mostFeeler {
		p.Notes[0] += " That is much for feelers: add spacers to the job, or plates of another thickness."
	}
	w := p.writer()
	p.write(w, strings.ToUpper("for "+what+" "+b.set(target)), geom.Point{X: blockLong / 2, Y: 30}, 0)
	p.write(w, best.said, geom.Point{X: blockLong / 2, Y: 22}, 0)
	p.write(w, feeler, geom.Point{X: blockLong / 2, Y: 14}, 0)
	p.write(w, b.Job, geom.Point{X: blockLong / 2, Y: 6}, 0)
	p.finish(w)
	return p, true
}

// stack is so many plates with the spacers that come nearest to a setting and are no higher.
func (b blocks) stack(n int, setting geom.Length) stack {
	plate, said := b.fine(b.Thickness)
	s := stack{plates: n, said: fmt.Sprintf("%d x %s", n, said), high: geom.Length(n) * plate}
	rest := (setting - s.high).MM()
	if list := setup.Stacks(b.spacers, geom.Interval{Max: rest}, rest, 1); len(list) > 0 {
		for _, v := range list[0].Pieces {
			spacer, said := b.fine(v)
			s.said, s.high = s.said+" + "+said, s.high+spacer
		}
	}
	s.high = b.printed(s.high.MM())
	s.said += " = " + b.set(s.high.MM())
	return s
}

// printed is a length as a setting is printed, to 0.01 mm or 0.001 in.
func (o Options) printed(mm float64) geom.Length {
	l, _ := geom.ParseLength(geom.LengthOf(mm).AsSet(o.Unit), o.Unit) // what AsSet prints is a length
	return l
}

// fine is the height of a plate or a spacer to a tenth of what settings are printed to, so that the sum of many is
// right, and as it is printed.
func (o Options) fine(mm float64) (l geom.Length, said string) {
	unit, decimals := geom.LengthOf(o.Unit.MM()), 3
	if o.Unit == geom.Inch {
		decimals = 4
	}
	step := unit / geom.Length(math.Pow10(decimals))
	l = (geom.LengthOf(mm) + step/2) / step * step
	if l == o.printed(l.MM()) {
		return l, l.AsSet(o.Unit)
	}
	return l, strconv.FormatFloat(float64(l)/float64(unit), 'f', decimals, 64)
}
