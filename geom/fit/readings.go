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
	Sources []int
	By      float64 // 1, or -1 where a larger reading makes the source smaller
	Error   float64 // what the shop keeps to either way
}

// ReadingKind names what is read, in words for the bench.
type ReadingKind string

// Readings, in the order in which a person takes them. A router that counts depths from
// the top takes the same wood from every board, as does a saw from fronts that lie flat, so that the depth of a rabbet is read
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
	EndRabbet    ReadingKind = "depth of the rabbets of front and back"
	UnderEnd     ReadingKind = "wood left under the rabbets of front and back"
	DividerWidth ReadingKind = "width of a divider's dado"
	FingerFit    ReadingKind = "play of a finger in its notch"
	GrooveWidth  ReadingKind = "width of a groove"
	GrooveDepth  ReadingKind = "depth of a groove"
	UnderGroove  ReadingKind = "wood left under a groove"
	GroovePlace  ReadingKind = "from the lower edge to a groove"
	BottomTongue ReadingKind = "thickness of the bottom's tongue"
	BottomRabbet ReadingKind = "depth of the bottom's rabbet"
	FrontLength  ReadingKind = "length of front and back"
	SideLength   ReadingKind = "length of the sides"
	BottomLength ReadingKind = "bottom, from side to side"
	BottomWidth  ReadingKind = "bottom, from front to back"
	WallHeight   ReadingKind = "height of the walls"
)

// ReadingKinds are all of them, in their order.
var ReadingKinds = []ReadingKind{DadoWidth, DadoPlace, DadoDepth, UnderDado, TongueThick, RabbetDeep, TongueLong, BackWidth, BackPlace, SideRabbet, UnderSide, RabbetLong, EndRabbet, UnderEnd,
	DividerWidth, FingerFit, GrooveWidth, GrooveDepth, UnderGroove, GroovePlace, BottomTongue, BottomRabbet, FrontLength, SideLength, BottomLength, BottomWidth, WallHeight}

// ByList reports whether a reading is of a part's size, which the cut list has, and not
// of a cut.
func (k ReadingKind) ByList() bool {
	switch k {
	case FrontLength, SideLength, BottomLength, BottomWidth, WallHeight:
		return true
	}
	return false
}

// Readings lists what is read on the parts of a drawer. Their sources are those of
// [Box]'s stacks; what a machine is off by itself (cutter, fence, height) shows in the
// readings and is none of them.
func Readings(d joinery.Drawer, a Accuracy) []Reading {
	r := reader{model: newModel(d, Boards{}, a)}
	s := d.Spec
	tongued := s.BackJoint != joinery.Housed
	both := func(f, b int) []int {
		if tongued {
			return []int{f, b}
		}
		return []int{f}
	}
	fence, height := a.Fence+a.Cut, a.Height+a.Cut
	sides := s.Sides.Thickness.Mean
	switch s.Joint {
	case joinery.DadoRabbet:
		r.put(DadoWidth, r.dado(), 1, a.Cutter+a.Cut, dadoWidth)
		r.put(DadoPlace, r.f, 1, fence, both(frontDado, backDado)...)
		deep := r.h + s.GlueRoom
		r.deepOrLeft(DadoDepth, UnderDado, deep, sides-deep, height, leftDado, rightDado)
		if r.router && !r.floor || r.flat {
			r.put(RabbetDeep, s.Front.Thickness.Mean-r.f, -1, height, frontTongue)
			if tongued {
				r.put(RabbetDeep, s.Back.Thickness.Mean-r.f, -1, height, backTongue)
			}
		} else {
			r.put(TongueThick, r.f, 1, fence, both(frontTongue, backTongue)...)
		}
		long := height
		if r.flat {
			long = fence
		}
		if r.twice {
			long += a.Cutter
		}
		r.put(TongueLong, r.h+r.room(), 1, long, leftRabbet, rightRabbet)
	case joinery.Rabbet:
		r.deepOrLeft(SideRabbet, UnderSide, r.h, sides-r.h, height, leftDado, rightDado)
		r.put(RabbetLong, s.Front.Thickness.Mean, 1, fence, frontDado)
		if tongued {
			r.put(RabbetLong, s.Back.Thickness.Mean, 1, fence, backDado)
		}
	case joinery.DoubleRabbet:
		r.deepOrLeft(SideRabbet, UnderSide, r.h, sides-r.h, height, leftDado, rightDado)
		r.deepOrLeft(EndRabbet, UnderEnd, r.h, s.Front.Thickness.Mean-r.h, height, frontTongue)
		if tongued {
			r.deepOrLeft(EndRabbet, UnderEnd, r.h, s.Back.Thickness.Mean-r.h, height, backTongue)
		}
	case joinery.BoxJoint:
		r.put(FingerFit, r.fingerPlay(), 1, a.Cutter+a.Cut, frontDado)
	}
	if !tongued {
		r.put(BackWidth, s.Back.Thickness.Mean+r.nominal(joinery.CheckBackPlay, joinery.Back), 1, a.Cutter+a.Cut, backWidth)
		r.put(BackPlace, s.Setback, 1, fence, backPlace)
	}
	r.dividers(a)
	r.bottom(fence, height, a)
	r.sizes(a.Length)
	return r.out
}

// reader gathers the readings of a drawer.
type reader struct {
	*model
	out []Reading
}

func (r *reader) put(k ReadingKind, target, by, off float64, sources ...int) {
	r.out = append(r.out, Reading{Kind: k, Target: target, Sources: sources, By: by, Error: max(off, leastError)})
}

// leastError is what a caliper reads to, in mm; common practice, no source.
const leastError = 0.02

// deepOrLeft is a cut's depth or, where that is what the machine keeps, the wood under it.
func (r *reader) deepOrLeft(depth, left ReadingKind, deep, rest, off float64, sources ...int) {
	if r.floor {
		r.put(left, rest, -1, off, sources...)
		return
	}
	r.put(depth, deep, 1, off, sources...)
}

// fingerPlay is that of a box joint.
func (r *reader) fingerPlay() float64 {
	for _, c := range r.d.Fit {
		if c.Code == joinery.CheckFingerPlay {
			return c.Nominal
		}
	}
	return 0
}

// dividers is what is read of their dados; each stock of them has its own.
func (r *reader) dividers(a Accuracy) {
	width, some := 0.0, false
	for _, c := range r.d.Fit {
		if c.Code != joinery.CheckDividerPlay {
			continue
		}
		for _, v := range r.d.Spec.Dividers {
			if w := c.Nominal + v.Stock.Thickness.Mean; !some {
				width, some = w, true
			} else if math.Abs(w-width) > alike {
				width = math.NaN()
			}
		}
	}
	if some {
		r.put(DividerWidth, width, 1, a.Cutter+a.Cut, dividerDado)
	}
}

// bottom is what is read of the bottom's groove, and of the rabbets of a flush one.
func (r *reader) bottom(fence, height float64, a Accuracy) {
	s := r.d.Spec
	if s.BottomFit == joinery.BottomApplied {
		return
	}
	width, place := r.groove()
	r.put(GrooveWidth, width, 1, a.Cutter+a.Cut, grooveWidth)
	left := math.NaN() // each stock has its own
	if t := s.Sides.Thickness.Mean; t == s.Front.Thickness.Mean && t == s.Back.Thickness.Mean {
		left = t - r.h
	}
	r.deepOrLeft(GrooveDepth, UnderGroove, r.h, left, height, grooveDepth)
	if !r.flush() {
		return
	}
	tongue := width - r.nominal(joinery.CheckBottomPlay, joinery.Bottom)
	r.put(GroovePlace, place, 1, fence, groovePlace)
	if r.router && !r.floor || r.flatBottom() {
		r.put(BottomRabbet, s.Bottom.Thickness.Mean-tongue, -1, height, bottomTongue)
	} else {
		r.put(BottomTongue, tongue, 1, fence, bottomTongue)
	}
}

// groove is how wide the bottom's groove is, and how high over the lower edge.
func (r *reader) groove() (width, place float64) {
	for _, p := range r.d.Parts {
		for _, k := range p.Panel.Pockets {
			if b := k.Outline.Bounds(); k.Kind == geom.Groove {
				return b.Height(), b.Min.Y
			}
		}
	}
	return 0, 0
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
	length, width := geom.Panel.Length, geom.Panel.Width
	ends := append(of[joinery.Front][:len(of[joinery.Front]):len(of[joinery.Front])], of[joinery.Back]...)
	r.put(FrontLength, one(length, ends...), 1, off, frontLength)
	r.put(SideLength, one(length, of[joinery.Side]...), 1, off, sideLength)
	if r.d.Spec.BottomFit != joinery.BottomApplied {
		r.put(BottomLength, one(length, of[joinery.Bottom]...), 1, off, bottomLength)
		r.put(BottomWidth, one(width, of[joinery.Bottom]...), 1, off, bottomWidth)
	}
	r.put(WallHeight, one(width, append(ends, of[joinery.Side]...)...), 1, off, ripWidth)
}

// alike is how near sizes are that are one, in mm: ten steps of a geom.Length.
const alike = 1e-5

// BoardOf is the part of whose board a source of [Box]'s stacks is the thickness; false
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
