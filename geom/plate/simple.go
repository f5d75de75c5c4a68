package plate

import "math"

// shortTerms is how many waves across the short side the series has, the odd ones
// 1 to 41; across the long side it has as many times the aspect.
const shortTerms = 21

// simpleStrip is the aspect from which a simply supported plate is computed as
// if it were no longer: what the short edges do dies away toward the middle
// with exp(-pi y / a) where eta is 1, and with exp(-0.7 pi y / a) where it is 0 or
// 1.25, its largest value: the real part of pi sqrt(eta - sqrt(eta^2 - 1)). That
// leaves 0.0001 at half of this.
const simpleStrip = 8.0

// A moment larger than the middle's is looked for along the long middle line, at
// every crestStep of the short side, up to crestReach of it from the edge: near
// the short edges of a long plate My is larger than in its middle, and with a
// small eta Mx too. Such a crest is about half a wave of the short side, so that
// less than 1 - cos(pi / 32) = 0.5 % of it is missed.
const (
	crestStep  = 1.0 / 16
	crestReach = 2.0
)

// simple solves the plate that is simply supported on four edges, by Navier's
// double series (Theory of Plates and Shells, articles 28 and 85). With sides 1
// and b = aspect, Dx = Dy = q = 1 and H = eta, for odd m and n,
//
//	w = 16 / pi^6 * sum sin(m pi x) sin(n pi y / b) / (m n d)
//	d = m^4 + 2 eta (m n / b)^2 + (n / b)^4
//	Mx = -(w_xx + poisson w_yy), My = -(w_yy + poisson w_xx)
//
// What is left out, at the middle, where the sines are 1, -1, 1 and so on: the
// terms of one m in w_xx, m / (n d), alternate in n and shrink. So the rest of a
// row is less than the first term left out, and a row less than its first term,
// which is less than 1 / m^3. The rows after m = M = 41 are together less than
// the sum of those, 1 / (4 M^2), times 16 / pi^4: 0.000025. The rests of the rows
// up to M, by d >= 2 (m n / b)^2, are less than 16 / pi^4 * b^2 / (2 N^3) * (1/1 +
// 1/3 + ... + 1/M), where N >= M b: 0.000004. For w_yy x and y change places:
// 0.000025 and 0.000005. A square's Mx is 0.0479, so less than 0.1 % is left out.
// For w the rows are less than 1 / m^5 and the rests than b^2 / (2 m^3 N^3):
// together 16 / pi^6 * 1.06 / (2 M^3) = 1.3e-7, 0.004 % of a square's 0.00406.
func (s shape) simple() bending {
	b := min(s.aspect, simpleStrip)
	longTerms := int(math.Ceil(shortTerms * b))

	// The factors of sin(n pi y / b) in both moments where x = 1/2.
	mx, my := make([]float64, longTerms), make([]float64, longTerms)
	var w float64
	signX := 1.0
	for i := range shortTerms {
		m := float64(2*i + 1)
		m2 := m * m
		signY := 1.0
		for j := range longTerms {
			n := float64(2*j+1) / b
			n2 := n * n
			term := signX / (m * n * b * (float64(m2*m2) + float64(n2*(float64(2*s.eta*m2)+n2))))
			w += float64(signY * term)
			mx[j] += float64(term * (m2 + float64(s.poisson*n2)))
			my[j] += float64(term * (n2 + float64(s.poisson*m2)))
			signY = -signY
		}
		signX = -signX
	}
	const pi2 = math.Pi * math.Pi
	return bending{16 / (pi2 * pi2 * pi2) * w, 16 / (pi2 * pi2) * crest(mx, b), 16 / (pi2 * pi2) * crest(my, b)}
}

// crest is the largest value, at the middle and at the steps near the edge, of
// the sum of c[i] sin((2i+1) pi y / side) for y from 0 to side / 2.
func crest(c []float64, side float64) float64 {
	most := sines(c, math.Pi/2)
	for step := 1.0; step*crestStep < min(side/2, crestReach); step++ {
		most = max(most, sines(c, math.Pi*step*crestStep/side))
	}
	return most
}

// sines is the sum of c[i] sin((2i+1) v). Each sine follows from the two before
// it: sin((2i+1) v) = 2 cos(2v) sin((2i-1) v) - sin((2i-3) v).
func sines(c []float64, v float64) float64 {
	sine, turn := math.Sin(v), 2*math.Cos(2*v)
	before, sum := -sine, 0.0
	for _, factor := range c {
		sum += float64(factor * sine)
		sine, before = float64(turn*sine)-before, sine
	}
	return sum
}
