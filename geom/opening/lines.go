package opening

import (
	"math"

	"drawerwright/geom"
)

// Holes in cabinet sides; common practice, no source.
const (
	holeDiameter = 5.0
	pilot        = 3.0 // for wood screws of 4 to 4.5 mm, or of No. 8
	HoleDepth    = 12.0
	endRoom      = 20.0 // mm of a slide behind its last hole
)

// HoleDiameter is that of the holes that a slide is screwed into, in mm.
func (s Slide) HoleDiameter() float64 {
	if s.Kind == Wooden {
		return pilot
	}
	return holeDiameter
}

// Spacer is a block that stands on the datum or on the slide below, and on which
// the next slide rests while it is screwed on.
type Spacer struct {
	Length float64
	Rows   []int // that need one, from 0 at the top
}

// lines finds where slides are screwed on, and the spacers under them.
func (p *planner) lines() {
	s := p.Slide
	if s.Height == 0 {
		return
	}
	if low := p.plan.Rows[len(p.plan.Rows)-1].Line - s.Height/2; low < -settle {
		d := p.found.Fail("slide-low", SettingSlide, "the lowest slide would reach %s below the opening",
			geom.Millimeters(-low))
		d.Subject.Item = len(p.plan.Rows) - 1
		d.Ask = geom.Sentencef("more room below the box, or a slide that is screwed on higher")
	}
	if high := p.plan.Rows[0].Line + s.Height/2 - p.plan.Opening.Height; high > settle {
		d := p.found.Fail("slide-high", SettingSlide, "the highest slide would reach %s above the opening",
			geom.Millimeters(high))
		d.Ask = geom.Sentencef("%s, or a slide that is not so high", p.moreRoom(0, high))
	}
	if holes := p.holes(); holes > 0 {
		p.plan.Holes = make([]geom.Point, 0, holes*len(p.plan.Rows))
	}
	below := 0.0
	for i := len(p.plan.Rows) - 1; i >= 0; i-- {
		line := p.plan.Rows[i].Line
		p.bore(line)
		switch length := line - s.Height/2 - below; {
		case length > settle:
			p.spacer(length, i)
		case length < -settle && below > 0:
			d := p.found.Fail("slide-overlap", SettingSlide,
				"the slide of row %d would overlap the one below it by %s", i+1, geom.Millimeters(-length))
			d.Subject.Item = i
			d.Ask = geom.Sentencef("higher rows, or a slide that is not so high")
		}
		below = line + s.Height/2
	}
}

// holes is how many holes one slide has.
func (p *planner) holes() int {
	s := p.Slide
	if s.Setback <= 0 || s.HolePitch <= 0 {
		return 0
	}
	n := max(0, 1+int(math.Floor((p.plan.SlideLength-endRoom-s.Setback+settle)/s.HolePitch)))
	if p.Opening.WebFrame == 0 {
		return n
	}
	_, end := p.frameEnds()
	return max(0, min(n, 1+int(math.Floor((end-p.Opening.WebFrame-endRoom-p.firstHole()+settle)/s.HolePitch))))
}

// firstHole is where the first hole of a slide is behind the cabinet's front edge: in a runner of a web frame, not
// in the rail before it.
func (p *planner) firstHole() float64 {
	first := p.Slide.Setback
	if p.Front != nil && p.Opening.Fronts == Inset {
		first += p.Front.Thickness.Mean
	}
	if rail := p.Opening.WebFrame; rail > 0 {
		from, _ := p.frameEnds()
		if short := from + rail + endRoom - first; short > 0 {
			first += float64(math.Ceil(short/p.Slide.HolePitch-settle) * p.Slide.HolePitch)
		}
	}
	return first
}

// bore adds the holes of one slide, or of a kicker, at a height over the datum.
func (p *planner) bore(height float64) {
	first := p.firstHole()
	for k := range p.holes() {
		p.plan.Holes = append(p.plan.Holes, geom.Point{X: first + float64(float64(k)*p.Slide.HolePitch), Y: height})
	}
}

func (p *planner) spacer(length float64, row int) {
	for i := range p.plan.Spacers {
		if math.Abs(p.plan.Spacers[i].Length-length) < sameSpacer {
			p.plan.Spacers[i].Rows = append(p.plan.Spacers[i].Rows, row)
			return
		}
	}
	p.plan.Spacers = append(p.plan.Spacers, Spacer{length, []int{row}})
}

// sameSpacer is what no saw tells apart, in mm.
const sameSpacer = 0.05
