package template

import (
	"fmt"

	"drawerwright/geom"
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
		Notes: []string{fmt.Sprintf("Stand it over a dado: the tooth is %s long. Where its edge rocks the dado is shallower; where light shows under the tooth it is deeper.", o.set(c.Deep))}}
	if c.Depths[0] < c.Depths[1] {
		p.Notes[0] += fmt.Sprintf(" %s to %s is right: measure one that is off.", o.set(c.Depths[0]),
			o.set(c.Depths[1]))
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
			p.write(half, o.set(m.wide), geom.Point{X: m.at, Y: low + gaugeHigh - throat - 16}, 0)
		}
		p.Notes = append(p.Notes, "A right tongue goes into the mouth GO and not into the mouth NO-GO.")
		w.taken = append(w.taken, geom.Rect{Min: geom.Point{Y: low + gaugeHigh - throat - 22}, Max: geom.Point{X: goAt + mouthRoom, Y: low + gaugeHigh}},
			geom.Rect{Min: geom.Point{X: noGoAt - mouthRoom, Y: low + gaugeHigh - throat - 22}, Max: geom.Point{X: gaugeWide, Y: low + gaugeHigh}})
	}
	p.paper = append([]string{"Paper alone checks nothing: paste it on a thin flat board, cut along the lines, and " +
		"measure the tooth before it is used."}, p.Notes...)
	p.write(w, "DEPTH "+o.set(c.Deep), geom.Point{X: middle, Y: low + 10}, 0)
	p.write(w, c.Name, geom.Point{X: middle, Y: low + gaugeHigh - throat/2}, 0)
	p.finish(w)
	return p
}
