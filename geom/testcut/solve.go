package testcut

import "math"

// Residual is a reading with what all readings together say it should be.
type Residual struct {
	Reading
	Expected float64
	Residual float64 // reading less expected
	// Sigmas is Residual in standard deviations of what the reading should be.
	Sigmas   float64
	Rejected bool // out, because it does not agree with the others
}

// Estimate is what the readings say of the machine.
type Estimate struct {
	u         vector              // the most likely values
	p         [maxUnknowns]vector // their covariances
	Residuals []Residual          // in the order given
	Conflicts []string            // names of readings that contradict each other; then nothing is to be trusted
}

// sigma is the standard deviation of a form.
func (e Estimate) sigma(by vector) float64 { return math.Sqrt(max(0, e.variance(by))) }

func (e Estimate) variance(by vector) float64 {
	sum := 0.0
	for i, v := range by {
		if v != 0 {
			sum += float64(v * e.p[i].dot(by))
		}
	}
	return sum
}

// maxTimes is how many standard deviations a reading may be off the others: one in
// two thousand is by chance.
const maxTimes = 3.5

// alike is the part of the greatest Sigmas from which another reading is as much to
// blame: of two that contradict each other neither is known to be the wrong one.
const alike = 0.9

// Solve finds the most likely machine: the least squares of all readings, each over
// its standard deviation, and of what was known before. A reading that contradicts
// the rest is left out and marked; where it is not clear which one is wrong, they
// are named in Conflicts.
func (c Model) Solve(readings []Reading) Estimate {
	out := make([]bool, len(readings))
	for {
		e := c.solve(readings, out)
		worst, at := 0.0, -1
		for i, r := range e.Residuals {
			if !out[i] && math.Abs(r.Sigmas) > worst {
				worst, at = math.Abs(r.Sigmas), i
			}
		}
		if worst <= maxTimes {
			return e
		}
		for i, r := range e.Residuals {
			if !out[i] && math.Abs(r.Sigmas) >= float64(alike*worst) {
				e.Conflicts = append(e.Conflicts, r.Name)
			}
		}
		if len(e.Conflicts) > 1 {
			return e
		}
		out[at] = true
	}
}

// solve takes the readings in one after the other, which is the same as all at once
// for linear measures (recursive least squares). The one that is not linear, the
// width, is taken in last, about what the others say.
func (c Model) solve(readings []Reading, out []bool) Estimate {
	var e Estimate
	for i, s := range c.prior {
		e.p[i][i] = float64(s * s)
	}
	forms, sigmas := make([]form, len(readings)), make([]float64, len(readings))
	for _, last := range []bool{false, true} {
		for i, r := range readings {
			if (r.Kind == Width) != last {
				continue
			}
			forms[i], _ = c.form(r, e.u)
			sigmas[i] = c.sigma(r.Kind)
			if r.Kind == Width {
				sigmas[i] = math.Hypot(sigmas[i], c.doubt(e))
			}
			if !out[i] {
				e.take(forms[i], r.Value, sigmas[i])
			}
		}
	}
	for i, r := range readings {
		s := sigmas[i]
		one := Residual{Reading: r, Expected: forms[i].at(e.u), Rejected: out[i]}
		one.Residual = r.Value - one.Expected
		// A reading that was taken in pulls what is expected toward itself.
		v := float64(s*s) - e.variance(forms[i].by)
		if out[i] {
			v = float64(s*s) + e.variance(forms[i].by)
		}
		if v > float64(settled*float64(s*s)) {
			one.Sigmas = one.Residual / math.Sqrt(v)
		}
		e.Residuals = append(e.Residuals, one)
	}
	return e
}

// doubt is what the width is off where it is not known whether the tongues' ends or
// their shoulders meet the sides: as much as both tongues' lengths and the dados'
// depths may differ.
func (c Model) doubt(e Estimate) float64 {
	gap := c.is.gap
	sigma := e.sigma(gap.by)
	if math.Abs(gap.at(e.u)) > sure*sigma {
		return 0
	}
	return 2 * sigma
}

// settled is the part of a reading's own variance below which no other reading says
// anything of it, so that it cannot be off.
const settled = 1e-3

// take updates the estimate with one reading.
func (e *Estimate) take(f form, value, sigma float64) {
	var gain vector
	for i := range gain {
		gain[i] = e.p[i].dot(f.by)
	}
	v := f.by.dot(gain) + float64(sigma*sigma)
	off := (value - f.at(e.u)) / v
	e.u = e.u.plus(gain, off)
	for i := range e.p {
		e.p[i] = e.p[i].plus(gain, -gain[i]/v)
	}
}
