package opening

import "drawerwright/geom"

// A web frame carries the box in place of two single runners: a front and a back rail from side to side of the
// cabinet, and the runners between them. One groove along the inner edges of all four takes the runners' stub
// tenons and, where there is one, a dust panel.
const (
	FrontRail StripPart = "front rail"
	BackRail  StripPart = "back rail"
	DustPanel StripPart = "dust panel" // its length is from side to side
)

// Settings of an [Opening] for its web frames.
const (
	SettingWebFrame  geom.Setting = "web-frame"
	SettingDustPanel geom.Setting = "dust-panel"
)

// Across reports whether one piece of it reaches from side to side, where other strips are pairs.
func (s Strip) Across() bool { return s.Part == FrontRail || s.Part == BackRail || s.Part == DustPanel }

// Pieces is how many of a strip a drawer takes.
func (s Strip) Pieces() int {
	if s.Across() {
		return 1
	}
	return 2
}

// Sizes of web frames; common practice, no source.

// FrameTenon is how long the stub tenons of a web frame are, and how deep its groove.
func FrameTenon(u geom.Unit) float64 { return u.Usual(10, 3.0/8) }

func panelPlay(u geom.Unit) float64  { return u.Usual(2, 1.0/16) } // of a dust panel, in all
func leastCheek(u geom.Unit) float64 { return u.Usual(4, 3.0/16) } // of wood over and under the groove
func leastOpen(u geom.Unit) float64  { return u.Usual(60, 2.0) }   // between the rails

// FrameGroove is how wide the groove of a web frame is, by how thick its dust panel and its rails are: as wide as
// the panel or, without one, a third of the rails.
func FrameGroove(panel, rail float64) float64 {
	if panel > 0 {
		return panel
	}
	return rail / 3
}

// frameEnds is where web frames begin and end behind the cabinet's front edge: behind inset fronts and a face frame,
// and as far as the boxes go.
func (p *planner) frameEnds() (from, to float64) {
	from = p.inFront()
	to = from + p.plan.SlideLength
	if p.Opening.FaceFrame {
		from = max(from, UsualFrame(p.Unit))
	}
	return from, to
}

// webFrame adds the parts of a row's frame, over a height; its runners are so wide.
func (p *planner) webFrame(row int, foot, wide float64) {
	s, u := p.Slide, p.Unit
	out, rail, thick := p.plan.Packing, p.Opening.WebFrame, s.Height-s.WearStrip
	width := p.plan.Opening.Width + 2*out
	from, end := p.frameEnds()
	between, tenons := end-from-2*rail, 2*FrameTenon(u)
	one := Strip{Row: row, Length: width, Width: rail, High: thick, Out: out, From: from, Bottom: foot}
	front, back, runner, panel := one, one, one, one
	front.Part, back.Part, runner.Part, panel.Part = FrontRail, BackRail, Runner, DustPanel
	back.From = end - rail
	runner.Length, runner.Width, runner.From = between+tenons, wide, from+rail-tenons/2
	p.plan.Strips = append(p.plan.Strips, front, back, runner)
	if t := p.Opening.DustPanel; t > 0 {
		panel.Length, panel.Width = width-2*wide+tenons-panelPlay(u), between+tenons-panelPlay(u)
		panel.High, panel.Bottom = t, foot+(thick-t)/2
		panel.Out, panel.From = (panel.Length-p.plan.Opening.Width)/2, from+rail-(tenons-panelPlay(u))/2
		p.plan.Strips = append(p.plan.Strips, panel)
	}
}

// frames judges whether web frames can be made.
func (p *planner) frames() {
	s, u, rail := p.Slide, p.Unit, p.Opening.WebFrame
	if rail == 0 {
		return
	}
	if s.Kind != Wooden {
		d := p.found.Fail("web-frame", SettingWebFrame, "a web frame carries boxes on wooden runners, and the slide "+
			"is %s", s.Name)
		d.Ask = geom.Sentencef("write `slide: %s` for the drawers, or leave web-frame out", Wooden)
		return
	}
	thick := s.Height - s.WearStrip
	if cheek, need := (thick-FrameGroove(p.Opening.DustPanel, thick))/2, leastCheek(u); cheek < need-settle {
		d := p.found.Fail("web-frame", SettingWebFrame, "in frames %s thick a groove leaves %s of wood over and under "+
			"it, at least %s is needed", geom.Millimeters(thick), geom.Millimeters(max(0, cheek)),
			geom.Millimeters(need))
		d.Measured, d.Limit = geom.Millimeters(cheek), geom.AtLeast(need)
		d.Ask = geom.Sentencef("write `height:` of %s or more for the slide, or take a thinner dust panel",
			geom.AtLeast(s.Height+2*(need-cheek)))
		return
	}
	from, end := p.frameEnds()
	open := end - from - 2*rail
	if need := leastOpen(u); open < need-settle {
		d := p.found.Fail("web-frame", SettingWebFrame, "rails of %s leave %s between them in frames for boxes %s "+
			"deep, at least %s is needed", geom.Millimeters(rail), geom.Millimeters(max(0, open)),
			geom.Millimeters(p.plan.SlideLength), geom.Millimeters(need))
		d.Measured, d.Limit = geom.Millimeters(open), geom.AtLeast(need)
		d.Ask = geom.Sentencef("write `web-frame:` of %s or less", geom.AtMost(max(0, rail-(need-open)/2)))
	}
}
