package shoplog

import "math"

// Prior is what is known of a quantity before its first cut is logged.
//
// The spread and the bias of a machine are those of the conjugate model of a normal quantity of which neither is known:
// the variance is scaled inverse chi-square, and the bias, given the variance, normal (Gelman et al., Bayesian Data
// Analysis, 3rd ed., section 3.3; Murphy, Conjugate Bayesian analysis of the Gaussian distribution, 2007, section 6;
// both from memory). What is expected of the next cut is then a Student's t.
type Prior struct {
	Sigma float64 // standard deviation that the job states
	// Known is the standard deviation of what a reading has beside: measuring, and the single cut. With it the model is
	// conjugate no more, and the variance is summed over a grid; with 0 the grid gives the closed form.
	Known float64
	// Centered is set where the quantity has no bias, as the difference of two cuts at one setting.
	Centered bool
}

// How many cuts the job's figures count as much as: for the spread, and for the bias, which is as large as the spread;
// common practice, no source.
const (
	priorSpread = 6
	priorBias   = 1
)

// The grid is over standard deviations from a part of what is expected to as many times that, or of what was seen.
const (
	gridNodes = 160
	gridTimes = 16
)

// Law is what a log tells of a quantity: a mixture of machines, each with its weight.
type Law struct {
	Cuts int
	// Low and High are between what lengths the next cut is expected to be off, but for 0.27 %.
	Low, High float64
	Nodes     []Node
}

// Node is a machine that may be the shop's: by how much it is off on average, how exactly that is known, and by how
// much it differs from one time to the next.
type Node struct{ Weight, Mean, MeanSigma, Sigma float64 }

// Learn works out what cuts tell that were off by some lengths.
func Learn(p Prior, off []float64) Law {
	n, mean, squares := float64(len(off)), 0.0, 0.0
	for _, x := range off {
		mean += x / n
	}
	if p.Centered {
		mean = 0
	}
	for _, x := range off {
		squares += float64((x - mean) * (x - mean))
	}
	low, high := p.Sigma/gridTimes, gridTimes*math.Max(p.Sigma, math.Sqrt(squares/math.Max(n, 1)))
	step := math.Pow(high/low, 1.0/(gridNodes-1))
	l := Law{Cuts: len(off), Nodes: make([]Node, gridNodes)}
	logs, most := make([]float64, gridNodes), math.Inf(-1)
	for i := range l.Nodes {
		sigma := low * math.Pow(step, float64(i))
		l.Nodes[i], logs[i] = p.node(sigma, n, mean, squares)
		most = math.Max(most, logs[i])
	}
	sum := 0.0
	for i := range l.Nodes {
		l.Nodes[i].Weight = math.Exp(logs[i] - most)
		sum += l.Nodes[i].Weight
	}
	return l.settled(sum)
}

// node is a machine of one spread, and the logarithm of how likely it is.
func (p Prior) node(sigma, n, mean, squares float64) (Node, float64) {
	variance := float64(sigma * sigma)
	log := -priorSpread*math.Log(sigma) - priorSpread*float64(p.Sigma*p.Sigma)/(2*variance)
	node := Node{Sigma: sigma}
	read := variance + float64(p.Known*p.Known) // of a reading
	if p.Centered {
		return node, log - n/2*math.Log(read) - squares/(2*read)
	}
	bias := variance / priorBias
	if n == 0 {
		node.MeanSigma = math.Sqrt(bias)
		return node, log
	}
	total := bias + read/n // of the mean of all readings
	node.Mean, node.MeanSigma = mean*bias/total, math.Sqrt(bias*read/n/total)
	return node, log - (n-1)/2*math.Log(read) - squares/(2*read) - math.Log(total)/2 - float64(mean*mean)/(2*total)
}

// What nobody can tell from nothing: a weight, and a length in mm. All is rounded to it, so that the last bit of a
// logarithm, which processors do not agree on, changes no draw.
const (
	leastWeight = 1e-7
	leastLength = 1e-7
)

// settled drops what has no weight, rounds the rest, and makes the weights a whole.
func (l Law) settled(sum float64) Law {
	kept := l.Nodes[:0]
	round := func(v, to float64) float64 { return math.Round(v/to) * to }
	total := 0.0
	for _, n := range l.Nodes {
		if n.Weight = round(n.Weight/sum, leastWeight); n.Weight > 0 {
			n.Mean, n.Sigma = round(n.Mean, leastLength), round(n.Sigma, leastLength)
			n.MeanSigma = round(n.MeanSigma, leastLength)
			kept, total = append(kept, n), total+n.Weight
		}
	}
	for i := range kept {
		kept[i].Weight /= total
	}
	l.Nodes = kept
	l.Low, l.High = l.NextAt(beyond), l.NextAt(1-beyond)
	return l
}

// One is a law of which all is known: what the cuts of one machine do.
func (n Node) One() Law {
	n.Weight, n.MeanSigma = 1, 0
	return Law{Low: n.Mean - 3*n.Sigma, High: n.Mean + 3*n.Sigma, Nodes: []Node{n}}
}

// Machine is one that may be the shop's: u is from 0 to 1, z a standard deviate.
func (l Law) Machine(u, z float64) Node {
	at, last := 0, len(l.Nodes)-1
	for ; at < last && u >= l.Nodes[at].Weight; at++ {
		u -= l.Nodes[at].Weight
	}
	n := l.Nodes[at]
	n.Mean += float64(n.MeanSigma * z)
	return n
}

// beyond is the part of what is expected that lies beyond either end of a law: what a normal spread has beyond three
// standard deviations.
const beyond = 0.00135

// NextAt is the length below which the next cut is off with a probability.
func (l Law) NextAt(p float64) float64 {
	return l.solve(p, func(n Node) (mean, sigma float64) { return n.Mean, math.Hypot(n.MeanSigma, n.Sigma) })
}

// Bias is by how much the machine is off on average, with a probability below and above it.
func (l Law) Bias(p float64) (low, mean, high float64) {
	of := func(n Node) (float64, float64) { return n.Mean, n.MeanSigma }
	for _, n := range l.Nodes {
		mean += float64(n.Weight * n.Mean)
	}
	return l.solve(p, of), mean, l.solve(1-p, of)
}

// Spread is the standard deviation of the machine from one time to the next, with a probability below and above it.
func (l Law) Spread(p float64) (low, mean, high float64) {
	at := func(p float64) float64 {
		for _, n := range l.Nodes {
			if p -= n.Weight; p <= 0 {
				return n.Sigma
			}
		}
		return l.Nodes[len(l.Nodes)-1].Sigma
	}
	for _, n := range l.Nodes {
		mean += float64(n.Weight * n.Sigma)
	}
	return at(p), mean, at(1 - p)
}

// solve finds where a mixture of normal quantities has a probability below it.
func (l Law) solve(p float64, of func(Node) (mean, sigma float64)) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, n := range l.Nodes {
		mean, sigma := of(n)
		low, high = math.Min(low, mean-10*sigma), math.Max(high, mean+10*sigma)
	}
	for high-low > leastLength {
		mid := (low + high) / 2
		below := 0.0
		for _, n := range l.Nodes {
			mean, sigma := of(n)
			below += float64(n.Weight * normalBelow(mid-mean, sigma))
		}
		if below < p {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Round((low+high)/2/leastLength) * leastLength
}

// normalBelow is how likely a normal quantity about 0 is below a value.
func normalBelow(x, sigma float64) float64 {
	if sigma == 0 {
		if x < 0 {
			return 0
		}
		return 1
	}
	return math.Erfc(-x/sigma/math.Sqrt2) / 2
}
