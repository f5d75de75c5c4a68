package setup

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Board is a part to be cut, with its name and how many there are.
type Board struct {
	Name      string
	Role      joinery.Role
	Count     int
	Turned    bool // its left end is the rear one, as that of a right side seen on its inside face is
	Panel     geom.Panel
	Thickness joinery.Thickness // of its stock
	Joint     joinery.Joint     // of its corners
	EndWidth  float64           // [joinery.Drawer.EndWidth], of a box front and a back
}

// End is which end of a side lies at the fence; of other parts, and where both do in turn, it has no name.
type End string

// Ends of a side as it goes into the cabinet.
const (
	FrontEnd End = "FRONT end"
	RearEnd  End = "REAR end"
)

// end is the one of a board that a step has at the fence.
func (b Board) end(e Edges) End {
	switch {
	case b.Role != joinery.Side || e.Left == e.Right:
		return ""
	case e.Right != b.Turned:
		return RearEnd
	}
	return FrontEnd
}

// Process lists the steps that make a board of its blank, the rectangle of its length
// and width, in order: pockets at their full length on the blank, those across the
// grain first; then what is cut out of the edges; then holes. What a drawing guides
// has no process.
func Process(b Board, cutter joinery.Cutter, machines Machines) []Step {
	if cutter.Kind.FollowsDrawing() {
		return nil
	}
	p := process{board: b, cutter: cutter, machines: machines}
	for i, k := range b.Panel.Pockets {
		switch {
		case k.Kind == geom.Flank: // of the pins beside what is cut out between them
		case k.Kind == geom.Drill || k.Kind == geom.Cutout || k.Kind == geom.Mortise:
			p.add(p.hole(i))
		case cutter.Kind == joinery.Hand:
			p.add(p.byHand(i))
		default:
			p.add(p.choose(p.candidates(i)))
		}
	}
	for i, e := range b.Panel.EdgeCuts {
		p.add(p.edgeCut(i, e))
	}
	slices.SortStableFunc(p.steps, func(a, b Step) int { return cmp.Compare(rank(a), rank(b)) })
	return p.steps
}

func rank(s Step) int {
	r := slices.Index(order, s.Holding)
	if s.fenced() && s.stage() > 0 { // a rabbet along the grain is cut with the grooves
		r += len(order)
	}
	return r + 2*len(order)*s.stage()
}

// stage is when a step comes among those of one board: cuts across the grain; cuts
// along it; fingers, for which the edges must still be whole before; all else.
func (s Step) stage() int {
	switch {
	case s.across():
		return 0
	case s.Holding == Fingers || s.Holding == HandSawn:
		return 2
	case s.Holding == Sawn || s.Holding == Bored || s.Holding == Opened || s.Holding == Mortised:
		return 3
	}
	return 1
}

type process struct {
	board    Board
	cutter   joinery.Cutter
	machines Machines
	steps    []Step
}

// add puts a step to its like, from which it differs by its edges alone.
func (p *process) add(s Step) {
	s.Turns = []Turn{{s.Edges, slices.Clone(s.Pockets), slices.Clone(s.EdgeCuts)}}
	for i := range p.steps {
		if o := &p.steps[i]; o.alike(s) && same2(o.Height, s.Height) && same2(o.Fence, s.Fence) && (o.Refused == nil) == (s.Refused == nil) {
			o.Edges = o.Edges.with(s.Edges)
			o.Pockets, o.EdgeCuts, o.Places = append(o.Pockets, s.Pockets...), append(o.EdgeCuts,
				s.EdgeCuts...), append(o.Places, s.Places...)
			o.turn(s.Turns[0])
			return
		}
	}
	p.steps = append(p.steps, s)
}

// turn takes in what is made with an edge at the fence.
func (s *Step) turn(t Turn) {
	for i := range s.Turns {
		if o := &s.Turns[i]; o.Edges == t.Edges {
			o.Pockets, o.EdgeCuts = append(o.Pockets, t.Pockets...), append(o.EdgeCuts, t.EdgeCuts...)
			return
		}
	}
	s.Turns = append(s.Turns, t)
}

// grid is how near two settings are that are one: what a shop can set at all.
const grid = 0.01

func same2(a, b float64) bool { return math.Abs(a-b) <= grid }

// alike reports whether two steps are made in one way, but for the edges and the setting.
func (s Step) alike(o Step) bool {
	return o.Holding == s.Holding && o.Kind == s.Kind && o.Edge == s.Edge && o.Face == s.Face && same2(o.Width, s.Width) && same2(o.Cutter, s.Cutter) && len(o.Passes) == len(s.Passes) &&
		same2(o.Stops[0], s.Stops[0]) && same2(o.Stops[1], s.Stops[1]) && o.Clamped == s.Clamped && o.Supported == s.Supported && o.Edges.ends() == s.Edges.ends() && o.Through == s.Through &&
		(o.Instead == nil) == (s.Instead == nil)
}

// span is where a pocket is on the blank.
type span struct {
	geom.Rect
	left, right, lower, upper float64 // from the edges
	acrossGrain               bool    // it runs from the lower to the upper edge
}

func (p *process) span(k geom.Pocket) span {
	b, length, width := k.OnBlank().Bounds(), p.board.Panel.Length(), p.board.Panel.Width()
	s := span{Rect: b, left: b.Min.X, right: length - b.Max.X, lower: b.Min.Y, upper: width - b.Max.Y}
	whole := func(a, b float64) bool { return a < settle && b < settle }
	s.acrossGrain = whole(s.lower, s.upper) && (!whole(s.left, s.right) || b.Width() < b.Height())
	return s
}

// nearest is the distance to the nearer of the two edges that can guide a channel.
func (s span) nearest() (float64, Edges) {
	if s.acrossGrain {
		if s.right < s.left-settle {
			return s.right, Edges{Right: true}
		}
		return s.left, Edges{Left: true}
	}
	if s.upper < s.lower-settle {
		return s.upper, Edges{Upper: true}
	}
	return s.lower, Edges{Lower: true}
}

// across is the size that is cut away from the guiding edge.
func (s span) across() float64 {
	if s.acrossGrain {
		return s.Width()
	}
	return s.Height()
}

// candidates are the ways in which a fence can guide a cut, the one first that shares
// its setting with others.
func (p *process) candidates(i int) []Step {
	k := p.board.Panel.Pockets[i]
	at := p.span(k)
	fence, edges := at.nearest()
	s := Step{Kind: k.Kind, Face: k.Face, Edges: edges, Cutter: p.cutter.Width, Height: k.Depth, Pockets: []int{i}}
	if k.Kind == geom.Groove && p.cutter.Groove > 0 {
		s.Cutter = p.cutter.Groove
	}
	if k.Kind != geom.Rabbet {
		s.Holding, s.Fence, s.Width = Across, fence, at.across()
		if !at.acrossGrain {
			s.Holding, s.Stops = Along, [2]float64{stop(at.left), stop(at.right)}
		}
		return []Step{s}
	}
	flat, onEnd := s, s
	flat.Holding, flat.Width = AtEnd, at.across()
	if !at.acrossGrain {
		flat.Holding = AtEdge
	}
	// On a router table a part that stands between bit and fence is drawn in by the bit:
	// all rabbets are cut flat there, the bit in the fence.
	if p.cutter.Kind == joinery.RouterTable {
		return []Step{flat}
	}
	// Stood on end with the other face to the fence, whatever the board's thickness.
	onEnd.Holding, onEnd.Face = OnEnd, geom.Inside
	if k.Face == geom.Inside {
		onEnd.Face = geom.Outside
	}
	onEnd.Height, onEnd.Fence, onEnd.Width = at.across(), p.board.Panel.Thickness-k.Depth, k.Depth
	if thickest := p.board.Thickness.Max - onEnd.Fence; thickest > onEnd.Width { // the thickest board sets the last pass
		onEnd.Width = thickest
	}
	if k.Face == geom.Outside { // then fence and height are those of dado and groove
		return []Step{onEnd, flat}
	}
	return []Step{flat, onEnd}
}

func stop(at float64) float64 {
	if at < settle {
		return 0
	}
	return at
}

// choose takes the first way that the machine can do.
func (p *process) choose(list []Step) Step {
	var first *Exceeded
	for _, s := range list {
		s.passes()
		b, broken := p.machines.Of(p.cutter.Kind).beyond(s, p.cutter, p.board)
		if !broken && s.Holding == OnEnd && p.board.Role == joinery.Bottom { // it is turned over for all its edges, as joinery.Setup.BottomHeight has it
			other := s
			if other.Edges = (Edges{Left: true}); s.Edges.ends() {
				other.Edges = Edges{Lower: true}
			}
			b, broken = p.machines.Of(p.cutter.Kind).beyond(other, p.cutter, p.board)
		}
		if !broken {
			s.Instead = first
			if s.Holding == Across || s.Holding == AtEnd {
				along := p.board.Panel.Length()
				if !s.Edges.ends() {
					along = p.board.Panel.Width()
				}
				s.Clamped, s.Supported = along < p.machines.Of(p.cutter.Kind).MinAlongFence-settle, along > tips+settle
			}
			return s
		}
		if first == nil {
			first = &b
		}
		// A part lies flat because of its size alone, as joinery.Setup.FlatTongues has it.
		if s.Holding == OnEnd && !slices.Contains([]Limit{LimitMinOnEnd, LimitMaxOnEnd, LimitMinWidthOnEnd}, b.Limit) {
			break
		}
	}
	s := list[0]
	s.passes()
	s.Refused, s.Alternatives = first, p.ways(list, first)
	return s
}

// tips is how long a part is on a sled that needs support at its far end, in
// millimeters; common practice, no source.
const tips = 900.0

// ways are those in which a cut can be made that this machine refuses.
func (p *process) ways(list []Step, why *Exceeded) (ways []Alternative) {
	if why.Limit == LimitWidth {
		ways = append(ways, ByNarrower)
	}
	for _, kind := range []joinery.CutterKind{joinery.Saw, joinery.RouterTable} {
		for _, s := range list {
			if kind == p.cutter.Kind || kind == joinery.Saw && s.Stops != [2]float64{} {
				continue
			}
			s.passes()
			if _, broken := p.machines.Of(kind).beyond(s, joinery.Cutter{}, p.board); !broken && !slices.Contains(ways, ByOther) {
				ways = append(ways, ByOther)
			}
		}
	}
	switch list[0].Holding {
	case Along, AtEdge:
		if why.Limit == LimitMinAlongFence || why.Limit == LimitMinWidthAlongFence {
			ways = append(ways, ByStrip)
		}
	case Across, AtEnd, OnEnd:
		if list[0].Edges.ends() {
			ways = append(ways, ByGuide)
		}
	}
	ways = append(ways, ByRouter, ByHand)
	end := p.board.Role == joinery.Front || p.board.Role == joinery.Back
	if end && !slices.Contains(PlainEnds, p.board.Joint) && list[0].Holding != Along {
		ways = append(ways, ByCorner)
	}
	return ways
}

// passes sets the fence distances: from the first on, evenly, none further from the
// next than the cutter is wide.
func (s *Step) passes() {
	n := max(1, int(math.Ceil((s.Width-settle)/s.Cutter)))
	last := s.Fence + max(0, s.Width-s.Cutter)
	s.Passes = nil
	for i := range n {
		at := s.Fence
		if n > 1 {
			at += float64((last - s.Fence) * float64(i) / float64(n-1))
		}
		s.Passes = append(s.Passes, at)
	}
}

// HeightPasses are the heights at which a bit takes a cut as deep as height, the last
// of them that: no step deeper than a part of the bit's diameter.
func HeightPasses(diameter, share, height float64) []float64 {
	n := max(1, int(math.Ceil((height-settle)/(diameter*share))))
	list := make([]float64, n)
	for i := range list {
		list[i] = float64(height*float64(i+1)) / float64(n)
	}
	return list
}
