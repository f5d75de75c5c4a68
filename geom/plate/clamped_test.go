package plate

import (
	"math"
	"testing"
)

// The closed forms of the functions' middles and integrals, against Simpson's rule
// over functions made anew: second derivatives by Legendre's recurrence (n+1)
// P_n+1 = (2n+1) u P_n - n P_n-1, integrated twice from value and slope 0 at -1,
// step by step. At 1 both must be 0 again.
func TestRitzFunctions(t *testing.T) {
	const count, steps = 5, 20000
	const h = 2.0 / steps
	const digits = 1e-7 // of f about 0.1 large; the step squared is 1e-8
	legendre := func(degree int, u float64) float64 {
		before, here := 1.0, u
		for n := 1; n < degree; n++ {
			before, here = here, (float64(2*n+1)*u*here-float64(n)*before)/float64(n+1)
		}
		return here
	}
	var f, slopes, bends [count][]float64
	for i := range count {
		f[i], slopes[i], bends[i] = make([]float64, steps+1), make([]float64, steps+1), make([]float64, steps+1)
		for k := range steps + 1 {
			bends[i][k] = legendre(2*i+2, -1+h*float64(k))
			if k > 0 { // the second derivative taken for straight between two steps
				slopes[i][k] = slopes[i][k-1] + h/2*(bends[i][k-1]+bends[i][k])
				f[i][k] = f[i][k-1] + h*slopes[i][k-1] + h*h/6*(2*bends[i][k-1]+bends[i][k])
			}
		}
		if math.Abs(f[i][steps]) > digits || math.Abs(slopes[i][steps]) > digits {
			t.Errorf("f_%d ends with %g, slope %g", i, f[i][steps], slopes[i][steps])
		}
	}
	product := func(a, b []float64) float64 {
		sum := a[0]*b[0] + a[steps]*b[steps]
		for k := 1; k < steps; k++ {
			sum += float64(2+2*(k%2)) * a[k] * b[k]
		}
		return sum * h / 3
	}
	made := newFunctions(count)
	one := make([]float64, steps+1)
	for k := range one {
		one[k] = 1
	}
	for i := range count {
		if math.Abs(made.middle[i]-f[i][steps/2]) > digits || math.Abs(made.curve[i]-bends[i][steps/2]) > digits {
			t.Errorf("f_%d: %g, %g in the middle; want %g, %g", i, made.middle[i], made.curve[i],
				f[i][steps/2], bends[i][steps/2])
		}
		want := 0.0
		if i == 0 {
			want = integral
		}
		if got := product(f[i], one); math.Abs(got-want) > digits {
			t.Errorf("f_%d: integral %g, want %g", i, got, want)
		}
		for k := range count {
			for _, c := range []struct {
				name      string
				got, want float64
			}{
				{"bend", bend(i, k), product(bends[i], bends[k])},
				{"slope", slope(i, k), product(slopes[i], slopes[k])},
				{"size", size(i, k), product(f[i], f[k])},
			} {
				if math.Abs(c.got-c.want) > digits {
					t.Errorf("%s of %d and %d: %.9f, want %.9f", c.name, i, k, c.got, c.want)
				}
			}
		}
	}
}
