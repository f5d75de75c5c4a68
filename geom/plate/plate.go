// Package plate says how far a drawer's bottom sags under a load spread evenly
// over it, and how hard that bends it, by the theory of thin plates at small
// deflection (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells). What shear
// through the thickness adds to the sag is that of Mindlin and Reissner (thick.go).
//
// [Of] gives the sag of a [Bottom], [ThicknessFor] the thickness that keeps a
// limit. Both are given for two ideal edges. Simply supported, all four edges
// are held up but may turn; clamped, they cannot turn either. A bottom in a
// groove is between: the groove hinders it from turning, yet it is loose in it
// and can slide inward. The simply supported sag is the cautious one, unless an
// edge is not held at all.
//
// A load that stays makes the sag grow (see the package wood); the results here are
// those of the first minute. The bottom's own weight is not in them, unless it is added
// to the load.
package plate

import (
	"fmt"
	"math"
)

// Gravity is the standard acceleration of free fall, m/s2: exact by the third
// General Conference on Weights and Measures, 1901.
const Gravity = 9.80665

// MaxShear is the modulus of shear that no sheet of these stiffnesses exceeds: half
// their geometric mean. One alike in all directions has 1 / (2 (1 + Poisson)) of it, and
// unlike directions make it less (from memory).
func MaxShear(along, across float64) float64 {
	return math.Sqrt(along) * math.Sqrt(across) / 2
}

// shearRoom is the part of [MaxShear] that is rounding.
const shearRoom = 1.002

// MaxPoisson is above Poisson's ratio of all that bottoms are made of; at 0.5 a
// material keeps its volume.
const MaxPoisson = 0.499

// Every length, stiffness and load is between these, in its unit: far beyond any
// bottom, and so near each other that no product of theirs leaves float64.
const (
	smallest = 1e-6
	largest  = 1e9
)

// Up to where the theory holds: a thickness of a quarter of the short side, and
// a sag of half the thickness (Formulas for Stress and Strain, chapter 11). A
// bottom that sags more also hangs like a cloth, and so sags less than computed.
const (
	thickPart = 1.0 / 4
	deepPart  = 1.0 / 2
)

// A thickness is found in at most thicknessSteps steps, when it changes by less than a part of itself.
const (
	thicknessSteps = 80
	settled        = 1e-9
)

// Bottom is a rectangular sheet, held along all four edges.
type Bottom struct {
	Length, Width float64 // between the supports, mm; either may be the longer
	Thickness     float64 // mm

	// Along and Across are the moduli of elasticity in bending, N/mm2: Along for
	// strips cut parallel to Length, Across parallel to Width. Where the face
	// grain runs with the width, they change places.
	Along, Across float64

	// Poisson is Poisson's ratio, for unequal stiffness the geometric mean of
	// both ratios. In plywood it is small (0.1, from memory).
	Poisson float64

	// Shear is the modulus of shear in the plane, N/mm2. 0 stands for
	// sqrt(Along Across) / (2 (1 + Poisson)), which is exact for a sheet alike in
	// all directions and too much for plywood, whose sag comes out too small
	// then: for birch by more than a third.
	Shear float64

	// ThroughAlong and ThroughAcross are the moduli of shear through the thickness, N/mm2, of
	// strips as of Along and Across. In plywood and across the grain of wood, whose fibers roll
	// on each other, they are small. 0 stands for a sheet that shear does not tilt.
	ThroughAlong, ThroughAcross float64
}

// Sag is what a load does to a bottom: mm at its middle, and the largest bending
// stress in N/mm2 (6 M / thickness squared) in either direction. Sag and stress
// are proportional to the load.
type Sag struct {
	Simple, Clamped             float64
	StressSimple, StressClamped float64

	// Small says whether the theory holds for the simply supported bottom: it is
	// thin and sags little. A bottom that sags more than half its thickness sags
	// less than computed; one thicker than a quarter of its short side somewhat
	// more.
	Small bool
}

// Of gives the sag of a bottom under kg spread evenly over it. Values that are
// not numbers above 0 (moduli of shear and Poisson: 0 or more), or beyond all measure, are
// errors, and so is a modulus of shear above half the geometric mean of the
// stiffnesses.
//
// The shear through the thickness is taken to add to the sag of the clamped bottom what it adds to
// that of the simply supported one, which is 3 % too little for a square as thick as a tenth of its side.
//
// Accuracy, against the theory: sags 0.1 %; stresses of the simply supported
// bottom 0.6 %, of the clamped one 0.5 %. The clamped stress is that at the
// middles of edges and sheet; in a long sheet whose Shear is a small part of the
// usual value some other place of the edge has up to 7 % more.
func Of(b Bottom, kg float64) (Sag, error) {
	s, err := b.normal(kg)
	if err != nil {
		return Sag{}, err
	}
	simple, clamped := s.simple(), s.clamped()
	t, sheared := b.Thickness, b.sheared(s.q)
	sag := Sag{
		Simple:        s.sag(simple.deflection)/(t*t*t) + sheared,
		Clamped:       s.sag(clamped.deflection)/(t*t*t) + sheared,
		StressSimple:  s.stress(simple) / (t * t),
		StressClamped: s.stress(clamped) / (t * t),
	}
	sag.Small = t <= thickPart*min(b.Length, b.Width) && sag.Simple <= deepPart*t
	return sag, nil
}

// ThicknessFor gives the thickness in mm at which the simply supported sag under
// kg is the limit in mm. b.Thickness is not used. Without shear the sag goes with 1 / t^3, so
// that the result is the cube root of (sag at 1 mm) / limit; what shear adds goes with 1 / t, so that
// each step toward the result leaves two thirds of the error at most. For a sheet whose
// stiffness depends on its thickness, ask again with that of the result. Errors
// as [Of].
func ThicknessFor(b Bottom, kg, limit float64) (float64, error) {
	b.Thickness = 1
	s, err := b.normal(kg)
	if err != nil {
		return 0, err
	}
	if err := usable("the limit of the sag", limit); err != nil {
		return 0, err
	}
	thin := s.sag(s.simple().deflection)
	b.Thickness = math.Cbrt(thin / limit)
	for range thicknessSteps {
		t := b.Thickness
		b.Thickness = math.Cbrt((thin + float64(b.sheared(s.q)*t*t*t)) / limit)
		if math.Abs(b.Thickness-t) < settled*t {
			break
		}
	}
	return b.Thickness, nil
}

// shape is a bottom laid so that its shorter side lies along x. Shorter is meant
// by stiffness: the sides are compared by a / Dx^(1/4) and b / Dy^(1/4), because
// with y' = y (Dx/Dy)^(1/4) the equation of the plate
//
//	Dx w_xxxx + 2 H w_xxyy + Dy w_yyyy = q, H = D1 + 2 Dk, D1 = poisson sqrt(Dx Dy)
//
// becomes that of one with Dx = Dy = 1, H = eta: aspect and eta are all it
// depends on.
type shape struct {
	a       float64 // the side along x, mm
	aspect  float64 // 1 or more
	eta     float64 // H / sqrt(Dx Dy), up to 1.25; 1 for a sheet alike in all directions
	poisson float64
	turn    float64 // sqrt(Dy / Dx)
	dx      float64 // Dx / thickness^3, N/mm2
	q       float64 // the load, N/mm2
}

// normal checks a bottom and a load.
func (b Bottom) normal(kg float64) (shape, error) {
	for _, v := range []struct {
		what  string
		value float64
	}{
		{"the length", b.Length}, {"the width", b.Width}, {"the thickness", b.Thickness},
		{"the stiffness along", b.Along}, {"the stiffness across", b.Across}, {"the load", kg},
	} {
		if err := usable(v.what, v.value); err != nil {
			return shape{}, err
		}
	}
	if !(b.Poisson >= 0 && b.Poisson <= MaxPoisson) {
		return shape{}, fmt.Errorf("the ratio of Poisson is %g, not from 0 to %g", b.Poisson, MaxPoisson)
	}
	for _, through := range []float64{b.ThroughAlong, b.ThroughAcross} {
		if !(through >= 0 && through <= largest) || through > 0 && through < smallest {
			return shape{}, fmt.Errorf("the modulus of shear through the thickness is %g, not 0 or from %g to %g",
				through, smallest, largest)
		}
	}
	mean := math.Sqrt(b.Along) * math.Sqrt(b.Across)
	if !(b.Shear >= 0 && b.Shear <= shearRoom*MaxShear(b.Along, b.Across)) {
		return shape{}, fmt.Errorf("the modulus of shear is %g, not from 0 to half the stiffness in bending, %g", b.Shear, mean)
	}
	// Dx = ex t^3 / (12 spread) and 2 Dk = Shear t^3 / 6, so that 2 Dk / sqrt(Dx
	// Dy) = 2 spread Shear / mean: with the usual Shear 1 - Poisson.
	spread := 1 - float64(b.Poisson*b.Poisson)
	eta := 1.0
	if b.Shear > 0 {
		eta = b.Poisson + float64(2*spread*(b.Shear/mean))
	}
	a, ex, other, ey := b.Length, b.Along, b.Width, b.Across
	root := func(e float64) float64 { return math.Sqrt(math.Sqrt(e)) }
	if a/root(ex) > other/root(ey) {
		a, ex, other, ey = other, ey, a, ex
	}
	return shape{
		a: a, aspect: (other / root(ey)) / (a / root(ex)), eta: eta, poisson: b.Poisson,
		turn: math.Sqrt(ey) / math.Sqrt(ex),
		dx:   ex / (12 * spread),
		q:    kg * Gravity / a / other,
	}, nil
}

// bending is a solution without units: the deflection at the middle in
// q a^4 / Dx, and the moments that the stresses come from, Mx in q a^2, My in
// q a^2 sqrt(Dy / Dx).
type bending struct{ deflection, mx, my float64 }

// sag in mm for a thickness of 1 mm.
func (s shape) sag(deflection float64) float64 {
	return deflection * (s.q / s.dx) * (s.a * s.a) * (s.a * s.a)
}

// stress in N/mm2 for a thickness of 1 mm.
func (s shape) stress(b bending) float64 {
	return 6 * max(b.mx, s.turn*b.my) * s.q * (s.a * s.a)
}

// usable turns away what is not a number from smallest to largest.
func usable(what string, value float64) error {
	if value >= smallest && value <= largest {
		return nil
	}
	return fmt.Errorf("%s is %g, not a number from %g to %g", what, value, smallest, largest)
}
