package testcut

import (
	"math"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Remedy is what can be done with parts that are already cut.
type Remedy string

// Remedies. Each is by an amount in mm.
const (
	// Keep: the parts are within the limits.
	Keep Remedy = "keep"
	// PlaneFront: the front stands proud; its outside face is planed or sanded.
	PlaneFront Remedy = "plane-front"
	// DeepenRabbet: the rabbets are cut deeper, the fence closer to the cutter; the
	// tongue gets thinner by as much.
	DeepenRabbet Remedy = "deepen-rabbet"
	// TrimSides: the ends of the sides are cut back; the box is less deep.
	TrimSides Remedy = "trim-sides"
	// WidenDado: a second pass with the fence further away by as much.
	WidenDado Remedy = "widen-dado"
	// ShimDado: a strip as thick as that against the inner wall of the dado.
	ShimDado Remedy = "shim-dado"
	// ShortenFront: as much off each end, then the rabbets again at their length.
	ShortenFront Remedy = "shorten-front"
	// NewFront: fronts of that length.
	NewFront Remedy = "new-front"
	// ShimSlides: as much behind each slide.
	ShimSlides Remedy = "shim-slides"
	// DeepenDado: the dados cut deeper by as much.
	DeepenDado Remedy = "deepen-dado"
	// TrimTongue: as much off the end of each tongue; the box gets narrower by both.
	TrimTongue Remedy = "trim-tongue"
)

// Salvage is a way to save parts that are cut: what for, what to do, by how much, and
// the measure that results.
type Salvage struct {
	Code   joinery.CheckCode // of the measure, as in [Predicted]
	Remedy Remedy
	By     float64
	// Then is the measure after it; Other, with its code, one that changes along with it.
	Then      float64
	OtherCode joinery.CheckCode
	Other     float64
}

// saves says what can be done with the parts of the test cut. The measures are those
// that are likely.
func (c Model) saves(e Estimate) (list []Salvage) {
	if !c.joined {
		return nil
	}
	l := c.spec.Limits
	ms := c.measures(e.u)
	recess, play, width, gap := ms[inRecess].at(e.u), ms[inPlay].at(e.u), ms[inWidth].at(e.u), ms[inGap].at(e.u)
	slip := (l.TongueClearance.Min + l.TongueClearance.Max) / 2

	// The tongue first, since mending it moves the front.
	switch {
	case play < l.TongueClearance.Min:
		by := slip - play
		if math.Abs(recess-by) <= l.Flush && c.is.tongue.at(e.u)-by >= joinery.MinHolding {
			list = append(list, Salvage{Code: joinery.CheckTongueClearance, Remedy: DeepenRabbet, By: by, Then: slip, OtherCode: joinery.CheckRecess, Other: recess - by})
			recess -= by
		} else {
			list = append(list, Salvage{Code: joinery.CheckTongueClearance, Remedy: WidenDado, By: by, Then: slip, OtherCode: joinery.CheckRecess, Other: recess})
		}
		play = slip
	case play > l.TongueClearance.Max:
		list = append(list, Salvage{Code: joinery.CheckTongueClearance, Remedy: ShimDado, By: play - slip, Then: slip, OtherCode: joinery.CheckRecess, Other: recess})
		play = slip
	}
	switch {
	case recess < -l.Flush:
		list = append(list, Salvage{Code: joinery.CheckRecess, Remedy: PlaneFront, By: -recess})
	case recess > l.Flush && play+recess <= l.TongueClearance.Max:
		list = append(list, Salvage{Code: joinery.CheckRecess, Remedy: DeepenRabbet, By: recess, OtherCode: joinery.CheckTongueClearance, Other: play + recess})
	case recess > l.Flush:
		list = append(list, Salvage{Code: joinery.CheckRecess, Remedy: TrimSides, By: recess})
	}
	size := ms[inWidth]
	if c.inside {
		size = ms[inInside]
	}
	code, is, meant := size.check.Code, size.at(e.u), c.meantSize()
	switch wide := is - meant; {
	case is > size.check.UpperLimit:
		list = append(list, Salvage{Code: code, Remedy: ShortenFront, By: wide / 2, Then: meant})
		if deep := c.is.depth.at(e.u) + wide/2; deep <= maxDeep*c.is.side.at(e.u) {
			list = append(list, Salvage{Code: code, Remedy: DeepenDado, By: wide / 2, Then: meant})
		}
	case is < size.check.LowerLimit:
		list = append(list, Salvage{Code: code, Remedy: NewFront, By: c.is.length.at(e.u) - wide, Then: meant})
		if !c.inside { // slides under the box hold it from within
			list = append(list, Salvage{Code: code, Remedy: ShimSlides, By: -wide / 2, Then: is})
		}
	}
	if gap > ms[inGap].check.UpperLimit {
		list = append(list, Salvage{Code: fit.ShoulderGap, Remedy: TrimTongue, By: gap + c.spec.GlueSpace, OtherCode: joinery.CheckOutsideWidth, Other: width - 2*gap})
	}
	if len(list) == 0 {
		list = append(list, Salvage{Remedy: Keep})
	}
	return list
}

// maxDeep is the part of a side's thickness that a dado may take when it is cut deeper to
// save parts; common practice, no source.
const maxDeep = 2.0 / 3

// FrontLengthFor is how long fronts have to be cut for the width as drawn, with the sides
// and the cuts as they are known; of parts not yet cut.
func (c Model) FrontLengthFor(e Estimate) float64 {
	size := c.is.width.near(e.u)
	if c.inside {
		size = c.is.inside.near(e.u)
	}
	return c.is.length.at(e.u) + c.meantSize() - size.at(e.u)
}

// meantSize is the width as drawn: inside, where the slide goes by it, else outside.
func (c Model) meantSize() float64 {
	if c.inside {
		return c.drawer.Inside.Width
	}
	return c.spec.Width
}

// Unmoved is the setting as it really is, for parts that are cut with nothing moved.
func (c Model) Unmoved(e Estimate) joinery.Setup {
	s := c.drawer.Setup
	s.FenceDistance, s.CutterHeight = c.is.edge.at(e.u), c.drawer.Setup.CutterHeight+e.u[ofHeight]
	s.Cutter.Width += e.u[ofCutter]
	if c.own {
		s.DadoHeight = c.is.depth.at(e.u)
	}
	return s
}
