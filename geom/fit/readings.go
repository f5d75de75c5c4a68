package fit

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Reading is one thing that a caliper or a rule reads on the parts of a box, and what
// it should be. A deviation of the reading is one of its Sources, times By. Two places
// that one reading stands for, as the left and the right dado, each may be anywhere
// between its limits.
type Reading struct {
	Kind    ReadingKind
	Target  float64 // in mm; not a number where several parts have one each
	Of      Linear  // what is read, with what the machine adds to it
	Sources []int
	By      float64 // 1, or -1 where a larger reading makes the source smaller
	Error   float64 // what the shop keeps to either way
}

// ReadingKind names what is read, in words for the bench.
type ReadingKind string

// Readings, in the order in which a person takes them. A router that counts depths from
// the top takes the same wood from every board, as does a saw from fronts that lie flat, so that
// the depth of a rabbet is read
// and not what is left of the board; one that counts from the spoilboard leaves the same
// wood, so that this is read and not the depth.
const (
	DadoWidth    ReadingKind = "width of a dado"
	DadoPlace    ReadingKind = "from the end to a dado"
	DadoDepth    ReadingKind = "depth of a dado"
	UnderDado    ReadingKind = "wood left under a dado"
	TongueThick  ReadingKind = "thickness of a tongue"
	RabbetDeep   ReadingKind = "depth of a rabbet for a tongue"
	TongueLong   ReadingKind = "length of a tongue"
	BackWidth    ReadingKind = "width of the back's dado"
	BackPlace    ReadingKind = "from the rear end to the back's dado"
	SideRabbet   ReadingKind = "depth of a side's rabbet"
	UnderSide    ReadingKind = "wood left under a side's rabbet"
	RabbetLong   ReadingKind = "from the end to the shoulder of a rabbet"
	FrontRabbet  ReadingKind = "depth of the box front's rabbets"
	UnderFront   ReadingKind = "wood left under the box front's rabbets"
	FrontPlace   ReadingKind = "from the end to the shoulder of the box front's rabbets"
	EndPlace     ReadingKind = "from the end to the shoulder of the rabbets of box front and back"
	EndRabbet    ReadingKind = "depth of the rabbets of box front and back"
	UnderEnd     ReadingKind = "wood left under the rabbets of box front and back"
	DividerWidth ReadingKind = "width of a divider's dado"
	FingerFit    ReadingKind = "clearance of a finger in its notch"
	TailFit      ReadingKind = "clearance of a tail between its pins"
	GrooveWidth  ReadingKind = "width of a groove"
	GrooveDepth  ReadingKind = "depth of a groove"
	UnderGroove  ReadingKind = "wood left under a groove"
	GroovePlace  ReadingKind = "from the lower edge to a groove"
	FrontGroove  ReadingKind = "from the shoulder of the box front's lower rabbet to its groove"
	BottomTongue ReadingKind = "thickness of the bottom's tongue"
	BottomRabbet ReadingKind = "depth of the bottom's rabbet"
	FrontLength  ReadingKind = "length of box front and back"
	SideLength   ReadingKind = "length of the sides"
	BottomLength ReadingKind = "bottom, from side to side"
	BottomWidth  ReadingKind = "bottom, from front to back"
	WallHeight   ReadingKind = "height of sides, box front and back"
)

// ReadingKinds are all of them, in their order.
var ReadingKinds = []ReadingKind{DadoWidth, DadoPlace, DadoDepth, UnderDado, TongueThick, RabbetDeep, TongueLong, BackWidth, BackPlace, SideRabbet, UnderSide, RabbetLong,
	FrontRabbet, UnderFront, FrontPlace, EndPlace, EndRabbet, UnderEnd,
	DividerWidth, FingerFit, TailFit, GrooveWidth, GrooveDepth, UnderGroove, GroovePlace, FrontGroove, BottomTongue,
	BottomRabbet, FrontLength, SideLength, BottomLength, BottomWidth, WallHeight}

// OfSize reports whether a reading is of a part's size, which the cut list has, and not
// of a cut.
func (k ReadingKind) OfSize() bool {
	switch k {
	case FrontLength, SideLength, BottomLength, BottomWidth, WallHeight:
		return true
	}
	return false
}

// Readings lists what is read on the parts of a drawer. Their sources are those of
// [Measures]'s stacks; what a machine is off by itself (cutter, fence, height) shows in the
// readings and is none of them.
func Readings(d joinery.Drawer, a Accuracy) []Reading {
	r := reader{d: d, Cuts: CutsOf(d), a: a}
	r.corners()
	r.back()
	r.dividers()
	r.bottom()
	r.sizes(a.Length)
	return r.out
}

// reader gathers the readings of a drawer.
type reader struct {
	d joinery.Drawer
	*Cuts
	a   Accuracy
	out []Reading
}

// slot, place and deep are what the shop keeps widths, places and depths of cuts to.
func (r *reader) slot() float64  { return r.a.Cutter + r.a.Cut }
func (r *reader) place() float64 { return r.a.Fence + r.a.Cut }
func (r *reader) deep() float64  { return r.a.Height + r.a.Cut }

// put adds a reading of a length, whose own sources are as many places that it stands for.
func (r *reader) put(k ReadingKind, l Linear, off float64, sources ...int) {
	r.out = append(r.out, Reading{Kind: k, Target: l.At0, Of: l, Sources: sources, By: l.slope(sources[0]), Error: max(off, CaliperReads)})
}

// CaliperReads is what a caliper reads to, in mm; common practice, no source.
const CaliperReads = 0.02

// kept adds a reading of what is cut away from a board or, where the machine keeps that,
// of what is left: the one of the two kinds that does not change with the board.
func (r *reader) kept(kinds [2]ReadingKind, away, board Linear, off float64, sources ...int) {
	for _, s := range board.By {
		if away.slope(s.Source) != 0 {
			r.put(kinds[1], board.less(away), off, sources...)
			return
		}
	}
	r.put(kinds[0], away, off, sources...)
}

// ends are the places of the front, and of a back that has its corner.
func (r *reader) ends() []int {
	if r.spec.BackJoint == joinery.Housed {
		return []int{0}
	}
	return []int{0, 1}
}

// corners is what is read of the cuts of the corners.
func (r *reader) corners() {
	ends := r.ends()
	walls, tongues := []int{frontDado, backDado}, []int{frontTongue, backTongue}
	sideCuts := func(cut, left ReadingKind) {
		r.kept([2]ReadingKind{cut, left}, r.DadoDeep[0], r.Side[0], r.deep(), leftDado, rightDado)
	}
	switch r.spec.Joint {
	case joinery.DadoRabbet:
		r.put(DadoWidth, r.Dado, r.slot(), dadoWidth)
		r.put(DadoPlace, r.Wall[0], r.place(), walls[:len(ends)]...)
		sideCuts(DadoDepth, UnderDado)
		r.tongues(ends, tongues)
	case joinery.Rabbet:
		sideCuts(SideRabbet, UnderSide)
		for _, e := range ends {
			r.put(RabbetLong, r.Wall[e], r.place(), walls[e])
		}
	case joinery.DoubleRabbet:
		sideCuts(SideRabbet, UnderSide)
		r.rabbetLong(EndPlace, r.EndRabbet[0], r.place())
		for _, e := range ends {
			r.kept([2]ReadingKind{EndRabbet, UnderEnd}, r.EndDeep[e], r.End[e], r.deep(), tongues[e])
		}
	case joinery.RabbetedFront:
		r.kept([2]ReadingKind{FrontRabbet, UnderFront}, r.EndDeep[0], r.End[0], r.deep(), frontTongue)
		long := r.EndRabbet[0]
		if long.At0 != r.EndRabbet[1].At0 { // two lips
			long.At0 = math.NaN()
		}
		r.rabbetLong(FrontPlace, long, r.place())
		if r.joint(1) == joinery.Rabbet {
			sideCuts(SideRabbet, UnderSide)
			r.put(RabbetLong, r.Wall[1], r.place(), backDado)
		}
	case joinery.Dovetail:
		r.put(TailFit, r.FingerClearance, r.slot(), frontDado)
	case joinery.BoxJoint:
		r.put(FingerFit, r.FingerClearance, r.slot(), frontDado)
	}
}

// tongues is what is read of those of front and back: one thickness where the machine
// keeps that, else how deep the rabbets are in boards of their thicknesses.
func (r *reader) tongues(ends, sources []int) {
	if r.Tongue[0].slope(front) == 0 {
		r.put(TongueThick, r.Tongue[0], r.place(), sources[:len(ends)]...)
	} else {
		for _, e := range ends {
			r.put(RabbetDeep, r.End[e].less(r.Tongue[e]), r.deep(), sources[e])
		}
	}
	long := r.deep()
	if r.setup.FlatTongues {
		long = r.place()
	}
	r.rabbetLong(TongueLong, r.TongueLen[0], long)
}

// rabbetLong adds how long the rabbets of the front are.
func (r *reader) rabbetLong(k ReadingKind, long Linear, off float64) {
	if long.slope(cutter) != 0 {
		off += r.a.Cutter
	}
	r.put(k, long, off, leftRabbet, rightRabbet)
}

// back is what is read of the dados of a housed back.
func (r *reader) back() {
	if r.spec.BackJoint == joinery.Housed {
		r.put(BackWidth, r.BackDado, r.slot(), backWidth)
		r.put(BackPlace, r.Wall[1], r.place(), backPlace)
	}
}

// dividers is what is read of their dados; each stock of them has its own.
func (r *reader) dividers() {
	if len(r.spec.Dividers) == 0 {
		return
	}
	dado := r.DividerDado(1)
	for i := range r.spec.Dividers {
		if math.Abs(r.DividerDado(i+1).At0-dado.At0) > alike {
			dado.At0 = math.NaN()
		}
	}
	r.put(DividerWidth, dado, r.slot(), dividerDado)
}

// bottom is what is read of the bottom's groove, and of the rabbets of one on a tongue.
func (r *reader) bottom() {
	if !r.spec.BottomFit.Grooved() {
		return
	}
	r.put(GrooveWidth, r.Groove, r.slot(), grooveWidth)
	board := r.Side[0]
	if board.At0 != r.End[0].At0 || board.At0 != r.End[1].At0 {
		board.At0 = math.NaN() // what is left of each is another thickness
	}
	r.kept([2]ReadingKind{GrooveDepth, UnderGroove}, r.GrooveDeep[0], board, r.deep(), grooveDepth)
	if r.spec.Lip.Bottom > 0 { // under which the front goes on
		r.put(GroovePlace, r.GroovePlace[0], r.place(), sideGroove)
		r.put(FrontGroove, r.GroovePlace[1], r.place(), endGroove)
	} else {
		r.put(GroovePlace, r.GroovePlace[0], r.place(), sideGroove, endGroove)
	}
	if !r.dims.Seat.OnTongue {
		return
	}
	if r.InGroove.slope(bottom) == 0 {
		r.put(BottomTongue, r.InGroove, r.place(), bottomTongue)
	} else {
		r.put(BottomRabbet, r.Cuts.Bottom.less(r.InGroove), r.deep(), bottomTongue)
	}
}

// sizes are those that the cut list has of the parts.
func (r *reader) sizes(off float64) {
	of := make(map[joinery.Role][]geom.Panel)
	for _, p := range r.d.Parts {
		of[p.Role] = append(of[p.Role], p.Panel)
	}
	one := func(of func(geom.Panel) float64, list ...geom.Panel) float64 {
		for _, p := range list {
			if math.Abs(of(p)-of(list[0])) > alike {
				return math.NaN()
			}
		}
		if len(list) == 0 {
			return math.NaN()
		}
		return of(list[0])
	}
	long, wide := geom.Panel.Length, geom.Panel.Width
	ends := append(of[joinery.Front][:len(of[joinery.Front]):len(of[joinery.Front])], of[joinery.Back]...)
	size := func(k ReadingKind, source int, mm float64) { r.put(k, length(mm, source), off, source) }
	size(FrontLength, frontLength, one(long, ends...))
	size(SideLength, sideLength, one(long, of[joinery.Side]...))
	if r.d.Spec.BottomFit != joinery.BottomApplied {
		size(BottomLength, bottomLength, one(long, of[joinery.Bottom]...))
		size(BottomWidth, bottomWidth, one(wide, of[joinery.Bottom]...))
	}
	size(WallHeight, ripWidth, one(wide, append(ends, of[joinery.Side]...)...))
	if r.spec.BottomFit.SlidesIn() { // whose back is cut to a height of its own
		last := &r.out[len(r.out)-1]
		last.Sources = append(last.Sources, backHeight)
	}
}

// alike is how near sizes are that are one, in mm: ten steps of a geom.Length.
const alike = 1e-5

// BoardOf is the part of whose board a source of [Measures]'s stacks is the thickness; false
// of another source.
func BoardOf(source int) (joinery.Role, bool) {
	switch source {
	case leftSide, rightSide:
		return joinery.Side, true
	case front:
		return joinery.Front, true
	case back:
		return joinery.Back, true
	case bottom:
		return joinery.Bottom, true
	}
	return joinery.DividerRole, source >= sources
}
