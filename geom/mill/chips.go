package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// BitType says which way the edges of a bit carry chips, and so which face of a sheet
// they leave clean.
type BitType string

const (
	UpCut       BitType = "up-cut"      // chips go up: the lower face is clean
	DownCut     BitType = "down-cut"    // chips go down: the upper face is clean
	Compression BitType = "compression" // up-cut at the tip, down-cut above: both faces are clean, through the sheet
	Straight    BitType = "straight"
)

// BitTypes lists them as a job may name them.
var BitTypes = []BitType{UpCut, DownCut, Compression, Straight}

// Feeds of a bit, as the shop runs it. What is 0 was not said.
type Feeds struct {
	Type      BitType
	Tip       float64 // mm of a compression bit, from its tip, that cut upward
	Feed      float64 // mm a minute
	Plunge    float64 // mm a minute
	Speed     float64 // revolutions a minute
	PassDepth float64 // mm that one pass goes deep at most
}

// ChipLoad is how far a bit goes on for each of its edges, in mm: feed over speed and
// edges; 0 where one of them was not said.
func (b Bit) ChipLoad() float64 {
	if b.Feed <= 0 || b.Speed <= 0 || b.Flutes <= 0 {
		return 0
	}
	return b.Feed / (b.Speed * float64(b.Flutes))
}

// Passes are how many a bit takes to go so deep.
func (b Bit) Passes(depth float64) int {
	if b.PassDepth <= 0 {
		return 1
	}
	return max(1, int(math.Ceil(depth/b.PassDepth-touching)))
}

// stepOver is by which part of its diameter a bit is set over when it clears a pocket;
// common practice, no source. Estimates alone hang on it.
const stepOver = 0.5

// Minutes estimates how long a bit takes for a cut that is so deep: the way of its center
// at the feed, and a plunge for each pass. Ways between cuts, changes of bits and slowing
// in corners are not in it. It is 0 where the feed was not said.
func (c Cut) Minutes(b Bit, depth float64) float64 {
	if b.Feed <= 0 {
		return 0
	}
	plunge := b.Plunge
	if plunge <= 0 {
		plunge = b.Feed
	}
	return float64(float64(b.Passes(depth))*c.way(b.Diameter))/b.Feed + depth/plunge
}

// way is how far the middle of a bit goes in one pass.
func (c Cut) way(diameter float64) float64 {
	if n := len(c.Path); n > 0 {
		way := 0.0
		for i := range n - 1 {
			way += geom.Loop(c.Path).SideLength(i)
		}
		return way
	}
	around := c.Outline.Perimeter()
	if c.Operation == Profile {
		return around + float64(math.Pi*diameter) // outside the line, round its corners
	}
	if around == 0 || diameter <= 0 {
		return 0
	}
	// A pocket is cleared along its length: a long one is as wide as twice its area over
	// its outline, others are a little wider than that. One of the bit's own width is drawn
	// a hair wider and takes one way all the same.
	area := math.Abs(c.Outline.Area())
	wide := 2 * area / around
	times := 1 + math.Ceil(math.Max(0, wide-diameter-SlotRoom)/(stepOver*diameter)-touching)
	return float64(times*area) / math.Max(wide, diameter)
}

// frays warns of first passes that the up-cut tip of a compression bit makes by itself: the
// edge of the cut is lifted, and the face of a sheet frays.
func (p *preparation) frays() {
	said := make(map[int]bool)
	for _, c := range p.work.Cuts {
		if c.Bit < 0 || slices.Contains([]string{Registering, Slotting, EngravingOperation}, c.Operation) || said[c.Bit] {
			continue
		}
		b := p.Bits[c.Bit]
		deep := c.Depth + c.Overcut
		first := deep
		if b.PassDepth > 0 {
			first = math.Min(deep, b.PassDepth)
		}
		if b.Type != Compression || b.Tip <= 0 || first >= b.Tip-touching {
			continue
		}
		said[c.Bit] = true
		what := p.what(c.Pocket)
		if c.Operation == Profile {
			what = geom.Sentencef("the outline")
		}
		depth, down, tip := geom.Millimeters(deep), geom.Millimeters(first), geom.Millimeters(b.Tip)
		if first < deep {
			d := p.found.Warn("bit-frays", SettingBits,
				"the first pass of %s, %s deep, goes down %s, and the tip of %s "+
					"cuts upward for %s: the edge of the cut frays", what, depth, down, named{b}, tip)
			d.Measured, d.Limit = down, tip
			d.Ask = geom.Sentencef("let the first pass go %s deep or more, if bit and machine take it; or take "+
				"a down-cut or a straight bit, or a compression bit with a shorter tip", geom.AtLeast(b.Tip))
			continue
		}
		d := p.found.Warn("bit-frays", SettingBits, "%s is %s deep, and the tip of %s cuts upward for %s: "+
			"the edge of the cut frays", what, depth, named{b}, tip)
		d.Measured, d.Limit = depth, tip
		d.Ask = geom.Sentencef("take a down-cut or a straight bit for what is shallow, " +
			"or a compression bit with a shorter tip")
	}
}
