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
	Depth         float64    // by which depths may be off
	Tongue        [2]float64 // between which tongues may be; 0, 0 where there are none
}

// Size of a block, in mm, as it lies well in the hand.
const blockLong, blockWide = 90.0, 40.0

// Blocks are plates to set a fence or a cutter by: as many as go into the height, with
// what of the shop's spacers comes nearest to the rest.
func Blocks(c Corner, spacers []float64, o Options) []Plate {
	stack := func(what string, target float64) Plate {
		n := int(math.Floor(target/o.Thickness + 1e-9))
		rest := target - float64(float64(n)*o.Thickness)
		p := Plate{Name: "block-" + c.Name + "-" + what, Title: fmt.Sprintf("setup block: %s %s", what, o.text(target)), Parts: []string{c.Name}, Count: n, Outline: geom.Rectangle(0, 0, blockLong, blockWide)}
		said := fmt.Sprintf("%d x %s", n, o.Number(o.Thickness))
		with := ""
		sum := float64(float64(n) * o.Thickness)
		if s, ok := setup.Nearest(spacers, rest); ok && math.Abs(s.Height-rest) < rest {
			var pieces []string
			for _, v := range s.Pieces {
				pieces = append(pieces, o.Number(v))
			}
			with = strings.Join(pieces, " + ")
			sum += s.Height
		}
		if with != "" {
			said += " + " + with
		}
		off := target - sum
		switch {
		case math.Abs(off) < 0.005:
			said += " = " + o.Number(target)
		default:
			said += fmt.Sprintf(" = %s, %s short", o.Number(sum), o.Number(off))
			if off < 0 {
				said = strings.Replace(said, o.Number(off)+" short", o.Number(-off)+" over", 1)
			}
		}
		p.Notes = []string{fmt.Sprintf("For a %s of %s: %s, %s. Measure the stack before it is used; shims of paper make up what is short.", what, o.text(target), said, o.Unit)}
		w := p.writer()
		p.write(w, strings.ToUpper(what)+" "+o.text(target), geom.Point{X: blockLong / 2, Y: 28}, 0)
		p.write(w, said, geom.Point{X: blockLong / 2, Y: 18}, 0)
		p.write(w, o.Job, geom.Point{X: blockLong / 2, Y: 8}, 0)
		p.finish(w)
		return p
	}
	var list []Plate
	for _, b := range []Plate{stack("fence", c.Fence), stack("height", c.Height)} {
		if b.Count > 0 {
			list = append(list, b)
		}
	}
	if len(list) == 2 && math.Abs(c.Fence-c.Height) < 0.005 {
		list = list[:1]
		list[0].Title = fmt.Sprintf("setup block: fence and height %s", o.text(c.Fence))
	}
	return list
}

// Measures of the gauge, in mm.
const (
	gaugeWide, gaugeHigh = 110.0, 52.0
	footLong             = 24.0
	hollow               = 6.0 // above the feet's line, beside the tooth
	throat               = 14.0
)

// Gauge makes a plate that checks dados and tongues. Stood over a dado on its feet, its
// tooth reaches just to the floor: where the feet rock the dado is too shallow, where
// light shows under the tooth it is too deep. Tongues go into the one mouth and not into
// the other.
func Gauge(c Corner, o Options) Plate {
	p := Plate{Name: "gauge-" + c.Name, Title: "gauge for dados and tongues", Parts: []string{c.Name}, Count: 1,
		Notes: []string{fmt.Sprintf("Stand it over a dado: the tooth is %s long. Where the feet rock the dado is too shallow; where light shows under the tooth it is too deep. %s either way is right.", o.text(c.Height), o.text(c.Depth))}}
	tooth := min(max(3, c.Cutter-0.6), 12)
	low := c.Height // the feet's line
	middle := gaugeWide / 2
	at := func(x, y float64) geom.Vertex { return geom.Vertex{Point: geom.Point{X: x, Y: y}} }
	l := geom.Loop{at(0, low), at(footLong, low), at(footLong, low+hollow), at(middle-tooth/2, low+hollow), at(middle-tooth/2, 0), at(middle+tooth/2, 0), at(middle+tooth/2, low+hollow),
		at(gaugeWide-footLong, low+hollow), at(gaugeWide-footLong, low), at(gaugeWide, low), at(gaugeWide, low+gaugeHigh)}
	mouths := c.Tongue[0] > max(o.Least, 1) && c.Tongue[1] > c.Tongue[0]
	if mouths {
		for _, m := range []struct{ at, wide float64 }{{gaugeWide - 26, c.Tongue[0]}, {26, c.Tongue[1]}} {
			l = append(l, at(m.at+m.wide/2, low+gaugeHigh), at(m.at+m.wide/2, low+gaugeHigh-throat), at(m.at-m.wide/2, low+gaugeHigh-throat), at(m.at-m.wide/2, low+gaugeHigh))
		}
	}
	p.Outline = append(l, at(0, low+gaugeHigh))
	w := p.writer()
	w.taken = append(w.taken, geom.Rect{Min: geom.Point{X: 0, Y: 0}, Max: geom.Point{X: gaugeWide, Y: low + hollow}})
	if mouths {
		w.taken = append(w.taken, geom.Rect{Min: geom.Point{X: 0, Y: low + gaugeHigh - throat - 1}, Max: geom.Point{X: 50, Y: low + gaugeHigh}}, geom.Rect{Min: geom.Point{X: gaugeWide - 50, Y: low + gaugeHigh - throat - 1}, Max: geom.Point{X: gaugeWide, Y: low + gaugeHigh}})
		p.write(w, "GO "+o.text(c.Tongue[1]), geom.Point{X: 26, Y: low + gaugeHigh - throat - 5}, 0)
		p.write(w, "NO-GO "+o.text(c.Tongue[0]), geom.Point{X: gaugeWide - 26, Y: low + gaugeHigh - throat - 5}, 0)
		p.Notes = append(p.Notes, "A right tongue goes into the mouth GO and not into the mouth NO-GO.")
	}
	p.write(w, "DADO "+o.text(c.Height), geom.Point{X: middle, Y: low + hollow + 8}, 0)
	p.write(w, c.Name, geom.Point{X: middle, Y: low + gaugeHigh - throat/2}, 0)
	p.finish(w)
	return p
}
