package fit

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/proof"

	"pgregory.net/rapid"
)

// cutting makes the boards of a drawer as a machine that is off would, from the
// panels as they are meant: the outside oracle of what a source does.
type cutting struct {
	d             joinery.Drawer
	off           []float64
	router, floor bool
}

// board is a panel as it comes out.
func (c cutting) board(p joinery.Part, thick int, length, width int) proof.Board {
	t := p.Panel.Thickness + c.off[thick]
	stretch := c.stretched(p.Panel, length, width)
	b := proof.Board{Outline: proof.ShapeOf(stretch(p.Panel.Outline)), Thickness: t}
	for _, k := range p.Panel.Pockets {
		if k.Kind == geom.Drill {
			continue
		}
		if k.Kind == geom.Flank { // from edge to edge of a board of any thickness
			b.Cuts = append(b.Cuts,
				proof.Cut{Face: k.Face, Depth: t, Lean: k.Lean, Shape: proof.ShapeOf(stretch(k.Outline))})
			continue
		}
		r := stretch(k.Outline).Bounds()
		depth := k.Depth
		if k.Face == geom.Outside {
			depth = c.outside(p, k, t)
		} else {
			if depth += c.deeper(p, k, thick); c.floor {
				depth += t - p.Panel.Thickness
			}
		}
		long := p.Panel.Length() + c.off[length]
		switch atStart := r.Min.X+r.Max.X < long; {
		case k.Kind == geom.Groove:
			low, wide := c.grooveOff()
			own := c.off[endGroove]
			if p.Role == joinery.Side {
				own = c.off[sideGroove]
			}
			if p.Role == joinery.Front {
				low += c.lipOff()
			}
			r.Min.Y += low + own
			r.Max.Y += low + own + wide + c.off[grooveWidth]
			// It is drawn to the notches it opens into, and cut right through: where it comes
			// out too high it takes the edges of the fingers beside them as well.
			if p.Role == joinery.Side && c.d.Spec.Joint.Interlocks() && c.d.Spec.GrooveEnds == joinery.GrooveThrough {
				r.Min.X, r.Max.X = 0, long
			}
		case k.Kind == geom.Dado || k.Kind == geom.Rabbet && p.Role == joinery.Side:
			near, far := c.across(p, k, thick, atStart)
			if atStart {
				r.Min.X, r.Max.X = r.Min.X+near, r.Max.X+far
			} else {
				r.Min.X, r.Max.X = r.Min.X-far, r.Max.X-near
			}
		case p.Role == joinery.Bottom: // wider than the groove is deep, so that tongues meet its floor
			switch along := r.Width() > r.Height(); {
			case along && r.Min.Y > 0:
				r.Min.Y--
			case along:
				r.Max.Y++
			case atStart:
				r.Max.X++
			default:
				r.Min.X--
			}
		case p.Role == joinery.Front && r.Width() > long/2: // along an edge, for a lip
		case slices.Contains([]joinery.Joint{joinery.DadoRabbet, joinery.DoubleRabbet, joinery.RabbetedFront}, c.d.Spec.Joint):
			// of front and back, left at the panel's far end but of the back
			cut := leftRabbet
			if atStart == (p.Role == joinery.Front) {
				cut = rightRabbet
			}
			by := c.off[cut] + c.off[height]
			if c.router {
				by = c.off[cut] + c.off[fence]
			} else if c.d.Setup.FlatTongues || c.d.Spec.Joint != joinery.DadoRabbet {
				by = c.off[cut] + c.off[endFence]
				if c.d.Setup.RabbetPasses > 1 {
					by += c.off[cutter]
				}
			}
			if atStart {
				r.Max.X += by
			} else {
				r.Min.X -= by
			}
		}
		b.Cuts = append(b.Cuts, proof.Cut{Face: k.Face, Depth: depth, Shape: proof.ShapeOf(geom.Rectangle(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y))})
	}
	return b
}

// grooveOff is by how much the bottom's groove is too high and too wide. Another blade
// than the dados' is set up by itself, and so is the fence for it, for each of its passes.
func (c cutting) grooveOff() (low, wide float64) {
	s := c.d.Setup
	low, wide = c.off[fence], c.off[cutter]
	if c.router {
		return low, wide
	}
	if s.GrooveFence > 0 || s.Cutter.Groove > 0 && (s.Cutter.Groove != s.Cutter.Width || s.GroovePasses > 1) {
		low = c.off[grooveFence]
	}
	if s.Cutter.Groove > 0 && s.Cutter.Groove != s.Cutter.Width {
		wide = c.off[grooveCutter]
	}
	if s.GroovePasses > 1 {
		wide += c.off[grooveMove]
	}
	return low, wide
}

// lipOff is by how much the groove of a front is too high over the lower rabbet before its lip.
func (c cutting) lipOff() float64 {
	if c.router || c.d.Spec.Lip.Bottom == 0 {
		return 0
	}
	return c.off[endFence]
}

// stretched moves what is beyond the middle of a panel with its far edges.
func (c cutting) stretched(p geom.Panel, length, width int) func(l geom.Loop) geom.Loop {
	x, y := p.Length()/2, p.Width()/2
	return func(l geom.Loop) geom.Loop {
		l = slices.Clone(l)
		for i := range l {
			if l[i].X > x {
				l[i].X += c.off[length]
			}
			if l[i].Y > y {
				l[i].Y += c.off[width]
			}
		}
		return l
	}
}

// outside is how deep a cut from the outside face is. On a saw the board stands on
// end with its inside face against the fence, which leaves the tongue; so does a
// router that measures from the spoilboard.
func (c cutting) outside(p joinery.Part, k geom.Pocket, t float64) float64 {
	own := 0.0
	switch p.Role {
	case joinery.Front:
		own = c.off[frontTongue]
	case joinery.Back:
		own = c.off[backTongue]
	case joinery.Bottom:
		own = c.off[bottomTongue]
	}
	tongue := p.Panel.Thickness - k.Depth
	switch {
	case p.Role == joinery.Bottom && c.d.Setup.BottomHeight > 0: // it lies flat
		return k.Depth + c.off[bottomHeight] - own
	case !c.router && p.Role == joinery.Bottom && c.d.Setup.BottomFence != c.d.Setup.FenceDistance:
		tongue += c.off[bottomFence] + own
	case c.d.Setup.FlatTongues && p.Role != joinery.Bottom: // outside face down: the cutter's height is the depth
		return k.Depth + c.off[endHeight] - own
	case !c.router:
		tongue += c.off[fence] + own
	case c.floor:
		tongue += own - c.off[height]
	default:
		return k.Depth + c.off[height] - own
	}
	return t - tongue
}

// deeper is by how much a cut from the inside face of a side, front or back is.
func (c cutting) deeper(p joinery.Part, k geom.Pocket, thick int) float64 {
	side := leftDado
	if thick == rightSide {
		side = rightDado
	}
	switch {
	case k.Kind == geom.Groove:
		return c.off[height] + c.off[grooveDepth]
	case k.Kind == geom.Dado && c.d.Setup.DadoHeight > 0:
		return c.off[dadoHeight] + c.off[side]
	case p.Role == joinery.Side && c.d.Spec.Joint == joinery.RabbetedFront:
		return 1 // at the back, deep enough to leave the width to the front
	case p.Role == joinery.Side:
		return c.off[height] + c.off[side]
	case p.Role == joinery.Front:
		return c.off[height] + c.off[frontTongue]
	}
	return c.off[height] + c.off[backTongue]
}

// across is how much further into a side its dado or rabbet begins and ends.
func (c cutting) across(p joinery.Part, k geom.Pocket, thick int, atStart bool) (near, far float64) {
	// The left side's panel runs from the front to the back, the right one's back.
	ofFront := atStart == (thick == leftSide)
	cut := frontDado
	if !ofFront {
		cut = backDado
	}
	switch {
	case k.Kind == geom.Dado:
		near = c.off[fence] + c.off[cut]
		far = near + c.off[cutter]
		if !ofFront && c.d.Spec.BackJoint == joinery.Housed { // in passes
			return near + c.off[backPlace], far + c.off[backPlace] + c.off[cut] + c.off[backWidth]
		}
		return near, far + c.off[dadoWidth]
	case c.d.Spec.Joint == joinery.Rabbet, c.d.Spec.Joint == joinery.RabbetedFront && p.Role == joinery.Side:
		return 0, c.off[fence] + c.off[cut]
	}
	return 0, 1 // of a double rabbet, long enough that the side's end meets the floor
}

// box puts the boards together.
func (c cutting) box() proof.Box {
	var list []proof.Piece
	for _, p := range c.d.Parts {
		for i, at := range p.Placements {
			var b proof.Board
			switch p.Role {
			case joinery.Side:
				thick := leftSide
				if p.Label == "right" || i == 1 {
					thick = rightSide
					at.Origin.Y += c.off[sideLength]
				}
				b = c.board(p, thick, sideLength, ripWidth)
			case joinery.Front:
				// Front and back give way sideways until both sides meet both of them; the
				// proof leaves them where they are, so that the middle is given here.
				at.Origin.X += c.off[frontLength] / 2
				b = c.board(p, front, frontLength, ripWidth)
			case joinery.Back:
				at.Origin.Y += c.off[sideLength]
				at.Origin.X -= c.off[frontLength] / 2
				high := ripWidth
				if c.d.Spec.BottomFit.SlidesIn() { // with its upper edge level
					high = backHeight
					at.Origin.Z += c.off[ripWidth] - c.off[backHeight]
				}
				b = c.board(p, back, frontLength, high)
			case joinery.Bottom:
				b = c.board(p, bottom, bottomLength, bottomWidth)
			case joinery.InsertRole: // the strips across and along have a source each, after the others
				long := sources
				if p.Label == string(joinery.Along) {
					long++
				}
				b = proof.Board{Outline: proof.ShapeOf(c.stretched(p.Panel, long, ripWidth)(p.Panel.Outline)), Thickness: p.Panel.Thickness}
			}
			role := proof.Any
			if p.Role == joinery.InsertRole {
				role = proof.Strip
			}
			if p.Role == joinery.CleatRole { // its wall takes it along
				role, b = proof.Cleat, proof.Board{Outline: proof.ShapeOf(p.Panel.Outline), Thickness: p.Panel.Thickness}
			}
			one := proof.Piece{Name: string(p.Role), Board: b, Placement: at, Role: role}
			if lip := c.d.Spec.Lip; p.Role == joinery.Front {
				one.Lips.X, one.Lips.Z = [2]float64{lip.Left, lip.Right}, [2]float64{lip.Bottom, lip.Top}
			}
			list = append(list, one)
		}
	}
	var a proof.Assembler
	return a.Assemble(list)
}

// TestAsCut: boards of other thicknesses, cut by settings and cutters that are off,
// are put together as solids by the package proof, which knows nothing of stacks; the
// box has the measures that the stacks tell for the same errors.
func TestAsCut(t *testing.T) {
	compared := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		off := make([]float64, sources+2)
		for i := range off {
			by := []float64{0.06, 0.25}[rapid.IntRange(0, 1).Draw(t, "much")]
			off[i] = rapid.Float64Range(-by, by).Draw(t, "off")
		}
		for _, d := range anyDrawers(t) {
			s := d.Spec
			// The back's dados must leave the width to the front's corners.
			if len(s.Dividers) > 0 || s.BackJoint == joinery.Housed && s.Joint != joinery.DadoRabbet {
				continue
			}
			c := cutting{d: d, off: off, router: s.Cutter.Kind == joinery.Router}
			c.floor = c.router && s.DepthFrom == joinery.FromSpoilboard
			b := c.box()
			if len(b.Corners) != 4 {
				t.Fatal("no box")
			}
			goes := b.Corners[0].GoesTogether && b.Corners[1].GoesTogether && b.Corners[2].GoesTogether && b.Corners[3].GoesTogether
			step := off[sideGroove] - off[endGroove]
			lipped := step - c.lipOff()               // to the front
			if s.BottomFit == joinery.BottomSlideIn { // whose back has no groove
				step = lipped
			}
			low, high := min(0, step, lipped), max(0, step, lipped)
			inGroove := s.BottomFit != joinery.BottomApplied // or on cleats, where walls stop it
			for _, m := range Measures(d, MeasuredBoards(s), AccuracyOf(s.Cutter.Kind), &SlideFit{InsideCounts: true}) {
				corner := b.Corners[0]
				if m.Part == joinery.Back {
					corner = b.Corners[2]
				}
				got, ok := 0.0, goes
				switch m.Code {
				case "tongue-clearance", "back-clearance":
					got, ok = corner.Clearance, true
				case "recess":
					got = corner.Recess
					ok = goes && s.Joint != joinery.Butt // nothing stops it
				case "recess-inner":
					got = corner.Recess + corner.Clearance
				case "outside-width":
					got = b.WidthFront
					lapped := []joinery.Joint{joinery.DoubleRabbet, joinery.RabbetedFront, joinery.BoxJoint,
						joinery.Dovetail}
					if slices.Contains(lapped, s.Joint) && !s.Lip.Ends() {
						// The front from end to end, and where a side stands proud of one, that.
						got = s.Width + off[frontLength] + max(0, b.Corners[0].Lap) + max(0, b.Corners[1].Lap)
					}
				case "outside-depth":
					got = b.Depth
					ok = goes && s.Joint != joinery.Butt // as of its recess
				case "outside-height":
					got = b.Height
					// Else the bottom hangs down, or the back stands on one that is too thick.
					ok = goes && b.BottomHeight >= 0 && !s.BottomFit.SlidesIn()
				case "lap":
					got = -corner.Lap
				case "shoulder-gap":
					got = corner.ShoulderGap - corner.FloorGap
				case "groove-clearance":
					got = b.GrooveClearance + high - low // the step between walls is a measure of its own
				case "bottom-flush":
					got = b.BottomHeight + low // on the higher of the grooves
					ok = goes && b.GrooveClearance > 0
				case "bottom-clearance":
					got = b.ClearanceX
					ok = goes && b.GrooveClearance > 0 && inGroove
				case "bottom-clearance-depth":
					got = b.ClearanceY
					ok = goes && b.GrooveClearance > 0 && s.Joint != joinery.Butt
				case "insert-clearance":
					got = b.Insert.Clearance[0]
				case "insert-clearance-depth":
					got = b.Insert.Clearance[1]
					ok = goes && s.Joint != joinery.Butt // as of the bottom's
				case "back-over-bottom":
					// The bottom lies on the higher of the grooves.
					got = b.BottomJoints[len(b.BottomJoints)-1].Gap - low
					ok = goes && b.GrooveClearance > 0
				case "slide-clearance":
					left, right := b.Pieces[0], b.Pieces[1]
					got = right.Placement.Origin.X - right.Board.Thickness - left.Placement.Origin.X - left.Board.Thickness
				default: // finger-clearance, diagonal
					continue
				}
				if !ok {
					continue
				}
				compared[string(m.Code)+" "+string(s.Joint)]++
				if want := m.Stack.Value(off); math.Abs(got-want) > 1e-6 {
					t.Fatalf("%s %s of a %s, %v, %s, back %q: as cut %.6f, by its stack %.6f", m.Code,
						m.Part, s.Joint, s.Cutter, s.DepthFrom, s.BackJoint, got, want)
				}
			}
		}
	})
	t.Log(compared)
}
