package joinery

import (
	"math"

	"drawerwright/geom"
)

// FieldUndermount is the entry of a [geom.Diagnosis] about slides under the box.
const FieldUndermount geom.Setting = "slide"

// Slides under a box, in millimeters; common practice, no source.
const (
	recessRoom  = 0.3 // by which a bottom may stand lower than the slide's sheet has it
	notchRadius = 4.0 // of a notch's inner corners, or the bit's radius and a little if that is more
)

// undermount judges the box by what slides under it ask for, and cuts the back.
func (l *layout) undermount() {
	u := l.Undermount
	if u == nil {
		return
	}
	l.checkBesideSlides(u)
	if stand := l.bottomStand(); stand < u.BottomRecess-recessRoom {
		l.fail(geom.Diagnosis{
			Code: "recess-under", Subject: about(FieldUndermount, Bottom),
			Measured: geom.Millimeters(stand), Limit: geom.Millimeters(u.BottomRecess),
			Fact: geom.Sentencef("the slides need %s under the bottom, and it stands %s over the lower edges", geom.Millimeters(u.BottomRecess), geom.Millimeters(stand)),
			Ask:  geom.Sentencef("take another slide, or a bottom in a groove"),
			Remedies: []geom.Remedy{
				l.least(SettingBottomHeight, u.BottomRecess+l.below()),
				write(SettingBottomFit, BottomGroovedIn),
				l.least(SettingBottomHeight, u.BottomRecess).With(write(SettingBottomFit, BottomGroovedIn)),
			},
		})
		return
	}
	back := l.wall(Back)
	low := back.Placements[0].Origin.Z
	inner := []float64{back.along(geom.Vec3{X: l.Ts}), back.along(geom.Vec3{X: l.Width - l.Ts})}
	if u.NotchWidth > 0 && u.NotchHeight > low && !l.notches(back, inner) {
		return
	}
	l.hooks(back, inner)
}

// checkBesideSlides judges whether the sides go beside the slides.
func (l *layout) checkBesideSlides(u *Undermount) {
	if t := l.Sides.Thickness; u.MaxSide > 0 && t.Max > u.MaxSide+settle {
		l.refuse(geom.Diagnosis{
			Code: "side-thickness", Subject: about(SettingSides, Side),
			Measured: geom.Millimeters(t.Max), Limit: geom.Millimeters(u.MaxSide),
			Fact:     geom.Sentencef("sides of %s, %s at the thickest, do not go beside these slides, which take %s", geom.Millimeters(t.Mean), geom.Millimeters(t.Max), geom.Millimeters(u.MaxSide)),
			Ask:      geom.Sentencef("take another slide"),
			Remedies: []geom.Remedy{l.most(SettingSides, u.MaxSide-(t.Max-t.Mean))},
		}, true)
	}
}

// notches cuts them into the lower edge of the back, and reports whether they can be.
func (l *layout) notches(back *Part, inner []float64) bool {
	u, low := l.Undermount, back.Placements[0].Origin.Z
	if 2*u.NotchWidth > inner[1]-inner[0]-minClear {
		l.fail(geom.Diagnosis{
			Code: "notch", Subject: about(FieldUndermount, Back),
			Measured: geom.Millimeters(2 * u.NotchWidth), Limit: geom.Millimeters(inner[1] - inner[0] - minClear),
			Fact: geom.Sentencef("two notches of %s leave nothing of a back with %s between the sides", geom.Millimeters(u.NotchWidth), geom.Millimeters(inner[1]-inner[0])),
			Ask:  geom.Sentencef("a wider box, or another slide"),
		})
		return false
	}
	if !l.BottomFit.SlidesIn() && u.NotchHeight > l.rise+settle {
		l.fail(geom.Diagnosis{
			Code: "notch", Subject: about(FieldUndermount, Back),
			Measured: geom.Millimeters(u.NotchHeight), Limit: geom.Millimeters(l.rise),
			Fact:     geom.Sentencef("notches of %s in the back reach into the bottom's groove, %s over the lower edge", geom.Millimeters(u.NotchHeight), geom.Millimeters(l.rise)),
			Ask:      geom.Sentencef("write a lower notch-height, where the slide maker's sheet has one"),
			Remedies: []geom.Remedy{l.least(SettingBottomHeight, u.NotchHeight)},
		})
		return false
	}
	radius := math.Min(math.Max(notchRadius, l.minRound()), u.NotchHeight/2)
	l.outlineBit(&back.Panel, sameRound(radius))
	if between := inner[0] < settle; between || l.Joint == DadoRabbet && l.BackJoint != Housed {
		l.notchEnds(&back.Panel, inner[0]+u.NotchWidth, u.NotchHeight-low, radius)
		return true
	}
	// The right one first: what is left of the edge before it is then the longest.
	for _, x := range []geom.Interval{{Min: inner[1] - u.NotchWidth, Max: inner[1]}, {Min: inner[0], Max: inner[0] + u.NotchWidth}} {
		notchCut{kind: geom.NotchCut, x: x, y: u.NotchHeight - low, radius: radius}.cut(&back.Panel)
	}
	return true
}

// notchEnds cuts off the lower corners of a back that ends between the sides, or in
// tongues: what would stay below the groove there hangs on nothing, as groove and
// rabbet meet.
func (l *layout) notchEnds(p *geom.Panel, width, height, radius float64) {
	length, top := p.Length(), p.Outline.Bounds().Max.Y
	const quarter = -geom.QuarterTurn
	at := func(x, y, bulge float64) geom.Vertex { return geom.Vertex{Point: geom.Point{X: x, Y: y}, Bulge: bulge} }
	outline := geom.Loop{
		at(width, 0, 0), at(length-width, 0, 0), at(length-width, height-radius, quarter), at(length-width+radius, height, 0), at(length, height, 0),
		at(length, top, 0), at(0, top, 0), at(0, height, 0), at(width-radius, height, quarter), at(width, height-radius, 0),
	}
	p.Outline = outline.With(geom.Mating, 4, 6) // the ends
	p.EdgeCuts = append(p.EdgeCuts,
		geom.EdgeCut{Kind: geom.NotchCut, Area: geom.Loop{at(0, 0, 0), at(width, 0, 0), at(width, height-radius, -quarter), at(width-radius, height, 0), at(0, height, 0)}},
		geom.EdgeCut{Kind: geom.NotchCut, Area: geom.Loop{at(length, 0, 0), at(length, height, 0), at(length-width+radius, height, -quarter), at(length-width, height-radius, 0), at(length-width, 0, 0)}})
	for i := range p.Pockets {
		if k := &p.Pockets[i]; k.Face == geom.Outside {
			b := k.Outline.Bounds()
			k.Whole = k.Outline
			k.Outline = geom.Rectangle(b.Min.X, math.Max(b.Min.Y, height), b.Max.X, b.Max.Y)
		}
	}
}

// hooks bores for the slides' hooks into the outside of the back.
func (l *layout) hooks(back *Part, inner []float64) {
	u, low := l.Undermount, back.Placements[0].Origin.Z
	if u.HookDiameter == 0 {
		return
	}
	depth := math.Min(u.HookDepth, l.Tk)
	if l.Tk-depth < geom.MinWeb {
		depth = l.Tk // rather than a skin that breaks out
	}
	y, r := u.HookHeight-low, u.HookDiameter/2
	if y-r < 0 || !l.BottomFit.SlidesIn() && y-r < l.rise+l.groove && y+r > l.rise {
		l.fail(geom.Diagnosis{
			Code: "hook", Subject: about(FieldUndermount, Back),
			Fact: geom.Sentencef("the bores for the slides' hooks, %s wide and %s over the lower edge, meet the bottom's groove, from %s to %s", geom.Millimeters(u.HookDiameter), geom.Millimeters(u.HookHeight), geom.Millimeters(l.rise), geom.Millimeters(l.rise+l.groove)),
			Ask:  geom.Sentencef("follow the slide maker's sheet for hook-height and bottom-height together"),
			Remedies: []geom.Remedy{
				l.between(SettingBottomHeight, u.BottomRecess, y+low-r-l.groove),
				l.least(SettingBottomHeight, y+low+r),
			},
		})
		return
	}
	for _, x := range []float64{inner[0] + u.HookIn, inner[1] - u.HookIn} {
		back.Panel.Pockets = append(back.Panel.Pockets, geom.Pocket{Kind: geom.Drill, Face: geom.Outside, Depth: depth, Outline: geom.Circle(geom.Point{X: x, Y: y}, r)})
	}
}
