package scene

import (
	"fmt"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Exaggeration is how many times its size a play is shown on request.
const Exaggeration = 10

const (
	// minSeen is what is no gap and no overlap but rounding, in mm.
	minSeen = 0.001
	// maxPlay is the gap, in mm, from which on it is no play of a joint but room that
	// is seen well enough as it is: the slack of a bottom, the end of a stopped groove.
	maxPlay = 0.9
	// minLong is how much of a pocket's length a piece must fill to belong there: one
	// that only passes where two pockets cross does not.
	minLong = 0.2
	// minLeft is the wood, in mm, that exaggeration leaves under and beside a pocket.
	minLeft = 0.5
)

// Clearance is a gap between a wall or the floor of a pocket and what stands in it, or what that
// is too thick for its pocket.
type Clearance struct {
	Name      string  // of what in what
	Gap       float64 // mm; 0 or below of what does not go in
	Axis      int     // across the gap: 0 is X, 1 Y, 2 Z
	Along     int     // the axis along which it is longest: a section across that shows it
	Low, High geom.Vec3
	// Check is what judges it; without a code where nothing does.
	Check joinery.CheckID
	// Measure is the name of the judged measure, State how it is, Verdict the verdict where that is
	// not right; all are empty where the box has no Judged.
	Measure, Verdict string
	State            joinery.State
	// Where it is the clearance of a joint.
	Joint Seated
}

// Seated is how a piece of a box is in another one.
type Seated struct {
	In, Of int // what is in the slot, and the piece that has it, of the box's
	// Pocket is the slot, of the panel that has it; -1 of a notch between fingers.
	Pocket int
	// Way is how far that piece moves until the slot's mouth is at the end of what is in it.
	Way geom.Vec3
	// Up is set where the clearance is above what is in the slot, along its axis.
	Up bool
	// Open is set of a notch at an edge: it has one wall, and no width.
	Open bool
}

// Overlap is where two pieces would both be.
type Overlap struct {
	Name      string
	Low, High geom.Vec3
}

// Clearances are those of a box, judged. They are found anew each time.
func (s Scene) Clearances(box int) []Clearance {
	b := s.Boxes[box]
	if len(b.Pieces) == 0 {
		return nil
	}
	first, last := len(s.Parts), 0
	for _, p := range b.Pieces {
		first, last = min(first, p.Part), max(last, p.Part)
	}
	own, pieces := s.Parts[first:last+1], slices.Clone(b.Pieces) // as if there were no other box
	for i := range pieces {
		pieces[i].Part -= first
	}
	wood := stand(own, pieces)
	list, _ := plays(own, pieces, wood)
	fingers, _ := fingerPlays(own, pieces, wood)
	list = append(list, fingers...)
	if b.Judged != nil {
		judge(list, b.Judged())
	}
	return list
}

// OverlapsAt finds where two pieces of a box would both be when opening has come to a
// number of steps: nowhere, unless the box does not go together.
func (s Scene) OverlapsAt(box int, steps float64) []Overlap {
	pieces := append([]Piece(nil), s.Boxes[box].Pieces...)
	for i := range pieces {
		pieces[i].Placement.Origin = pieces[i].Placement.Origin.Add(pieces[i].Offset(steps))
	}
	return overlaps(pieces, stand(s.Parts, pieces))
}

// overlaps finds the blocks in which pieces both are.
func overlaps(pieces []Piece, wood []standing) (list []Overlap) {
	for i := range pieces {
		for j := i + 1; j < len(pieces); j++ {
			if wood[i].about.And(wood[j].about).Least() <= minSeen {
				continue
			}
			for _, a := range wood[i].blocks {
				if a.And(wood[j].about).Least() <= minSeen {
					continue
				}
				for _, b := range wood[j].blocks {
					if c := a.And(b); c.Least() > minSeen {
						list = append(list, Overlap{fmt.Sprintf("%s and %s", pieces[i].Name, pieces[j].Name), vector(c.Low), vector(c.High)})
					}
				}
			}
		}
	}
	return list
}

// room is how much a wall or the floor of a pocket would have to move out for a play
// to be shown exaggerated.
type room struct {
	pocket int
	axis   int // of the panel
	low    bool
	by     float64
}

// plays finds the plays of what stands in pockets, in the order of pieces and pockets,
// and by part how its pockets would grow to exaggerate them.
func plays(parts []Part, pieces []Piece, wood []standing) (list []Clearance, rooms map[int][]room) {
	rooms = make(map[int][]room)
	for i, p := range pieces {
		panel := parts[p.Part].Panel
		outline := panel.Outline.Bounds()
		for k, pocket := range panel.Pockets {
			if !channel(pocket) || pocket.Through(panel.Thickness) {
				continue
			}
			r := pocket.Outline.Bounds()
			void := block{Low: [3]float64{max(r.Min.X, outline.Min.X), max(r.Min.Y, outline.Min.Y), panel.Thickness - pocket.Depth}, High: [3]float64{min(r.Max.X, outline.Max.X), min(r.Max.Y, outline.Max.Y), panel.Thickness}}
			if pocket.Face == geom.Outside {
				void.Low[2], void.High[2] = 0, pocket.Depth
			}
			// Which of its six sides are wood.
			wall := [3][2]bool{{r.Min.X > outline.Min.X, r.Max.X < outline.Max.X}, {r.Min.Y > outline.Min.Y, r.Max.Y < outline.Max.Y}, {pocket.Face == geom.Inside, pocket.Face == geom.Outside}}
			for j := range pieces {
				if j == i {
					continue
				}
				in, whole, any := reach(placed(void, p.Placement), wood[j])
				if !any {
					continue
				}
				in, whole = toPanel(in, p.Placement), toPanel(whole, p.Placement)
				long := longest(void, 2)
				if in.High[long]-in.Low[long] < float64(minLong*(void.High[long]-void.Low[long])) {
					continue
				}
				for axis := range 3 {
					across := axisOf([3]geom.Vec3{p.Placement.X, p.Placement.Y, p.Placement.Normal()}[axis])
					one := Clearance{Name: nameAcross(axis, pieces[j], pocket, p), Axis: across,
						Check: checkOf(parts, pieces[j], across), Joint: Seated{In: j, Of: i, Pocket: k, Way: outOf(pocket, p.Placement)}}
					between := axis != long && across == axisOf(pieces[j].Placement.Normal()) && wall[axis] == [2]bool{true, true}
					if between && whole.High[axis]-whole.Low[axis] >= void.High[axis]-void.Low[axis]-minSeen {
						list = append(list, seat{void, in, whole}.tooThick(one, axis, p.Placement))
						continue
					}
					for end, low := range [2]bool{true, false} {
						gap, from, to := in.Low[axis]-void.Low[axis], void.Low[axis], in.Low[axis]
						if !low {
							gap, from, to = void.High[axis]-in.High[axis], in.High[axis], void.High[axis]
						}
						if !wall[axis][end] || gap <= minSeen || gap >= maxPlay && !(between && one.Check.Code != "") {
							continue
						}
						b := in
						b.Low[axis], b.High[axis] = from, to
						b = placed(b, p.Placement)
						one.Gap, one.Along, one.Low, one.High = gap, longest(b, across), vector(b.Low), vector(b.High)
						one.Joint.Up = along(p.Placement, axis) == !low
						list = append(list, one)
						rooms[p.Part] = append(rooms[p.Part], room{k, axis, low, float64((Exaggeration - 1) * gap)})
					}
				}
			}
		}
	}
	return list, rooms
}

// nameAcross names the clearance of what stands in a pocket of a panel, across an axis of that panel: no two of a joint
// have one name.
func nameAcross(axis int, stands Piece, in geom.Pocket, of Piece) string {
	where := "in"
	if axis == 2 {
		where = "to the floor of"
	}
	return fmt.Sprintf("%s %s the %s of the %s", stands.Name, where, in.Kind, of.Name)
}

// seat is a pocket, what of a piece is in it, and the wood of which that is a part, in the
// coordinates of the pocket's panel.
type seat struct{ void, in, whole block }

// tooThick is the clearance of a piece that is as thick as its pocket is wide, or thicker: what is
// left of it, and where the piece stands out into the wall the further.
func (s seat) tooThick(c Clearance, axis int, at geom.Placement) Clearance {
	c.Gap = s.void.High[axis] - s.void.Low[axis] - (s.whole.High[axis] - s.whole.Low[axis])
	below := [2]float64{s.whole.Low[axis], s.void.Low[axis]}
	above := [2]float64{s.void.High[axis], s.whole.High[axis]}
	b, stands, up := s.in, above, true
	if below[1]-below[0] > above[1]-above[0] {
		stands, up = below, false
	}
	c.Joint.Up = along(at, axis) == up
	b.Low[axis], b.High[axis] = stands[0], max(stands[0], stands[1])
	b = placed(b, at)
	c.Along, c.Low, c.High = longest(b, c.Axis), vector(b.Low), vector(b.High)
	return c
}

// reach is the block about the part of a piece that is in a void, and the block about the wood
// of which it is a part.
func reach(void block, wood standing) (in, whole block, any bool) {
	if void.And(wood.about).Least() <= minSeen {
		return block{}, block{}, false
	}
	for _, b := range wood.blocks {
		c := void.And(b)
		if c.Least() <= minSeen {
			continue
		}
		if !any {
			in, whole, any = c, b, true
		}
		in, whole = in.Over(c), whole.Over(b)
	}
	return in, whole, any
}

// outOf is how far a panel moves until the mouth of its pocket is where the floor was.
func outOf(p geom.Pocket, at geom.Placement) geom.Vec3 {
	if p.Face == geom.Outside {
		return at.Normal().Scale(p.Depth)
	}
	return at.Normal().Scale(-p.Depth)
}

// along reports whether an axis of a panel runs up one of the box.
func along(at geom.Placement, axis int) bool {
	v := [3]geom.Vec3{at.X, at.Y, at.Normal()}[axis]
	return array(v)[axisOf(v)] > 0
}

// toPanel takes a block of the box to the panel that stands there.
func toPanel(b block, at geom.Placement) block {
	local := func(v [3]float64) [3]float64 {
		d := vector(v).Sub(at.Origin)
		return [3]float64{d.Dot(at.X), d.Dot(at.Y), d.Dot(at.Normal())}
	}
	p, q := local(b.Low), local(b.High)
	for k := range 3 {
		b.Low[k], b.High[k] = min(p[k], q[k]), max(p[k], q[k])
	}
	return b
}

// axisOf is the axis of the box along which a direction runs.
func axisOf(v geom.Vec3) int {
	switch {
	case v.X != 0:
		return 0
	case v.Y != 0:
		return 1
	}
	return 2
}

// channel reports whether a pocket is a channel or a step with a level floor.
func channel(k geom.Pocket) bool {
	return k.Kind != geom.Drill && k.Kind != geom.Cutout && k.Kind != geom.Flank && len(k.Outline) == 4
}

// eased is a panel whose pockets are larger by the rooms, as far as there is wood.
func eased(p geom.Panel, rooms []room) geom.Panel {
	old := p.Pockets
	p.Pockets = append([]geom.Pocket(nil), old...)
	outline := p.Outline.Bounds()
	for _, r := range rooms {
		k := &p.Pockets[r.pocket]
		if r.axis == 2 {
			k.Depth = max(k.Depth, min(old[r.pocket].Depth+r.by, p.Thickness-minLeft))
			continue
		}
		from := old[r.pocket].Outline.Bounds()
		box := k.Outline.Bounds()
		switch {
		case r.axis == 0 && r.low:
			box.Min.X = min(box.Min.X, max(from.Min.X-r.by, outline.Min.X+minLeft))
		case r.axis == 0:
			box.Max.X = max(box.Max.X, min(from.Max.X+r.by, outline.Max.X-minLeft))
		case r.low:
			box.Min.Y = min(box.Min.Y, max(from.Min.Y-r.by, outline.Min.Y+minLeft))
		default:
			box.Max.Y = max(box.Max.Y, min(from.Max.Y+r.by, outline.Max.Y-minLeft))
		}
		k.Outline = box.Loop()
	}
	return p
}
