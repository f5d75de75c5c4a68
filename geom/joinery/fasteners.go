package joinery

import (
	"math"

	"drawerwright/geom"
)

// Two screws, dowels or tenons keep wood between their holes as wide as the thicker of them is thick; common
// practice, no source.

// fastener is a screw or dowel: its middle line from one end to the other, along an axis of the box, how
// thick it is and how wide its hole. Of a tenon it is the middle plane, from corner to corner.
type fastener struct {
	part        Role // that it goes into
	from, to    geom.Vec3
	thick, hole float64
}

// drive keeps a fastener, from a place in the box on, along a vector.
func (l *layout) drive(part Role, from, along geom.Vec3, thick, hole float64) {
	l.fasteners = append(l.fasteners, fastener{part, from, from.Add(along), thick, hole})
}

// woodBetween is that between the holes of two fasteners; below 0 they meet.
func (a fastener) woodBetween(b fastener) float64 {
	gap := func(a0, a1, b0, b1 float64) float64 {
		return max(0, min(b0, b1)-max(a0, a1), min(a0, a1)-max(b0, b1))
	}
	apart := geom.Vec3{X: gap(a.from.X, a.to.X, b.from.X, b.to.X), Y: gap(a.from.Y, a.to.Y, b.from.Y, b.to.Y),
		Z: gap(a.from.Z, a.to.Z, b.from.Z, b.to.Z)}
	return apart.Norm() - (a.hole+b.hole)/2
}

// checkApart judges whether all fasteners of the box keep their distance.
func (l *layout) checkApart() {
	var least, limit float64
	var at Role
	for i, a := range l.fasteners {
		for _, b := range l.fasteners[:i] {
			wood, needs := a.woodBetween(b), max(a.thick, b.thick)
			if wood-needs < least-limit-settle {
				least, limit, at = wood, needs, a.part
			}
		}
	}
	if limit == 0 {
		return
	}
	fact := geom.Sentencef("two fasteners in the %s leave %s of wood between them, at least %s is needed", at,
		geom.Millimeters(least), geom.Millimeters(limit))
	if least <= settle {
		fact = geom.Sentencef("two fasteners in the %s meet", at)
	}
	l.say(geom.Diagnosis{
		Code: "fasteners", Level: refused(least <= settle), Subject: about(SettingFasteners, at),
		Measured: geom.Millimeters(least), Limit: geom.Millimeters(limit),
		Fact: fact,
		Ask:  geom.Sentencef("make the box larger, or take another corner"),
		Remedies: []geom.Remedy{
			write(SettingFasteners, Screws), write(SettingFasteners, Dowels), write(SettingBottomFit, BottomGroovedIn),
			write(SettingJoint, Rabbet),
		},
	})
}

// cornerFastener is how thick a screw or dowel of a butt joint is and how wide its hole, in an end of a
// thickness; 0 for other joints.
func (l *layout) cornerFastener(t float64) (thick, hole float64) {
	switch l.Fastened() {
	case Screws:
		s := l.screw(cornerScrew)
		return s.thick, s.hole
	case Dowels:
		d := l.dowel(t)
		return d, d
	case Tenons:
		d := l.tenon(t)
		return d, d
	}
	return 0, 0
}

// inEnd is how deep the holes for those go into the ends of front and back: at most a quarter of their
// length, so that there is wood between those of both ends.
func (l *layout) inEnd() float64 {
	deep := l.sized(screwLength, 80)
	if l.Fasteners != Screws {
		deep = l.sized(dowelLength, 64)
	}
	return math.Min(deep, (l.Width-2*l.Ts)/4)
}

// overBottomScrews is how high a screw through the box front stands over the box's lower edge, at least, to be
// clear of screws that go up into the front; 0 for bottoms without those.
func (l *layout) overBottomScrews(s screw) float64 {
	if l.BottomFit != BottomApplied {
		return 0
	}
	up := l.screw(bottomScrew)
	return l.Tb + appliedLength + (up.hole+s.hole)/2 + max(up.thick, s.thick)
}

// besideCorners is how far from the inside faces of the sides a screw across front or back stands, at least,
// to be clear of the corners' screws or dowels; 0 for corners that have none.
func (l *layout) besideCorners(s screw) (least float64) {
	for _, t := range []float64{l.Tf, l.Tk} {
		if thick, hole := l.cornerFastener(t); thick > 0 {
			least = max(least, l.inEnd()+(hole+s.hole)/2+max(thick, s.thick))
		}
	}
	return least
}
