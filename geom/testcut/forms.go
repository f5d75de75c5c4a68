package testcut

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// forms are what is read on a test cut, and the measures of a box of such parts: those of
// [fit.Cuts], by what is not known of the machine. What the single cut differs by from
// the next is noise here.
type forms struct {
	slot, edge, depth form // of a dado for tongues, or of the bottom's groove
	tongue            form
	tongueLength      form
	rabbet            form // depth of the rabbet before the tongue
	front, side       form // thicknesses
	length            form // of the front
	recess, play, gap form
	width, inside     bent
}

// formsOf works them out for a drawer.
func formsOf(d joinery.Drawer) forms {
	cuts, by := fit.CutsOf(d), unknownsOf(d.Spec.Cutter.Kind.FollowsDrawing())
	f := forms{
		slot: by.form(cuts.Groove), edge: by.form(cuts.GroovePlace[0]), depth: by.form(cuts.GrooveDeep[0]),
		front: by.form(cuts.End[0]), side: by.form(cuts.Side[0]), length: by.form(cuts.EndLen),
	}
	switch {
	case d.Spec.Joint == joinery.DadoRabbet:
		f.slot, f.edge, f.depth = by.form(cuts.Dado), by.form(cuts.Wall[0]), by.form(cuts.DadoDeep[0])
		f.tongue, f.tongueLength, f.rabbet = by.form(cuts.Tongue[0]), by.form(cuts.TongueLen[0]), by.form(cuts.End[0].Plus(cuts.Tongue[0], -1))
		f.recess, f.play, f.gap = by.form(cuts.Recess(0)), by.form(cuts.Clearance(0)), by.form(cuts.ShoulderGap())
		f.width, f.inside = by.bent(cuts.Width()), by.bent(cuts.Inside())
	case d.Dimensions.Seat.Groove == 0: // any slot at the setting of the rabbets
		f.slot = form{d.Setup.Cutter.Width, by[fit.SourceCutter]}
		f.edge = form{d.Setup.FenceDistance, by[fit.SourceFence]}
		f.depth = form{d.Setup.CutterHeight, by[fit.SourceHeight]}
	}
	return f
}

// unknowns are what the sources of a box are, by what is not known of a machine.
type unknowns map[int]vector

// unknownsOf are those of a machine. A source is where a wall is off; a router's bit that
// is wider takes half of that on either side of where the part lies.
func unknownsOf(router bool) unknowns {
	by := unknowns{
		fit.SourceCutter: unit(ofCutter), fit.SourceGrooveCutter: unit(ofCutter),
		fit.SourceFence: unit(ofFence), fit.SourceGrooveFence: unit(ofFence),
		fit.SourceHeight: unit(ofHeight), fit.SourceDadoHeight: unit(ofDado),
		fit.SourceEndFence: unit(ofEnd), fit.SourceEndHeight: unit(ofRabbet),
		fit.SourceLeftSide: unit(ofSides), fit.SourceRightSide: unit(ofSides),
		fit.SourceFront: unit(ofFront), fit.SourceFrontLength: unit(ofLength),
	}
	if router {
		by[fit.SourceFence] = by[fit.SourceFence].plus(unit(ofCutter), -0.5)
		by[fit.SourceEndFence] = by[fit.SourceEndFence].plus(unit(ofCutter), 0.5)
	}
	return by
}

func (by unknowns) form(l fit.Linear) form {
	f := form{at0: l.At0}
	for _, s := range l.By {
		f.by = f.by.plus(by[s.Source], s.By)
	}
	return f
}

func (by unknowns) bent(r fit.Response) bent {
	b := bent{form: by.form(r.Linear)}
	for _, k := range r.Bends {
		b.bends = append(b.bends, bend{k.Times, by.form(k.A), by.form(k.B)})
	}
	return b
}
