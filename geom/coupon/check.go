package coupon

import (
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// What keeps a coupon from being made.
const (
	CodeSize   geom.Code = "coupon-size"   // a number that is no size of a coupon
	CodeWeb    geom.Code = "coupon-web"    // slots too deep for the board
	CodeCutter geom.Code = "coupon-cutter" // a cutter that makes no slot for the tongue
	CodeLength geom.Code = "coupon-length" // too long a coupon
)

// What is refused, in mm. All common practice without a source.
const (
	// minTongue is the thickness below which a tongue is no joint, and minDepth
	// the depth below which a slot holds nothing.
	minTongue, minDepth = 1.0, 1.0
	// minCutter is thinner than any blade and bit that makes slots.
	minCutter = 0.5
	// maxLength is that of a coupon, and more than any of its sizes: a larger one is
	// a piece of work and no coupon.
	maxLength = 600.0
	// maxClearance is where the narrowest slot is so loose that glue bridges none of them.
	maxClearance = 1.0
	// overlap is what two passes have in common, so that no wood is left between.
	overlap = 0.2
)

// refused is the diagnosis of a coupon that cannot be made.
func refused(code geom.Code, measured, limit geom.Quantity, fact, ask geom.Sentence) error {
	return geom.Diagnosis{Code: code, Level: geom.LevelError, Fact: fact, Measured: measured, Limit: limit, Ask: ask}
}

// checkSizes judges each number that was asked for, and the depth against the board.
func (a Asked) checkSizes() error {
	for _, n := range []struct {
		what      string
		mm, least float64
	}{
		{"the board's thickness", a.Thickness, geom.MinWeb + minDepth},
		{"the tongue's thickness", a.Tongue, minTongue},
		{a.tool() + "'s width", a.Cutter, minCutter},
		{"the slots' depth", a.Depth, minDepth},
	} {
		if n.mm >= n.least-settle && n.mm <= maxLength {
			continue
		}
		size, limit := geom.Millimeters(n.mm), geom.Quantity(geom.AtLeast(n.least))
		if n.mm > maxLength {
			limit = geom.AtMost(maxLength)
		}
		return refused(CodeSize, size, limit, geom.Sentencef("%s is given as %s", n.what, size),
			geom.Sentencef("a coupon can be made with %s to %s", geom.AtLeast(n.least), geom.AtMost(maxLength)))
	}
	if web := a.Thickness - a.Depth; web < geom.MinWeb-settle {
		left, least := geom.Millimeters(web), geom.Millimeters(geom.MinWeb)
		return refused(CodeWeb, left, least,
			geom.Sentencef("slots %s deep leave %s of a board of %s; it needs %s to hold together",
				geom.Millimeters(a.Depth), left, geom.Millimeters(a.Thickness), least),
			geom.Sentencef("cut %s deep or less, or take a board of %s or more",
				geom.AtMost(a.Thickness-geom.MinWeb), geom.AtLeast(a.Depth+geom.MinWeb)))
	}
	return nil
}

// checkCutter judges the cutter against the narrowest and the widest slot.
func (a Asked) checkCutter(narrow, wide float64) error {
	room := 0.0
	if a.Router {
		room = mill.SlotRoom
	}
	tongue, cutter := geom.Millimeters(a.Tongue), geom.Millimeters(a.Cutter)
	if over := narrow - a.Tongue; narrow > a.Tongue+maxClearance+settle {
		return refused(CodeCutter, geom.Caliper(over), geom.Millimeters(maxClearance),
			geom.Sentencef("the narrowest slot that %s of %s makes is %s wide, %s more than the tongue of %s: it fits none",
				a.tool(), cutter, geom.Caliper(narrow), geom.Caliper(over), tongue),
			geom.Sentencef("take one of %s or less", geom.AtMost(a.Tongue-room)))
	}
	if most := 2*a.Cutter - overlap; !a.Router && wide > most+settle {
		return refused(CodeCutter, geom.Caliper(wide), geom.Caliper(most),
			geom.Sentencef("two passes of a cutter of %s make slots up to %s, and the widest is %s",
				cutter, geom.Caliper(most), geom.Caliper(wide)),
			geom.Sentencef("take a cutter about as wide as the tongue, %s", tongue))
	}
	return nil
}

// checkLength judges how long the coupon comes out.
func (a Asked) checkLength(length float64) error {
	if length <= maxLength+settle {
		return nil
	}
	long, most := geom.Millimeters(length), geom.Millimeters(maxLength)
	return refused(CodeLength, long, most,
		geom.Sentencef("with a tongue of %s and %s of %s the coupon is %s long, more than %s",
			geom.Millimeters(a.Tongue), a.tool(), geom.Millimeters(a.Cutter), long, most),
		geom.Sentencef("ask for a thinner tongue, or a narrower cutter"))
}

// tool is what the machine cuts with.
func (a Asked) tool() string {
	if a.Router {
		return "the bit"
	}
	return "the cutter"
}
