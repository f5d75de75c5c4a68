package setup

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// edgeCut is what is cut out of a board's edge: fingers on end in a jig or with saw and
// chisel, all else with a saw that follows a line.
func (p *process) edgeCut(i int, e geom.EdgeCut) Step {
	b, length, width := e.Area.Bounds(), p.board.Panel.Length(), p.board.Panel.Width()
	s := Step{Holding: Sawn, Kind: geom.Cutout, Edge: e.Kind, Through: true, EdgeCuts: []int{i}, Places: []geom.Rect{b}, Width: b.Width(), Height: b.Height(),
		Edges: Edges{Left: b.Min.X < settle, Right: length-b.Max.X < settle, Lower: b.Min.Y < settle, Upper: width-b.Max.Y < settle}}
	if !e.Kind.Interlocks() {
		if s.Edges.Upper && !s.Edges.Lower { // a person measures it from there, so that it is one cut on parts of any height
			s.Places[0].Min.Y, s.Places[0].Max.Y = width-b.Max.Y, width-b.Min.Y
		}
		return s
	}
	s.Edges.Lower, s.Edges.Upper = false, false
	s.Height, s.Width, s.Cutter, s.Places = b.Width(), p.cutter.Width, p.cutter.Width, nil
	if p.cutter.Kind == joinery.Hand {
		s.Holding, s.Cutter, s.Width = HandSawn, 0, 0
		for k, f := range p.board.Panel.Pockets { // each flank is of the nearest cut beside it
			if r := f.Outline.Bounds(); f.Kind == geom.Flank && !r.Grow(settle).Apart(b) {
				s.Pockets = append(s.Pockets, k)
			}
		}
		return s
	}
	s.Holding = Fingers
	return p.choose([]Step{s})
}

// hole is bored under a drill press, opened between two bores, or a mortise.
func (p *process) hole(i int) Step {
	k := p.board.Panel.Pockets[i]
	b := k.Outline.Bounds()
	s := Step{Holding: Opened, Kind: k.Kind, Face: k.Face, Pockets: []int{i}, Width: b.Width(), Height: k.Depth, Through: k.Through(p.board.Panel.Thickness)}
	if _, _, round := k.Outline.AsCircle(); round {
		s.Holding = Bored
	} else if k.Kind == geom.Mortise {
		s.Holding = Mortised
	}
	if k.Face == geom.Outside { // as seen on the face that is bored
		b = b.TurnOver(p.board.Panel.Length())
	}
	s.Places = []geom.Rect{b}
	return s
}

// pared is by how much a plowed groove is widened with a chisel rather than by another
// pass of the plane, in millimeters; common practice, no source.
const pared = 0.3

// byHand is a pocket between knife and gauge lines, or plowed.
func (p *process) byHand(i int) Step {
	k := p.board.Panel.Pockets[i]
	at := p.span(k)
	fence, edges := at.nearest()
	s := Step{Holding: Knifed, Kind: k.Kind, Face: k.Face, Edges: edges, Height: k.Depth, Fence: fence, Width: at.across(), Pockets: []int{i}}
	switch {
	case k.Kind == geom.Rabbet:
		// Gauged from the other face, so that what stays is equally thick on every board.
		s.Holding, s.Face = Shoulder, geom.Inside
		if k.Face == geom.Inside {
			s.Face = geom.Outside
		}
		s.Fence, s.Height, s.Width = p.board.Panel.Thickness-k.Depth, at.across(), k.Depth
	case !at.acrossGrain:
		s.Holding, s.Cutter, s.Stops = Plowed, p.cutter.Width, [2]float64{stop(at.left), stop(at.right)}
		if s.Stops != [2]float64{} {
			s.Holding, s.Cutter = Chopped, 0
			break
		}
		if s.passes(); s.Width-s.Cutter < pared {
			s.Passes = s.Passes[:1]
		}
		s.Cutter = 0 // a gauge is set with the iron in, and no other cut has one
	}
	return s
}
