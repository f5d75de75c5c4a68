package joinery

import (
	"math"

	"drawerwright/geom"
)

// Loose tenons of a butt joint, in millimeters; common practice, no source.
const (
	tenonShare = 0.45 // of the end's thickness that a tenon is thick at most: cheeks of a quarter and more stay
	tenonTimes = 4.0  // how many times it is as wide as thick
	tenonLeast = 2.0  // and how many times at least, where the end is low
	tenonEdge  = 10.0 // from the edges of the side, from the groove, and from one to the next at least
	tenonGlue  = 0.1  // by which a mortise is wider and longer where it is cut from a drawing: a film of glue
	// tenonAlign is how much longer than the tenon the mortises in the ends over the lowest are: the
	// lowest sets the height, the others leave room to bring the edges level.
	tenonAlign = 2.0
)

// tenon is how thick a loose tenon is for an end of a thickness and the height that there is; 0 for none.
func (l *layout) tenon(t float64) float64 {
	from, to := l.tenonBand()
	return l.sold(metricTenons, inchTenons, math.Min(t*tenonShare, (to-from)/tenonLeast))
}

// tenonBand is between which heights over the lower edge tenons stand.
func (l *layout) tenonBand() (from, to float64) {
	return l.lowest(tenonEdge), l.wallHeight() - tenonEdge
}

// tenonWidth is how wide it is, in whole steps of what is sawn: no wider than there is room.
func (l *layout) tenonWidth(t float64) float64 {
	from, to := l.tenonBand()
	step := l.sized(1, 4)
	return step * math.Floor(math.Min(tenonTimes*l.tenon(t), to-from)/step+settle)
}

// tenonHeights are those of their middles: as far apart as screws are, besides their width.
func (l *layout) tenonHeights(t float64) []float64 {
	from, to := l.tenonBand()
	wide := l.tenonWidth(t)
	from, to = from+wide/2, to-wide/2
	if to-from < wide+tenonEdge {
		return []float64{(from + to) / 2}
	}
	return evenly(from, to, wide+holesApart)
}

// mortises are how long those in an end are, from the lowest up.
func (l *layout) mortises(t float64, count int) []float64 {
	list := make([]float64, count)
	for i := range list {
		if list[i] = l.tenonWidth(t); i > 0 {
			list[i] += l.sized(tenonAlign, 6)
		}
	}
	return list
}

// mortise is the outline of one in a side, its round ends up and down: as wide as the bit that
// makes it, and a little wider where that follows a drawing.
func (l *layout) mortise(at geom.Point, thick, wide float64) geom.Loop {
	if l.Cutter.Kind.FollowsDrawing() {
		thick, wide = thick+tenonGlue, wide+tenonGlue
	}
	return geom.RoundedRectangle(at.X-thick/2, at.Y-wide/2, at.X+thick/2, at.Y+wide/2, thick/2)
}

// checkTenon judges whether an end takes tenons.
func (l *layout) checkTenon(r Role) {
	stock, field := l.stockOf(r)
	t := stock.Thickness.Mean
	thin := l.sized(metricTenons[0], inchTenons[0])
	if least := thin / tenonShare; t < least-settle {
		l.fail(geom.Diagnosis{
			Code: "tenon-thickness", Subject: about(field, r),
			Measured: geom.Millimeters(t), Limit: geom.Millimeters(least),
			Fact: geom.Sentencef("the %s is %s thick: no tenon of %s or more leaves cheeks beside its mortise", r,
				geom.Millimeters(t), geom.Millimeters(thin)),
			Ask:      geom.Sentencef("take a thicker board, or screws"),
			Remedies: []geom.Remedy{l.least(field, least), write(SettingFasteners, Screws)},
		})
		return
	}
	from, to := l.tenonBand()
	if least := tenonLeast * thin; to-from < least-settle {
		needs := l.wallHeight() + least - (to - from)
		l.fail(geom.Diagnosis{
			Code: "tenon-height", Subject: about(SettingOutside, Side),
			Measured: geom.Millimeters(l.wallHeight()), Limit: geom.Millimeters(needs),
			Fact: geom.Sentencef("sides of %s have no room for a tenon %s wide, with %s of wood below and above it",
				geom.Millimeters(l.wallHeight()), geom.Millimeters(least), geom.Millimeters(tenonEdge)),
			Ask: geom.Sentencef("make the box higher, or take screws"),
			Remedies: []geom.Remedy{l.least(SettingOutside, needs+l.wallStand()).Of("height", 0),
				write(SettingFasteners, Screws)},
		})
	}
}
