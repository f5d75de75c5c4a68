package proof

import (
	"math"
	"slices"
)

// LossKind is what should hold a box and does not.
type LossKind uint8

const (
	NotHeld          LossKind = iota // an end that should be held, by nothing in its side
	MuchClearance                    // an end with more play in its side than glue fills
	ShoulderOpen                     // a shoulder between end and side further open than glue bridges
	OffShoulder                      // an end off the side's shoulder by more than that
	OffCleat                         // a bottom that drops off its cleat when it is pushed away
	NotUnder                         // a bottom that does not reach under an upright
	GapOver                          // a bottom with more open over it than glue bridges
	NotInGroove                      // a bottom that is slid in and does not reach the back's groove
	DropsOut                         // a bottom that drops out of its groove when it is pushed away
	DividerDrops                     // a divider that drops out of its dado so
	DividerClearance                 // a divider with more play than glue fills
	DividerStands                    // a divider above the bottom, so that things slip under it
	DividerStays                     // a loose divider that cannot be lifted out
	RailsApart                       // rails too far apart for hanging folders, or too near each other
	FolderDrags                      // a rail so low that folders touch the bottom
	FolderProud                      // one so high that they stand out over the box
	StripFalls                       // a strip of an insert that nothing stands up
	InsertStands                     // an insert above the bottom, or into it
	InsertStays                      // one that cannot be lifted out
	FrontOff                         // a drawer front that does not lie on the front
	FrontGap                         // a drawer front further off it than glue bridges
	FrontUnheld                      // a front without a hole for a screw behind the drawer front
)

// Loss is one of them: the piece that is not held, in or at what, how much was measured in
// mm, and for what drops out the clearance by which it is pushed.
type Loss struct {
	Kind                LossKind
	Piece, At           string
	Measured, Clearance float64
}

// maxStand is how far a divider may stand above the bottom before things slip under it, in
// mm; common practice, no source.
const maxStand = 2.0

// maxOffHooks is how far rails may be off the hooks of folders, which have that much play on them,
// in mm; common practice, no source.
const maxOffHooks = 1.0

// Folders are hanging folders on two dividers: how wide they are from hook to hook, how far they
// hang below the rails and stand up over them, in mm.
type Folders struct {
	Rails               [2]string
	Width, Below, Above float64
}

// Meant is what a box is held against.
type Meant struct {
	Bridged  float64               // mm that glue bridges at the most
	Open     float64               // mm that a shoulder may stay open at the most
	Captured func(end string) bool // whether tongues, fingers or dados are to hold an end
	Loose    []string              // dividers that are to be lifted out
	Folders  []Folders             // what hangs on dividers
}

// Losses are what should hold a box and does not any more: a tongue that nothing holds or
// glue does not reach, a bottom that drops out of its groove, a divider or a drawer front
// that nothing holds. Pieces that are cut away are in nobody's way. Measures within [Tick]
// of a limit keep it.
func (b *Box) Losses(m Meant) []Loss {
	var list []Loss
	open := max(m.Bridged, m.Open)
	for _, c := range b.Corners {
		switch {
		case !c.Captured && m.Captured(c.End):
			list = append(list, Loss{Kind: NotHeld, Piece: c.End, At: c.Side})
		case c.Captured && c.Clearance > m.Bridged+Tick:
			list = append(list, Loss{Kind: MuchClearance, Piece: c.End, At: c.Side, Measured: c.Clearance})
		case c.ShoulderGap > open+Tick && !math.IsInf(c.ShoulderGap, 0):
			list = append(list, Loss{Kind: ShoulderOpen, Piece: c.End, At: c.Side, Measured: c.ShoulderGap})
		case c.Open > open+Tick:
			list = append(list, Loss{Kind: OffShoulder, Piece: c.End, At: c.Side, Measured: c.Open})
		}
	}
	return slices.Concat(list, b.bottomLosses(m), b.dividerLosses(m), b.folderLosses(m),
		b.insertLosses(), b.frontLosses(m))
}

// bottomLosses are the uprights that a bottom drops out of, or leaves open.
func (b *Box) bottomLosses(m Meant) (list []Loss) {
	for i, joint := range b.BottomJoints {
		slack := b.ClearanceX
		if i >= 2 {
			slack = b.ClearanceY
		}
		one := Loss{At: joint.Name, Measured: joint.Engagement, Clearance: slack}
		rests := b.BottomFit == Applied || b.BottomFit == SlideIn && i == 3
		drops := joint.Engagement <= slack/2+Tick
		switch {
		case b.BottomFit == OnCleats && drops:
			one.Kind = OffCleat
		case b.BottomFit == OnCleats:
			continue
		case rests && joint.Engagement <= Tick:
			one.Kind = NotUnder
		case rests && joint.Gap > m.Bridged+Tick:
			one.Kind, one.Measured = GapOver, joint.Gap
		case rests:
			continue
		case b.BottomFit == SlideIn && i == 2: // screws in the back keep it there
			if joint.Engagement > Tick {
				continue
			}
			one.Kind = NotInGroove
		case drops:
			one.Kind = DropsOut
		default:
			continue
		}
		list = append(list, one)
	}
	return list
}

// dividerLosses are the dividers that nothing holds, or that do not do what they are for.
func (b *Box) dividerLosses(m Meant) (list []Loss) {
	for _, p := range b.Dividers {
		for _, joint := range p.Joints {
			if joint.Engagement <= p.EndClearance/2+Tick {
				list = append(list, Loss{DividerDrops, p.Name, joint.Name, joint.Engagement, p.EndClearance})
			}
		}
		switch {
		case p.Clearance > m.Bridged+Tick:
			list = append(list, Loss{Kind: DividerClearance, Piece: p.Name, Measured: p.Clearance})
		case p.Height > maxStand+Tick:
			list = append(list, Loss{Kind: DividerStands, Piece: p.Name, Measured: p.Height})
		}
		if slices.Contains(m.Loose, p.Name) && !p.Lifts {
			list = append(list, Loss{Kind: DividerStays, Piece: p.Name})
		}
	}
	return list
}

// folderLosses are the rails that folders do not hang on, or touch something from.
func (b *Box) folderLosses(m Meant) (list []Loss) {
	for _, f := range m.Folders {
		var middles []float64
		for _, p := range b.Dividers {
			if !slices.Contains(f.Rails[:], p.Name) {
				continue
			}
			middles = append(middles, p.Middle)
			if p.Over < f.Below-Tick {
				list = append(list, Loss{Kind: FolderDrags, Piece: p.Name, Measured: p.Over})
			}
			if p.Under < f.Above-Tick {
				list = append(list, Loss{Kind: FolderProud, Piece: p.Name, Measured: p.Under})
			}
		}
		if len(middles) != 2 { // a lost one is a fault of the files
			continue
		}
		if apart := math.Abs(middles[1] - middles[0]); math.Abs(apart-f.Width) > maxOffHooks+Tick {
			list = append(list, Loss{Kind: RailsApart, Piece: f.Rails[0], At: f.Rails[1], Measured: apart})
		}
	}
	return list
}

// insertLosses are what keeps an insert from standing by itself, or from being lifted out.
func (b *Box) insertLosses() (list []Loss) {
	if b.Insert == nil {
		return nil
	}
	for _, name := range b.Insert.Fallen {
		list = append(list, Loss{Kind: StripFalls, Piece: name})
	}
	if math.Abs(b.Insert.Height) > maxStand+Tick {
		list = append(list, Loss{Kind: InsertStands, Measured: b.Insert.Height})
	}
	if !b.Insert.Lifts {
		list = append(list, Loss{Kind: InsertStays})
	}
	return list
}

// frontLosses are the drawer fronts that nothing holds.
func (b *Box) frontLosses(m Meant) (list []Loss) {
	for _, f := range b.DrawerFronts {
		switch {
		case f.Covers <= Tick:
			list = append(list, Loss{Kind: FrontOff})
		case f.Gap > m.Bridged+Tick:
			list = append(list, Loss{Kind: FrontGap, Measured: f.Gap})
		}
		if f.Holes == 0 {
			list = append(list, Loss{Kind: FrontUnheld})
		}
	}
	return list
}
