package joinery

import (
	"slices"

	"drawerwright/geom"
)

// Thickness is what caliper readings of one stock say, in millimeters.
type Thickness struct {
	Mean, Min, Max float64
}

// Measure takes the mean, least and greatest of at least one reading; it panics
// without. The mean is never outside of them, as a sum of equal readings can be by its last bit:
// a hole as deep as the board is thick would not go through.
func Measure(readings ...float64) Thickness {
	sum := 0.0
	for _, r := range readings {
		sum += r
	}
	t := Thickness{Min: slices.Min(readings), Max: slices.Max(readings)}
	t.Mean = min(max(sum/float64(len(readings)), t.Min), t.Max)
	return t
}

// Grain says along which side of the sheet the grain of a stock runs.
type Grain string

const (
	GrainNone   Grain = "none"   // a part may lie either way
	GrainLength Grain = "length" // along the first number of the sheet size
)

// Stock is a sheet material as it was measured.
type Stock struct {
	Name      string
	Thickness Thickness
	// Length and Width of the sheet as bought; 0 when the job does not say.
	Length, Width float64
	More          [][2]float64 // other sizes that it comes in
	Grain         Grain

	Solid               bool    // boards of wood that move across the grain, not a sheet
	Density             float64 // kg/m3; 0 when not known
	Stiffness           float64 // modulus of elasticity in N/mm2; 0 when not known
	StiffnessAcross     float64 // across the grain; 0 is the same
	Shear               float64 // modulus of shear in the plane in N/mm2; 0 is that of a sheet alike in all directions
	Through             float64 // modulus of shear through its thickness in N/mm2, along the grain; 0 when not known
	ThroughAcross       float64 // the same across it
	Poisson             float64 // its ratio; 0 when not known
	Creep               float64 // by how much a load that stays multiplies the sag; 0 when not known
	StiffAs             string  // the kind of sheet in geom/wood from which its stiffness follows at any thickness; empty where it does not
	Swelling, Shrinkage float64 // from how it is now to its dampest and driest, as parts of its size: of solid wood across the grain, of a sheet both ways
	Thickening          float64 // of solid wood, how much thicker it is at its dampest, as a part of that
}

// Same reports whether boards of two stocks are alike.
func (s Stock) Same(as Stock) bool {
	return s.Name == as.Name && s.Thickness == as.Thickness && s.Grain == as.Grain
}

// Cutter is the tool that makes dados, grooves and rabbets.
type Cutter struct {
	Kind  CutterKind
	Width float64 // of the slot that one pass cuts; by hand, of the plow iron
	Reach float64 // of a router table's bit, how deep it can cut; 0 when not said
	// Groove is the same of the cutter that a saw or a router table makes the bottom's
	// grooves with: they are then as wide as the bottom wants, in passes where that is
	// wider. It may be Width, for passes of one cutter. 0 is one pass of that cutter.
	Groove float64
}

// DepthFrom says where a router's depths are measured from.
type DepthFrom string

const (
	FromTop        DepthFrom = "top"        // of the board: what is cut away is the same in every board
	FromSpoilboard DepthFrom = "spoilboard" // under it: what is left is the same in every board
)

// GrooveEnds says where the bottom's groove in the sides ends.
type GrooveEnds string

const (
	GrooveStopped GrooveEnds = "stopped" // inside the dados, so that nothing shows; routers only
	GrooveThrough GrooveEnds = "through" // at the ends of the sides
	GroovePlugged GrooveEnds = "plugged" // there too, where plugs close it
)

// BottomFit says how the bottom sits in its groove.
type BottomFit string

const (
	BottomAuto      BottomFit = "auto"       // captured where the groove takes the bottom's thickness, else flush
	BottomGroovedIn BottomFit = "grooved-in" // at its full thickness, above the bottom edge
	// on a tongue left by a rabbet on its underside, level with the bottom edge
	BottomFlush BottomFit = "flush"
	// captured at the sides and the front, under a back that ends at its top face
	BottomSlideIn BottomFit = "slide-in"
	// slid in so on a tongue, which a rabbet on its underside along sides and front leaves
	BottomFielded BottomFit = "fielded"
	BottomApplied BottomFit = "applied" // from below, as large as the box, which stands on it
	// from above on strips along the insides of the walls, which have no grooves
	BottomCleats BottomFit = "cleats"
)

// Joint names a corner.
type Joint string

const (
	DadoRabbet   Joint = "dado-rabbet"   // tongues of front and back in dados of the sides
	DoubleRabbet Joint = "double-rabbet" // rabbets on the inside faces of all four
	Rabbet       Joint = "rabbet"        // front and back in rabbets across the ends of the sides
	Butt         Joint = "butt"          // front and back between the sides, with fasteners
	BoxJoint     Joint = "box-joint"     // fingers on all four, as long as the other part is thick
	Dovetail     Joint = "dovetail"      // tails of the sides between pins of front and back
	// the sides' ends in rabbets of the front, which hides them; the back as of Rabbet
	RabbetedFront Joint = "rabbeted-front"
	Housed        Joint = "dado" // only of a back: at its full thickness in dados before the ends of the sides
)

// Joints are those of a box front, in the order in which they are listed.
var Joints = []Joint{DadoRabbet, DoubleRabbet, Rabbet, Butt, BoxJoint, RabbetedFront, Dovetail}

// Interlocks reports whether the corner has fingers or tails, which hold the parts up and down.
func (j Joint) Interlocks() bool { return j == BoxJoint || j == Dovetail }

// teeth are what stands in the notches of such a corner.
func (j Joint) teeth() string {
	if j == Dovetail {
		return "tails"
	}
	return "fingers"
}

// Fastener is what holds a butt joint beside glue.
type Fastener string

const (
	Screws Fastener = "screws" // through the sides into the ends
	Dowels Fastener = "dowels" // in blind holes of both
	Tenons Fastener = "tenons" // loose ones, in mortises of both
)

// AllFasteners are those in the order in which they are listed.
var AllFasteners = []Fastener{Screws, Dowels, Tenons}

// Spec is one drawer box as a shop asks for it. Lengths are in millimeters and
// finite. [Build] relies on what the reader of a job file makes sure of: sizes,
// thicknesses and the cutter's width are above 0; distances, clearance, plays and
// room are not below; words are among the constants here, and a saw's grooves
// run through.
type Spec struct {
	Name  string
	Count int
	Units geom.Unit // that messages speak in

	// Outside size. The depth runs front to back over the ends of the sides.
	Width, Height, Depth float64
	Planned              bool // the size follows from an opening: no advice changes it

	Sides, Front, Back, Bottom Stock

	Joint  Joint
	Cutter Cutter

	// BackJoint is [Housed], or empty for a back that has the front's corner; Setback
	// is how far the housed back's outside face then stands before the ends of the
	// sides.
	BackJoint   Joint
	BackSetback float64
	// Fasteners of a [Butt]; FingerWidth is that wished for of a [BoxJoint], on a
	// router; 0 is chosen.
	Fasteners   Fastener
	FingerWidth float64
	// Tails are how many a [Dovetail] has, DovetailSlope how far its flanks run along for 1 aside; 0 is chosen.
	Tails         int
	DovetailSlope float64

	// FenceDistance f and CutterHeight h serve every cut. 0 means half the
	// measured thickness: of the front for f, of the sides for h.
	FenceDistance, CutterHeight float64

	DepthFrom  DepthFrom // of a router; empty is FromTop
	GrooveEnds GrooveEnds
	BottomFit  BottomFit

	// BottomClearance is how much smaller the bottom is than its grooves, in all: from side to
	// side, and from front to back too where BottomClearanceDepth is nil. All of that of a bottom that
	// is slid in is at the front: behind it ends in the open.
	BottomClearance      float64
	BottomClearanceDepth *float64
	// OnEnd is which fronts a machine with a fence stands on their ends for their tongues.
	OnEnd OnEnd

	// DadoClearance and GrooveClearance are what a router makes its slots wider than the tongue and the bottom.
	DadoClearance, GrooveClearance float64
	// SlotRoom is how much wider than its smallest bit a router makes a slot at least.
	SlotRoom float64
	// Bits are those of a router that has several; Cutter.Width is the narrowest. Each
	// cut is laid out for the bit that makes it.
	Bits []Bit
	// GlueSpace is how much deeper the dados are than the tongues are long.
	GlueSpace float64

	// BottomHeight is how high the bottom's groove stands over the bottom edges; 0 is
	// the fence distance. Another height is a setup of its own.
	BottomHeight float64

	Limits Limits // none are DefaultLimits

	// Spreads of the measures that are known; of the others the readings of their boards
	// speak alone.
	Spreads Spreads

	Dividers    []Divider
	Insert      *Insert
	Pull        Pull
	DrawerFront *DrawerFront
	Lip         Lip // of a [RabbetedFront]
	Undermount  *Undermount
}

// UsualBottomClearance is one in all, each way, in mm, round in the unit of a job: sheet bottoms
// hardly move; common practice, no source.
func UsualBottomClearance(u geom.Unit) float64 { return u.Usual(2, 1.0/16) }

// Defaults of a Spec, all common practice without a source; a job file can
// change each.
const (
	// mm: the middle of the usual limits, so that the spread of boards has room either way
	DefaultDadoClearance   = 0.25
	DefaultGrooveClearance = 0.2 // mm: a dry bottom slides in by hand
)

// Settings of a [Spec], by the names that a job file gives them. That of a stock is for its
// thickness, that of the cutter for its width.
const (
	SettingName                 geom.Setting = "name"
	SettingOutside              geom.Setting = "outside"
	SettingSides                geom.Setting = "sides"
	SettingBoxFront             geom.Setting = "box-front"
	SettingBack                 geom.Setting = "back"
	SettingBottom               geom.Setting = "bottom"
	SettingJoint                geom.Setting = "joint"
	SettingCutter               geom.Setting = "cutter"
	SettingGrooveCutter         geom.Setting = "groove-cutter"
	SettingFenceDistance        geom.Setting = "fence-distance"
	SettingCutterHeight         geom.Setting = "cutter-height"
	SettingGrooveEnds           geom.Setting = "groove-ends"
	SettingBottomFit            geom.Setting = "bottom-fit"
	SettingBottomClearance      geom.Setting = "bottom-clearance"
	SettingBottomClearanceDepth geom.Setting = "bottom-clearance-depth"
	SettingDadoClearance        geom.Setting = "dado-clearance"
	SettingGrooveClearance      geom.Setting = "groove-clearance"
	SettingGlueSpace            geom.Setting = "glue-space"
	SettingBottomHeight         geom.Setting = "bottom-height"
	SettingBackJoint            geom.Setting = "back-joint"
	SettingBackSetback          geom.Setting = "back-setback"
	SettingFasteners            geom.Setting = "fasteners"
	SettingFingerWidth          geom.Setting = "finger-width"
	SettingTails                geom.Setting = "tails"
	SettingDovetailSlope        geom.Setting = "slope"
)
