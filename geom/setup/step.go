package setup

import (
	"drawerwright/geom"
)

// Holding is how a part is held for a step, or what makes it where no machine with a fence
// does.
type Holding string

const (
	// Across: flat on the table, an end against the fence, which is the stop, pushed
	// by a miter gauge or a sled: nothing is cut off that could be trapped.
	Across Holding = "across"
	// AtEnd: flat on the table, the cutter at the very end of the part, some of it
	// buried in a sacrificial fence, pushed by a miter gauge or a sled.
	AtEnd Holding = "at-end"
	// OnEnd: stood on end or on edge, a face against the fence.
	OnEnd Holding = "on-end"
	// Along: flat on the table, a long edge along the fence.
	Along Holding = "along"
	// AtEdge: flat on the table, the cutter at a long edge, some of it buried in a
	// sacrificial fence.
	AtEdge Holding = "at-edge"
	// Fingers: on end in a finger jig, one notch after the other.
	Fingers Holding = "fingers"

	// By hand: between two knife lines, a shoulder and a gauged line, plowed, chopped
	// where a groove stops, and fingers that are marked from each other.
	Knifed   Holding = "knifed"
	Shoulder Holding = "shoulder"
	Plowed   Holding = "plowed"
	Chopped  Holding = "chopped"
	HandSawn Holding = "hand-sawn"

	// Sawn: notches and openings in the edges, at a band saw, with a jigsaw or by hand.
	Sawn Holding = "sawn"
	// Bored: under a drill press, by center and diameter.
	Bored Holding = "bored"
	// Opened: bored at both ends, the rest sawn out.
	Opened Holding = "opened"
	// Mortised: a blind slot as wide as its bit, made with a jig or by hand.
	Mortised Holding = "mortised"
)

// order of the works: cuts across the grain, cuts along it, which clean what broke out
// at their ends, then what takes edges away, and holes.
var order = []Holding{Across, Knifed, AtEnd, OnEnd, Shoulder, Along, AtEdge, Plowed, Chopped,
	Fingers, HandSawn, Sawn, Bored, Opened, Mortised}

// Edges are edges of a part.
type Edges struct{ Left, Right, Lower, Upper bool }

func (e Edges) with(o Edges) Edges {
	return Edges{e.Left || o.Left, e.Right || o.Right, e.Lower || o.Lower, e.Upper || o.Upper}
}

// ends reports whether they are ends of the part, cut across the grain.
func (e Edges) ends() bool { return e.Left || e.Right }

// counted are the edges for a person at the fence, to whom one end is like the other.
func (e Edges) counted() Edges {
	if e.Left != e.Right {
		e.Left, e.Right = true, false
	}
	return e
}

// Step is one cut of a part's process. Distances are those from the fence's face to
// the near side of the cutter; by hand, what the marking gauge is set to.
type Step struct {
	Holding Holding
	Kind    geom.Kind
	Edge    geom.EdgeKind // of what is cut out of the edges
	Face    geom.Face     // that lies on the table, or of an OnEnd cut against the fence; of a bore, the one that is bored
	Edges   Edges         // against the fence, or stood on
	Cutter  float64       // its width
	Height  float64       // of the cutter; by hand and of bores, the depth
	Fence   float64
	Width   float64   // what is cut away across the fence's distance
	Passes  []float64 // fence distances, one for each pass, from Fence on
	// Stops are how far from either end a groove of a router table stops; 0 runs through.
	Stops   [2]float64
	Through bool // of bores, openings and edges
	// Places are where bores, openings, mortises and edge cuts are, seen on the face, from the left
	// end and the lower edge; of edge cuts, from the edge that they are cut out of.
	Places []geom.Rect
	// Clamped says that the part is too short to be held by hand on the sled, Supported
	// that it is long enough to tip.
	Clamped, Supported bool
	// Pockets and EdgeCuts are the parts of the finished panel that the step makes, by their index.
	Pockets, EdgeCuts []int
	// Turns are what of these is made with each of the Edges at the fence, in the order of cutting.
	Turns []Turn
	// Instead is why the part is not held in the way that shares the setting of the
	// other cuts: that would be beyond this limit.
	Instead *Exceeded
	// Refused is why the step is no setup of this machine, with what makes it. A step
	// that is refused has no setting.
	Refused      *Exceeded
	Alternatives []Alternative
}

// Turn is what a step makes with one edge against the fence or stood on: pockets and edge cuts by their index.
type Turn struct {
	Edges             Edges // one of them
	Pockets, EdgeCuts []int
}

// fenced reports whether a machine with a fence makes the step.
func (s Step) fenced() bool {
	switch s.Holding {
	case Across, AtEnd, OnEnd, Along, AtEdge, Fingers:
		return true
	}
	return false
}

// across reports whether it is cut across the grain, of the kinds that a fence or a
// gauge guides.
func (s Step) across() bool {
	switch s.Holding {
	case Across, Knifed, AtEnd, OnEnd, Shoulder:
		return s.Edges.ends()
	}
	return false
}
