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
	Panel     geom.Panel
	Thickness joinery.Thickness // of its stock
	Fingers   float64           // how deep the notches of a box joint are; 0 without
}

// Work is how a part is held for a cut.
type Work string

const (
	// Across: flat on the table, an end against the fence, which is the stop, pushed
	// by a mitre gauge or a sled: nothing is cut off that could be trapped.
	Across Work = "across"
	// Along: flat on the table, a long edge along the fence.
	Along Work = "along"
	// AtEnd: flat on the table, the cutter at the very end of the part, some of it
	// buried in a sacrificial fence.
	AtEnd Work = "at-end"
	// OnEnd: stood on end or on edge, a face against the fence.
	OnEnd Work = "on-end"
	// Fingers: on end in a finger jig, one notch after the other.
	Fingers Work = "fingers"
	// Apart: holes and openings, which no fence guides.
	Apart Work = "apart"
)

// order of cutting: what is measured with a caliper first, then what has to fit it.
var order = []Work{Across, Along, AtEnd, Fingers, OnEnd, Apart}

// Cut is one kind of cut at a setting. Fence is the distance from the fence's face
// to the near side of the cutter, Width what is cut away across that.
type Cut struct {
	Work  Work
	Kind  geom.Kind
	Face  geom.Face // that lies on the table, or of an OnEnd cut against the fence
	Edges Edges     // which of the parts' edges are against the fence, or stood on
	Width float64
	// Passes are the fence distances, one for each pass, from Fence on.
	Passes []float64
	Boards []Piece
}

// Edges are edges of parts.
type Edges struct{ Left, Right, Lower, Upper bool }

// Piece is a board of a cut and how many pieces of it are cut so.
type Piece struct {
	Name  string
	Role  joinery.Role
	Count int
}

// Setting is a cutter at a height and a fence at a distance, with all that is cut so,
// in order.
type Setting struct {
	Cutter, Height, Fence float64
	Cuts                  []Cut
}

// grid is how near two settings are that are one: what a shop can set at all.
const grid = 0.01

// Sheet lists the settings of a saw or a router table with a cutter of one width, in
// the order of work: as few changes of the height as there are heights.
func Sheet(cutter float64, boards []Board) []Setting {
	type key struct{ height, fence int64 }
	var list []Setting
	at := make(map[key]int)
	for _, b := range boards {
		for _, c := range cutsOf(b, cutter) {
			k := key{int64(math.Round(c.height / grid)), int64(math.Round(c.fence / grid))}
			i, known := at[k]
			if !known {
				i = len(list)
				at[k] = i
				list = append(list, Setting{Cutter: cutter, Height: c.height, Fence: c.fence})
			}
			list[i].add(c.Cut)
		}
	}
	for i := range list {
		slices.SortStableFunc(list[i].Cuts, func(a, b Cut) int { return cmp.Compare(rank(a.Work), rank(b.Work)) })
	}
	// A height stands where its first work does, with all its fences.
	first := make(map[int64]int)
	for i, s := range list {
		h := int64(math.Round(s.Height / grid))
		if _, known := first[h]; !known {
			first[h] = i
		}
	}
	slices.SortStableFunc(list, func(a, b Setting) int {
		return cmp.Or(cmp.Compare(first[int64(math.Round(a.Height/grid))], first[int64(math.Round(b.Height/grid))]), cmp.Compare(rank(a.Cuts[0].Work), rank(b.Cuts[0].Work)))
	})
	return list
}

func rank(w Work) int { return slices.Index(order, w) }

// alike tells whether two cuts are made in one way, but for the edges.
func (c Cut) alike(o Cut) bool {
	return o.Work == c.Work && o.Kind == c.Kind && o.Face == c.Face && math.Abs(o.Width-c.Width) <= grid && len(o.Passes) == len(c.Passes)
}

// add puts a board's cut to its like.
func (s *Setting) add(c Cut) {
	for i := range s.Cuts {
		if o := &s.Cuts[i]; o.alike(c) && o.Edges.counted() == c.Edges.counted() {
			o.Boards = append(o.Boards, c.Boards...)
			return
		}
	}
	s.Cuts = append(s.Cuts, c)
}

// counted are the edges for a person at the fence, to whom one end is like the other.
func (e Edges) counted() Edges {
	if e.Left != e.Right {
		e.Left, e.Right = true, false
	}
	return e
}

func (e Edges) with(o Edges) Edges {
	return Edges{e.Left || o.Left, e.Right || o.Right, e.Lower || o.Lower, e.Upper || o.Upper}
}

// placed is a cut with its setting.
type placed struct {
	Cut
	height, fence float64
}

// cutsOf lists the cuts of a board: pockets that differ by their edge alone are one.
func cutsOf(b Board, cutter float64) (list []placed) {
next:
	for _, k := range b.Panel.Pockets {
		c := placedCut(b, k, cutter)
		for i := range list {
			if o := &list[i]; o.alike(c.Cut) && math.Abs(o.height-c.height) <= grid && math.Abs(o.fence-c.fence) <= grid {
				o.Edges = o.Edges.with(c.Edges)
				continue next
			}
		}
		list = append(list, c)
	}
	if b.Fingers > 0 {
		list = append(list, placed{Cut: Cut{Work: Fingers, Kind: geom.Cutout, Edges: Edges{Left: true, Right: true}, Width: cutter, Boards: piece(b)}, height: b.Fingers})
	}
	return list
}

func piece(b Board) []Piece { return []Piece{{b.Name, b.Role, b.Count}} }

func placedCut(b Board, k geom.Pocket, cutter float64) placed {
	box, length, width := k.Outline.Bounds(), b.Panel.Length(), b.Panel.Width()
	c := placed{Cut: Cut{Kind: k.Kind, Face: k.Face, Boards: piece(b)}, height: k.Depth}
	left, right, lower, upper := box.Min.X, length-box.Max.X, box.Min.Y, width-box.Max.Y
	switch k.Kind {
	case geom.Dado:
		c.Work, c.Width = Across, box.Width()
		if box.Width() > box.Height() { // of a board that lies the other way
			c.Width = box.Height()
			c.fence, c.Edges = nearer(lower, upper, Edges{Lower: true}, Edges{Upper: true})
		} else {
			c.fence, c.Edges = nearer(left, right, Edges{Left: true}, Edges{Right: true})
		}
	case geom.Groove:
		c.Work, c.Width = Along, box.Height()
		if box.Height() > box.Width() {
			c.Width = box.Width()
			c.fence, c.Edges = nearer(left, right, Edges{Left: true}, Edges{Right: true})
		} else {
			c.fence, c.Edges = nearer(lower, upper, Edges{Lower: true}, Edges{Upper: true})
		}
	case geom.Rabbet:
		c.rabbet(b, k, box, length, width)
	default:
		c.Work, c.height, c.fence = Apart, 0, 0
		return c
	}
	c.passes(cutter)
	return c
}

func nearer(a, b float64, first, second Edges) (float64, Edges) {
	if b < a-settle {
		return b, second
	}
	return a, first
}

// rabbet is cut on end where it is on the outside: then fence and height are those of
// dado and groove. One on the inside is cut flat, at the end.
func (c *placed) rabbet(b Board, k geom.Pocket, box geom.Rect, length, width float64) {
	var across float64 // what is taken from the end or edge
	if box.Height() >= width-settle && box.Width() < length-settle {
		across = box.Width()
		_, c.Edges = nearer(box.Min.X, length-box.Max.X, Edges{Left: true}, Edges{Right: true})
	} else {
		across = box.Height()
		_, c.Edges = nearer(box.Min.Y, width-box.Max.Y, Edges{Lower: true}, Edges{Upper: true})
	}
	if k.Face == geom.Outside {
		// Stood on end with the inside face to the fence.
		c.Work, c.Face, c.Width = OnEnd, geom.Inside, k.Depth
		c.height, c.fence = across, b.Panel.Thickness-k.Depth
		if thickest := b.Thickness.Max - c.fence; thickest > c.Width { // the thickest board sets the last pass
			c.Width = thickest
		}
		return
	}
	c.Work, c.Width, c.fence = AtEnd, across, 0
}

// passes sets the fence distances: from the first on, evenly, none further from the
// next than the cutter is wide.
func (c *placed) passes(cutter float64) {
	n := max(1, int(math.Ceil((c.Width-settle)/cutter)))
	last := c.fence + max(0, c.Width-cutter)
	for i := range n {
		at := c.fence
		if n > 1 {
			at += float64((last - c.fence) * float64(i) / float64(n-1))
		}
		c.Passes = append(c.Passes, at)
	}
}

// HeightPasses are the heights at which a bit takes a cut as deep as height, the last
// of them that: no step deeper than half the bit's diameter; common practice, no source.
func HeightPasses(diameter, height float64) []float64 {
	n := max(1, int(math.Ceil((height-settle)/(diameter/2))))
	list := make([]float64, n)
	for i := range list {
		list[i] = float64(height*float64(i+1)) / float64(n)
	}
	return list
}
