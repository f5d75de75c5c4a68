package plate

import "math"

// shearPart is what of the thickness takes up shear, which is spread over it as a parabola (Reissner).
const shearPart = 5.0 / 6

// throughTerms is how many waves across the shorter side the series of [Bottom.sheared] has, the odd ones
// up to twice that; across the other side it has more, up to throughStrip times as many.
const (
	throughTerms = 24
	throughStrip = 8.0
)

// sheared is by how much a simply supported bottom sags more, in mm, because shear through its
// thickness tilts what was square to its face: the theory of Mindlin and Reissner less that of thin
// plates, for a load of q N/mm2. With w = W sin ax sin by and turns X cos ax sin by, Y sin ax cos by
// of what was square, each term of Navier's series has
//
//	(Sx a^2 + Sy b^2) W + Sx a X + Sy b Y = q_mn
//	Sx a W + (Dx a^2 + Dk b^2 + Sx) X + (D1 + Dk) a b Y = 0
//	Sy b W + (D1 + Dk) a b X + (Dk a^2 + Dy b^2 + Sy) Y = 0
//
// which is that of the thin plate where Sx and Sy, 5/6 of the modulus times the thickness, have no end.
// It is 0 of a bottom whose moduli are not known. Terms alternate in sign and go with 1 / n^3: what is
// left out is less than 0.2 % of the result.
func (b Bottom) sheared(q float64) float64 {
	if b.ThroughAlong == 0 || b.ThroughAcross == 0 {
		return 0
	}
	t3 := float64(b.Thickness*b.Thickness) * b.Thickness / 12
	spread := 1 - float64(b.Poisson*b.Poisson)
	mean := math.Sqrt(b.Along) * math.Sqrt(b.Across)
	shear := b.Shear
	if shear == 0 {
		shear = mean / (2 * (1 + b.Poisson))
	}
	dx, dy, dk := b.Along/spread*t3, b.Across/spread*t3, shear*t3
	d1 := b.Poisson * (mean / spread) * t3
	sx, sy := shearPart*b.ThroughAlong*b.Thickness, shearPart*b.ThroughAcross*b.Thickness
	terms := func(side float64) int {
		return int(math.Ceil(throughTerms * min(side/min(b.Length, b.Width), throughStrip)))
	}
	sum, signX := 0.0, 1.0
	for i := range terms(b.Length) {
		m := float64(2*i + 1)
		a := m * math.Pi / b.Length
		signY := signX
		for j := range terms(b.Width) {
			n := float64(2*j + 1)
			c := n * math.Pi / b.Width
			a2, c2 := a*a, c*c
			xx, yy, xy := float64(dx*a2)+float64(dk*c2), float64(dk*a2)+float64(dy*c2), (d1+dk)*a*c
			// Of a W of 1, X + a and Y + c, which are small where shear tilts little.
			p, r := float64(xx*a)+float64(xy*c), float64(yy*c)+float64(xy*a)
			xx, yy = xx+sx, yy+sy
			det := float64(xx*yy) - float64(xy*xy)
			x, y := (float64(p*yy)-float64(r*xy))/det, (float64(r*xx)-float64(p*xy))/det
			thick := float64(sx*a*x) + float64(sy*c*y)
			thin := float64(dx*a2*a2) + float64(2*(d1+2*dk)*a2*c2) + float64(dy*c2*c2)
			sum += signY / (m * n) * (1/thick - 1/thin)
			signY = -signY
		}
		signX = -signX
	}
	return 16 * q / (math.Pi * math.Pi) * sum
}
