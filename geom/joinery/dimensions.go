package joinery

import "slices"

// Dimensions are the sizes of a drawer's walls, cuts and bottom as they are laid out, in
// mm, for boards as thick as the mean of their readings. What a drawer does not have is 0.
// They are worked out once, with the drawer; whoever needs one reads it here.
type Dimensions struct {
	Walls  WallSizes
	Corner CornerCuts
	Seat   BottomSeat
	// DividerDados are the widths of the dados for the dividers, in the order of the job.
	DividerDados []float64
	// InsertAcross and InsertAlong are how long the strips of an insert are that run from side to
	// side and from front to back; 0 without.
	InsertAcross, InsertAlong float64
}

// WallSizes are those of sides, front and back, and where they stand.
type WallSizes struct {
	Height  float64 // of sides and front
	SideLen float64 // of the sides
	EndLen  float64 // of the front, and of a back that has its corner
	// ToFront and ToBack are from the ends of the depth as asked to the inside faces of
	// front and back.
	ToFront, ToBack float64
	// SidesToFront and SidesToBack are the same from the ends of the sides, which are
	// further in where front and back lap over them.
	SidesToFront, SidesToBack float64
}

// CornerCuts are the cuts of the corners.
type CornerCuts struct {
	// Place is from the end of a side to the outer wall of the dado for a tongue.
	Place float64
	Dado  float64 // width of that dado
	// DadoDeep is how deep dados are, with the glue room, and rabbets of the sides.
	DadoDeep float64
	Tongue   float64 // its thickness
	// TongueLen is how long the rabbet is that leaves the tongue: what goes into the
	// dado, and room for the thickest side where the same wood is left under every cut.
	TongueLen float64
	// EndDeep is how deep the rabbets of front and back of a double rabbet, or of a rabbeted front,
	// are, EndRabbet how long they are, at the left end and at the right one.
	EndDeep   float64
	EndRabbet [2]float64
	BackPlace float64 // from the rear end of a side to the dado of a housed back
	BackDado  float64 // width of that dado
	// FingerClearance is that of fingers in their notches, FingerNotch how wide those between
	// two fingers are; FingerRows are the places between their rows over the lower edge, with 0
	// and the height of the walls.
	FingerClearance float64
	FingerNotch     float64
	FingerRows      []float64
}

// BottomSeat is how the bottom sits in its walls.
type BottomSeat struct {
	OnTongue bool // of which rabbets in its underside leave a tongue
	// Rise is the wood of the walls under the bottom's groove; Groove its width, Deep its
	// depth. They are 0 of a bottom without grooves.
	Rise, Groove, Deep float64
	InGroove           float64 // thickness of what stands in it
	// BackRise is from the lower edges of the sides up to that of a back under which the
	// bottom is slid in.
	BackRise      float64
	Length, Width float64 // of the bottom, from side to side and from front to back
}

// dimensions are those of a layout that is whole.
func (l *layout) dimensions() Dimensions {
	d := Dimensions{Walls: l.wallSizes(), Corner: l.cornerCuts(), DividerDados: slices.Clone(l.dividerSlots)}
	if l.Insert != nil {
		d.InsertAcross, d.InsertAlong = l.stripLength(Across), l.stripLength(Along)
	}
	d.Seat.Length, d.Seat.Width = l.bottomSize()
	if l.BottomFit.Grooved() {
		d.Seat.OnTongue, d.Seat.InGroove = l.below() > 0, l.inGroove()
		d.Seat.Rise, d.Seat.Groove, d.Seat.Deep = l.rise, l.groove, l.h
	}
	if l.BottomFit.SlidesIn() {
		d.Seat.BackRise = l.backUnder()
	}
	return d
}

func (l *layout) wallSizes() WallSizes {
	w := WallSizes{
		Height: l.wallHeight(), SideLen: l.wall(Side).Panel.Length(), EndLen: l.wall(Front).Panel.Length(),
		ToFront: l.toFront, ToBack: l.toBack, SidesToFront: l.toFront, SidesToBack: l.toBack,
	}
	if l.Joint == DoubleRabbet || l.Joint == RabbetedFront {
		w.SidesToFront = l.h
	}
	if l.CornerAt(Back) == DoubleRabbet {
		w.SidesToBack = l.h
	}
	return w
}

func (l *layout) cornerCuts() CornerCuts {
	var c CornerCuts
	switch l.Joint {
	case DadoRabbet:
		c.Place, c.Dado, c.DadoDeep = l.f, l.dado, l.h+l.GlueSpace
		c.Tongue, c.TongueLen = l.f, l.h+l.shoulderRoom()
	case DoubleRabbet:
		c.DadoDeep, c.EndDeep, c.EndRabbet = l.h, l.h, [2]float64{l.Ts - l.h, l.Ts - l.h}
	case Rabbet:
		c.DadoDeep = l.h
	case RabbetedFront:
		if c.EndDeep, c.EndRabbet = l.h, [2]float64{l.Ts + l.Lip.Left, l.Ts + l.Lip.Right}; l.BackJoint != Housed {
			c.DadoDeep = l.h
		}
	case BoxJoint, Dovetail:
		pitch, play := l.fingerPitch()
		c.FingerClearance, c.FingerNotch = play, pitch+play/2
		c.FingerRows = l.edges()
	}
	if l.BackJoint == Housed {
		c.BackPlace, c.BackDado = l.BackSetback, l.housing()
	}
	return c
}
