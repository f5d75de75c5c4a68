package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Tabs hold a panel in its sheet while it is cut out. A Width of 0 is no tabs. Marked
// ones are only shown, for a program that makes its own: the outline goes right through.
type Tabs struct {
	Width, Height, Spacing float64
	Marked                 bool
}

// Usual measures of tabs, in mm, round in the unit of a job; common practice, no source.

// UsualTabWidth is how much of the edge a tab holds.
func UsualTabWidth(u geom.Unit) float64 { return u.Usual(6, 1.0/4) }

// UsualTabHeight is how thick it is.
func UsualTabHeight(u geom.Unit) float64 { return u.Usual(1.5, 1.0/16) }

// UsualTabApart is from one tab to the next.
func UsualTabApart(u geom.Unit) float64 { return u.Usual(200, 8) }

// minAboveTab is the least depth, in millimeters, of the cut above a tab: less is
// within what boards and machines differ by; common practice, no source.
const minAboveTab = 0.5

// minTab is the least height, in millimeters, of a tab in the thinnest board; common
// practice, no source.
const minTab = 0.5

// tabsSuit judges the height of tabs against the boards: some wood above them in the
// thinnest, and enough of the tabs themselves where the depth is from the top.
func (p *preparation) tabsSuit() bool {
	if most := p.part.MinThickness - minAboveTab; p.Tabs.Height > most+geom.Settle {
		high := geom.Millimeters(p.Tabs.Height)
		d := p.found.Fail("tabs", SettingTabs, "tabs of %s are too high for a panel of %s, %s at the thinnest",
			high, geom.Millimeters(p.part.Thickness), geom.Millimeters(p.part.MinThickness))
		d.Measured, d.Limit = high, geom.AtMost(most)
		d.Remedies = []geom.Remedy{p.most(SettingTabs, KeyHeight, most)}
		return false
	}
	thinner := 0.0 // than the board for which the depth is drawn
	if !p.FromSpoilboard {
		thinner = p.part.Thickness - p.part.MinThickness
	}
	if least := minTab + thinner; p.Tabs.Height < least-geom.Settle {
		high := geom.Millimeters(p.Tabs.Height)
		d := p.found.Fail("tabs", SettingTabs,
			"tabs of %s are %s in the thinnest board, %s instead of %s: they hold nothing", high,
			geom.Millimeters(math.Max(0, p.Tabs.Height-thinner)), geom.Millimeters(p.part.MinThickness), geom.Millimeters(p.part.Thickness))
		d.Measured, d.Limit, d.Ask = high, geom.AtLeast(least), fromSpoilboard
		d.Remedies = []geom.Remedy{p.least(SettingTabs, KeyHeight, least)}
		return false
	}
	return true
}

// tabs lays tabs along the sides that nothing bears on, clear of where pockets
// leave the panel, and gives the slots between them, which go right through; or, where
// they are only marked, what they cover of the slot beside the outline.
func (p *preparation) tabs(profile Cut) ([]geom.Loop, bool) {
	l := p.part.Outline
	if !p.Tabs.Marked && !p.tabsSuit() {
		return nil, false
	}
	width := p.Bits[profile.Bit].Diameter + SlotRoom
	var places []float64 // of tabs' middles, along the whole outline as drawn
	for i, v := range l {
		length := v.To(l.Next(i).Point)
		if !v.Marks.Has(geom.Mating) && p.outermost(i) {
			for _, at := range p.tabsOn(i, length, width) {
				places = append(places, place(profile.Outline, v.Lerp(l.Next(i).Point, at/length)))
			}
		}
	}
	slices.Sort(places)
	if len(places) < 2 {
		if p.OnionSkin > 0 { // which holds it instead
			return nil, false
		}
		d := p.found.Warn("tabs", SettingTabs,
			"there is no room for two tabs of %s on the sides that no part bears on, and fewer do not hold it",
			geom.Millimeters(p.Tabs.Width))
		d.Remedies, d.Ask = p.withOnionSkin(), geom.Sentencef("hold it down otherwise")
		d.Remedies[0].Result = geom.Sentencef("it holds what tabs cannot")
		return nil, false
	}
	p.work.Sides = p.sides(width)
	half := p.Tabs.Width / 2
	var list []geom.Loop
	for i, at := range places {
		if p.Tabs.Marked {
			list = append(list, alongside(profile.Outline, at-half, at+half, width))
			continue
		}
		to := places[(i+1)%len(places)] - half
		if i == len(places)-1 {
			to += profile.Outline.Perimeter()
		}
		list = append(list, alongside(profile.Outline, at+half, to, width))
	}
	return list, true
}

// tabsOn places tabs on one side: evenly, each moved to where there is room.
func (p *preparation) tabsOn(side int, length, slot float64) []float64 {
	// The slots at both sides of a tab, and round the corner, need their width.
	room := p.Tabs.Width/2 + 2*slot
	free := p.clear(side, length, room)
	n := int(math.Max(1, math.Round(length/p.Tabs.Spacing)))
	var list []float64
	for i := range n {
		want := length * (float64(i) + 0.5) / float64(n)
		at, found := nearestIn(free, want)
		if found {
			list = append(list, at)
			free = geom.Subtract(free, geom.Interval{Min: at, Max: at}.Grow(room).Grow(p.Tabs.Width/2))
		}
	}
	slices.Sort(list)
	return list
}

// clear are the stretches of a side that keep a distance from its ends and from the
// mouths of pockets.
func (p *preparation) clear(side int, length, room float64) []geom.Interval {
	free := []geom.Interval{{Min: room, Max: length - room}}
	for _, k := range p.part.Pockets {
		for j, open := range openSides(k.Outline, p.part.Outline) {
			if !open {
				continue
			}
			a, one := p.on(side, k.Outline[j].Point)
			b, other := p.on(side, k.Outline.Next(j).Point)
			if one && other {
				free = geom.Subtract(free, geom.Interval{Min: a - room, Max: b + room})
			}
		}
	}
	return free
}

// on is how far along a side of the outline a point lies, and whether it lies on it.
func (p *preparation) on(side int, q geom.Point) (along float64, ok bool) {
	along, left := geom.Beside(q, p.part.Outline[side].Point, p.part.Outline.Next(side).Point)
	return along, math.Abs(left) < touching
}

func nearestIn(free []geom.Interval, want float64) (at float64, found bool) {
	best := math.Inf(1)
	for _, f := range free {
		if f.Len() < 0 {
			continue
		}
		if c := f.Clamp(want); math.Abs(c-want) < best {
			at, best, found = c, math.Abs(c-want), true
		}
	}
	return at, found
}
