package sheets

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// needs is what the cuts of a router take of the sheets of a stock, in mm.
type needs struct {
	reach float64 // of cuts and bits past their parts
	band  float64 // the widest that is cut about a part
	mixed bool    // parts are held in different ways, or cut out with different bits
	tabs  bool
}

// needsOf a router that cuts all parts of a stock.
func needsOf(groups []batch.Group) (n needs) {
	type way struct {
		kind heldBy
		band float64
	}
	ways := make(map[way]bool)
	for _, g := range groups {
		p := g.Parts[0]
		w := way{kindOf(p.Work), bandOf(p)}
		ways[w] = true
		n.reach, n.band = max(n.reach, p.Work.Reach), max(n.band, w.band)
		n.tabs = n.tabs || w.kind == byTabs
	}
	n.mixed = len(ways) > 1
	return n
}

// bandOf is how wide a band the bit that cuts a part out is drawn to take about it.
func bandOf(p batch.Part) float64 {
	for _, c := range p.Work.Cuts {
		if c.Operation == mill.Profile && c.Bit >= 0 {
			return p.Bits[c.Bit].Diameter + mill.SlotRoom
		}
	}
	return 0
}

// gap is the least between two parts: the bit that cuts one out leaves some wood before
// the next.
func (n needs) gap() float64 { return n.reach + mill.Between }

// drawn is how far past its part anything is drawn.
func (n needs) drawn() float64 { return max(n.reach, n.band) }

// apart is the gap at which no band meets another, with waste between that holds.
func (n needs) apart() float64 { return 2*n.band + mill.Between }

// least is the gap that the parts of a stock need. Where they are held in different ways
// each keeps its band: a slot would take the neighbour's skin away, and no line is cut by
// two bits.
func (n needs) least() float64 {
	if n.mixed {
		return max(n.gap(), n.apart())
	}
	return n.gap()
}

// usualTrim is what saws take off each edge of a sheet, in mm; common practice, no source.
const usualTrim = 5.0

// room gives a stock its gap and its trims, and judges those that are written.
func (s *Stock) room(b batch.Batch, groups []batch.Group) *Problem {
	rules, u := b.Sheets, b.Units
	if !s.Routed {
		s.Trim = geom.LengthOf(rules.Trim)
		if rules.Trim == 0 && !rules.NoTrim {
			s.Trim = geom.LengthOf(usualTrim)
		}
		kerf := rules.Kerf
		if kerf == 0 {
			kerf = max(usualKerf, b.Router.PartGap)
			for _, g := range groups {
				kerf = max(kerf, g.Parts[0].Work.Gap) // of those that a router finishes
			}
		}
		s.Rules.Kerf = int64(geom.LengthOf(kerf))
		return nil
	}
	s.needs = needsOf(groups)
	least := geom.LengthOf(s.needs.least()).RoundUp(u)
	why := fmt.Sprintf("bits and cuts reach %s past a part, and %s of wood have to stay before the next", geom.LengthOf(s.needs.reach).Text(u), geom.LengthOf(mill.Between).Text(u))
	if s.needs.mixed && s.needs.apart() >= s.needs.gap() {
		why = fmt.Sprintf("parts are held in different ways, or cut out with different bits, so that each needs its own %s and %s of wood between", geom.LengthOf(s.needs.band).Text(u), geom.LengthOf(mill.Between).Text(u))
	}
	said, key := rules.Kerf, "sheets.kerf"
	if said == 0 {
		said, key = b.Router.PartGap, "router.part-gap"
	}
	gap := least
	if s.GapSaid = said > 0; s.GapSaid {
		if gap = geom.LengthOf(said); gap < least {
			return s.problem("sheet-gap", key, fmt.Sprintf("parts lie %s apart: %s", gap.Text(u), why),
				fmt.Sprintf("write `%s: %s` or more, or leave it out", key[strings.IndexByte(key, '.')+1:], least.Text(u))).writes(least.Text(u))
		}
	}
	s.Rules.Kerf = int64(gap)
	short := max(rules.Of[s.Name].Short[0], rules.Of[s.Name].Short[1])
	rim := geom.LengthOf(s.needs.reach + mill.Between + short)
	s.Trim = wholeUp(rim, u)
	if rules.Trim > 0 || rules.NoTrim {
		if s.Trim = geom.LengthOf(rules.Trim); s.Trim < rim {
			rim = rim.RoundUp(u)
			return s.problem("sheet-trim", "sheets.trim", fmt.Sprintf("a trim of %s: bits and cuts reach %s past a part, sheets may be %s short, and a rim of %s has to stay",
				s.Trim.Text(u), geom.LengthOf(s.needs.reach).Text(u), geom.LengthOf(short).Text(u), geom.LengthOf(mill.Between).Text(u)),
				fmt.Sprintf("write `trim: %s` or more, or leave it out", rim.Text(u))).writes(rim.Text(u))
		}
	}
	return nil
}

// wholeUp rounds up to a whole millimetre or a 32nd of an inch, as a shop sets it.
func wholeUp(l geom.Length, u geom.Unit) geom.Length {
	grid := geom.LengthOf(1)
	if u == geom.Inch {
		grid = geom.LengthOf(geom.InchMM / 32)
	}
	return (l + grid - 1) / grid * grid
}

// ends are the trims at the ends and the long edges that a sheet's pins need too, beside
// those of its parts.
func (s *Stock) ends(b batch.Batch, groups []batch.Group) (ends, top geom.Length, fault *Problem) {
	ends, top = s.Trim, s.Trim
	if !s.Turned || !s.Routed {
		return ends, top, nil
	}
	if s.on = b.Sheets.TurnOn; s.on == job.TurnOnStops {
		return ends, top, nil
	}
	var parts []batch.Part
	for _, g := range groups {
		parts = append(parts, g.Parts...)
	}
	s.Pin = Pin{SheetPin: b.PinFor(s.Stock, parts)}
	deep, reach := geom.LengthOf(s.Stock.Thickness.Max+mill.PinDepth), geom.LengthOf(s.Pin.Bit.Reach)
	if s.Pin.Radius > 0 && reach > 0 && reach < deep {
		return ends, top, s.problem("sheet-pins", "sheets.turn-on",
			"no bit for its registration holes reaches "+deep.Text(b.Units)+
				", through the thickest sheet into the spoilboard",
			"give a bit with a reach of "+deep.RoundUp(b.Units).Text(b.Units)+
				" or more, or write `turn-on: stops` in the section sheets")
	}
	least := s.Pin.Radius + pinWeb
	if s.Pin.FromEdge = b.Sheets.Pins; s.Pin.FromEdge == 0 {
		s.Pin.FromEdge = least
	} else if s.Pin.FromEdge < least-pinNear {
		u := b.Units
		return ends, top, s.problem("sheet-pins", "sheets.pin-distance", fmt.Sprintf("pins %s from the end of the shortest sheet: holes of %s leave less than %s of wood before it",
			geom.LengthOf(s.Pin.FromEdge).Text(u), geom.LengthOf(2*s.Pin.Radius).Text(u), geom.LengthOf(pinWeb).Text(u)),
			fmt.Sprintf("write `pin-distance: %s` or more, or leave it out", geom.LengthOf(least).RoundUp(u).Text(u)))
	}
	s.Pin.Three = s.on == job.TurnOnThree
	beyond := s.Pin.Radius + pinWeb + s.needs.drawn() // from the pin's middle to the part
	ends = max(ends, geom.LengthOf(s.Short[0]+s.Pin.FromEdge+beyond))
	if s.Pin.Three {
		top = max(top, geom.LengthOf(s.Short[1]+s.Pin.FromEdge+beyond))
	}
	return ends, top, nil
}

// pinNear is within how much, in mm, a distance is that of a pin: sizes that are worked
// out in two ways.
const pinNear = 1e-6

// pins are the middles of a sheet's registration holes, in mm from its lower left corner:
// the same from both ends, so that each stands on a pin when the sheet has been turned
// over end for end. Two are at a third of the width, or near it where they are clear of
// the areas to keep out of, so that a sheet that was turned the wrong way lies visibly off.
func (s *Stock) pins(length, width float64) (list []geom.Point, ok bool) {
	if s.Pin.Radius == 0 {
		return nil, true
	}
	x := s.Short[0] + s.Pin.FromEdge
	room := s.Pin.Radius + pinWeb
	clear := func(q geom.Point) bool {
		for _, k := range s.blocked(length) {
			if q.X > k.Min.X-room && q.X < k.Max.X+room && q.Y > k.Min.Y-room && q.Y < k.Max.Y+room {
				return false
			}
		}
		return true
	}
	const step = 5.0 // mm
	for n := range int(width / step) {
		for _, sign := range []float64{1, -1} {
			y := width/3 + float64(sign*float64(n)*step)
			off := math.Abs(2*y - width) // how far off it lies when it is turned top to bottom
			a, b := geom.Point{X: x, Y: y}, geom.Point{X: length - x, Y: y}
			if y < room+s.Short[1] || y > width-room-s.Short[1] || off < 4*s.Pin.Radius || !clear(a) || !clear(b) {
				continue
			}
			list = []geom.Point{a, b}
			if s.Pin.Three {
				third := geom.Point{X: length / 2, Y: width - s.Short[1] - s.Pin.FromEdge}
				return append(list, third), clear(third)
			}
			return list, true
		}
	}
	return nil, false
}

// TurnedOn is what its sheets are put down on when they have been turned over: the word of
// the job file, empty where they are not turned, and the middles of the pins on the first
// of the sizes that are used.
func (s *Stock) TurnedOn() (on string, pins []geom.Point) {
	if s.on == "" || len(s.Laid) == 0 {
		return s.on, nil
	}
	z := s.Sheets[s.Laid[0].Sheet]
	pins, _ = s.pins(geom.Length(z.Length).MM(), geom.Length(z.Width).MM())
	return s.on, pins
}
