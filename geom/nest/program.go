package nest

import (
	"math"
	"sync/atomic"
)

// column is a way to fill a sheet in a linear program: how many of each kind.
type column struct {
	at    []int // kinds
	n     []int // of each
	price float64
}

// program is the linear program of the cheapest sheets: as many of each column, of any
// fraction, as cover a demand. It is solved by the revised simplex method with an
// explicit inverse (Dantzig, Orchard-Hays; from memory), which small programs take well.
type program struct {
	demand  []float64
	stop    *atomic.Bool // set when a solution that is not the best will do
	columns []column
	inverse [][]float64
	basis   []int // columns; below 0 those that cover too much, -1 - kind
	x       []float64
	y       []float64 // what one of each kind is worth
	work    int64     // what steps have taken so far, in products
}

const (
	lpZero  = 1e-9
	refresh = 80 // pivots after which the inverse is made anew
)

// solve finds the best fractions; the first columns have to be one for each kind, which
// holds that kind alone.
func (p *program) solve() {
	m := len(p.demand)
	p.basis, p.x, p.y = make([]int, m), make([]float64, m), make([]float64, m)
	p.inverse = make([][]float64, m)
	for i := range m {
		p.basis[i] = i
		p.inverse[i] = make([]float64, m)
		p.inverse[i][i] = 1 / float64(p.columns[i].n[0])
		p.x[i] = p.demand[i] * p.inverse[i][i]
	}
	p.optimize()
}

// optimize goes from corner to corner of the program until none is better, or it is stopped.
func (p *program) optimize() {
	m := len(p.demand)
	d := make([]float64, m)
	for pivots := 1; ; pivots++ {
		p.prices()
		p.work += int64(3 * m * m)
		enter, best, found := 0, -lpZero, false
		for i, v := range p.y {
			if v < best { // covering more would save
				enter, best, found = -1-i, v, true
			}
		}
		for c := range p.columns {
			p.work += int64(len(p.columns[c].at))
			if r := p.columns[c].price - p.worth(c); r < best {
				enter, best, found = c, r, true
			}
		}
		if !found || pivots > 60*(m+20) || p.stop.Load() {
			return
		}
		p.direction(enter, d)
		leave, least := -1, math.Inf(1)
		for i := range m {
			if d[i] > 1e-7 {
				if r := max(0, p.x[i]) / d[i]; r < least-1e-12 || r < least+1e-12 && leave >= 0 && d[i] > d[leave] {
					leave, least = i, r
				}
			}
		}
		if leave < 0 {
			return
		}
		p.pivot(enter, leave, least, d)
		if pivots%refresh == 0 {
			p.refresh()
		}
	}
}

func (p *program) prices() {
	clear(p.y)
	for i, row := range p.inverse {
		if p.basis[i] < 0 {
			continue // covering too much costs nothing
		}
		price := p.columns[p.basis[i]].price
		for k, v := range row {
			p.y[k] += float64(price * v)
		}
	}
}

func (p *program) worth(c int) float64 {
	t := 0.0
	col := &p.columns[c]
	for i, k := range col.at {
		t += float64(p.y[k] * float64(col.n[i]))
	}
	return t
}

// direction is how the basis changes as a column enters.
func (p *program) direction(c int, d []float64) {
	for i, row := range p.inverse {
		t := 0.0
		if c < 0 {
			t = -row[-1-c]
		} else {
			col := &p.columns[c]
			for j, k := range col.at {
				t += float64(row[k] * float64(col.n[j]))
			}
		}
		d[i] = t
	}
}

func (p *program) pivot(enter, leave int, step float64, d []float64) {
	for i := range p.x {
		p.x[i] -= float64(step * d[i])
	}
	p.x[leave] = step
	p.basis[leave] = enter
	pivotal := p.inverse[leave]
	k := 1 / d[leave]
	for j := range pivotal {
		pivotal[j] *= k
	}
	for i, row := range p.inverse {
		if f := d[i]; i != leave && f != 0 {
			for j, v := range pivotal {
				if v != 0 {
					row[j] -= float64(f * v)
				}
			}
		}
	}
}

// refresh makes the inverse from the basis, so that errors do not add up.
func (p *program) refresh() {
	m := len(p.demand)
	p.work += int64(2 * m * m * m)
	a := make([][]float64, m) // rows kinds, columns basis, then the unit matrix
	for i := range a {
		a[i] = make([]float64, 2*m)
		a[i][m+i] = 1
	}
	for j, c := range p.basis {
		if c < 0 {
			a[-1-c][j] = -1
			continue
		}
		for i, k := range p.columns[c].at {
			a[k][j] = float64(p.columns[c].n[i])
		}
	}
	for j := range m {
		best := j
		for i := j + 1; i < m; i++ {
			if math.Abs(a[i][j]) > math.Abs(a[best][j]) {
				best = i
			}
		}
		if math.Abs(a[best][j]) < 1e-12 || p.stop.Load() {
			return // go on with the old inverse: the basis is nearly singular, or it matters no more
		}
		a[j], a[best] = a[best], a[j]
		k := 1 / a[j][j]
		for c := j; c < 2*m; c++ {
			a[j][c] *= k
		}
		for i := range m {
			if f := a[i][j]; i != j && f != 0 {
				for c := j; c < 2*m; c++ {
					a[i][c] -= float64(f * a[j][c])
				}
			}
		}
	}
	for i := range m {
		copy(p.inverse[i], a[i][m:])
		t := 0.0
		for k, v := range p.inverse[i] {
			t += float64(v * p.demand[k])
		}
		p.x[i] = t
	}
}

// cost is what the fractions add up to.
func (p *program) cost() float64 {
	t := 0.0
	for i, c := range p.basis {
		if c >= 0 {
			t += float64(p.x[i] * p.columns[c].price)
		}
	}
	return t
}
